// What may stand in a block, as far as the layout pass needs to know it.
import { nearest } from '../values/nearest.ts';

/** The words that open a statement in a block, and the blocks that those statements open. `names`: its lines open with a name. */
export interface BlockKind {
  readonly heads: ReadonlySet<string>;
  readonly names: boolean;
  readonly blocks: ReadonlyMap<string, BlockKind>;
}

/** A block of which nothing is known: every line in it is kept as an unknown line. */
export const unknownBlock: BlockKind = { heads: new Set(), names: false, blocks: new Map() };

/** The kind of block that a heading opens, guessed if it is misspelt. */
export function blockOpenedBy(kind: BlockKind, head: string, firstInside: string | undefined): BlockKind {
  const meant = headingMeant(kind, head, firstInside);
  return (meant === undefined ? undefined : kind.blocks.get(meant)) ?? unknownBlock;
}

/**
 * The heading that is meant by a word before a block. A misspelt or half-typed one is guessed, by its spelling, its
 * first letters and the first word inside, so that one wrong letter in `rig` does not make the whole rig unknown.
 */
export function headingMeant(kind: BlockKind, head: string, firstInside: string | undefined): string | undefined {
  if (kind.blocks.has(head)) return head;
  const words = [...kind.blocks.keys()];
  const holding = words.filter((word) => firstInside !== undefined && kind.blocks.get(word)?.heads.has(firstInside));
  const begun = words.filter((word) => head !== '' && word.startsWith(head));
  return nearest(head, words) ?? only(holding) ?? only(begun.filter((word) => holding.includes(word))) ?? only(begun);
}

const only = (words: readonly string[]) => (words.length === 1 ? words[0] : undefined);
