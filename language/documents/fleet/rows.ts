// Flat rows of a fleet for other tools: the form of each line of the JSON Lines files.
import * as z from 'zod';

const date = z.iso.date();
const month = z.string().regex(/^\d{4}-\d\d$/);
/** A decimal in the decimals of its currency. */
const amount = z.string().regex(/^-?\d+(\.\d+)?$/);
const whole = z.int().nonnegative();
const mm = z.number().nonnegative();

const common = {
  fleet: z.string(),
  as_of: date,
  rig: z.string(),
  yard: z.string().nullable(),
  group: z.string().nullable(),
};

/** What is not known is null, never missing: every line of a file has the same keys. */
export const RigRow = z
  .strictObject({
    ...common,
    unit: z.string().nullable(),
    file: z.string(),
    policy: z.string(),
    built: z.string().nullable(),
    kept_until: z.string().nullable(),
    roof_along_mm: mm.nullable(),
    roof_across_mm: mm.nullable(),
    roof_surface: z.string().nullable(),
    seams: whole,
    seam_length_mm: mm,
    /** The gravest finding; null where none is recorded. It says nothing of what nobody looked at. */
    worst_condition: z.string().nullable(),
    open_leaks: whole,
    last_look: date.nullable(),
    next_due: date.nullable(),
    overdue: whole,
    due_soon: whole,
    visits: whole,
    /** Plans that no day could hold. */
    unplaced: whole,
    work_minutes: z.number().nonnegative(),
    materials: amount.nullable(),
    labour: amount.nullable(),
    tax: amount.nullable(),
    total: amount.nullable(),
    currency: z.string().nullable(),
    total_complete: z.boolean(),
  })
  .readonly();
export type RigRow = z.infer<typeof RigRow>;

/** A line for each part of a seam that has one condition. */
export const SeamRow = z
  .strictObject({
    ...common,
    item: z.string(),
    kind: z.string(),
    role: z.enum(['sealed', 'open', 'field']),
    side: z.string().nullable(),
    count: whole,
    /** Of the whole seam, all copies together. */
    length_mm: mm.nullable(),
    /** Where this part begins and ends, from the beginning of the seam; to null at its end. */
    from_mm: mm,
    to_mm: mm.nullable(),
    condition: z.string(),
    wet: z.boolean(),
    defects: z.string(),
    last_look: date.nullable(),
    coats: whole,
    top_layer: z.string().nullable(),
    top_material: z.string().nullable(),
    /** The most pressing of what falls due there. */
    next_due: date.nullable(),
    due_status: z.enum(['not-due', 'soon', 'due', 'overdue']).nullable(),
  })
  .readonly();
export type SeamRow = z.infer<typeof SeamRow>;

export const DueRow = z
  .strictObject({
    ...common,
    id: z.string(),
    kind: z.string(),
    item: z.string().nullable(),
    title: z.string(),
    date,
    status: z.enum(['not-due', 'soon', 'due', 'overdue']),
    days: z.int(),
    /** Whether it asks for work; a date that only says from or until when something holds does not. */
    work: z.boolean(),
    /** 0 for sound or unknown to 5 for open. */
    severity: whole,
    settled_by: z.string().nullable(),
    /** Days over on the as-of date, and on the last day of the visit that settles it; 0 where it is in time. */
    days_late: whole,
    days_late_planned: whole.nullable(),
    because: z.string(),
  })
  .readonly();
export type DueRow = z.infer<typeof DueRow>;

export const VisitRow = z
  .strictObject({
    ...common,
    id: z.string(),
    title: z.string(),
    first: date,
    last: date,
    days: whole,
    bay: z.string().nullable(),
    crew: z.string().nullable(),
    people: whole,
    minutes: z.number().nonnegative(),
    tasks: whole,
    items: z.string(),
    materials: z.string(),
    deadline: date.nullable(),
    days_late: whole,
    rain_from: date.nullable(),
    drive_from: date.nullable(),
    because: z.string(),
  })
  .readonly();
export type VisitRow = z.infer<typeof VisitRow>;

/** An amount of the budget. Amounts of one currency may be added up, never those of two. */
export const BudgetRow = z
  .strictObject({
    ...common,
    /** Null for a plan that has no day yet. */
    month: month.nullable(),
    certainty: z.enum(['planned', 'expected']),
    class: z.enum(['material', 'labour', 'tax']),
    amount,
    currency: z.string(),
    what: z.string(),
    why: z.string(),
    /** The visit or the due that it is for. */
    of: z.string().nullable(),
  })
  .readonly();
export type BudgetRow = z.infer<typeof BudgetRow>;
