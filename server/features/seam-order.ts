// The seams in the order of a walk round the roof; those that the block or the line has named already come after the others.
import { walkingOrder } from '../../language/documents/sheets/walking.ts';
import type { Item, Rig } from '../../language/resolve/types.ts';
import { findingTable } from '../../language/statements/past.ts';
import { partsOf, type Statement, statementsAt } from '../cursor/standing.ts';
import type { Here } from './here.ts';

export interface Walked {
  readonly item: Item;
  readonly isNamed: boolean;
}

export function walkedItems(rig: Rig, named: ReadonlySet<string>): readonly Walked[] {
  const items = walkingOrder(rig).flatMap((leg) => leg.items);
  const walked = items.map((item) => ({ item, isNamed: named.has(item.name) }));
  return [...walked.filter(({ isNamed }) => !isNamed), ...walked.filter(({ isNamed }) => isNamed)];
}

/** What is named around an offset already: in all lines of a block of findings, or in the same line. The word at the offset is not. */
export function namedAround(
  here: Here,
  around: readonly Statement[],
  statement: Statement | undefined,
  offset: number,
) {
  const now = statementsAt(here.lines.lines, offset);
  const isFindings = around.at(-1)?.row?.block === findingTable;
  const block = isFindings ? now.findLast(({ row }) => row?.block === findingTable)?.line.block : undefined;
  const before = isFindings ? around.at(-1)?.line.block : undefined;
  const inLine = isFindings ? [] : [...now.slice(-1), ...(statement ? [statement] : [])];
  const parts = [
    ...[...(block ?? []), ...(before ?? [])].map(({ head, headAt }) => ({ text: head, at: headAt })),
    ...inLine.flatMap((one) => partsOf(one).flatMap((part) => (part.kind === 'word' ? [part] : []))),
  ];
  return new Set(parts.flatMap(({ text, at }) => (at[0] <= offset && offset <= at[1] ? [] : [text])));
}
