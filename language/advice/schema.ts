// The advice on the seams of a rig as plain data, and its form in the JSON document.
import * as z from 'zod';

/** From doing nothing to handing it over. What exactly is done stands in `what`. */
export const actions = [
  'leave',
  'look again',
  'cover until repaired',
  'touch up',
  'recoat',
  'strip and recoat',
  'tape',
  'replace the part',
  'call a professional',
] as const;
export type Action = (typeof actions)[number];

/** How pressing it is, the most pressing first. */
export const urgencies = [
  'at once',
  'within days',
  'within weeks',
  'by its date',
  'at the next look',
  'nothing to do',
] as const;
export type Urgency = (typeof urgencies)[number];

const Span = z.tuple([z.int(), z.int()]).readonly();
const Place = z.strictObject({ file: z.string(), at: Span }).readonly();
const kind = z.enum(['record', 'published', 'common practice', 'from memory']);
const grade = z.enum(['yes', 'label', 'test', 'never', 'unknown']);
const day = z.iso.date();

/** Why: a sentence, the record that it follows from, and how far the figure or the habit behind it can be trusted. */
export const Reason = z
  .strictObject({
    text: z.string(),
    /** Where the record stands, or the line that states the figure. */
    record: Place.exactOptional(),
    kind,
    /** What the figure's own `source` says, where it has one. */
    source: z.string().exactOptional(),
  })
  .readonly();
export type Reason = z.infer<typeof Reason>;

/** The day by which, as one of the rig's dues has it, or as it follows from one. */
export const By = z
  .strictObject({ date: day, status: z.enum(['not-due', 'soon', 'due', 'overdue']), because: z.string() })
  .readonly();
export type By = z.infer<typeof By>;

/** What has to have happened before. With days: never before `earliest`, without doubt from `safe` on. */
export const From = z
  .strictObject({
    what: z.string(),
    earliest: day.exactOptional(),
    safe: day.exactOptional(),
    text: z.string(),
    kind,
    source: z.string().exactOptional(),
    record: Place.exactOptional(),
  })
  .readonly();
export type From = z.infer<typeof From>;

/** One step of the preparation: a material on the surfaces that meet here, with the worst of its grades on them. */
export const Step = z
  .strictObject({
    task: z.enum(['wash', 'wipe', 'scuff', 'prime', 'lay']),
    material: z.string(),
    /** Whether it is one of the record's own materials; else a generic one stands in. */
    atHand: z.boolean(),
    grades: z
      .array(z.strictObject({ surface: z.string(), grade, kind, source: z.string().exactOptional() }).readonly())
      .readonly(),
    text: z.string(),
  })
  .readonly();
export type Step = z.infer<typeof Step>;

export const Preparation = z
  .strictObject({
    /** What the next layer lies on. */
    surfaces: z.array(z.string()).readonly(),
    steps: z.array(Step).readonly(),
    notes: z.array(z.string()).readonly(),
  })
  .readonly();
export type Preparation = z.infer<typeof Preparation>;

/** What is not the choice here, and why. */
export const Excluded = z
  .strictObject({ what: z.string(), why: z.string(), kind, source: z.string().exactOptional() })
  .readonly();
export type Excluded = z.infer<typeof Excluded>;

/** What is done until the lasting repair, beside it. */
export const Interim = z
  .strictObject({
    row: z.string(),
    action: z.literal('cover until repaired'),
    what: z.string(),
    reasons: z.array(Reason).readonly(),
    by: By.exactOptional(),
  })
  .readonly();
export type Interim = z.infer<typeof Interim>;

/** The advice on one item, or on a stretch of it; without `item` on the roof as a whole. Lengths in nanometres. */
export const SeamAdvice = z
  .strictObject({
    item: z.string().exactOptional(),
    from: z.number().exactOptional(),
    to: z.number().exactOptional(),
    /** The stretch in words: `6 ft to 9 ft`; missing where the whole of the item is meant. */
    where: z.string().exactOptional(),
    /** The row of the table of advice that decided. */
    row: z.string(),
    action: z.enum(actions),
    /** What to do, in a sentence. */
    what: z.string(),
    urgency: z.enum(urgencies),
    interim: Interim.exactOptional(),
    /** What the table says once this is answered, where that is more than looking. */
    afterwards: z
      .strictObject({ row: z.string(), action: z.enum(actions), what: z.string() })
      .readonly()
      .exactOptional(),
    reasons: z.array(Reason).readonly(),
    by: By.exactOptional(),
    allowed: z.array(From).readonly(),
    preparation: Preparation.exactOptional(),
    excluded: z.array(Excluded).readonly(),
    wouldChange: z.array(z.string()).readonly(),
    unknown: z.array(z.string()).readonly(),
  })
  .readonly();
export type SeamAdvice = z.infer<typeof SeamAdvice>;
