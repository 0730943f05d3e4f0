// A table of seams and items: those that a rig does not have yet are described in it, and what was sealed or taped is recorded.
import { linesOf } from '../authoring/added-record.ts';
import { lineInsertion, recordInsertion } from '../authoring/inspection-place.ts';
import { recordBlocksOf } from '../authoring/record-blocks.ts';
import { rigTable } from '../statements/rig.ts';
import { itemWords } from '../statements/roof.ts';
import { readDay } from '../values/day.ts';
import type { Import, RigThere, TableRow } from './import.ts';
import { type AnyColumn, type Said, seamColumns } from './kinds.ts';
import { lineOf, lineProblem, type Piece, piece, textPiece } from './line.ts';
import { saidOf, worksOn } from './said.ts';

export function importSeams(into: Import, rows: readonly TableRow[]): void {
  const byRig = new Map<RigThere, TableRow[]>();
  const rigs = new Map<string, RigThere | undefined>();
  for (const one of rows) {
    const name = one.said.rig ?? '';
    const rig = rigs.get(name) ?? into.rigOf(one);
    rigs.set(name, rig);
    const wrong = rig && problemOf(one.said);
    if (wrong) into.refuse(one, wrong.column, wrong.message);
    else if (rig) byRig.set(rig, [...(byRig.get(rig) ?? []), one]);
  }
  for (const [rig, some] of byRig) {
    const described = describe(into, rig, some);
    record(into, rig, some, described);
  }
}

const itemLine = (said: Said): readonly Piece[] => [
  ...piece(said, 'kind'),
  ...piece(said, 'name'),
  ...piece(said, 'size'),
  ...piece(said, 'on', 'on '),
  ...piece(said, 'wide', 'wide '),
  ...piece(said, 'length', 'length '),
  ...piece(said, 'at', 'at '),
  ...piece(said, 'of', 'of '),
  ...piece(said, 'more'),
  ...textPiece(said, 'note', 'note '),
];

const works = [
  { word: 'sealed', date: 'sealed', material: 'sealant', such: 'GreyLap' },
  { word: 'taped', date: 'taped', material: 'tape', such: 'EdgeTape4' },
] as const;
const described: readonly AnyColumn[] = seamColumns.filter(
  (column) => !works.some(({ date, material }) => column === date || column === material),
);

function problemOf(said: Said) {
  if (said.kind === undefined || said.name === undefined) {
    const column: AnyColumn = said.kind === undefined ? 'kind' : 'name';
    return { column, message: 'A seam or an item has a kind and a name, such as edge and curbside.' };
  }
  if (!itemWords.has(said.kind) && said.kind !== 'without')
    return { column: 'kind' as const, message: `\`${said.kind}\` is none of ${[...itemWords, 'without'].join(', ')}.` };
  const wrong = lineProblem(itemLine(said));
  if (wrong) return wrong;
  for (const { word, date, material, such } of works) {
    if (said[date] === undefined && said[material] === undefined) continue;
    if (said[date] === undefined) return { column: date, message: 'The date is missing, such as 2026-04-20.' };
    if (said[material] === undefined) return { column: material, message: `The material is missing, such as ${such}.` };
    const said2 = lineProblem(workLine(said, word, [said.name]));
    if (said2) return said2;
  }
  return undefined;
}

const workLine = (said: Said, word: 'sealed' | 'taped', names: readonly string[]): readonly Piece[] => {
  const { date, material } = works.find((one) => one.word === word) as (typeof works)[number];
  return [
    ...piece(said, date, `${word} `),
    { column: 'name', text: names.join(', ') },
    ...piece(said, material, 'with '),
  ];
};

/** An item is known by its name; that one is left out is another matter. */
const keyOf = ({ kind, name }: Said): string => (kind === 'without' ? `without ${name}` : (name ?? ''));

