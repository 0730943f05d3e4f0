// One record or plan for many rigs at once.
import picomatch from 'picomatch';
import { type RigDeclaration, readFile } from '../records/file.ts';
import { rigTable } from '../statements/rig.ts';
import type { Day } from '../values/day.ts';
import { nearest } from '../values/nearest.ts';
import type { Draft } from './draft.ts';
import type { Form } from './inspection-block.ts';
import { planInsertion, recordInsertion } from './inspection-place.ts';
import { recordBlocksOf } from './record-blocks.ts';

/** A statement as it was typed, read and found good. `date`: the first day of a record; a plan has none. */
export interface Statement {
  readonly word: string;
  readonly text: string;
  readonly date?: string;
}

/** Reads a record or a plan. `message` says what is wrong with it, as a sentence. */
export function readStatement(typed: string): { readonly statement: Statement } | { readonly message: string } {
  const text = typed.trim();
  if (text === '') return { message: 'Write a record or a plan, such as `sealed 2026-05-02 all with GreyLap`.' };
  const { declarations, problems } = readFile(`rig x {\n${text}\n}\n`);
  const [problem] = problems;
  if (problem) return { message: problem.message };
  const statements = declarations[0]?.statements ?? [];
  const [said] = statements;
  if (!said || statements.length > 1 || declarations.length > 1)
    return { message: 'One record or plan is added at a time.' };
  const { word } = said;
  const row = rigTable.rows.get(word);
  if (row?.class === 'plan') return { statement: { word, text } };
  if (row?.class !== 'record')
    return {
      message: `\`${word}\` is part of what a rig is, not a record or a plan: it is written into each rig by itself.`,
    };
  const { date, days } = said as { date?: Day; days?: { low: Day } };
  return { statement: { word, text, date: (date ?? days?.low)?.first ?? '' } };
}

/** A rig of a file. */
export interface RigAt {
  readonly file: string;
  readonly name: string;
}

/** The rigs of some files, in the order of the files. */
export function rigsOf({ project }: Pick<Draft, 'project'>, files: readonly string[]): readonly RigAt[] {
  return files.flatMap((file) =>
    (project.records(file)?.declarations ?? []).flatMap(({ kind, name }) => (kind === 'rig' ? [{ file, name }] : [])),
  );
}

/** The rigs that names or patterns of names mean, and the names that mean none, each with the nearest. */
export function chosenRigs(
  rigs: readonly RigAt[],
  patterns: readonly string[],
): { readonly rigs: readonly RigAt[]; readonly unknown: readonly string[] } {
  const matchers = patterns.map((pattern) => ({ pattern, fits: picomatch(pattern, { nobrace: true, noext: true }) }));
  const unknown = matchers.flatMap(({ pattern, fits }) => {
    if (rigs.some(({ name }) => fits(name))) return [];
    const close = nearest(
      pattern,
      rigs.map(({ name }) => name),
    );
    return [`No rig is called \`${pattern}\`${close === undefined ? '.' : `; did you mean \`${close}\`?`}`];
  });
  return { rigs: rigs.filter(({ name }) => matchers.some(({ fits }) => fits(name))), unknown };
}

/** What became of one rig. */
export interface Added extends RigAt {
  readonly outcome: 'added' | 'there' | 'refused';
  /** Where it was written, or would be; `line` counts from 1. */
  readonly place?: { readonly file: string; readonly line: number };
  /** Why it was refused. */
  readonly why?: string;
}

/** Adds a statement to rigs, one after the other. What would bring an error to a rig is not added to it. */
export function addRecord(draft: Draft, rigs: readonly RigAt[], statement: Statement): readonly Added[] {
  return rigs.map((rig) => ({ ...rig, ...addTo(draft, rig, statement) }));
}

function addTo(draft: Draft, { file, name }: RigAt, statement: Statement): Omit<Added, 'file' | 'name'> {
  const { project, files } = draft;
  const declaration = project
    .records(file)
    ?.declarations.find((one): one is RigDeclaration => one.kind === 'rig' && one.name === name);
  if (!declaration) return { outcome: 'refused', why: `${name} is not in its file any more.` };
  const blocks = recordBlocksOf(project, files, declaration, file);
  const said = plain(statement.text);
  for (const block of blocks) {
    const there = blockLines(draft, block.file, block.start).find(({ text }) => plain(text) === said);
    if (there) return { outcome: 'there', place: { file: block.file, line: lineAt(block.text, there.start) } };
  }
  const { word, text, date } = statement;
  const rest = text.slice(word.length).trim();
  const [own] = blocks;
  const change =
    date === undefined ? own && planInsertion(own, word, rest) : recordInsertion(blocks, date, linesOf(word, rest));
  if (!change) return { outcome: 'refused', why: `${name} has no block that could hold it.` };
  const found = draft.insert(change, file);
  const [first] = found;
  if (first) return { outcome: 'refused', why: first.message };
  const start = change.at[0] + (/^[\r\n]*/.exec(change.text)?.[0].length ?? 0);
  const after = project.text(change.file) ?? '';
  const line = blockLines(draft, change.file).find((one) => one.start >= start && plain(one.text) === said);
  return { outcome: 'added', place: { file: change.file, line: lineAt(after, line?.start ?? start) } };
}

/** The lines of a record in the form of their neighbours; what stands in its block is brought into form later. */
export const linesOf =
  (word: string, rest: string) =>
  ({ indent, dateAt }: Form): readonly string[] => {
    const [first = '', ...more] = rest.split(/\r?\n/);
    return [
      `${indent}${word.padEnd(Math.max(dateAt, word.length + 1))}${first}`,
      ...more.map((line) => indent + line.trim()),
    ];
  };

function blockLines({ project }: Draft, file: string, heading?: number) {
  const text = project.text(file) ?? '';
  return (project.records(file)?.declarations ?? []).flatMap((declaration) => {
    if (declaration.kind !== 'rig' && declaration.kind !== 'history') return [];
    if (heading !== undefined && declaration.at[0] !== heading) return [];
    return declaration.statements.map(({ at }) => ({ start: at[0], text: text.slice(at[0], endOf(text, at)) }));
  });
}

/** A statement with its block. */
function endOf(text: string, [, end]: readonly [number, number]): number {
  const rest = /^\s*\{[^}]*\}/.exec(text.slice(end));
  return rest ? end + rest[0].length : end;
}

const plain = (text: string) => text.replace(/\s*,\s*|\s+/g, (gap) => (gap.includes(',') ? ', ' : ' ')).trim();
export const lineAt = (text: string, offset: number): number => text.slice(0, offset).split('\n').length;
