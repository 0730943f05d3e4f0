// The estimate of one rig as plain data: what the documents are written from, and the form of the JSON document.
import * as z from 'zod';
import { Money } from '../values/money.ts';
import { Figure, originKind, Priced, Span } from './figure-schema.ts';

export { Figure, Priced } from './figure-schema.ts';

/** Something that must be answered before the estimate is whole. */
export const Question = z
  .strictObject({
    rule: z.enum([
      'no-material',
      'unknown-material',
      'two-materials',
      'no-price',
      'no-coverage',
      'no-cleaner',
      'no-labour-rate',
      'no-rate',
      'mixed-currencies',
      'no-roll',
      'primer-needed',
      'unknown-stock',
      'past-best-before',
      'unknown-underneath',
      'not-counted',
      'not-priced',
    ]),
    about: z.string(),
    text: z.string(),
  })
  .readonly();
export type Question = z.infer<typeof Question>;

export const PieceLine = z
  .strictObject({
    number: z.int().positive(),
    tape: z.string(),
    item: z.string(),
    copy: z.int().positive(),
    what: z.string(),
    frame: z.boolean(),
    length: Figure,
  })
  .readonly();
export type PieceLine = z.infer<typeof PieceLine>;

export const StripsLine = z
  .strictObject({ item: z.string(), strips: Figure, slack: Figure, noSlack: z.boolean() })
  .readonly();

export const BeadLine = z
  .strictObject({
    sealant: z.string(),
    item: z.string(),
    smothered: z.boolean(),
    length: Figure,
    section: Figure.exactOptional(),
    volume: Figure,
  })
  .readonly();

export const LiquidLine = z
  .strictObject({
    task: z.enum(['wash', 'wipe', 'prime', 'coat']),
    material: z.string().exactOptional(),
    area: Figure,
    volume: Figure.exactOptional(),
  })
  .readonly();
export type LiquidLine = z.infer<typeof LiquidLine>;

/** One plan with its take-off. Pieces, beads and liquids are those of this job alone. */
export const JobLine = z
  .strictObject({
    text: z.string(),
    word: z.string(),
    file: z.string(),
    at: Span,
    visit: z.int().positive(),
    items: z.array(z.string()).readonly(),
    strips: z.array(StripsLine).readonly(),
    pieces: z.array(PieceLine).readonly(),
    tapeLength: Figure.exactOptional(),
    beads: z.array(BeadLine).readonly(),
    beadLength: Figure.exactOptional(),
    sealantVolume: Figure.exactOptional(),
    liquids: z.array(LiquidLine).readonly(),
    stripped: z.array(z.strictObject({ item: z.string(), hard: z.boolean(), length: Figure }).readonly()).readonly(),
    skipped: z.array(z.strictObject({ item: z.string(), reason: z.string() }).readonly()).readonly(),
  })
  .readonly();
export type JobLine = z.infer<typeof JobLine>;

/** The jobs that the dates of their plans let be done together, and what begins the visit. */
export const VisitLine = z
  .strictObject({
    number: z.int().positive(),
    from: z.string(),
    to: z.string().exactOptional(),
    liquids: z.array(LiquidLine).readonly(),
  })
  .readonly();
export type VisitLine = z.infer<typeof VisitLine>;

/** One roll or piece on hand with its cuts in laying order. */
export const StockLine = z
  .strictObject({
    kind: z.enum(['roll', 'on-hand']),
    what: z.string(),
    /** Of a length on hand in a fleet of several yards: where it lies. */
    at: z.string().exactOptional(),
    usable: Figure,
    cuts: z
      .array(
        z
          .strictObject({
            /** Of a purchase for several rigs: whose piece it is. */
            rig: z.string().exactOptional(),
            piece: z.int().positive(),
            item: z.string(),
            what: z.string(),
            part: z.tuple([z.int(), z.int()]).readonly().exactOptional(),
            length: Figure,
          })
          .readonly(),
      )
      .readonly(),
    left: Figure,
  })
  .readonly();
export type StockLine = z.infer<typeof StockLine>;

export const CuttingList = z
  .strictObject({
    tape: z.string(),
    stock: z.array(StockLine).readonly(),
    splices: z.int().nonnegative(),
    /** Where the parts of spliced pieces overlap, from the front end of the piece to the middle of the lap. */
    joints: z
      .array(
        z
          .strictObject({
            rig: z.string().exactOptional(),
            piece: z.int().positive(),
            item: z.string(),
            at: Figure,
            /** It had to fall within a foot of a corner or an opening. */
            tooNear: z.boolean(),
          })
          .readonly(),
      )
      .readonly(),
    longestLeft: Figure.exactOptional(),
  })
  .readonly();