/** The rows whose item is there in the end. */
function describe(into: Import, rig: RigThere, rows: readonly TableRow[]): readonly TableRow[] {
  const resolved = into.resolved(rig);
  const there = new Map(
    (resolved ? saidOf('seams', into.draft.project, resolved) : []).map((said) => [keyOf(said), said]),
  );
  const done: TableRow[] = [];
  const fresh: TableRow[] = [];
  for (const one of rows) {
    const known = there.get(keyOf(one.said));
    if (known) {
      if (into.compare(one, known, described)) into.count('there', one);
      done.push(one);
    } else if (fresh.some((other) => keyOf(other.said) === keyOf(one.said)))
      into.refuse(one, 'name', `\`${one.said.name}\` stands twice in this table for ${rig.name}.`);
    else fresh.push(one);
  }
  const attempt = (some: readonly TableRow[]) => {
    const block = into.blockOf(rig);
    const change =
      block &&
      lineInsertion(
        block,
        some.map(({ said }) => lineOf(itemLine(said))),
        besides(rig),
      );
    return change ? into.draft.insert(change, rig.file, 'other-lines')[0] : undefined;
  };
  if (fresh.length > 0 && !attempt(fresh)) {
    into.count('added', ...fresh);
    return [...done, ...fresh];
  }
  // One of them is wrong: each by itself.
  for (const one of fresh) {
    const error = attempt([one]);
    if (error) into.refuse(one, 'name', error.message);
    else {
      into.count('added', one);
      done.push(one);
    }
  }
  return done;
}

/** Behind the other lines of the roof; where it has none of its own, behind what is said of the rig. */
const besides = ({ declaration: { statements } }: RigThere) =>
  statements.some(({ word }) => isOfRoof(word))
    ? isOfRoof
    : (word: string) => rigTable.rows.get(word)?.class === 'fact';
const isOfRoof = (word: string) => itemWords.has(word) || word === 'without' || word === 'roof' || word === 'falls';

/** Records work, the same work of one day in one line; what is recorded for that day stays. */
function record(into: Import, rig: RigThere, rows: readonly TableRow[], there: readonly TableRow[]): void {
  const groups = new Map<string, { word: 'sealed' | 'taped'; first: string; rows: TableRow[] }>();
  const events = into.resolved(rig)?.rig.events ?? [];
  for (const one of rows.filter((row) => there.includes(row)))
    for (const { word, date, material } of works) {
      const [day, made] = [one.said[date], one.said[material]];
      if (day === undefined) continue;
      const known = worksOn(events, one.said.name ?? '', word).find((work) => work.date === day);
      if (known) {
        if (known.materials !== made) into.compare(one, { ...one.said, [material]: known.materials }, [material]);
        continue;
      }
      const key = `${day} ${word} ${made}`;
      const read = readDay(day.replace(/^(about|before) /, ''));
      const group = groups.get(key) ?? { word, first: read.ok ? read.value.first : day, rows: [] };
      groups.set(key, { ...group, rows: [...group.rows, one] });
    }
  const inTime = [...groups.values()].sort((a, b) => (a.first < b.first ? -1 : a.first > b.first ? 1 : 0));
  for (const { word, first, rows: some } of inTime) {
    const attempt = (part: readonly TableRow[]) => {
      const now = into.known(rig.name);
      const said = part[0]?.said;
      if (!now || !said) return undefined;
      const blocks = recordBlocksOf(into.draft.project, into.draft.files, now.declaration, now.file);
      const names = part.flatMap((one) => one.said.name ?? []);
      const rest = lineOf(workLine(said, word, names)).slice(word.length + 1);
      const change = recordInsertion(blocks, first, linesOf(word, rest));
      return change ? into.draft.insert(change, rig.file, 'other-lines')[0] : undefined;
    };
    if (!attempt(some)) {
      into.count('added', ...some);
      continue;
    }
    for (const one of some) {
      const error = attempt([one]);
      if (!error) into.count('added', one);
      else into.refuse(one, word === 'sealed' ? 'sealant' : 'tape', error.message);
    }
  }
}
