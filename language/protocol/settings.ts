import * as z from 'zod';

/** A calendar date as ISO 8601, or empty for today. Whether the calendar has such a day is the server's to check. */
const asOf = z.string().regex(/^(\d{4}-\d{2}-\d{2})?$/);

/**
 * The client's settings: the `initializationOptions` of `initialize`, and the `settings.rigseam` of every later
 * `workspace/didChangeConfiguration`. Another editor may leave any of them out.
 */
export const settingsSchema = z.object({
  /** The date that figures speak of; empty is today. */
  asOf: asOf.default(''),
  inlayHints: z.boolean().default(true),
  codeLens: z.boolean().default(true),
});
export type Settings = Readonly<z.infer<typeof settingsSchema>>;
