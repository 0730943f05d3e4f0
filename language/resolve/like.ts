// `like` and `without`: which lines hold for a declaration. A line here replaces the inherited line with its key whole.

import type { Declaration } from '../records/file.ts';
import type { Whole } from '../records/statement.ts';
import { fileTable } from '../statements/file.ts';
import { canonical } from '../statements/words.ts';
import type { Located } from './located.ts';
import type { Entry } from './names.ts';

/** A line that holds, and the file it stands in. */
export interface Line<S> {
  readonly statement: S;
  readonly file: string;
  /** How far away it was written: 0 in the declaration itself, 1 in what that is like, and so on. */
  readonly depth: number;
}

/**
 * The declaration and what it is like, nearest first, by a function that finds the base of one. A circle is broken where
 * it closes and reported once for each member; its members count as having no base.
 */
export function chainOf<D extends Declaration>(
  start: Entry<D>,
  baseOf: (entry: Entry<D>) => Entry<D> | undefined,
): { readonly chain: readonly Entry<D>[]; readonly circle?: readonly Entry<D>[] } {
  const chain: Entry<D>[] = [];
  for (let entry: Entry<D> | undefined = start; entry; entry = baseOf(entry)) {
    const at = chain.findIndex((e) => e.declaration === entry?.declaration);
    if (at >= 0) return { chain: chain.slice(0, Math.max(at, 1)), circle: chain.slice(at) };
    chain.push(entry);
  }
  return { chain };
}

/** The problem of a circle, at the `like` of a member. */
export function circleProblem<D extends Declaration>(
  entry: Entry<D>,
  circle: readonly Entry<D>[],
): Located | undefined {
  if (!circle.some((member) => member.declaration === entry.declaration) || !entry.declaration.like) return undefined;
  const at = circle.findIndex((member) => member.declaration === entry.declaration);
  const names = [...circle.slice(at), ...circle.slice(0, at), entry].map((member) => `\`${member.declaration.name}\``);
  return {
    file: entry.file,
    rule: 'like-circle',
    message: `This goes in a circle: ${names.join(' is like ')}.`,
    at: entry.declaration.like.at,
  };
}

/** What makes two lines of a block the same line; undefined for a line that has no like (a booking, a record). */
export function keyOfLine(kind: Declaration['kind'], statement: Whole): string | undefined {
  const row = fileTable.rows.get(kind)?.block?.rows.get(statement.word);
  if (!row || row.key === 'none') return undefined;
  if (row.key === 'list') return `${statement.word} …`;
  if (row.key === 'word') return statement.word;
  const [field] = Object.keys(row.places);
  const value = field === undefined ? undefined : (statement as unknown as Record<string, unknown>)[field];
  if (row.key === 'name')
    return `${statement.word} ${canonical(typeof value === 'string' ? value : ((value as { name?: string })?.name ?? ''))}`;
  const on = (statement as unknown as { on?: readonly { name: string }[] }).on;
  const what =
    statement.word === 'life'
      ? (on ?? [])
          .map((s) => canonical(s.name))
          .sort()
          .join(',')
      : sizeKey(value);
  return `${statement.word} ${what}`;
}

function sizeKey(value: unknown): string {
  const size = value as { nm?: number; mL?: number; count?: number; noun?: string };
  return String(size.nm ?? size.mL ?? `${size.count} ${size.noun}`);
}

/** The lines that hold: those of the farthest base first, each replaced whole by a nearer line with the same key. */
export function linesThatHold<D extends Declaration, S extends Whole>(
  chain: readonly Entry<D>[],
  inherited: (statement: S) => boolean,
): { readonly lines: readonly Line<S>[]; readonly problems: readonly Located[] } {
  const keyed = new Map<string, Line<S>>();
  const unkeyed: Line<S>[] = [];
  const lists = new Map<string, Line<S>[]>();
  const problems: Located[] = [];
  for (let i = chain.length - 1; i >= 0; i--) {
    const { declaration, file } = chain[i] as Entry<D>;
    const here = new Map<string, S>();
    for (const statement of declaration.statements as unknown as readonly S[]) {
      if (i > 0 && !inherited(statement)) continue;
      const key = keyOfLine(declaration.kind, statement);
      if (key === undefined) {
        unkeyed.push({ statement, file, depth: i });
        continue;
      }
      if (key.endsWith(' …')) {
        const list = lists.get(key)?.filter((line) => line.depth === i) ?? [];
        lists.set(key, [...list, { statement, file, depth: i }]);
        continue;
      }
      const first = here.get(key);
      if (first && i === 0) {
        problems.push({
          file,
          rule: 'line-twice',
          message: `\`${key}\` is said twice in this block; the first one holds.`,
          at: statement.at,
          related: [{ file, at: first.at, message: 'The first one.' }],
        });
      }
      if (first) continue;
      here.set(key, statement);
      keyed.delete(key);
      keyed.set(key, { statement, file, depth: i });
    }
  }
  return { lines: [...keyed.values(), ...[...lists.values()].flat(), ...unkeyed], problems };
}
