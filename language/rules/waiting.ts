// The way out of a plan that comes too early: its first day moves.
import type { Fix, Span } from '../grammar/problem.ts';
import type { PlanStatement } from '../statements/plans.ts';

/** A plan as far as its days are written, with the place of each clause. */
export type Dated = Pick<PlanStatement, 'at' | 'on' | 'after' | 'before' | 'spans'>;

/**
 * Moves a plan to `day`, an ISO date: its own day or its first one, else a first one is added. A plan that had to be done
 * before is to be done later than somebody said, which only a person can decide. None where two clauses would have to change.
 */
export function waitUntil({ at, on, after, before, spans }: Dated, day: string): readonly Fix[] {
  const label = `Wait until ${day}`;
  const ends = before !== undefined && before.last < day;
  const first = (on && spans.on) ?? (after && spans.after);
  if (ends) {
    if (first || !spans.before) return [];
    return [{ label: `${label}, past ${before.text}`, at: spans.before, text: `after ${day}`, unsure: true }];
  }
  if (on && after) return [];
  if (first) return [{ label, at: first, text: `${on ? 'on' : 'after'} ${day}` }];
  const behind: Span = [at[1], at[1]];
  return [{ label, at: behind, text: ` after ${day}` }];
}

/** Gives a plan whose last day is past, or has no free day left before it, another last day. */
export function putOff({ on, before, spans }: Dated, day: string): readonly Fix[] {
  const [word, at] = on ? ['on', spans.on] : before ? ['before', spans.before] : [];
  return word && at ? [{ label: `Put off: \`${word} ${day}\``, at, text: `${word} ${day}`, unsure: true }] : [];
}
