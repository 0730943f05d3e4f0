// Where a record is written: behind the last thing that happened before it, in the rig or in one of its histories.
import type { Line } from '../grammar/lines.ts';
import type { Span } from '../grammar/problem.ts';
import { linesOfText } from '../records/file.ts';
import { historyTable } from '../statements/past.ts';
import { rigTable } from '../statements/rig.ts';
import { column, planColumn } from './columns.ts';
import { type Form, inspectionLines, type SaidInspection } from './inspection-block.ts';

/** One block that may hold records of a rig: its own, or a history. */
export interface RecordBlock {
  readonly file: string;
  readonly text: string;
  /** Where its heading begins. */
  readonly start: number;
}

/** A change of one file: `text` in place of a span, which is empty for lines that come between others. */
export interface Insertion {
  readonly file: string;
  readonly at: Span;
  readonly text: string;
}

interface Block {
  readonly file: string;
  readonly text: string;
  readonly line: Line;
  readonly records: readonly Dated[];
}

interface Dated {
  readonly line: Line;
  readonly date: string;
}

/**
 * The change that writes an inspection. `blocks`: the rig's own first, then its histories; `items`: the seams and items that
 * are there. It comes behind the last record of its day or before, else in front of the first one; where nothing has happened
 * yet, at the end of the last history, or in the rig in front of what is planned. Undefined: the rig is not there.
 */
export function inspectionInsertion(
  blocks: readonly RecordBlock[],
  inspection: SaidInspection,
  items: readonly string[],
): Insertion | undefined {
  return recordInsertion(blocks, inspection.date, (form) => inspectionLines(inspection, items, form));
}

/** The same for any record of a day; `linesIn` writes its lines in the form of their neighbours. */
export function recordInsertion(
  blocks: readonly RecordBlock[],
  date: string,
  linesIn: (form: Form) => readonly string[],
): Insertion | undefined {
  const read = blocks.flatMap((block) => readBlock(block) ?? []);
  const all = read.flatMap((block) => block.records.map((record) => ({ block, record })));
  const byDate = all.toSorted((a, b) => (a.record.date < b.record.date ? -1 : a.record.date > b.record.date ? 1 : 0));
  const before = byDate.findLast(({ record }) => record.date <= date);
  const target = (before ?? byDate[0])?.block ?? read.findLast(({ line }) => line.block !== undefined) ?? read[0];
  if (!target) return undefined;
  const lines = linesIn(formIn(target, (before ?? byDate[0])?.record.line));
  if (isOnOneLine(target)) return unfolded(target, before?.record.line, lines);
  if (before) return behind(target, before.record.line, lines);
  const next = byDate[0]?.record.line ?? planned(target);
  return next ? inFrontOf(target, next, lines, byDate.length === 0) : atEnd(target, lines);
}

/**
 * The change that writes a plan, such as `inspect bath-vent before 2026-12-02`, into the rig: behind its last plan, else at the
 * end of its block. Undefined: the rig is not there.
 */
export function planInsertion(own: RecordBlock, word: string, said: string): Insertion | undefined {
  const block = readBlock(own);
  if (!block) return undefined;
  const { text } = own;
  const last = block.line.block?.findLast(isPlan);
  const { indent } = formIn(block, last);
  const at = last && startsLine(text, last.headAt[0]) ? firstPartAt(last) : planColumn;
  const line = `${indent}${word.padEnd(Math.max(at, word.length + 1))}${said}`;
  if (isOnOneLine(block)) return unfolded(block, undefined, [line]);
  return last ? behind(block, last, [line]) : atEnd(block, [line]);
}

/**
 * The change that writes lines of description into the rig: behind the last line that `isLike` tells of, else as the first
 * of its block. Undefined: the rig is not there.
 */
export function lineInsertion(
  own: RecordBlock,
  said: readonly string[],
  isLike: (word: string) => boolean,
): Insertion | undefined {
  const block = readBlock(own);
  if (!block) return undefined;
  const last = block.line.block?.findLast(({ head }) => isLike(head));
  const first = block.line.block?.[0];
  const { indent } = formIn(block, last ?? first);
  const lines = said.map((line) => indent + line);
  if (isOnOneLine(block)) return unfolded(block, last, lines);
  if (last) return behind(block, last, lines);
  return first ? inFrontOf(block, first, lines, false) : atEnd(block, lines);
}

function readBlock({ file, text, start }: RecordBlock): Block | undefined {
  const line = linesOfText(text).lines.find(({ headAt }) => headAt[0] === start);
  if (!line) return undefined;
  const records = (line.block ?? []).flatMap((one) => {
    if (!historyTable.rows.has(one.head)) return [];
    const date = one.parts.find(({ kind }) => kind === 'date');
    return date?.kind === 'date' ? [{ line: one, date: date.text }] : [];
  });
  return { file, text, line, records };
}

