// Signature help: the form of the statement that is being typed, and which part of it the cursor is at.
import {
  MarkupKind,
  type ParameterInformation,
  type Position,
  type SignatureHelp,
  SignatureHelpTriggerKind,
} from 'vscode-languageserver';
import { evidence, note, source } from '../../language/statements/clauses.ts';
import { cursorAt, peek } from '../../language/statements/cursor.ts';
import type { Clause, Place, Row } from '../../language/statements/row.ts';
import { type Standing, standingAt } from '../cursor/standing.ts';
import { type Features, hereAt } from './here.ts';

/** The form of the statement at a position; nothing in remarks, in texts, and where a new line begins. */
export function signatureAt(
  features: Features,
  path: string,
  position: Position,
  by: SignatureHelpTriggerKind | undefined,
): SignatureHelp | null {
  const here = hereAt(features, path);
  if (!here) return null;
  const standing = standingAt(here.text, here.document.offsetAt(position));
  const row = standing?.statement?.row;
  if (!standing || !row || standing.inText !== undefined) return null;
  // A blank before anything is typed opens no window; one that is open, or that was asked for, stays.
  if (by === SignatureHelpTriggerKind.TriggerCharacter && row.class === 'finding' && standing.before.length === 0)
    return null;
  const form = formOf(row);
  const active = activeField(standing, row);
  const index = form.fields.indexOf(active ?? '');
  return {
    signatures: [
      {
        label: form.label,
        documentation: { kind: MarkupKind.Markdown, value: `${row.help}\n\n\`${row.example}\`` },
        parameters: form.parameters,
      },
    ],
    activeSignature: 0,
    // Past the last part stands for none.
    activeParameter: index < 0 ? form.parameters.length : index,
  };
}

interface Form {
  readonly label: string;
  readonly parameters: ParameterInformation[];
  readonly fields: readonly string[];
}

/** `sealed DATE [TARGETS] [with …]`: places by their field, what may be left out in brackets. */
function formOf(row: Row): Form {
  let label = row.word;
  const parameters: ParameterInformation[] = [];
  const fields: string[] = [];
  const add = (field: string, text: string, documentation: string, optional: boolean) => {
    label += label === '' ? '' : ' ';
    const shown = optional ? `[${text}]` : text;
    parameters.push({
      label: [label.length, label.length + shown.length],
      documentation: { kind: MarkupKind.Markdown, value: documentation },
    });
    fields.push(field);
    label += shown;
  };
  for (const [field, { slot, optional }] of row.walk.places)
    add(field, field.toUpperCase(), sentenceOf(slot), optional);
  const own = [...row.walk.clauses.values()].sort(([, a], [, b]) => Number(isShared(a)) - Number(isShared(b)));
  for (const [field, clause] of own)
    add(field, textOfClause(clause), `${clause.help}\n\n${sentenceOf(clause.slot)}`, !clause.needed);
  return { label, parameters, fields };
}

/** What any record may carry comes after what belongs to this one. */
const isShared = ({ word }: Clause) => shared.has(word);
const shared = new Set([...Object.values({ ...evidence, ...note, ...source })].map(({ word }) => word));

const textOfClause = ({ word, slot }: Clause) => (slot.example === '' ? word : `${word} …`);

function sentenceOf({ what, example }: Place['slot']): string {
  const said = what.replace(/^./, (first) => first.toUpperCase());
  return example === '' ? `${said}.` : `${said}, such as \`${example}\`.`;
}

/** The field that the cursor is at: that of the value that has begun, or the next one. */
function activeField({ before, statement, typed }: Standing, row: Row): string | undefined {
  if (!statement) return undefined;
  const cursor = cursorAt({ ...statement.line, parts: before }, []);
  const { places, clauses } = row.walk;
  const isTyping = typed[1] > typed[0];
  for (const [field, { slot, optional }] of places) {
    const part = peek(cursor);
    if (!part) return field;
    if (part.kind === 'clause' && clauses.has(part.text) && !slot.accepts(part)) break;
    if (!slot.accepts(part) && optional) continue;
    const read = slot.read(cursor);
    if (!peek(cursor) && (read === undefined || before.at(-1)?.kind === 'comma')) return field;
    if (read === undefined) break;
  }
  let last: string | undefined;
  for (let part = peek(cursor); part; part = peek(cursor)) {
    cursor.index++;
    const found = part.kind === 'clause' ? clauses.get(part.text) : undefined;
    if (!found) continue;
    const [field, { slot }] = found;
    last = field;
    const from = cursor.index;
    const read = slot.read(cursor);
    if (!peek(cursor) && (read === undefined || cursor.index === from || before.at(-1)?.kind === 'comma')) return field;
  }
  return isTyping || last === undefined ? undefined : last;
}
