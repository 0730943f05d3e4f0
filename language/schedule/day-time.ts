// When on a day each visit is worked on. While one roof dries the crew is on another; what the heat spoils is over by noon if it
// can be. The blocks of a day are a small project of their own, counted in minutes, that goes through the core.
import { addMinutes } from '../values/calendar.ts';
import { type Activity, solve } from './core/index.ts';
import { speedOf } from './crew.ts';
import type { Visit } from './types.ts';
import { isHeatSensitive } from './weather.ts';

/** Work of a day begins then (common practice); it ends after the hours of the crew. */
export const workBegins = '08:00';

/** A time of day so many minutes after the morning's beginning; never past midnight. */
export function clockTime(minutes: number): string {
  return addMinutes('2000-01-01', workBegins, Math.min(minutes, 15 * 60)).time;
}

/** Minutes from the beginning of work to noon. */
export const noon = 4 * 60;

/** Work without a break for waiting. */
export interface Block {
  readonly tasks: Visit['tasks'];
  readonly minutes: number;
  /** Minutes of waiting behind it that hold nobody. */
  readonly wait: number;
}

/** The part of a visit that falls on a day. */
export interface Share {
  readonly visit: Visit;
  /** Tasks that begin on the day. */
  readonly tasks: Visit['tasks'];
  readonly blocks: readonly Block[];
  /** Which of its days it is, from 1. */
  readonly number: number;
  /** Why what the heat spoils belongs in the morning, where it does. */
  readonly morning?: string;
}

/** What a visit takes of a day, for people of whom each works so many minutes; what is left of one day goes on in the next. */
export function blocksOn(date: string, { days, tasks, crew }: Visit, workday: number): readonly Block[] {
  const speed = speedOf({ people: crew ?? [0] });
  let carried = 0;
  for (const day of days) {
    const mine = tasks.filter((task) => task.date === day);
    const working = mine.reduce((sum, { minutes }) => sum + minutes / speed, carried);
    if (day !== date) {
      carried = Math.max(0, working - workday);
      continue;
    }
    const blocks: Block[] = carried > 0 ? [{ tasks: [], minutes: carried, wait: 0 }] : [];
    for (const task of mine) {
      const last = blocks.at(-1);
      const more = { tasks: [task], minutes: task.minutes / speed, wait: task.waits };
      if (!last || last.wait > 0) blocks.push(more);
      else
        blocks.push({ ...more, tasks: [...(blocks.pop() as Block).tasks, task], minutes: last.minutes + more.minutes });
    }
    let left = workday;
    return blocks.map((block) => {
      const minutes = Math.min(block.minutes, left);
      left -= minutes;
      return { ...block, minutes: Math.max(1, Math.ceil(minutes)), wait: Math.ceil(block.wait) };
    });
  }
  return [];
}

export interface Timed extends Share {
  /** Minutes from the beginning of the day's work, of each block. */
  readonly times: readonly { readonly begin: number; readonly end: number }[];
}

/** So many orders of a day are tried. */
const budget = 90;

/** The shares of a day with the times of their blocks, in order of time. */
export function timed(shares: readonly Share[]): readonly Timed[] {
  const inTurn = [...shares].sort((a, b) => (rankOf(a) < rankOf(b) ? -1 : 1));
  const numbers = numbersOf(inTurn);
  const activities: Activity[] = [];
  const places = inTurn.map(({ visit, blocks, morning }) =>
    blocks.map(({ minutes, wait: _, tasks }, i) => {
      const first = activities.length - 1;
      const before = blocks[i - 1];
      const hot = morning !== undefined && tasks.some(({ task }) => isHeatSensitive(task));
      const mine = new Set(peopleOf(visit).map((person) => numbers.get(person)));
      const uses = Array.from({ length: numbers.size }, (_each, person) => Number(mine.has(person)));
      activities.push({
        duration: minutes,
        uses,
        after: before ? [{ activity: first, lag: before.wait }] : [],
        ...(hot ? { due: noon } : {}),
      });
      return first + 1;
    }),
  );
  const horizon = activities.reduce((sum, { duration, after }) => sum + duration + (after[0]?.lag ?? 0), 1);
  const project = { activities, resources: Array.from({ length: numbers.size }, () => () => 1), horizon };
  const { starts } = solve(project, 'lateness', budget);
  const out = inTurn.map((share, i): Timed => {
    const times = share.blocks.map(({ minutes }, k) => {
      const begin = starts[places[i]?.[k] as number] as number;
      return { begin, end: begin + minutes };
    });
    return { ...share, times };
  });
  const begin = ({ times }: Timed) => times[0]?.begin ?? 0;
  return out.sort((a, b) => begin(a) - begin(b) || (a.visit.rig < b.visit.rig ? -1 : 1));
}

/** The people of a visit: the same numbers are other people in another crew or yard. */
function peopleOf({ crew, crewName, yard }: Visit): readonly string[] {
  return (crew ?? [0]).map((number) => [yard ?? '', crewName ?? '', `${number}`.padStart(6, '0')].join(' '));
}

/** Everybody who works on the day, numbered. */
function numbersOf(shares: readonly Share[]): ReadonlyMap<string, number> {
  const people = new Set(shares.flatMap(({ visit }) => peopleOf(visit)));
  return new Map([...people].sort().map((person, i) => [person, i]));
}

/** What belongs in the morning first, then what is due first, then by the name of the rig. */
function rankOf({ morning, visit }: Share): string {
  return `${morning === undefined ? 1 : 0} ${visit.deadline ?? '9999'} ${visit.rig}`;
}
