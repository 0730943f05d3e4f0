// The form of a row of the statement table. A row says everything about one statement word; the record type follows from it.
import * as z from 'zod';
import { type Ref, type Slot, Span, type ValueOf } from './slot.ts';
import { canonical } from './words.ts';

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
  /**
   * What makes two lines of a block the same line, so that one replaces the other under `like`. `list`: several lines of
   * one block make one list, which a nearer block replaces whole.
   */
  readonly key: 'word' | 'name' | 'value' | 'list' | 'none';
  readonly block?: BlockTable;
  /** The schema of its record; built when it is first asked for. */
  readonly schema: z.ZodType;
  /** Places and clauses once more, as the reader walks them. */
  readonly walk: Walk;
}

/** A row as the reader walks it: places in order, clauses by their word, those that must be said. */
export interface Walk {
  readonly places: readonly (readonly [field: string, place: Place])[];
  readonly clauses: ReadonlyMap<string, readonly [field: string, clause: Clause]>;
  readonly needed: readonly (readonly [field: string, clause: Clause])[];
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
  const walk: Walk = {
    places: Object.entries(places),
    clauses: new Map(Object.entries(clauses).map(([field, c]) => [c.word, [field, c]])),
    needed: Object.entries(clauses).filter(([, c]) => c.needed),
  };
  let schema: z.ZodType | undefined;
  return {
    word,
    class: spec.class,
    help: spec.help,
    example: spec.example,
    places,
    clauses,
    key: spec.key ?? 'none',
    get schema() {
      schema ??= schemaOf(word, places, clauses);
      return schema;
    },
    walk,
    ...(spec.block ? { block: spec.block } : {}),
  };
}

function schemaOf(word: string, places: Places, clauses: Clauses): z.ZodType {
  const shape: Record<string, z.ZodType> = {
    word: z.literal(word),
    at: Span,
    spans: z.record(z.string(), Span),
    doc: z.string().optional(),
  };
  for (const [field, { slot, optional }] of Object.entries(places))
    shape[field] = optional ? slot.schema.optional() : slot.schema;
  for (const [field, { slot, needed }] of Object.entries(clauses))
    shape[field] = needed ? slot.schema : slot.schema.optional();
  return z.strictObject(shape);
}

/** The row of a statement word, in either spelling. */
export function rowIn(table: BlockTable, word: string): Row | undefined {
  return table.rows.get(word) ?? table.rows.get(canonical(word));
}

export function blockTable(name: string, rows: readonly Row[], names?: Row): BlockTable {
  const byWord = new Map(rows.map((r) => [r.word, r]));
  if (byWord.size !== rows.length) throw new Error(`a word stands twice in the block ${name}`);
  return { name, rows: byWord, ...(names ? { names } : {}) };
}

export type { Ref };
