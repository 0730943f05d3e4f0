// What a change does to a file, line by line.
import type { Change } from './draft.ts';

export interface ChangedLine {
  /** Counted from 1: of a line that comes in the new text, of one that goes in the old one. */
  readonly line: number;
  readonly sign: '+' | '-';
  readonly text: string;
}

/** The lines that come and go. Made for changes that add lines: those that stay are found in their order. */
export function changedLines({ before = '', after }: Change): readonly ChangedLine[] {
  const [old, now] = [linesOf(before), linesOf(after)];
  const out: ChangedLine[] = [];
  let j = 0;
  for (const [i, text] of old.entries()) {
    const found = now.indexOf(text, j);
    if (found < 0) {
      out.push({ line: i + 1, sign: '-', text });
      continue;
    }
    for (; j < found; j++) out.push({ line: j + 1, sign: '+', text: now[j] as string });
    j = found + 1;
  }
  for (; j < now.length; j++) out.push({ line: j + 1, sign: '+', text: now[j] as string });
  return out;
}

const linesOf = (text: string): string[] => {
  const lines = text.split(/\r?\n/);
  if (lines.at(-1) === '') lines.pop();
  return lines;
};

/** Whole lines of the old text, counted from 0, the second not among them, and what comes in their place. */
export interface Hunk {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** The same as edits of the old text, from the top down. */
export function hunksOf({ before = '', after }: Change): readonly Hunk[] {
  const [old, now] = [wholeLines(before), wholeLines(after)];
  const out: Hunk[] = [];
  let [i, j] = [0, 0];
  while (i < old.length || j < now.length) {
    const start = i;
    let next = i < old.length ? now.indexOf(old[i] as string, j) : now.length;
    while (next < 0) next = ++i < old.length ? now.indexOf(old[i] as string, j) : now.length;
    if (i > start || next > j) out.push({ from: start, to: i, text: now.slice(j, next).join('') });
    [i, j] = [i + 1, next + 1];
  }
  return out;
}

const wholeLines = (text: string): readonly string[] => text.match(/[^\n]*\n|[^\n]+$/g) ?? [];