export type CuttingList = z.infer<typeof CuttingList>;

export const PurchaseLine = z
  .strictObject({
    what: z.string(),
    count: z.int().positive(),
    unitPrice: Money.exactOptional(),
    cost: Priced.exactOptional(),
  })
  .readonly();

export type PurchaseLine = z.infer<typeof PurchaseLine>;

/** What of one material is needed, on hand and to be bought. `cost` is missing where no price is known. */
export const Purchase = z
  .strictObject({
    material: z.string(),
    kind: z.enum(['tape', 'sealant', 'primer', 'cleaner', 'coating']),
    need: Figure,
    withSpare: Figure.exactOptional(),
    onHand: Figure.exactOptional(),
    /** Of a sealant in one size of cartridge: how many the need takes, on hand or bought. */
    cartridges: Figure.exactOptional(),
    buy: z.array(PurchaseLine).readonly(),
    cost: Priced.exactOptional(),
    proven: z.boolean(),
    proof: z.string(),
    /** What is worth knowing of it beside the proof. */
    hint: z.string().exactOptional(),
    left: Figure.exactOptional(),
  })
  .readonly();
export type Purchase = z.infer<typeof Purchase>;

/** What of one material goes from the shelf of one yard to another, since one purchase counts with the shelves of all. */
export const Sent = z
  .strictObject({
    from: z.string(),
    to: z.string(),
    /** In words: `2 cartridges`, `18 ft on hand`. */
    what: z.string(),
    amount: Figure,
  })
  .readonly();
export type Sent = z.infer<typeof Sent>;

/** One material bought for all rigs of a fleet together. */
export const Pooled = z
  .strictObject({
    material: z.string(),
    rigs: z.array(z.string()).readonly(),
    purchase: Purchase,
    cutting: CuttingList.exactOptional(),
    /** Of a fleet of several yards: what is sent from one to another. */
    sent: z.array(Sent).readonly().exactOptional(),
    /** What the rigs would pay, each buying for itself; missing where no price is known. */
    apart: Figure.exactOptional(),
    /** What buying together saves of it, and what the fleet's own shelf saves beyond. */
    pooling: Figure.exactOptional(),
    shelf: Figure.exactOptional(),
  })
  .readonly();
export type Pooled = z.infer<typeof Pooled>;

const Hours = z.strictObject({ least: Figure, likely: Figure, most: Figure }).readonly();

export const LabourLine = z
  .strictObject({
    visit: z.int().positive(),
    task: z.string(),
    quantity: Figure,
    hours: Hours,
    cost: Priced.exactOptional(),
  })
  .readonly();
export type LabourLine = z.infer<typeof LabourLine>;

/** A default figure that the estimate rests on: everything that no record of the user says. */
export const Assumption = z
  .strictObject({
    name: z.string(),
    text: z.string(),
    kind: originKind,
    source: z.string().exactOptional(),
    file: z.string(),
    at: Span,
    usedFor: z.string(),
  })
  .readonly();
export type Assumption = z.infer<typeof Assumption>;

export const Totals = z
  .strictObject({
    currency: z.string().exactOptional(),
    materials: Priced.exactOptional(),
    labour: Priced.exactOptional(),
    tax: Priced.exactOptional(),
    total: Priced.exactOptional(),
    complete: z.boolean(),
    /** Why the total is not whole; empty if it is. */
    missing: z.array(z.string()).readonly(),
  })
  .readonly();
export type Totals = z.infer<typeof Totals>;

export const Estimate = z
  .strictObject({
    rig: z.strictObject({ name: z.string(), file: z.string(), unit: z.string().exactOptional() }).readonly(),
    asOf: z.string(),
    system: z.enum(['us', 'metric']),
    visits: z.array(VisitLine).readonly(),
    jobs: z.array(JobLine).readonly(),
    cutting: z.array(CuttingList).readonly(),
    purchases: z.array(Purchase).readonly(),
    labour: z.array(LabourLine).readonly(),
    hours: Hours,
    totals: Totals,
    assumptions: z.array(Assumption).readonly(),
    questions: z.array(Question).readonly(),
  })
  .readonly();
export type Estimate = z.infer<typeof Estimate>;