/** Columns as in the lines around: those of the neighbour, and of the last inspection with a block in them. */
function formIn({ text, line, records }: Block, neighbour: Line | undefined): Form {
  const isBelow = neighbour !== undefined && startsLine(text, neighbour.headAt[0]);
  const indent = isBelow ? indentOf(text, neighbour) : `${indentOf(text, line)}  `;
  const dateAt = isBelow ? firstPartAt(neighbour) : line.head === 'history' ? 'inspected'.length + 2 : column;
  const looks = records.flatMap(({ line: { block } }) => (block?.[0] ? [block[0]] : []));
  const look = looks.at(-1);
  const apart = look !== undefined && startsLine(text, look.headAt[0]);
  return {
    indent,
    dateAt: Math.max(dateAt, 'inspected'.length + 1),
    innerIndent: apart ? indentOf(text, look) : `${indent}  `,
    seenAt: apart ? firstPartAt(look) : undefined,
  };
}

/** Where what follows the word of a statement begins, counted from the word. */
const firstPartAt = ({ parts, headAt }: Line) => (parts[0] ? parts[0].at[0] - headAt[0] : 0);

const lineStart = (text: string, offset: number) => text.lastIndexOf('\n', offset - 1) + 1;
const startsLine = (text: string, offset: number) => text.slice(lineStart(text, offset), offset).trim() === '';
const indentOf = (text: string, { headAt }: Line) =>
  startsLine(text, headAt[0]) ? text.slice(lineStart(text, headAt[0]), headAt[0]) : '';
const breakOf = (text: string) => (text.includes('\r\n') ? '\r\n' : '\n');

/** Everything between the heading and the closing brace stands on the line of the heading, or there is no block. */
const isOnOneLine = ({ text, line }: Block) =>
  line.block === undefined || !text.slice(line.at[1], line.whole[1]).includes('\n');

/** A block on one line becomes one of several: on one line with others the new lines would be part of the one before. */
function unfolded({ file, text, line }: Block, last: Line | undefined, lines: readonly string[]): Insertion {
  const eol = breakOf(text);
  const inner = `${indentOf(text, line)}  `;
  const block = line.block ?? [];
  const index = last ? block.indexOf(last) + 1 : block.length;
  const written = block.map(({ whole }) => inner + text.slice(whole[0], whole[1]));
  const all = [...written.slice(0, index), ...lines, ...written.slice(index)];
  return { file, at: [line.at[1], line.whole[1]], text: ` {${eol}${all.join(eol)}${eol}${indentOf(text, line)}}` };
}

function behind({ file, text, line }: Block, record: Line, lines: readonly string[]): Insertion {
  const eol = breakOf(text);
  const end = record.whole[1];
  const rest = /^[^\r\n]*/.exec(text.slice(end))?.[0] ?? '';
  // A remark behind the record stays with it; a brace that closes the block goes to a line of its own.
  if (/^\s*(#.*)?$/.test(rest)) return insert(file, end + rest.trimEnd().length, eol + lines.join(eol));
  return insert(file, end, `${eol}${lines.join(eol)}${eol}${indentOf(text, line)}`);
}

/** `apart`: a blank line between, for what comes is of another kind. */
function inFrontOf({ file, text }: Block, next: Line, lines: readonly string[], apart: boolean): Insertion {
  const eol = breakOf(text);
  let offset = lineStart(text, next.headAt[0]);
  // Remarks directly above a line belong to it.
  for (let above = lineStart(text, offset - 1); offset > 0 && above < offset; above = lineStart(text, offset - 1)) {
    if (!/^\s*#/.test(text.slice(above, offset))) break;
    offset = above;
  }
  return insert(file, offset, lines.join(eol) + eol + (apart ? eol : ''));
}

/** The first plan of a rig. */
const planned = ({ line }: Block) => line.block?.find(isPlan);
const isPlan = ({ head }: Line) => rigTable.rows.get(head)?.class === 'plan';

function atEnd(block: Block, lines: readonly string[]): Insertion {
  const { file, text, line } = block;
  const eol = breakOf(text);
  const close = line.whole[1] - 1;
  if (text[close] !== '}' || !startsLine(text, close)) {
    const last = line.block?.at(-1);
    return last ? behind(block, last, lines) : insert(file, line.whole[1], eol + lines.join(eol) + eol);
  }
  const offset = lineStart(text, close);
  const isApart = (line.block ?? []).length === 0 || /\n[ \t]*\r?\n$/.test(text.slice(0, offset));
  return insert(file, offset, (isApart ? '' : eol) + lines.join(eol) + eol);
}

const insert = (file: string, offset: number, text: string): Insertion => ({ file, at: [offset, offset], text });
