// The form of a figure with its explanation, and of money, in documents.
import * as z from 'zod';
import type { Explained } from '../explain.ts';
import type { Origin } from '../resolve/types.ts';
import { Money } from '../values/money.ts';

export const Span = z.tuple([z.int(), z.int()]).readonly();

export const originKind = z.enum(['record', 'published', 'common practice', 'from memory']);

export const OriginSchema: z.ZodType<Origin> = z
  .strictObject({
    file: z.string(),
    at: Span,
    kind: originKind,
    source: z.string().exactOptional(),
  })
  .readonly();

/** A figure with its formula and inputs, as in `Explained`. */
export const Figure: z.ZodType<Explained> = z
  .strictObject({
    value: z.number(),
    unit: z.string(),
    text: z.string(),
    rule: z.string(),
    formula: z.string(),
    inputs: z
      .array(
        z
          .strictObject({
            name: z.string(),
            value: z.union([z.number(), z.string()]),
            unit: z.string().exactOptional(),
            text: z.string(),
            origin: OriginSchema.exactOptional(),
          })
          .readonly(),
      )
      .readonly(),
    source: z.string().exactOptional(),
  })
  .readonly();

/** An amount of money, rounded half up at the minor unit, with its figure. */
export const Priced = z.strictObject({ money: Money, figure: Figure }).readonly();
export type Priced = z.infer<typeof Priced>;
