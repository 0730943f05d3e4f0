// Completion that knows the place: what may stand here, and nothing else.
import type { CompletionProvider } from 'langium/lsp';
import { type CompletionItem, CompletionItemKind, CompletionTriggerKind, type Range } from 'vscode-languageserver';
import type { Clause, Row } from '../../language/statements/row.ts';
import { expectedAfter } from '../cursor/expected.ts';
import { partsOf, type Standing, standingAt, statementsAt } from '../cursor/standing.ts';
import { rangeOf } from '../places.ts';
import { type Features, type Here, hereIn } from './here.ts';
import { offeredItems, pathItems, type Written } from './offers.ts';
import { statementItems } from './statement-items.ts';

export const completions = (features: Features): CompletionProvider => ({
  completionOptions: { triggerCharacters: [' ', '"', '/'] },
  getCompletion(document, { position, context }) {
    const here = hereIn(features, document);
    const offset = here.document.offsetAt(position);
    const standing = standingAt(here.text, offset);
    if (!standing) return undefined;
    const around = standing.around.length > 0 ? standing.around : standing.statement ? [standing.statement] : [];
    const { statement } = standing;
    const written: Written = {
      here,
      around,
      offset,
      range: rangeOf(here.document, standing.typed),
      ...(statement && { statement }),
    };
    // A blank or a slash was typed, nobody has asked: only values are offered, not every clause that might follow.
    const asked = context?.triggerKind !== CompletionTriggerKind.TriggerCharacter;
    if (standing.inText !== undefined) return { isIncomplete: false, items: pathItems(features, written, standing) };
    if (context?.triggerCharacter !== undefined && context.triggerCharacter !== ' ') return undefined;
    const items = standing.statement
      ? inStatement(features, written, standing, offset, asked)
      : asked
        ? startingStatement(features, written, standing)
        : [];
    return { isIncomplete: false, items };
  },
});

function startingStatement(features: Features, written: Written, { table }: Standing): CompletionItem[] {
  const items = statementItems(features, written, table, onOneLine(written));
  if (!table.names) return items;
  const { offers } = expectedAfter(emptyLine, table.names, [], new Set());
  return [
    ...items,
    ...offeredItems(features, written, offers),
    ...['all', 'rest'].map((word) => setItem(word, written.range)),
  ];
}

const emptyLine = {
  head: '',
  headAt: [0, 0],
  known: true,
  parts: [],
  block: undefined,
  at: [0, 0],
  whole: [0, 0],
} as const;

function inStatement(
  features: Features,
  written: Written,
  { statement, before, table }: Standing,
  offset: number,
  asked: boolean,
): CompletionItem[] {
  if (!statement?.row) return [];
  const { line, row } = statement;
  const { offers, inside, clauses } = expectedAfter(line, row, before, saidBehind(written.here, offset, row));
  const values = offeredItems(features, written, offers);
  if (!asked) return values;
  return [
    ...values,
    ...inside.map((word) => wordItem(word, written.range)),
    ...clauses.map((clause) => clauseItem(clause, written.range)),
    // In a block on one line the next word may begin the next statement.
    ...(clauses.length > 0 && onOneLine(written) ? statementItems(features, written, table, true) : []),
  ];
}

/** The clauses of the statement that stand behind the cursor already. */
function saidBehind({ lines }: Here, offset: number, row: Row): Set<string> {
  const statement = statementsAt(lines.lines, offset).at(-1);
  if (statement?.row?.word !== row.word) return new Set();
  return new Set(
    partsOf(statement).flatMap((part) => (part.kind === 'clause' && part.at[0] >= offset ? [part.text] : [])),
  );
}

function onOneLine({ here: { text }, around, offset }: Written): boolean {
  const heading = around.at(-1)?.line;
  return heading?.block !== undefined && !text.slice(heading.at[1], offset).includes('\n');
}

function clauseItem({ word, slot, help }: Clause, range: Range): CompletionItem {
  const example = slot.example === '' ? '' : `\n\n\`\`\`rig\n${word} ${slot.example}\n\`\`\``;
  return {
    label: word,
    kind: CompletionItemKind.Property,
    detail: slot.example === '' ? 'clause' : `${word} ${slot.example}`,
    documentation: { kind: 'markdown', value: `${help}${example}` },
    textEdit: { range, newText: slot.example === '' ? word : `${word} ` },
    sortText: `1${word}`,
    // What stands behind the word is offered at once.
    ...(slot.example === '' ? {} : { command: { title: 'Complete', command: 'editor.action.triggerSuggest' } }),
  };
}

const wordItem = (word: string, range: Range): CompletionItem => ({
  label: word,
  kind: CompletionItemKind.Operator,
  textEdit: { range, newText: word },
  sortText: `1${word}`,
});

const setItem = (word: string, range: Range): CompletionItem => ({
  label: word,
  kind: CompletionItemKind.Enum,
  detail: word === 'all' ? 'every seam and item' : 'all that is not named here',
  textEdit: { range, newText: word },
  sortText: `0~${word}`,
});
