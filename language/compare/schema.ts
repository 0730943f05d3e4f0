// What a change costs, as plain data: the form of `rigseam compare --format json`. Everything is a pair of before and after;
// what has no before came, what has no after went.
import * as z from 'zod';
import { Money } from '../values/money.ts';

const pair = { before: z.string().exactOptional(), after: z.string().exactOptional() };

export const entryKinds = ['fact', 'record', 'finding', 'plan'] as const;
export type EntryKind = (typeof entryKinds)[number];

/** A record as it is written. */
export const RecordChange = z.strictObject({ kind: z.enum(entryKinds), ...pair }).readonly();
export type RecordChange = z.infer<typeof RecordChange>;

/** A seam or item of a roof, with what it is like counted in. Without before and after only its name is another. */
export const SeamChange = z
  .strictObject({
    name: z.string(),
    /** Its name before, where that was another. */
    was: z.string().exactOptional(),
    ...pair,
  })
  .readonly();
export type SeamChange = z.infer<typeof SeamChange>;

/** Something that falls due: its dates. */
export const DueChange = z
  .strictObject({
    title: z.string(),
    before: z.iso.date().exactOptional(),
    after: z.iso.date().exactOptional(),
    because: z.string(),
  })
  .readonly();
export type DueChange = z.infer<typeof DueChange>;

/** What of one material is to be bought. */
export const BuyChange = z
  .strictObject({
    material: z.string(),
    ...pair,
    costBefore: Money.exactOptional(),
    costAfter: Money.exactOptional(),
  })
  .readonly();
export type BuyChange = z.infer<typeof BuyChange>;

/** Work of one visit: its days, the first and the last. */
export const VisitChange = z
  .strictObject({
    rig: z.string(),
    title: z.string(),
    before: z.tuple([z.iso.date(), z.iso.date()]).readonly().exactOptional(),
    after: z.tuple([z.iso.date(), z.iso.date()]).readonly().exactOptional(),
  })
  .readonly();
export type VisitChange = z.infer<typeof VisitChange>;

const subject = {
  name: z.string(),
  was: z.string().exactOptional(),
  change: z.enum(['added', 'removed', 'changed']),
  file: z.string(),
};

/** The total of an estimate; missing where there is no plan, or no price is known. */
const Total = z
  .strictObject({
    money: Money,
    /** Whether everything in it has a price. */
    complete: z.boolean(),
  })
  .readonly();

export const RigChange = z
  .strictObject({
    ...subject,
    seams: z.array(SeamChange).readonly(),
    records: z.array(RecordChange).readonly(),
    dues: z.array(DueChange).readonly(),
    buy: z.array(BuyChange).readonly(),
    /** Of a rig that no fleet has: of others the visits stand with the fleet. */
    visits: z.array(VisitChange).readonly(),
    totalBefore: Total.exactOptional(),
    totalAfter: Total.exactOptional(),
  })
  .readonly();
export type RigChange = z.infer<typeof RigChange>;

export const FleetChange = z
  .strictObject({
    ...subject,
    joined: z.array(z.string()).readonly(),
    left: z.array(z.string()).readonly(),
    records: z.array(RecordChange).readonly(),
    /** Bought for all its rigs together. */
    buy: z.array(BuyChange).readonly(),
    visits: z.array(VisitChange).readonly(),
  })
  .readonly();
export type FleetChange = z.infer<typeof FleetChange>;

/** Something that rigs share: a material, a surface, a policy, a model. */
export const SharedChange = z
  .strictObject({ ...subject, kind: z.string(), records: z.array(RecordChange).readonly() })
  .readonly();
export type SharedChange = z.infer<typeof SharedChange>;

/** The totals of the rigs that changed, in one currency, each rig buying for itself. */
export const MoneyChange = z
  .strictObject({
    currency: z.string(),
    before: Money,
    after: Money,
    difference: Money,
    /** Rigs whose total is not whole, before or after. */
    incomplete: z.array(z.string()).readonly(),
  })
  .readonly();
export type MoneyChange = z.infer<typeof MoneyChange>;

export const Comparison = z
  .strictObject({
    /** The `$id` of its schema. */
    document: z.literal('rigseam/compare/1'),
    /** What is compared: two revisions, or a revision and the working tree. */
    from: z.string(),
    to: z.string(),
    /** Both sides are seen on this date, so that nothing differs only because days have passed. */
    asOf: z.iso.date(),
    library: z.string(),
    shared: z.array(SharedChange).readonly(),
    rigs: z.array(RigChange).readonly(),
    fleets: z.array(FleetChange).readonly(),
    money: z.array(MoneyChange).readonly(),
    note: z.string(),
  })
  .readonly();
export type Comparison = z.infer<typeof Comparison>;
