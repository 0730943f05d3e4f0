// Which plans the records say are done: asked by dues, rules, estimate and schedule alike.
import type { Event, Plan, Rig } from './types.ts';

/** The verb of the record that does what a plan says. */
export const pastOf: Readonly<Record<Plan['statement']['word'], Event['record']['word']>> = {
  inspect: 'inspected',
  wash: 'washed',
  dry: 'dried',
  cover: 'covered',
  strip: 'stripped',
  seal: 'sealed',
  tape: 'taped',
  replace: 'replaced',
  rebed: 'rebedded',
  coat: 'coated',
  patch: 'patched',
  tighten: 'tightened',
};

/**
 * The record up to the as-of date with which all that a plan names has been done since its `on` or `after`; undefined while
 * something is open. A plan without a first day is open for as long as it is written, since nothing says which record would
 * be its own; `otherwise` gives it one.
 */
export function doneBy(
  { statement, places }: Plan,
  rig: Pick<Rig, 'events'>,
  asOf: string,
  otherwise?: string,
): Event | undefined {
  const since = (statement.on ?? statement.after)?.first ?? otherwise;
  if (since === undefined) return undefined;
  const open = new Set(places.map(({ item }) => item));
  for (const event of rig.events) {
    if (event.record.word !== pastOf[statement.word] || event.first < since || event.last > asOf) continue;
    const about = [...event.places, ...event.findings.flatMap((finding) => finding.places)];
    if (about.length === 0) open.clear();
    for (const { item } of about) open.delete(item);
    if (open.size === 0) return event;
  }
  return undefined;
}

/** Whether all that a plan names has been done. */
export const isDone = (plan: Plan, rig: Pick<Rig, 'events'>, asOf: string): boolean =>
  doneBy(plan, rig, asOf) !== undefined;
