// A crew as the calendar sees it: who can do what on which days.
import type { Fleet } from '../resolve/types.ts';
import { addDays, weekday } from '../values/calendar.ts';
import type { Obstacle } from './obstacle.ts';
import type { PlanWord } from './words.ts';

/** The days and the skills of one crew. */
export interface Shift {
  readonly name?: string;
  /** Days of the week on which it works, 1 for Monday. */
  readonly days: ReadonlySet<number>;
  readonly off: readonly { readonly first: string; readonly last: string }[];
  readonly does: (word: PlanWord) => boolean;
}

const everyDay: ReadonlySet<number> = new Set([1, 2, 3, 4, 5, 6, 7]);
const names = ['Mondays', 'Tuesdays', 'Wednesdays', 'Thursdays', 'Fridays', 'Saturdays', 'Sundays'];
const everything = () => true;

/** An owner, or one person of a fleet that writes of no crew, works on any day. */
export const alone: Shift = { days: everyDay, off: [], does: everything };

/** The crews of a fleet, or of the yard that it is seen from, as written. */
export function shiftsOf(fleet?: Fleet): readonly Shift[] {
  if (!fleet || fleet.crews.length === 0) return [alone];
  return fleet.crews.map(({ name, days, off, skills }) => {
    const can = skills && new Set<string>(skills);
    return {
      ...(name === undefined ? {} : { name }),
      days: new Set(days),
      off,
      does: can ? (word) => can.has(word) : everything,
    };
  });
}

export const canDo = (words: Iterable<PlanWord>, { does }: Shift): boolean => [...words].every(does);

/** Whether a crew works on a day, as far as its own days decide. */
export function worksOn(day: string, { days, off }: Shift): boolean {
  return days.has(weekday(day)) && !off.some(({ first, last }) => first <= day && day <= last);
}

/** Why none of some crews works on a day, and the first day on which that may be otherwise; undefined where one does. */
export function whyNobody(day: string, shifts: readonly Shift[]): Obstacle | undefined {
  let soonest: Obstacle | undefined;
  for (const shift of shifts) {
    const why = whyNot(day, shift);
    if (!why) return undefined;
    if (!soonest || why.next < soonest.next) soonest = why;
  }
  if (!soonest || shifts.length < 2 || shifts.some(({ days }) => days.has(weekday(day)))) return soonest;
  return { ...soonest, because: `nobody who can do it works on ${names[weekday(day) - 1]}` };
}

function whyNot(day: string, { name, days, off }: Shift): Obstacle | undefined {
  const leave = off.find(({ first, last }) => first <= day && day <= last);
  if (leave) return { because: `${crewCalled(name)} is off until ${leave.last}`, next: addDays(leave.last, 1) };
  if (days.has(weekday(day))) return undefined;
  const which = names[weekday(day) - 1];
  const because = name === undefined ? `nobody works on ${which}` : `${crewCalled(name)} does not work on ${which}`;
  return { because, next: addDays(day, 1), weekly: true };
}

/** `crew Ladder`, or what one crew without a name is called. */
export const crewCalled = (name: string | undefined): string => (name === undefined ? 'the crew' : `crew ${name}`);

/** Why no crew can do some work together; undefined where one can. */
export function whyUnskilled(
  words: ReadonlySet<PlanWord>,
  shifts: readonly Shift[],
  yard: string | undefined,
): string | undefined {
  if (shifts.some((shift) => canDo(words, shift))) return undefined;
  const at = yard === undefined ? '' : ` at ${yard}`;
  const nobodys = [...words].filter((word) => !shifts.some(({ does }) => does(word)));
  if (nobodys.length > 0) return `no crew${at} does ${spoken(nobodys)}`;
  return `no crew${at} does ${spoken([...words])} together, and they belong in one visit`;
}

function spoken(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
