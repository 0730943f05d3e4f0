// A slot is a place in a line that takes one typed value.
import * as z from 'zod';
import type { Part } from '../grammar/lines.ts';
import type { Cursor } from './cursor.ts';

/** What may be offered at a place: for completion. */
export type Offer =
  | { readonly kind: 'words'; readonly words: readonly string[] }
  | {
      readonly kind:
        | 'seams'
        | 'surfaces'
        | 'date'
        | 'text'
        | 'new-name'
        | 'rigs'
        | 'policies'
        | 'groups'
        | 'crews'
        | 'bases'
        | 'rules';
    }
  | { readonly kind: 'materials'; readonly of?: readonly string[] }
  | { readonly kind: 'units'; readonly units: readonly string[] };

/** A typed place: `read` takes the parts of one value and reports what is wrong with them; undefined means it was reported. */
export interface Slot<T> {
  /** With its article: `a length`. */
  readonly what: string;
  readonly example: string;
  readonly schema: z.ZodType<T>;
  readonly offers: readonly Offer[];
  /** The clause words that may stand inside such a value. */
  readonly inside?: readonly string[];
  /** Can this part begin such a value? */
  accepts(part: Part): boolean;
  read(cursor: Cursor): T | undefined;
}

export type ValueOf<S> = S extends Slot<infer T> ? T : never;

export const Span = z.tuple([z.number().int(), z.number().int()]).readonly();
export type Span = z.infer<typeof Span>;

/** A name as written, with its place. */
export const Ref = z.strictObject({ name: z.string(), at: Span }).readonly();
export type Ref = z.infer<typeof Ref>;
