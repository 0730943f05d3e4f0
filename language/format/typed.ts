// What is brought into form while somebody types: the line that was left and the indent of the new one, or a `}`.
import { refusal } from '../grammar/limits.ts';
import { headWidth } from './cells.ts';
import { type Edit, safely } from './format.ts';
import { type Line, type Piece, type Written, writtenLines } from './written.ts';

/** After Enter: tidies the line above and indents the new one, which is counted from 0. Takes no line away. */
export function afterEnter(text: string, line: number): readonly Edit[] {
  const written = read(text);
  const here = written?.lines[line];
  if (!written || !here || line === 0) return [];
  const { edits, unsureFrom } = safely(written);
  const all = edits.filter(({ at }) => !/[\r\n]/.test(text.slice(...at)));
  const above = all.filter((edit) => edit.line === line - 1);
  const lead = leadEnd(text, here);
  if (here.pieces.length > 0 || here.comment)
    return [...above, ...all.filter((edit) => edit.line === line && edit.at[1] <= lead)];
  return [...above, ...leadEdit(text, here, line, newIndent({ ...written, unsureFrom }, line))];
}

/** After a `}`: where it stands first in its line, it goes below the heading that it closes. */
export function afterBrace(text: string, line: number): readonly Edit[] {
  const here = read(text)?.lines[line];
  const first = here?.pieces[0];
  if (!here || first?.token.image !== '}') return [];
  const { lines } = writtenLines(text);
  const heading = lines[first.statement.firstLine] as Line;
  return leadEdit(text, here, line, text.slice(heading.start, leadEnd(text, heading)));
}

const read = (text: string): Written | undefined => (refusal(text) ? undefined : writtenLines(text));

function leadEnd(text: string, { start, end }: Line): number {
  let at = start;
  while (at < end && /\s/.test(text[at] as string)) at++;
  return at;
}

function leadEdit(text: string, line: Line, i: number, indent: string): Edit[] {
  const end = leadEnd(text, line);
  return text.slice(line.start, end) === indent ? [] : [{ at: [line.start, end], text: indent, line: i }];
}

/** The indent of an empty line: that of its block, or of the values of a list that goes on. */
function newIndent({ text, lines, unsureFrom }: Written, line: number): string {
  const above = lines.slice(0, line).findLast(({ pieces }) => pieces.length > 0);
  const last = above?.pieces.at(-1);
  if (!above || !last) return '';
  if (line >= unsureFrom) {
    const { image } = last.token;
    return text.slice(above.start, leadEnd(text, above)) + (image === '{' ? '  ' : '');
  }
  const { depth } = lines[line] as Line;
  return ' '.repeat(2 * depth + (goesOn(last) ? headWidth(last.statement) : 0));
}

const goesOn = ({ token }: Piece) => token.image === ',';
