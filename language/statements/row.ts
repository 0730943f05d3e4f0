// The form of a row of the statement table. A row says everything about one statement word; the record type follows from it.
import { z } from 'zod';
import { type Ref, type Slot, Span, type ValueOf } from './slot.ts';

/** A place before the first clause. */
export interface Place<T = unknown, Optional extends boolean = boolean> {
  readonly slot: Slot<T>;
  readonly optional: Optional;
}
export const must = <T>(slot: Slot<T>): Place<T, false> => ({ slot, optional: false });
export const may = <T>(slot: Slot<T>): Place<T, true> => ({ slot, optional: true });

/** A clause: the word that opens it, and the value behind it. `needed`: the statement means nothing without it. */
export interface Clause<T = unknown, Needed extends boolean = boolean> {
  readonly word: string;
  readonly slot: Slot<T>;
  readonly needed: Needed;
  readonly help: string;
}
export const clause = <T>(word: string, slot: Slot<T>, help: string): Clause<T, false> => ({
  word,
  slot,
  needed: false,
  help,
});
export const needed = <T>(word: string, slot: Slot<T>, help: string): Clause<T, true> => ({
  word,
  slot,
  needed: true,
  help,
});

type Places = Readonly<Record<string, Place>>;
type Clauses = Readonly<Record<string, Clause>>;

/** Which class of statement a row belongs to: it decides the column of its first value, and how it is coloured. */
export type RowClass = 'declaration' | 'fact' | 'item' | 'record' | 'plan' | 'finding';

export interface Row<W extends string = string, P extends Places = Places, C extends Clauses = Clauses> {
  readonly word: W;
  readonly class: RowClass;
  readonly help: string;
  readonly example: string;
  readonly places: P;
  readonly clauses: C;
  /** What makes two lines of a block the same line, so that one replaces the other under `like`. */
  readonly key: 'word' | 'name' | 'value' | 'none';
  readonly block?: BlockTable;
  readonly schema: z.ZodType;
}

/** The rows of one kind of block. `names`: its lines open with a name, and this is their row. */
export interface BlockTable {
  readonly name: string;
  readonly rows: ReadonlyMap<string, Row>;
  readonly names?: Row;
}

/** What every record carries beside its values: its word, the line's place, the place of each value, its documentation. */
export interface RecordBase {
  readonly at: Span;
  readonly spans: Readonly<Record<string, Span>>;
  readonly doc?: string;
}
type Span = z.infer<typeof Span>;

type PlaceValues<P extends Places> = {
  readonly [K in keyof P as P[K]['optional'] extends true ? never : K]: ValueOf<P[K]['slot']>;
} & {
  readonly [K in keyof P as P[K]['optional'] extends true ? K : never]?: ValueOf<P[K]['slot']>;
};
type ClauseValues<C extends Clauses> = {
  readonly [K in keyof C as C[K]['needed'] extends true ? K : never]: ValueOf<C[K]['slot']>;
} & {
  readonly [K in keyof C as C[K]['needed'] extends true ? never : K]?: ValueOf<C[K]['slot']>;
};

/** The record that a row gives. */
export type RecordOf<R> =
  R extends Row<infer W, infer P, infer C>
    ? RecordBase & { readonly word: W } & PlaceValues<P> & ClauseValues<C>
    : never;

interface RowSpec<P extends Places, C extends Clauses> {
  readonly class: RowClass;
  readonly help: string;
  readonly example: string;
  readonly places?: P;
  readonly clauses?: C;
  readonly key?: Row['key'];
  readonly block?: BlockTable;
}

export function row<
  const W extends string,
  P extends Places = Record<never, never>,
  C extends Clauses = Record<never, never>,
>(word: W, spec: RowSpec<P, C>): Row<W, P, C> {
  const places = (spec.places ?? {}) as P;
  const clauses = (spec.clauses ?? {}) as C;
  const shape: Record<string, z.ZodType> = {
    word: z.literal(word),
    at: Span,
    spans: z.record(z.string(), Span),
    doc: z.string().optional(),
  };
  for (const [field, place] of Object.entries(places))
    shape[field] = place.optional ? place.slot.schema.optional() : place.slot.schema;
  for (const [field, c] of Object.entries(clauses)) shape[field] = c.needed ? c.slot.schema : c.slot.schema.optional();
  return {
    word,
    class: spec.class,
    help: spec.help,
    example: spec.example,
    places,
    clauses,
    key: spec.key ?? 'none',
    schema: z.strictObject(shape),
    ...(spec.block ? { block: spec.block } : {}),
  };
}

export function blockTable(name: string, rows: readonly Row[], names?: Row): BlockTable {
  const byWord = new Map(rows.map((r) => [r.word, r]));
  if (byWord.size !== rows.length) throw new Error(`a word stands twice in the block ${name}`);
  return { name, rows: byWord, ...(names ? { names } : {}) };
}

export type { Ref };
