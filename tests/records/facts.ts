// What a text says, statement by statement, without the places of things: to see which statements survive a change.
import { type FileRecords, readFile } from '../../language/records/file.ts';

/** One fact: the kind of declaration it stands in, the statement without its places, and where it begins. */
export interface Fact {
  readonly said: string;
  readonly start: number;
}

/** The facts of a text: every `use`, heading, statement and finding that was read whole. */
export const factsOf = (text: string): Fact[] => factsIn(readFile(text));

/** The same of records that were read before. */
export function factsIn(records: FileRecords): Fact[] {
  const out: Fact[] = records.uses.map((use) => ({ said: `use ${use.path}`, start: use.at[0] }));
  for (const { kind, name, like, under, at, statements, doc } of records.declarations) {
    out.push({ said: plain({ kind, name, like, under, doc }), start: at[0] });
    for (const statement of statements) {
      const { findings, ...own } = statement as Placed & {
        word: string;
        date?: { text: string };
        findings?: readonly Placed[];
      };
      out.push({ said: `${kind}: ${plain(own)}`, start: own.at[0] });
      for (const finding of findings ?? [])
        out.push({ said: `${kind}: ${own.word}: ${plain(finding)}`, start: finding.at[0] });
    }
  }
  return out;
}

interface Placed {
  readonly at: readonly [number, number];
}

const placed = new Set(['at', 'spans', 'nameAt', 'whole', 'order', 'brokenFindings']);

const plain = (value: unknown) => JSON.stringify(value, (key, inner) => (placed.has(key) ? undefined : inner));

/** The number of the line, from 0, on which an offset stands. */
export function lineAt(text: string, offset: number): number {
  let line = 0;
  for (let i = text.indexOf('\n'); i >= 0 && i < offset; i = text.indexOf('\n', i + 1)) line++;
  return line;
}

/** The facts of `before` that are not among `after`, each as often as it is missing. */
export function missingFrom(before: readonly Fact[], after: readonly Fact[]): string[] {
  const left = new Map<string, number>();
  for (const { said } of after) left.set(said, (left.get(said) ?? 0) + 1);
  return before.flatMap(({ said }) => {
    const n = left.get(said) ?? 0;
    left.set(said, n - 1);
    return n > 0 ? [] : [said];
  });
}
