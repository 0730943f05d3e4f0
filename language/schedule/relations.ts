// Which plans of a rig come before which: what is laid bare before what is laid, what cures before what covers it, lay order.
import { addDays, addPeriod } from '../values/calendar.ts';
import { nextInSeason } from '../values/season.ts';
import { clocksAfter } from './clocks.ts';
import { type Bound, earliestOf, type Job } from './job.ts';
import { laidUnder } from './laying.ts';
import { closers, openers } from './words.ts';

export interface Relation {
  readonly first: Job;
  readonly then: Job;
  /** Both in one visit, so that nothing is left bare. */
  readonly tied: boolean;
  /** Given the day on which the first one is over, from when the second may be done; without, in the same visit. */
  readonly wait?: (end: string) => Bound;
}

/**
 * The relations of a rig's plans. On one item: stripping, replacing and bedding come before what is laid, in one visit
 * unless their dates keep them apart; drying comes a day before; tape comes before sealant, unless the dates put the
 * sealant so much earlier that it cures before the tape covers it. Tape is laid in lay order; a coating comes last.
 */
export function relationsOf(jobs: readonly Job[]): readonly Relation[] {
  return jobs.flatMap((first) => jobs.flatMap((then) => (first === then ? [] : (relation(first, then) ?? []))));
}

function relation(first: Job, then: Job): Relation | undefined {
  const shared = first.items.filter((name) => then.items.includes(name));
  const plain = { first, then, tied: false };
  if (then.word === 'coat' && (closers.has(first.word) || openers.has(first.word)) && first.word !== 'coat')
    return plain;
  if (first.word === 'tape' && then.word === 'tape')
    return lapsOver(then, first) && !lapsOver(first, then) ? plain : undefined;
  if (shared.length === 0) return undefined;
  if (openers.has(first.word) && closers.has(then.word)) {
    if (isApart(then, first)) return undefined;
    return { ...plain, tied: !isApart(first, then) };
  }
  if (first.word === 'dry' && closers.has(then.word)) {
    const wait = (end: string) => ({
      date: addDays(end, 1),
      because: `${shared.join(', ')} is dried out first, until ${end}`,
    });
    return { ...plain, wait };
  }
  if (first.word === 'seal' && then.word === 'tape' && curesBefore(first, then)) {
    return { ...plain, wait: (end) => coverFrom(first, then, end) };
  }
  if (first.word === 'tape' && then.word === 'seal' && !curesBefore(then, first)) return plain;
  return undefined;
}

/** Whether something in the first plan lies over something in the second. */
function lapsOver(over: Job, under: Job): boolean {
  const items = (job: Job) => job.view.rig.items.filter(({ name }) => job.items.includes(name));
  return items(under).some((low) => items(over).some((high) => laidUnder(low, high)));
}

/** Whether the first plan must be over before the second may begin. */
function isApart(first: Job, then: Job): boolean {
  return first.limit !== undefined && first.limit.date < earliestOf(then.from).date;
}

/** Whether the dates as written put the sealant before the tape: it must be over by then, or has time to cure until then. */
function curesBefore(seal: Job, tape: Job): boolean {
  if (isApart(seal, tape)) return true;
  const { on, after } = tape.plan.statement;
  const written = (on ?? after)?.first;
  const cover = seal.takeoff.sealant?.cover?.value;
  if (written === undefined || cover === undefined || cover === 'never' || cover.high.kind !== 'period') return false;
  const begin = nextInSeason(earliestOf(seal.from).date, seal.view.rig.policy.season.value);
  return addPeriod(begin, cover.high) <= written;
}

function coverFrom({ takeoff: { sealant } }: Job, tape: Job, end: string): Bound {
  const [cover] = sealant
    ? clocksAfter([{ material: sealant, day: end }]).filter(({ clock }) => clock === 'cover')
    : [];
  if (!cover) return { date: addDays(end, 1), because: `it is sealed first, on ${end}` };
  const laid = `${sealant?.name} laid on ${end}`;
  const { limit } = tape;
  if (limit && limit.date < cover.safeFrom && limit.date >= cover.notBefore) {
    const because = `${laid} may be covered at the earliest from ${cover.notBefore}, safely from ${cover.safeFrom}: its last day forces it between the two`;
    return { date: cover.notBefore, because };
  }
  return { date: cover.safeFrom, because: `${laid} may be covered from ${cover.safeFrom}` };
}
