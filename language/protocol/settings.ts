import * as z from 'zod';

/** A calendar date as ISO 8601, or empty for today. Whether the calendar has such a day is the server's to check. */
const asOf = z.string().regex(/^(\d{4}-\d{2}-\d{2})?$/);

const on = z.boolean().default(true);
/** Switches that are on unless somebody turns them off. */
const switches = <N extends string>(...names: readonly N[]) =>
  z.object(Object.fromEntries(names.map((name) => [name, on])) as Record<N, typeof on>).prefault({} as never);
/**
 * The client's settings: the `initializationOptions` of `initialize`, and the `settings.rigseam` of every later
 * `workspace/didChangeConfiguration`. Another editor may leave any of them out.
 */
export const settingsSchema = z.object({
  /** The date that figures speak of; empty is today. */
  asOf: asOf.default(''),
  /** The switch of all hints, and one for each kind. */
  inlayHints: z.boolean().default(true),
  hints: switches('lengths', 'work', 'dueDates', 'totals'),
  /** The switch of all lenses, and one for each kind. */
  codeLens: z.boolean().default(true),
  lenses: switches('next', 'purchase', 'commands'),
  /** Whether problems of files that are not open are told too. */
  problems: z.enum(['all', 'openFiles']).default('all'),
});
export type Settings = Readonly<z.infer<typeof settingsSchema>>;

/** Settings as they may be given: what is left out has its default. */
export type GivenSettings = Readonly<z.input<typeof settingsSchema>>;
