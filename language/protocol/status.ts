import * as z from 'zod';

/** Notification from the server whenever what it says changes. Params {@link Status}. */
export const statusMethod = 'rigseam/status';

/** What the status bar shows. Dates are ISO 8601. */
export const statusSchema = z.object({
  /** Rigs in the workspace. */
  rigs: z.int().nonnegative(),
  /** Rigs with at least one thing overdue as of `asOf`. */
  overdue: z.int().nonnegative(),
  asOf: z.iso.date(),
  today: z.iso.date(),
  /** The workspace is still being read. */
  busy: z.boolean(),
});
export type Status = Readonly<z.infer<typeof statusSchema>>;
