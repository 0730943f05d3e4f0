// What has been said on the way round a rig. Plain data: each move makes the next state of it.
import type { SaidOfSeam } from '../../language/authoring/inspection-block.ts';

/** What is being put together for the seam at hand, before its condition is chosen. */
export type Beside = Omit<SaidOfSeam, 'item' | 'seen'>;

export interface Round {
  /** The seams in the order of the walk. */
  readonly items: readonly string[];
  /** The seam at hand; behind the last one all have been seen. */
  readonly index: number;
  /** Of each seam what was said, the whole and its parts. */
  readonly said: readonly SaidOfSeam[];
  readonly beside: Beside;
}

export const startRound = (items: readonly string[]): Round => ({ items, index: 0, said: [], beside: {} });

export const itemAt = ({ items, index }: Round): string | undefined => items[index];

/** What was said of the seam at hand. */
export const saidHere = (round: Round): readonly SaidOfSeam[] =>
  round.said.filter(({ item }) => item === itemAt(round));

const isWhole = ({ stretch }: SaidOfSeam) => stretch === undefined;

/** Moves to another seam; what stands beside the whole of that one is at hand again, so that it can be corrected. */
export function goTo(round: Round, index: number): Round {
  const there = { ...round, index: Math.max(0, index), beside: {} };
  const { item: _, seen: __, ...beside } = saidHere(there).find(isWhole) ?? { item: '' };
  return { ...there, beside };
}

/** A condition for the seam at hand, with what stands beside it. Of a part: the rest of the seam is asked for next. */
export function say(round: Round, seen: SaidOfSeam['seen']): Round {
  const item = itemAt(round);
  if (item === undefined) return round;
  const finding: SaidOfSeam = { item, ...(seen === undefined ? {} : { seen }), ...round.beside };
  const { stretch } = finding;
  const others = round.said.filter((one) => one.item !== item || one.stretch !== stretch);
  const said = [...others, finding];
  return stretch === undefined ? goTo({ ...round, said }, round.index + 1) : { ...round, said, beside: {} };
}

/** Something beside the condition; an empty text takes it away. */
export function besides(round: Round, more: Beside): Round {
  const beside = Object.fromEntries(
    Object.entries({ ...round.beside, ...more }).filter(([, value]) => value !== '' && value !== false),
  );
  return { ...round, beside };
}

/** Nothing is said of the seam at hand any more. */
export function takeBack(round: Round): Round {
  return { ...round, said: round.said.filter(({ item }) => item !== itemAt(round)), beside: {} };
}

/** Whether something beside a condition waits for one. */
export const isWaiting = (round: Round): boolean => {
  const { item: _, seen: __, ...known } = saidHere(round).find(isWhole) ?? { item: '' };
  return JSON.stringify(sorted(round.beside)) !== JSON.stringify(sorted(known));
};

const sorted = (of: object) => Object.entries(of).sort(([a], [b]) => (a < b ? -1 : 1));

/**
 * The seam at hand and all that nobody spoke of are sound: of a seam of which parts were named the other parts, and one to
 * which a note or a reading was added with those.
 */
export function restIsSound(round: Round): Round {
  const here = saidHere(round);
  const whole = here.find(isWhole);
  if (!isWaiting(round) && (whole || here.length === 0)) return round;
  return say(round, round.beside.stretch === undefined && whole ? whole.seen : 'sound');
}
