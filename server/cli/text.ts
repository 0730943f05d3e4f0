// Findings as text and as JSON, with lines and columns.

import type { Span } from '../../language/grammar/problem.ts';
import type { Finding } from '../../language/rules/finding.ts';

/** A place counted from 0, in UTF-16 code units, as in the Language Server Protocol. */
export interface Position {
  readonly line: number;
  readonly character: number;
}
export interface Range {
  readonly start: Position;
  readonly end: Position;
}

/** Offsets of a text as lines and columns. */
export function positions(text: string): (span: Span) => Range {
  let starts: number[] | undefined;
  const at = (offset: number): Position => {
    starts ??= lineStarts(text);
    let [low, high] = [0, starts.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] as number) <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low, character: offset - (starts[low] as number) };
  };
  return ([start, end]) => ({ start: at(start), end: at(end) });
}

function lineStarts(text: string): number[] {
  const starts = [0];
  for (const match of text.matchAll(/\r\n|\r|\n/g)) starts.push(match.index + match[0].length);
  return starts;
}

/** One line a finding: file, line and column counted from 1, severity, message, rule. */
export function findingText(
  finding: Pick<Finding, 'severity' | 'message' | 'rule'>,
  file: string,
  { start }: Range,
): string {
  return `${file}:${start.line + 1}:${start.character + 1}  ${finding.severity}  ${finding.message}  [${finding.rule}]`;
}
