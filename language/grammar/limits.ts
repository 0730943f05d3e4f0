// What is not read at all: a bound on the work that one file can cause.
import type { Problem } from './problem.ts';

/** Larger texts are refused, in UTF-16 units: they are no records, or too many for one file. */
export const largestFile = 4_000_000;

/** Blocks deeper than this are not read: the language needs three levels, and a parser must not overflow on ten thousand. */
export const deepest = 12;

/** Tokens of a line beyond this are not read: the time that Langium's parser takes for a line grows with their square. */
export const longestLine = 5_000;

/** Why a text is not read at all; undefined for a text that is. */
export function refusal(text: string): Problem | undefined {
  if (text.length > largestFile) {
    return {
      rule: 'file-too-large',
      message: `This file is too large to be read (${(text.length / 1e6).toFixed(1)} MB; at most ${largestFile / 1e6} MB). Split its history into a file a year, claimed with \`records "heron/*.rig"\`.`,
      at: [0, 0],
    };
  }
  const nul = text.indexOf('\0');
  if (nul < 0) return undefined;
  return {
    rule: 'not-text',
    message: 'This is no text file: it holds bytes that no text has. A `.rig` file is plain UTF-8 text.',
    at: [nul, nul + 1],
  };
}
