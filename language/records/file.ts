// The records of one file: what its text says, with the place of each thing. They depend on nothing but that text.

import { headingMeant } from '../grammar/kinds.ts';
import { refusal } from '../grammar/limits.ts';
import { type Line, readLines } from '../grammar/lines.ts';
import type { Problem, Span } from '../grammar/problem.ts';
import { write } from '../statements/cursor.ts';
import { type DeclarationKind, fileTable } from '../statements/file.ts';
import type { FleetStatement } from '../statements/fleet.ts';
import { blockKindOf, layoutOptions } from '../statements/layout-kinds.ts';
import type { MaterialStatement } from '../statements/material.ts';
import type { Finding, PastStatement } from '../statements/past.ts';
import type { PlanStatement, QuoteStatement } from '../statements/plans.ts';
import type { PolicyStatement } from '../statements/policy.ts';
import type { GroupStatement, IdentityStatement, StockStatement } from '../statements/rig.ts';
import type { RoofStatement } from '../statements/roof.ts';
import { type BlockTable, type Row, rowIn } from '../statements/row.ts';
import type { Ref } from '../statements/slot.ts';
import type { SurfaceStatement } from '../statements/surface.ts';
import { type Broken, readStatement, type Whole } from './statement.ts';
import { unknownStatement } from './unknown.ts';

/** A record of what happened, with its findings if it has a block of them. `order` is its place in the file, for records of the same day. */
export type PastRecord = PastStatement & {
  readonly findings?: readonly Finding[];
  readonly brokenFindings?: readonly Broken[];
  readonly order: number;
};

export type RigStatement =
  | RoofStatement
  | IdentityStatement
  | PastRecord
  | PlanStatement
  | QuoteStatement
  | StockStatement;

interface Declared<K extends DeclarationKind, S> {
  readonly kind: K;
  readonly name: string;
  readonly nameAt: Span;
  /** The heading. */
  readonly at: Span;
  /** From the statement word to the closing brace. */
  readonly whole: Span;
  readonly like?: Ref;
  readonly under?: Ref;
  readonly doc?: string;
  readonly statements: readonly S[];
  readonly broken: readonly Broken[];
}

export type MaterialDeclaration = Declared<'tape' | 'sealant' | 'primer' | 'cleaner' | 'coating', MaterialStatement>;
export type SurfaceDeclaration = Declared<'surface', SurfaceStatement>;
export type PolicyDeclaration = Declared<'policy', PolicyStatement>;
export type RigDeclaration = Declared<'model' | 'rig', RigStatement>;
export type HistoryDeclaration = Declared<'history', PastRecord>;
export type FleetDeclaration = Declared<'fleet', FleetStatement | StockStatement>;
export type GroupDeclaration = Declared<'group', GroupStatement>;
export type Declaration =
  | MaterialDeclaration
  | SurfaceDeclaration
  | PolicyDeclaration
  | GroupDeclaration
  | RigDeclaration
  | HistoryDeclaration
  | FleetDeclaration;

export interface FileRecords {
  readonly uses: readonly { readonly path: string; readonly at: Span }[];
  readonly declarations: readonly Declaration[];
  readonly problems: readonly Problem[];
}

/** Reads a text into lines with the layout of the language. Never fails. */
export const linesOfText = (text: string) => readLines(text, layoutOptions);

/** Reads the text of a file into records: the one way, for open and for closed files. Never fails; what is wrong is in `problems`. */
export function readFile(text: string): FileRecords {
  const refused = refusal(text);
  if (refused) return { uses: [], declarations: [], problems: [refused] };
  const { lines, problems } = linesOfText(text);
  return recordsOf(lines, problems);
}

/** The records of lines that were read before; `found` are the problems of reading them. */
export function recordsOf(lines: readonly Line[], found: readonly Problem[]): FileRecords {
  const reading: Reading = { problems: [...found], order: 0 };
  const uses: { path: string; at: Span }[] = [];
  const declarations: Declaration[] = [];
  for (const line of lines) {
    const row = rowOf(line, fileTable, reading.problems);
    if (!row) continue;
    const got = readStatement(line, row, fileTable, reading.problems);
    const fields = (got.whole ? got.record : got.broken.fields) as Heading;
    if (row.word === 'use') {
      if (fields.path !== undefined)
        uses.push({ path: fields.path, at: (got.whole && got.record.spans.path) || line.at });
      continue;
    }
    // The block of a nameless declaration is read all the same, so that it is checked; nobody can use it.
    const inner = row.block ? readBlock(line.block ?? [], row.block, reading) : { statements: [], broken: [] };
    if (!fields.name) continue;
    declarations.push({
      kind: row.word as DeclarationKind,
      name: fields.name.name,
      nameAt: fields.name.at,
      at: line.at,
      whole: line.whole,
      ...(fields.like ? { like: fields.like } : {}),
      ...(fields.under ? { under: fields.under } : {}),
      ...(line.doc === undefined ? {} : { doc: line.doc }),
      ...inner,
    } as Declaration);
  }
  return { uses, declarations, problems: atMost(mostProblems, reading.problems) };
}

