// The published JSON Schemas (draft 2020-12) of everything that is written as JSON, made from the zod schemas.
import * as z from 'zod';
import { Comparison } from '../compare/schema.ts';
import { BudgetRow, DueRow, RigRow, SeamRow, VisitRow } from './fleet/rows.ts';
import { EstimatePaper, SchedulePaper } from './papers.ts';

const Position = z.strictObject({ line: z.int().nonnegative(), character: z.int().nonnegative() });
const Range = z.strictObject({ start: Position, end: Position });

/** What `rigseam check --json` prints. Ranges count lines and characters from 0, as the Language Server Protocol does. */
export const CheckOutput = z.strictObject({
  findings: z.array(
    z.strictObject({
      file: z.string(),
      range: Range,
      rule: z.string(),
      severity: z.enum(['error', 'warning', 'information', 'hint']),
      message: z.string(),
      related: z.array(z.strictObject({ file: z.string(), range: Range, message: z.string() })).optional(),
    }),
  ),
  files: z.int().nonnegative(),
});

/** By file name. */
export const jsonSchemas = (): Readonly<Record<string, unknown>> => ({
  'estimate.schema.json': named('estimate', EstimatePaper),
  'schedule.schema.json': named('schedule', SchedulePaper),
  'check.schema.json': named('check', CheckOutput),
  'compare.schema.json': named('compare', Comparison),
  // Of one line of the JSON Lines of a fleet.
  'rigs.schema.json': named('rigs', RigRow),
  'seams.schema.json': named('seams', SeamRow),
  'dues.schema.json': named('dues', DueRow),
  'visits.schema.json': named('visits', VisitRow),
  'budget.schema.json': named('budget', BudgetRow),
});

function named(name: string, schema: z.ZodType): unknown {
  // Rules that JSON Schema cannot say (a currency is one of ISO 4217) are left to the text that was checked before.
  return { $id: `rigseam/${name}/1`, ...z.toJSONSchema(schema, { unrepresentable: 'any', reused: 'ref' }) };
}

export const printSchema = (schema: unknown): string => `${JSON.stringify(schema, undefined, 2)}\n`;
