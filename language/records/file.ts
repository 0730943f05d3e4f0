// The records of one file: what its text says, with the place of each thing. They depend on nothing but that text.

import { blockOpenedBy } from '../grammar/kinds.ts';
import { type Line, readLines } from '../grammar/lines.ts';
import type { Problem, Span } from '../grammar/problem.ts';
import { nearest } from '../grammar/spelling.ts';
import { type DeclarationKind, fileTable } from '../statements/file.ts';
import type { FleetStatement } from '../statements/fleet.ts';
import { layoutOptions, tableOf } from '../statements/layout-kinds.ts';
import type { MaterialStatement, SurfaceStatement } from '../statements/material.ts';
import type { Finding, PastStatement } from '../statements/past.ts';
import type { PlanStatement, QuoteStatement } from '../statements/plans.ts';
import type { PolicyStatement } from '../statements/policy.ts';
import type { IdentityStatement, StockStatement } from '../statements/rig.ts';
import type { RoofStatement } from '../statements/roof.ts';
import type { BlockTable } from '../statements/row.ts';
import type { Ref } from '../statements/slot.ts';
import { type Broken, readStatement, type Whole } from './statement.ts';

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
export type Declaration =
  | MaterialDeclaration
  | SurfaceDeclaration
  | PolicyDeclaration
  | RigDeclaration
  | HistoryDeclaration
  | FleetDeclaration;

export interface FileRecords {
  readonly uses: readonly { readonly path: string; readonly at: Span }[];
  readonly declarations: readonly Declaration[];
  readonly problems: readonly Problem[];
}

/** Larger files are refused: they are no records, or too many for one file. */
export const largestFile = 4_000_000;

/** Reads a text into lines with the layout of the language. Never fails. */
export const linesOfText = (text: string) => readLines(text, layoutOptions);

/** Reads the text of a file into records: the one way, for open and for closed files. Never fails; what is wrong is in `problems`. */
export function readFile(text: string): FileRecords {
  const refused = refusal(text);
  if (refused) return { uses: [], declarations: [], problems: [refused] };
  const { lines, problems } = linesOfText(text);
  return recordsOf(lines, problems);
}

function refusal(text: string): Problem | undefined {
  if (text.length > largestFile) {
    return {
      rule: 'file-too-large',
      message: `This file is too large to be read (${Math.round(text.length / 1e6)} MB; at most ${largestFile / 1e6} MB). Split its history into a file a year, claimed with \`records\`.`,
      at: [0, 0],
    };
  }
  const nul = text.indexOf('\0');
  if (nul >= 0)
    return {
      rule: 'not-text',
      message: 'This is no text file: it holds bytes that no text has. A `.rig` file is plain UTF-8 text.',
      at: [nul, nul + 1],
    };
  return undefined;
}

/** The records of lines that were read before. */
export function recordsOf(lines: readonly Line[], found: readonly Problem[]): FileRecords {
  const problems: Problem[] = [...found];
  const uses: { path: string; at: Span }[] = [];
  const declarations: Declaration[] = [];
  let order = 0;

  const inBlock = (
    block: readonly Line[] | undefined,
    table: BlockTable | undefined,
  ): { statements: Whole[]; broken: Broken[] } => {
    const statements: Whole[] = [];
    const broken: Broken[] = [];
    for (const line of block ?? []) {
      const row = table && (table.rows.get(line.head) ?? table.names);
      if (!row || !line.known) {
        if (table) unknownLine(line, table, problems);
        broken.push({ word: line.head, at: line.at, fields: {} });
        continue;
      }
      const named = table.names === row ? withHeadAsPart(line) : line;
      const got = readStatement(named, row, table, problems);
      if (line.block && !row.block)
        problems.push({ rule: 'no-block-here', message: `\`${line.head}\` opens no block.`, at: line.headAt });
      const inner = row.block && line.block ? inBlock(line.block, row.block) : undefined;
      if (!got.whole) {
        broken.push(got.broken);
        continue;
      }
      const isPast = row.class === 'record';
      statements.push({
        ...got.record,
        ...(isPast ? { order: order++ } : {}),
        ...(inner
          ? { findings: inner.statements, ...(inner.broken.length > 0 ? { brokenFindings: inner.broken } : {}) }
          : {}),
      } as Whole);
    }
    return { statements, broken };
  };

  for (const line of lines) {
    const row = fileTable.rows.get(line.head);
    if (!row || !line.known) {
      unknownLine(line, fileTable, problems);
      // The lines inside are read all the same, so that they are checked; nobody can use them.
      const kind = blockOpenedBy(layoutOptions.root, line.head, line.block?.[0]?.head);
      if (line.block) inBlock(line.block, tableOf(kind));
      continue;
    }
    const got = readStatement(line, row, fileTable, problems);
    const fields = (got.whole ? got.record : got.broken.fields) as {
      path?: string;
      name?: Ref;
      like?: Ref;
      under?: Ref;
    };
    if (row.word === 'use') {
      if (fields.path !== undefined)
        uses.push({ path: fields.path, at: (got.whole && got.record.spans.path) || line.at });
      continue;
    }
    const inner = inBlock(line.block, row.block);
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
  return { uses, declarations, problems };
}

/** In a block whose lines open with names, the first word is a name like the others. */
function withHeadAsPart(line: Line): Line {
  const kind = line.head === 'all' || line.head === 'rest' ? 'clause' : 'word';
  return { ...line, parts: [{ kind, text: line.head, at: line.headAt }, ...line.parts] };
}

function unknownLine(line: Line, table: BlockTable, problems: Problem[]): void {
  const { head, headAt } = line;
  if (/^(<{7}|={7}|>{7}|\|{7})/.test(head)) {
    problems.push({
      rule: 'merge-conflict',
      message: 'Two versions of this file were not merged: keep the lines that are true and remove the marks.',
      at: headAt,
    });
    return;
  }
  if (head === '') return; // a block without a heading; the layout pass has said so
  const close = nearest(head, table.rows.keys());
  const elsewhere = close === undefined && fileTable.rows.has(head) && table !== fileTable;
  const where = table === fileTable ? 'at the top of a file' : `in a ${table.name}`;
  const message =
    close !== undefined
      ? `\`${head}\` is no statement here; did you mean \`${close}\`?`
      : elsewhere
        ? `\`${head}\` stands at the top of a file, not ${where}; is a \`}\` missing before it?`
        : `\`${head}\` is no statement ${where}. ${firstWords(table)}`;
  problems.push({
    rule: 'unknown-statement',
    message,
    at: headAt,
    ...(close === undefined ? {} : { fixes: [{ label: `Write \`${close}\``, at: headAt, text: close }] }),
  });
}

function firstWords(table: BlockTable): string {
  if (table.names) return 'A line here begins with the name of a seam or an item, such as `bath-vent sound`.';
  const words = [...table.rows.keys()].slice(0, 6).map((w) => `\`${w}\``);
  return `A line here begins with a word such as ${words.join(', ')}.`;
}
