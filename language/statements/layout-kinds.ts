// What the layout pass needs to know of the statement table: which words open lines and blocks.
import type { BlockKind } from '../grammar/kinds.ts';
import type { LayoutOptions } from '../grammar/layout.ts';
import { fileTable } from './file.ts';
import type { BlockTable } from './row.ts';
import { clauseWords, spellings } from './words.ts';

const kinds = new Map<BlockTable, BlockKind>();

function kindOf(table: BlockTable): BlockKind {
  const known = kinds.get(table);
  if (known) return known;
  const blocks = new Map<string, BlockKind>();
  const kind: BlockKind = {
    heads: new Set([...table.rows.keys()].flatMap(spellings)),
    names: table.names !== undefined,
    blocks,
  };
  kinds.set(table, kind);
  for (const [word, row] of table.rows) if (row.block) blocks.set(word, kindOf(row.block));
  return kind;
}

export const layoutOptions: LayoutOptions = { root: kindOf(fileTable), clauseWords };

/** The block kind of a table. */
export const blockKindOf = (table: BlockTable): BlockKind => kindOf(table);