interface Heading {
  readonly path?: string;
  readonly name?: Ref;
  readonly like?: Ref;
  readonly under?: Ref;
}

interface Reading {
  readonly problems: Problem[];
  /** Counts the dated records of the file. */
  order: number;
}

/**
 * The row of a line. A heading that opens a block is guessed as the layout pass guessed it, so that one wrong letter in
 * `rig` does not take the rig away, nor one in `inspected` its findings.
 */
function rowOf(line: Line, table: BlockTable, problems: Problem[]): Row | undefined {
  const row = line.known ? (rowIn(table, line.head) ?? table.names) : undefined;
  if (row && (row.block || !line.block)) return row;
  const word = line.block && headingMeant(blockKindOf(table), line.head, line.block[0]?.head);
  const meant = word === undefined ? undefined : table.rows.get(word);
  if (!row) unknownStatement(line, table, word, problems);
  else problems.push(opensNoBlock(line, word));
  return meant ?? row;
}

function opensNoBlock(line: Line, meant: string | undefined): Problem {
  const said = `\`${line.head}\` opens no block`;
  const base = { rule: 'no-block-here', at: line.headAt };
  if (meant === undefined) return { ...base, message: `${said}: the lines between the braces mean nothing here.` };
  return { ...base, message: `${said}; did you mean \`${meant}\`?`, fixes: [write(meant, line.headAt)] };
}

function readBlock(block: readonly Line[], table: BlockTable, reading: Reading): Inside {
  const statements: Whole[] = [];
  const broken: Broken[] = [];
  for (const line of block) {
    const row = rowOf(line, table, reading.problems);
    if (!row) {
      broken.push({ word: line.head, at: line.at, fields: { perhaps: namesBehind(line) } });
      continue;
    }
    const got = readStatement(table.names === row ? withHeadAsPart(line) : line, row, table, reading.problems);
    const inner = row.block && line.block && readBlock(line.block, row.block, reading);
    const order = row.class === 'record' ? { order: reading.order++ } : undefined;
    if (!got.whole) broken.push(got.broken);
    else
      statements.push(
        Object.assign(got.record, order, inner && (row.block?.name === 'yard' ? yardLines(inner) : findings(inner))),
      );
  }
  return { statements, broken };
}

/** The names behind a word that opens no statement: if it was to be one of the roof, they are known all the same. */
function namesBehind({ parts }: Line): readonly string[] {
  const names: string[] = [];
  for (const part of parts) {
    if (part.kind === 'word') names.push(part.text);
    else if (part.kind !== 'comma') break;
  }
  return names;
}

interface Inside {
  readonly statements: readonly Whole[];
  readonly broken: readonly Broken[];
}

function findings(inner: Inside) {
  return inner.broken.length > 0
    ? { findings: inner.statements, brokenFindings: inner.broken }
    : { findings: inner.statements };
}

function yardLines({ statements, broken }: Inside) {
  return broken.length > 0 ? { lines: statements, brokenLines: broken } : { lines: statements };
}

/** The lines of a declaration with those in the blocks of its yards. */
export function* allLines({ statements }: Pick<Declaration, 'statements'>): Iterable<Whole> {
  for (const statement of statements as readonly Whole[]) {
    yield statement;
    if (statement.word === 'yard') yield* (statement as Whole & { readonly lines?: readonly Whole[] }).lines ?? [];
  }
}

/** In a block whose lines open with names, the first word is a name like the others. */
function withHeadAsPart(line: Line): Line {
  const kind = line.head === 'all' || line.head === 'rest' ? 'clause' : 'word';
  return { ...line, parts: [{ kind, text: line.head, at: line.headAt }, ...line.parts] };
}

/** A file in which everything is wrong is no help when every line of it is said to be. */
export const mostProblems = 500;

function atMost(most: number, problems: readonly Problem[]): readonly Problem[] {
  if (problems.length <= most) return problems;
  const first = problems.slice().sort((a, b) => a.at[0] - b.at[0]);
  const rest = first[most] as Problem;
  const message = `${problems.length - most} more problems are not shown, from here on: mend those above first.`;
  return [...first.slice(0, most), { rule: 'too-many-problems', message, at: rest.at }];
}
