// The outline of a file, and the declarations of the workspace by name.
import type { DocumentSymbolProvider, WorkspaceSymbolProvider } from 'langium/lsp';
import { type DocumentSymbol, type Range, SymbolKind, type WorkspaceSymbol } from 'vscode-languageserver';
import type { Line } from '../../language/grammar/lines.ts';
import { folderOf } from '../../language/resolve/paths.ts';
import { fileTable } from '../../language/statements/file.ts';
import type { BlockTable, RowClass } from '../../language/statements/row.ts';
import { type Statement, statementOf } from '../cursor/standing.ts';
import { locationOf, rangeOf, textsFrom } from '../places.ts';
import { type Features, type Here, hereIn } from './here.ts';

const declarationKinds: Readonly<Record<string, SymbolKind>> = {
  rig: SymbolKind.Class,
  model: SymbolKind.Interface,
  fleet: SymbolKind.Package,
  policy: SymbolKind.Module,
  group: SymbolKind.Module,
  yard: SymbolKind.Package,
  history: SymbolKind.Event,
  surface: SymbolKind.Struct,
};
const rowKinds: Readonly<Record<RowClass, SymbolKind>> = {
  declaration: SymbolKind.Object,
  fact: SymbolKind.Property,
  item: SymbolKind.Field,
  record: SymbolKind.Event,
  plan: SymbolKind.Event,
  finding: SymbolKind.Variable,
};

export const documentSymbols = (features: Features): DocumentSymbolProvider => ({
  getSymbols(document) {
    const here = hereIn(features, document);
    return symbolsOf(here, here.lines.lines, fileTable);
  },
});

function symbolsOf(here: Here, lines: readonly Line[], table: BlockTable): DocumentSymbol[] {
  return lines.flatMap((line) => {
    const statement = statementOf(line, table);
    const { row } = statement;
    if (!row || row.word === 'use') return [];
    const range = rangeOf(here.document, line.whole);
    const children = row.block && line.block ? symbolsOf(here, line.block, row.block) : [];
    return [symbol(statement, range, rangeOf(here.document, nameAt(line) ?? line.headAt), children)];
  });
}

function symbol(
  { line, row }: Statement,
  range: Range,
  selectionRange: Range,
  children: DocumentSymbol[],
): DocumentSymbol {
  const kind = declarationKinds[line.head] ?? (row ? rowKinds[row.class] : SymbolKind.Object);
  const words = line.parts.map(textOf);
  const isNamed = row?.class === 'declaration' || row?.class === 'item';
  const [first = ''] = words;
  const name = isNamed && first !== '' ? first : [line.head, first].filter(Boolean).join(' ');
  const detail = isNamed ? line.head : words.slice(1, 6).join(' ');
  return { name: name || '…', detail, kind, range, selectionRange, ...(children.length > 0 ? { children } : {}) };
}

const nameAt = ({ parts: [first] }: Line) => (first?.kind === 'word' ? first.at : undefined);

function textOf(part: Line['parts'][number]): string {
  if (part.kind === 'text') return `"${part.text}"`;
  if (part.kind !== 'quantity') return part.text;
  return part.terms.map(({ amount, unit }) => (unit === undefined ? amount : `${amount} ${unit}`)).join(' ');
}

/** Every declaration whose name holds the letters of the query in their order. */
export const workspaceSymbols = ({ session, open }: Features): WorkspaceSymbolProvider => ({
  getSymbols({ query }) {
    const texts = textsFrom((path) => session.project.text(path), open);
    const out: WorkspaceSymbol[] = [];
    for (const [path, { declared, histories }] of session.workspace.summaries) {
      const named = [
        ...Object.entries(declared).map(([key, at]) => [...(key.split(' ') as [string, string]), at] as const),
        ...histories.map(({ name, at }) => ['history', name, at] as const),
      ];
      for (const [kind, name, at] of named) {
        if (!holds(name, query)) continue;
        const container = path.slice(folderOf(path).length + 1);
        out.push({
          name,
          kind: declarationKinds[kind] ?? SymbolKind.Object,
          containerName: container,
          location: locationOf(texts, path, at),
        });
        if (out.length >= most) return out;
      }
    }
    return out;
  },
});

/** More than a person reads. */
const most = 500;

function holds(name: string, query: string): boolean {
  let from = 0;
  const lower = name.toLowerCase();
  for (const letter of query.toLowerCase()) {
    from = lower.indexOf(letter, from) + 1;
    if (from === 0) return false;
  }
  return true;
}
