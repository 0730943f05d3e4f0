// A line of the language made of the cells of a row, so that what is wrong with the line is told at its cell.
import { quoted } from '../grammar/text.ts';
import { readFile } from '../records/file.ts';
import type { AnyColumn, Said } from './kinds.ts';

/** A piece of a line and the column that it comes from. */
export interface Piece {
  readonly column: AnyColumn;
  readonly text: string;
}

/** What is wrong with a cell, as a sentence. */
export interface CellProblem {
  readonly column: AnyColumn;
  readonly message: string;
}

/** The cell of a column with a word before it; nothing where the cell says nothing. */
export function piece(said: Said, column: AnyColumn, before = ''): readonly Piece[] {
  const cell = said[column];
  return cell === undefined || cell === '' ? [] : [{ column, text: before + cell.replace(/\s+/g, ' ') }];
}

/** The same for a text in quotes. */
export function textPiece(said: Said, column: AnyColumn, before: string): readonly Piece[] {
  const cell = said[column];
  return cell === undefined || cell === '' ? [] : [{ column, text: `${before}${quoted(cell.replace(/\s+/g, ' '))}` }];
}

export const lineOf = (pieces: readonly Piece[]): string => pieces.map(({ text }) => text).join(' ');

/**
 * What is wrong with a line before it is written anywhere. `before` and `after` are what it stands in, such as the braces of a
 * rig; there it has to be one statement.
 */
export function lineProblem(pieces: readonly Piece[], before = 'rig x {\n', after = '\n}\n'): CellProblem | undefined {
  // A brace or a remark in a cell would end the line before its end.
  const broken = pieces.find(({ text }) => /[{}#]/.test(text.replace(/"(?:[^"\\]|\\.)*"/g, '')));
  if (broken) return { column: broken.column, message: `\`{\`, \`}\` and \`#\` have no place in \`${broken.text}\`.` };
  const { problems } = readFile(before + lineOf(pieces) + after);
  const [problem] = problems;
  if (!problem) return undefined;
  let end = before.length;
  for (const { column, text } of pieces) {
    end += text.length;
    if (problem.at[0] < end) return { column, message: problem.message };
    end++;
  }
  return { column: pieces.at(-1)?.column ?? 'rig', message: problem.message };
}
