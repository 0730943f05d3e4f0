// Plans that a record says are done: they are not scheduled again.
import type { Event, Plan, Rig } from '../resolve/types.ts';
import type { PlanWord } from './words.ts';

const pastOf: Readonly<Record<PlanWord, Event['record']['word']>> = {
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
 * Whether records up to the as-of date do all that a plan names since its `after` or `on`. A plan without a first day is
 * open for as long as it is written: nothing says which record would be its own.
 */
export function isDone({ statement, places }: Plan, rig: Rig, asOf: string): boolean {
  const since = (statement.on ?? statement.after)?.first;
  if (since === undefined) return false;
  const done = rig.events.filter(
    ({ record, first, last }) => record.word === pastOf[statement.word] && first >= since && last <= asOf,
  );
  if (places.length === 0) return done.length > 0;
  return places.every(({ item }) => done.some((event) => isAbout(event, item)));
}

function isAbout({ places, findings }: Event, item: string): boolean {
  const all = [...places, ...findings.flatMap((finding) => finding.places)];
  return all.length === 0 || all.some((place) => place.item === item);
}
