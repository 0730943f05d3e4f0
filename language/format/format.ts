// The formatter: white space and nothing else. It never wraps, joins, reorders or respells.
import { refusal } from '../grammar/limits.ts';
import type { Span } from '../grammar/problem.ts';
import { type Gaps, gapsOf } from './gaps.ts';
import { type Line, type Statement, type Written, writtenLines } from './written.ts';

/** A change of white space. `line`: the physical line that it is made in, counted from 0. */
export interface Edit {
  readonly at: Span;
  readonly text: string;
  readonly line: number;
}

/** What is left as it stands, and why, in a sentence. */
export interface Left {
  readonly at: Span;
  readonly why: string;
}

export interface Formatting {
  /** In the order of the text; they do not touch each other. Empty where nothing changes. */
  readonly edits: readonly Edit[];
  readonly left: readonly Left[];
}

/** Physical lines counted from 0, both included. */
export interface LineRange {
  readonly first: number;
  readonly last: number;
}

/** How a text, or a range of its lines, is brought into form. Never fails; what is damaged is left alone and named. */
export function format(text: string, range?: LineRange): Formatting {
  const refused = refusal(text);
  if (refused) return { edits: [], left: [{ at: refused.at, why: refused.message }] };
  const written = writtenLines(text);
  const { edits } = safely(written);
  return {
    edits: range ? edits.filter(({ line }) => line >= range.first && line <= range.last) : edits,
    left: leftIn(written),
  };
}

/** A text with edits made in it. */
export function edited(text: string, edits: readonly Edit[]): string {
  const out: string[] = [];
  let done = 0;
  for (const { at, text: put } of edits) {
    out.push(text.slice(done, at[0]), put);
    done = at[1];
  }
  out.push(text.slice(done));
  return out.join('');
}

/**
 * The edits of a whole text, and the first line whose indent is left alone. Where the braces do not balance the reader
 * goes by the indents: then what was changed is read once more, and where it would be read in another way, all indents
 * stay.
 */
export function safely(written: Written): { readonly edits: readonly Edit[]; readonly unsureFrom: number } {
  if (written.problems.length === 0)
    return { edits: editsOf(written, gapsOf(written)), unsureFrom: written.unsureFrom };
  for (const unsureFrom of [written.unsureFrom, 0]) {
    const careful = { ...written, unsureFrom };
    const edits = editsOf(careful, gapsOf(careful));
    if (writtenLines(edited(written.text, edits)).reading === written.reading) return { edits, unsureFrom };
  }
  return { edits: [], unsureFrom: 0 };
}

/** The edits that give lines these gaps, and take away blank lines that are too many. */
function editsOf(written: Written, gaps: readonly Gaps[]): Edit[] {
  const { text, lines } = written;
  const out: Edit[] = [];
  const surplus = surplusLines(lines);
  for (const [i, line] of lines.entries()) {
    if (surplus.has(i)) {
      out.push({ at: [line.start, line.next], text: '', line: i });
      continue;
    }
    if (line.frozen) continue;
    const put = (start: number, end: number, gap: string | undefined) => {
      if (gap !== undefined && text.slice(start, end) !== gap) out.push({ at: [start, end], text: gap, line: i });
    };
    const gap = gaps[i] as Gaps;
    let done = i === 0 && text.charCodeAt(0) === 0xfeff ? 1 : line.start;
    for (const [k, { token }] of line.pieces.entries()) {
      put(done, token.startOffset, k === 0 ? gap.lead : gap.before[k]);
      done = (token.endOffset as number) + 1;
    }
    if (line.comment) {
      put(done, line.comment.startOffset, line.pieces.length === 0 ? gap.lead : gap.remark);
      done = line.comment.startOffset + line.comment.image.trimEnd().length;
    }
    put(done, line.end, '');
  }
  return out;
}

const isBlank = ({ pieces, comment, frozen }: Line) => pieces.length === 0 && !comment && !frozen;

/** Blank lines at the start and end of the file and of blocks, and the second of two. */
function surplusLines(lines: readonly Line[]): ReadonlySet<number> {
  const surplus = new Set<number>();
  let start = 0;
  while (start < lines.length) {
    if (!isBlank(lines[start] as Line)) {
      start++;
      continue;
    }
    let end = start + 1;
    while (end < lines.length && isBlank(lines[end] as Line)) end++;
    const [above, below] = [lines[start - 1], lines[end]];
    const keeps = above && below && above.pieces.at(-1)?.token.image !== '{' && below.pieces[0]?.token.image !== '}';
    for (let i = keeps ? start + 1 : start; i < end; i++) {
      const { start: from, next } = lines[i] as Line;
      // What stands behind the last line end is no line: there is nothing to take away.
      if (next > from && (below || i + 1 < end) && (above || below)) surplus.add(i);
    }
    start = end;
  }
  return surplus;
}

function leftIn({ lines, problems }: Written): Left[] {
  const broken = new Map<Statement, Left>();
  for (const { pieces } of lines)
    for (const { token, statement } of pieces) {
      if (statement.sound || token.image === '{' || token.image === '}') continue;
      const start = broken.get(statement)?.at[0] ?? token.startOffset;
      broken.set(statement, { at: [start, token.startOffset + token.image.length], why: notUnderstood });
    }
  const out = [...problems.map(({ at, message }) => ({ at, why: message })), ...broken.values()];
  return out.sort((a, b) => a.at[0] - b.at[0]);
}
const notUnderstood = 'Not all of this line is understood.';
