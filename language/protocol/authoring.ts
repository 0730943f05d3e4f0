import * as z from 'zod';
import { answerKinds } from '../authoring/answer-kinds.ts';
import { conditions } from '../statements/words.ts';
import { ask } from './ask.ts';

// Records that are written from answers: what may be chosen, whether an answer can be read, and the text in the end.

/** The commands. Record Inspection takes the rig by the file that declares it, as a lens or a calendar may hand it over. */
export const newRigCommand = 'rigseam.newRig';
export const recordInspectionCommand = 'rigseam.recordInspection';

const system = z.enum(['us', 'metric']);
const membrane = z.object({ name: z.string(), about: z.string() });

/** Request from the client: what a new rig in a folder can be made of. Without a folder only what is built in. */
export const newRigAsk = ask(
  'rigseam/newRig',
  z.object({ folder: z.string().nullable() }),
  z.object({
    /** What a roof may be covered with, for a rig that uses nothing. */
    membranes: z.array(membrane).readonly(),
    /** Policies of the workspace, each with its path as seen from the folder and what is visible beside it. */
    policies: z
      .array(z.object({ name: z.string(), path: z.string(), units: system, membranes: z.array(membrane).readonly() }))
      .readonly(),
  }),
);

/** Request from the client: whether an answer can be read. `problem` says what to write instead. */
export const readAnswerAsk = ask(
  'rigseam/readAnswer',
  z.object({ kind: z.enum([...answerKinds, 'rig-name']), text: z.string(), atMost: z.string().optional() }),
  z.object({ problem: z.string().nullable() }),
);

const rig = z.object({ uri: z.string(), name: z.string() });

export const walkSchema = z.object({
  name: z.string(),
  /** Today, or the date that everything speaks of. */
  date: z.iso.date(),
  people: z.array(z.string()).readonly(),
  stations: z
    .array(
      z.object({
        item: z.string(),
        leg: z.string(),
        what: z.string(),
        length: z.string().optional(),
        last: z.string(),
        lastNote: z.string().optional(),
        gauges: z.array(z.object({ word: z.enum(conditions), gauge: z.string() })).readonly(),
      }),
    )
    .readonly(),
});
export type WalkReply = Readonly<z.infer<typeof walkSchema>>;

/** Request from the client: the walk of an inspection; null where the file declares no such rig. */
export const walkAsk = ask('rigseam/walk', rig, walkSchema.nullable());

const inspection = z.object({
  date: z.string(),
  by: z.string(),
  said: z
    .array(
      z.object({
        item: z.string(),
        seen: z.enum([...conditions, 'not-seen']).optional(),
        wet: z.boolean().optional(),
        stretch: z.string().optional(),
        moisture: z.string().optional(),
        note: z.string().optional(),
      }),
    )
    .readonly(),
  restIsSound: z.boolean(),
});

const position = z.object({ line: z.int().nonnegative(), character: z.int().nonnegative() });

/** Request from the client: the one change that writes an inspection; null where there is no such rig. */
export const inspectionAsk = ask(
  'rigseam/inspection',
  rig.extend({ inspection }),
  z.object({ uri: z.string(), range: z.object({ start: position, end: position }), newText: z.string() }).nullable(),
);
