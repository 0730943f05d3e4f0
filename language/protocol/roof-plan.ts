import * as z from 'zod';
import { ask } from './ask.ts';
import { fileNameSchema } from './papers.ts';

/** The command that shows the plan of a roof beside the text; its one argument is {@link RoofPlanArgument}. The client has it. */
export const roofPlanCommand = 'rigseam.showRoofPlan';

/** What a code lens hands to {@link roofPlanCommand}: the file that declares a rig, its name, and a seam to light up. */
export const roofPlanArgumentSchema = z.object({ uri: z.string(), name: z.string(), item: z.string().optional() });
export type RoofPlanArgument = Readonly<z.infer<typeof roofPlanArgumentSchema>>;

/** What the patterns of a plan show. */
export const roofPlanBy = z.enum(['condition', 'due']);
export type RoofPlanBy = z.infer<typeof roofPlanBy>;

const rigSchema = z.object({ uri: z.string(), name: z.string() });
/** A rig by the file that declares it. */
export type RigAddress = Readonly<z.infer<typeof rigSchema>>;

const drawingSchema = z.object({
  svg: z.string(),
  legend: z.array(z.object({ id: z.string(), words: z.string() })).readonly(),
});
const seamSchema = z.object({
  item: z.string(),
  says: z.string(),
  why: z.string().optional(),
  missing: z.string().optional(),
  class: z.object({ condition: z.string(), due: z.string() }),
});

/** What a view of a roof shows: see `RoofView` of `language/documents/roof`. */
export const roofPlanSchema = z.object({
  name: z.string(),
  asOf: z.string(),
  drawings: z.object({ condition: drawingSchema, due: drawingSchema }),
  seams: z.array(seamSchema).readonly(),
  notes: z.array(z.string()).readonly(),
  /** Some lines about the rig could not be read: what they say is missing. */
  unread: z.boolean(),
});
export type RoofPlan = Readonly<z.infer<typeof roofPlanSchema>>;

/** Request from the client: the plan of a rig as it is typed now; null where the file declares no such rig. */
export const roofPlanAsk = ask('rigseam/roofPlan', rigSchema, roofPlanSchema.nullable());

const position = z.object({ line: z.int().nonnegative(), character: z.int().nonnegative() });

/** Request from the client: which rig and which of its seams a place in a text speaks of, and all rigs of the file. */
export const roofSpotAsk = ask(
  'rigseam/roofSpot',
  z.object({ uri: z.string(), position }),
  z.object({
    rig: rigSchema.nullable(),
    items: z.array(z.string()).readonly(),
    rigs: z.array(z.string()).readonly(),
  }),
);

/** Request from the client: where a seam is written; null where it is gone. */
export const roofLineAsk = ask(
  'rigseam/roofLine',
  rigSchema.extend({ item: z.string() }),
  z.object({ uri: z.string(), range: z.object({ start: position, end: position }) }).nullable(),
);

/** Request from the client: the plan as a file, an SVG picture or a page to print; null where there is no such rig. */
export const roofPaperAsk = ask(
  'rigseam/roofPaper',
  rigSchema.extend({ by: roofPlanBy, form: z.enum(['svg', 'page']) }),
  z.object({ name: fileNameSchema, text: z.string() }).nullable(),
);
