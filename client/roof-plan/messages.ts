// What the extension and the page of a roof plan say to each other.
import * as z from 'zod';
import { type RigAddress, type RoofPlan, type RoofPlanBy, roofPlanBy } from '../../language/protocol/index.ts';

/** Whatever the page shows, all of it each time. */
export interface Show {
  readonly kind: 'show';
  readonly rig: RigAddress;
  /** Missing where there never was one. */
  readonly plan?: RoofPlan;
  readonly by: RoofPlanBy;
  /** That the plan is not that of the text, and why; empty where it is. */
  readonly note: string;
  /** The seams that the cursor in the text speaks of. */
  readonly lit: readonly string[];
}

/** A file that the browser is to save. */
export interface Download {
  readonly kind: 'download';
  readonly name: string;
  readonly text: string;
}

export type ToPage = Show | Download;

/** What a person does on the page. */
export const fromPageSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('ready') }),
  z.object({ kind: z.literal('by'), by: roofPlanBy }),
  z.object({ kind: z.literal('go'), item: z.string() }),
  z.object({ kind: z.literal('save') }),
  z.object({ kind: z.literal('print') }),
]);
export type FromPage = Readonly<z.infer<typeof fromPageSchema>>;

/** What the editor keeps of a plan over a restart. */
export const keptSchema = z.object({ uri: z.string(), name: z.string(), by: roofPlanBy });
export type Kept = Readonly<z.infer<typeof keptSchema>>;
