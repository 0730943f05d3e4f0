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
