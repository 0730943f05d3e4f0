// The statements that may begin at a place, each as it is when it is whole.
import { type CompletionItem, CompletionItemKind, InsertTextFormat, InsertTextMode } from 'vscode-languageserver';
import { wholeRecords } from '../../language/authoring/whole-records.ts';
import { walkingOrder } from '../../language/documents/sheets/walking.ts';
import { isLibrary } from '../../language/resolve/origin.ts';
import { isThere } from '../../language/seams/index.ts';
import { findingTable } from '../../language/statements/past.ts';
import type { BlockTable, Row } from '../../language/statements/row.ts';
import { addDays, daysBetween } from '../../language/values/calendar.ts';
import { documentedBy } from './documented.ts';
import { type Features, rigAround } from './here.ts';
import { isUsedWith } from './material-order.ts';
import { namesFor, type Written } from './offers.ts';
import { filled, plainText, type Snippet, type Stop, snippetOf, snippetText } from './snippets.ts';

/** `onLine`: other statements stand on the same line, so that none may bring lines of its own. */
export function statementItems(
  features: Features,
  written: Written,
  table: BlockTable,
  onLine: boolean,
): CompletionItem[] {
  const { here, range, offset } = written;
  const behind = /^[^\n]*/.exec(here.text.slice(offset))?.[0].trim() ?? '';
  const isBare = behind !== '' && !/^[}#]/.test(behind);
  const fill = fillerFor(features, written);
  return [...table.rows.values()].flatMap((row) => {
    const item = statementItem(features, table, row);
    const snippet = filled(formOf(table, row), fill);
    // Where the rest of the line is written already, only its word is missing.
    const word = { ...item, textEdit: { range, newText: row.word } };
    if (isBare || (onLine && plainText(snippet).includes('\n'))) return [word];
    const whole = row.block === findingTable && !onLine ? inspectionItem(features, written, table, row, item) : [];
    return [{ ...item, ...inserted(features, written, snippet) }, ...whole];
  });
}

function statementItem(features: Features, table: BlockTable, row: Row): CompletionItem {
  return {
    label: row.word,
    kind: row.class === 'declaration' ? CompletionItemKind.Class : CompletionItemKind.Keyword,
    detail: row.class,
    sortText: `2${row.word}`,
    ...documentedBy(features, { kind: 'statement', block: table.name, word: row.word }),
  };
}

/** A look at every seam that is there today, in the order of a walk round the roof. Nothing is sound before somebody says so. */
function inspectionItem(
  features: Features,
  written: Written,
  table: BlockTable,
  row: Row,
  item: CompletionItem,
): CompletionItem[] {
  const figures = rigAround(features, written.here.path, written.around);
  if (row.word !== 'inspected' || !figures) return [];
  const { view, state } = figures;
  const { today } = features.session.dates;
  const names = walkingOrder(view.rig)
    .flatMap(({ items }) => items)
    .filter(({ name }) => {
      const seam = state.seams.get(name);
      return seam && isThere(seam, today);
    })
    .map(({ name }) => name);
  if (names.length === 0) return [];
  const lines = names.map((name) => `${name} not-seen`);
  const snippet = snippetOf(table, [`${row.word} ${today} {`, ...lines, '}'].join('\n'));
  return [
    {
      ...item,
      label: `${row.word} { … }`,
      kind: CompletionItemKind.Snippet,
      detail: `record, a line for each of ${names.length} seams and items`,
      filterText: row.word,
      sortText: `${item.sortText}~`,
      ...inserted(features, written, snippet),
    },
  ];
}

function inserted({ can }: Features, { here, range }: Written, snippet: Snippet): Partial<CompletionItem> {
  if (can.takesSnippets)
    return { insertTextFormat: InsertTextFormat.Snippet, textEdit: { range, newText: snippetText(snippet) } };
  const line = here.text.slice(0, here.document.offsetAt(range.start)).split('\n').at(-1) ?? '';
  const indent = line.trim() === '' ? line : '';
  return {
    textEdit: { range, newText: plainText(snippet, indent) },
    ...(can.insertsAsIs ? { insertTextMode: InsertTextMode.asIs } : {}),
  };
}

/** The forms of the statements do not depend on what is open. */
const forms = new Map<string, Snippet>();
function formOf(table: BlockTable, row: Row): Snippet {
  const key = `${table.name} ${row.word}`;
  const known = forms.get(key);
  if (known) return known;
  const source = row.class === 'fact' || row.class === 'plan' ? row.example : (wholeRecords[row.word] ?? row.example);
  const form = snippetOf(table, source);
  forms.set(key, form);
  return form;
}

/** Dates are of today, seams of the rig, materials of those that the statement is about. */
function fillerFor(features: Features, written: Written): (stop: Stop) => Stop {
  const { today } = features.session.dates;
  const rig = rigAround(features, written.here.path, written.around)?.view.rig;
  const seams = rig ? walkingOrder(rig).flatMap(({ items }) => items.map(({ name }) => name)) : [];
  const materials = [...namesFor(features, written).all('material')]
    .map(([name, { declaration, file }]) => ({ name, kind: declaration.kind, order: isLibrary(file) ? 1 : 0 }))
    .sort((a, b) => a.order - b.order);
  const named = (stop: Stop, choices: readonly string[]): Stop =>
    choices[0] === undefined ? stop : { ...stop, text: choices[0], choices };
  return (stop) => {
    const { part, offers, statement } = stop;
    const { row, line } = statement;
    if (part.kind === 'date') {
      const isDated = row?.class === 'record' || row?.class === 'plan';
      const first = line.parts.find(({ kind }) => kind === 'date');
      if (!isDated || first?.kind !== 'date') return stop;
      const days = daysBetween(first.text, part.text);
      return { ...stop, text: addDays(today, days) };
    }
    if (part.kind !== 'word') return stop;
    if (offers.some(({ kind }) => kind === 'seams')) return named(stop, seams);
    if (offers.some(({ kind }) => kind === 'materials')) {
      const fitting = materials.filter(({ kind }) => isUsedWith(line.head, kind));
      return named(
        stop,
        fitting.map(({ name }) => name),
      );
    }
    return stop;
  };
}
