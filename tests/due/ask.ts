// Dues of a rig from text.
import { type Due, type DueKind, duesOf } from '../../language/due/index.ts';
import { viewOf } from '../seams/view.ts';

export const dues = (lines: string, asOf: string, facts?: string): readonly Due[] =>
  duesOf(viewOf(lines, facts), { asOf, today: asOf });

/** The dues of one kind, and of one item or word if it is given. */
export const of = (kind: DueKind, lines: string, asOf: string, name?: string, facts?: string): readonly Due[] =>
  dues(lines, asOf, facts).filter(
    (due) => due.kind === kind && (name === undefined || due.item === name || due.word === name),
  );

/** The only such due. */
export function one(kind: DueKind, lines: string, asOf: string, name?: string, facts?: string): Due {
  const found = of(kind, lines, asOf, name, facts);
  if (found.length !== 1) throw new Error(`${found.length} dues: ${found.map((due) => due.because).join(' | ')}`);
  return found[0]!;
}
