// The lines of an inspection: what was said of each seam, formatted as the lines around them are.
import { quoted } from '../grammar/text.ts';
import type { Condition } from '../statements/words.ts';
import { nextColumn } from './columns.ts';

/** What was said of a seam, or of a part of it. Readings and stretches are as they were typed. */
export interface SaidOfSeam {
  readonly item: string;
  /** Absent: only that it is wet. */
  readonly seen?: Condition | 'not-seen' | undefined;
  readonly wet?: boolean | undefined;
  /** `6 ft to 9 ft`; absent: all of it. */
  readonly stretch?: string | undefined;
  /** `14 %`. */
  readonly moisture?: string | undefined;
  readonly note?: string | undefined;
}

export interface SaidInspection {
  readonly date: string;
  /** Empty where nobody wants to be named. */
  readonly by: string;
  readonly said: readonly SaidOfSeam[];
  /** Everything else was seen and found sound. */
  readonly restIsSound: boolean;
}

/** How the neighbours are written. */
export interface Form {
  readonly indent: string;
  /** From the verb to its date. */
  readonly dateAt: number;
  readonly innerIndent: string;
  /** From the name of a seam to its condition, if a neighbour has such lines. */
  readonly seenAt?: number | undefined;
}

/**
 * The lines of the block. Seams that are sound with nothing else to say go into `rest sound`, but only when every one of
 * `all`, which stand in the order of the walk, was spoken of or the rest was said to be sound: a seam that nobody came to is never called sound.
 */
export function inspectionLines(
  { date, by, said, restIsSound }: SaidInspection,
  all: readonly string[],
  form: Form,
): readonly string[] {
  const spoken = new Set(said.map(({ item }) => item));
  const isWhole = restIsSound || all.every((item) => spoken.has(item));
  const counts = new Map<string, number>();
  for (const { item } of said) counts.set(item, (counts.get(item) ?? 0) + 1);
  const plain = (one: SaidOfSeam) => counts.get(one.item) === 1 && isPlainSound(one);
  const written = said.filter((one) => !(isWhole && plain(one)));
  // The whole of a seam goes before its parts: what is said of a part holds there.
  const sorted = written.toSorted(
    (a, b) =>
      all.indexOf(a.item) - all.indexOf(b.item) || Number(a.stretch !== undefined) - Number(b.stretch !== undefined),
  );
  const isRest =
    isWhole && (restIsSound ? all.some((item) => !sorted.some((one) => one.item === item)) : said.some(plain));
  const rows = [
    ...sorted.map((one) => ({ name: one.item, seen: seenOf(one), more: moreOf(one) })),
    ...(isRest ? [{ name: 'rest', seen: 'sound', more: '' }] : []),
  ];
  const least = nextColumn(rows.map(({ name }) => name));
  const wide = Math.max(form.seenAt ?? 0, rows.every(({ name }) => name.length < (form.seenAt ?? 0)) ? 0 : least);
  const seenWide = Math.max(0, ...rows.flatMap(({ seen, more }) => (more === '' ? [] : [seen.length + 2])));
  const heading = `${'inspected'.padEnd(form.dateAt - 1)} ${date}${by === '' ? '' : ` by ${quoted(by)}`} {`;
  return [
    form.indent + heading,
    ...rows.map(({ name, seen, more }) => {
      const said = more === '' ? seen : seen.padEnd(seenWide) + more;
      return form.innerIndent + name.padEnd(wide) + said;
    }),
    `${form.indent}}`,
  ];
}

const isPlainSound = ({ seen, wet, stretch, moisture, note }: SaidOfSeam): boolean =>
  seen === 'sound' && !wet && !stretch && !moisture && !note;

const seenOf = ({ seen, wet }: SaidOfSeam): string => [seen, wet ? 'wet' : undefined].filter(Boolean).join(' ');

const moreOf = ({ stretch, moisture, note }: SaidOfSeam): string =>
  [
    ...(stretch ? [`from ${stretch}`] : []),
    ...(moisture ? [`moisture ${moisture}`] : []),
    ...(note ? [`note ${quoted(note)}`] : []),
  ].join('  ');
