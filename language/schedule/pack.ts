// The steps of a visit laid out over days that follow each other.
import type { Task } from '../statements/words.ts';
import { addDays } from '../values/calendar.ts';
import { type Crew, speedOf, type Team } from './crew.ts';
import { absence, isDayOff, type Needs, type Obstacle, obstacleOn, type RigDays } from './obstacle.ts';
import { crewCalled } from './shift.ts';
import type { Step } from './steps.ts';

export interface Packed {
  readonly days: readonly string[];
  /** The day on which each step begins, by its key. */
  readonly dayOf: ReadonlyMap<string, string>;
  /** Minutes of the team on each day, each of its people. */
  readonly taken: ReadonlyMap<string, number>;
}

/** Rounding in minutes must not open a new day. */
const NOTHING = 1e-6;

/** What is cleaned is laid on the same day; a wet roof is not left half washed. Other work goes on in the morning. */
const inOneGo: ReadonlySet<string> = new Set([
  'wash',
  'wipe',
  'prime',
  'lay',
  'frame',
  'press',
  'gun',
  'gun-around',
] satisfies Task[]);

/** A day with what is left of it: of the team's time, and until the evening, since waiting takes time but nobody's. */
interface Today {
  date: string;
  work: number;
  evening: number;
}

/**
 * Lays the steps out from a day on, which itself must be one on which somebody works. A run that prepares and lays
 * something is kept on one day if a day can hold it; other work goes on over the next days. Days off are passed over; a
 * visit does not go on over a closure, out of season, or while the rig is away. An obstacle says why this first day will
 * not do.
 */
export function pack(
  load: Load,
  first: string,
  team: Team,
  crew: Crew,
  needs: Needs,
  days: RigDays,
): Packed | Obstacle {
  const speed = speedOf(team);
  const left = crew.left(team, first);
  const busy: Obstacle = {
    because: `${crewCalled(team.of.name)} has no time left on ${first}`,
    next: addDays(first, 1),
  };
  // What a day can hold is done in one; what it cannot begins with half a day at least.
  const total = load.minutes / speed;
  const wanted = total + load.waits <= team.minutes + NOTHING ? total : Math.min(total, team.minutes / 2);
  if (left + NOTHING < wanted || left <= NOTHING) return busy;
  const dayOf = new Map<string, string>();
  const taken = new Map<string, number>();
  const today: Today = { date: first, work: left, evening: team.minutes };

  const tomorrow = (): Obstacle | undefined => {
    let day = addDays(today.date, 1);
    while (isDayOff(day, needs, days) && !absence(day, needs, days)) day = addDays(day, 1);
    const against = obstacleOn(day, needs, days);
    if (against) return against;
    Object.assign(today, { date: day, work: crew.left(team, day), evening: team.minutes });
    return today.work <= NOTHING ? busy : undefined;
  };
  const spend = (minutes: number) => {
    today.work -= minutes;
    today.evening -= minutes;
    taken.set(today.date, (taken.get(today.date) ?? 0) + minutes);
  };

  for (const run of load.wholes.flatMap((whole) => runsIn(whole, speed, team))) {
    const working = run.reduce((sum, { minutes }) => sum + minutes / speed, 0);
    // What follows the last of the work, drying over night, needs no daylight.
    const inside = working + run.slice(0, -1).reduce((sum, { waits }) => sum + waits, 0);
    const fits = working <= today.work + NOTHING && inside <= today.evening + NOTHING;
    if (!fits && inside <= team.minutes + NOTHING && run.some(({ task }) => inOneGo.has(task))) {
      if (dayOf.size === 0) return busy;
      const against = tomorrow();
      if (against) return fromFirst(against, first);
      if (working > today.work + NOTHING) return busy;
    }
    for (const step of run) {
      let more = step.minutes / speed;
      if (more > NOTHING && Math.min(today.work, today.evening) <= NOTHING) {
        const against = tomorrow();
        if (against) return fromFirst(against, first);
      }
      dayOf.set(step.key, today.date);
      if (!taken.has(today.date)) taken.set(today.date, 0);
      while (more > NOTHING) {
        const now = Math.min(more, today.work, today.evening);
        spend(now);
        more -= now;
        if (more <= NOTHING) break;
        const against = tomorrow();
        if (against) return fromFirst(against, first);
      }
      today.evening = Math.max(0, today.evening - step.waits);
    }
  }
  return { days: [...taken.keys()], dayOf, taken };
}

/** What stands against a later day of a visit stands against its first day too; the search goes on a day at a time. */
function fromFirst({ because }: Obstacle, first: string): Obstacle {
  return { because, next: addDays(first, 1) };
}

/** Runs of which each leaves open what the next one closes. */
interface Whole {
  readonly runs: readonly (readonly Step[])[];
  readonly steps: readonly Step[];
}

/** An item is opened and closed on one day if a day can hold that. */
function runsIn({ runs, steps }: Whole, speed: number, { minutes: day }: Team): readonly (readonly Step[])[] {
  if (runs.length < 2) return runs;
  const inside = steps.reduce((sum, { minutes, waits }, i) => {
    return sum + minutes / speed + (i < steps.length - 1 ? waits : 0);
  }, 0);
  return inside <= day + NOTHING ? [steps] : runs;
}

/** What a visit asks of its days, the same whichever they are. */
export interface Load {
  readonly wholes: readonly Whole[];
  readonly minutes: number;
  readonly waits: number;
}

/** Steps with what they ask of the days of a visit. */
export function withLoad(steps: readonly Step[]): { readonly steps: readonly Step[]; readonly load: Load } {
  return { steps, load: loadOf(steps) };
}

function loadOf(steps: readonly Step[]): Load {
  const sum = (of: (step: Step) => number) => steps.reduce((all, step) => all + of(step), 0);
  return { wholes: wholesOf(steps), minutes: sum(({ minutes }) => minutes), waits: sum(({ waits }) => waits) };
}

function wholesOf(steps: readonly Step[]): readonly Whole[] {
  return parted(steps, ({ whole }) => whole).map((mine) => ({ runs: parted(mine, ({ run }) => run), steps: mine }));
}

/** Neighbours of one number together. */
function parted(steps: readonly Step[], numberOf: (step: Step) => number): readonly (readonly Step[])[] {
  const parts: Step[][] = [];
  for (const step of steps) {
    const last = parts.at(-1);
    if (last?.[0] && numberOf(last[0]) === numberOf(step)) last.push(step);
    else parts.push([step]);
  }
  return parts;
}
