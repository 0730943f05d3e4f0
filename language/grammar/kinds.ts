// What may stand in a block, as far as the layout pass needs to know it.
import { nearest } from './spelling.ts';

/** The words that open a statement in a block, and the blocks that those statements open. `names`: its lines open with a name. */
export interface BlockKind {
  readonly heads: ReadonlySet<string>;
  readonly names: boolean;
  readonly blocks: ReadonlyMap<string, BlockKind>;
}

/** A block of which nothing is known: every line in it is kept as an unknown line. */
export const unknownBlock: BlockKind = { heads: new Set(), names: false, blocks: new Map() };

/**
 * The kind of block that a heading opens. A misspelt heading is guessed, by its spelling and then by the first word
 * inside, so that one wrong letter in `rig` does not make the whole rig unknown.
 */
export function blockOpenedBy(kind: BlockKind, head: string, firstInside: string | undefined): BlockKind {
  const known = kind.blocks.get(head);
  if (known) return known;
  const close = nearest(head, kind.blocks.keys());
  if (close !== undefined) return kind.blocks.get(close) ?? unknownBlock;
  if (firstInside !== undefined) {
    const holding = [...new Set(kind.blocks.values())].filter((block) => block.heads.has(firstInside));
    if (holding.length === 1 && holding[0]) return holding[0];
  }
  return unknownBlock;
}
