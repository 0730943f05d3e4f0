/**
 * Times the schedule of seeded fleets over 12 months with two bays, with their lateness weighted by severity against its bound
 * (each plan alone on an empty board, open roofs one a day in each bay), beside a rule without thought: each plan for itself on its earliest free day in the
 * order of the lines, nothing joined. Run it with `npm run bench schedule`.
 */
import { type Schedule, scheduleOfFleet } from '../../language/schedule/index.ts';
import { fleetFrom, manyRigs } from '../schedule/many.ts';
import { naiveSchedule } from './naive-schedule.ts';

const asOf = '2027-04-01';
const dates = { asOf, today: asOf };
const seeds = 3;

interface Run {
  readonly ms: number;
  readonly lateness: number;
  readonly bound: number;
  readonly visits: number;
  readonly unplaced: number;
  readonly last: string;
  readonly again: number;
  readonly naive: ReturnType<typeof naiveSchedule>;
}

function runOf(rigs: number, seed: number): Run {
  const { fleet, views } = fleetFrom(manyRigs(rigs, seed));
  const start = performance.now();
  const schedule: Schedule = scheduleOfFleet(fleet, views, dates);
  const ms = performance.now() - start;
  const from = performance.now();
  scheduleOfFleet(fleet, views, dates, schedule);
  const again = performance.now() - from;
  const { days = 0, bound = 0 } = schedule.lateness ?? {};
  return {
    ms,
    lateness: days,
    bound,
    visits: schedule.visits.length,
    unplaced: schedule.unplaced.length,
    last: schedule.visits.at(-1)?.days.at(-1) ?? '',
    again,
    naive: naiveSchedule(fleet, views, dates),
  };
}

const rows: Record<string, Record<string, string>> = {};
for (const rigs of [1, 60, 300]) {
  const runs = Array.from({ length: seeds }, (_, i) => runOf(rigs, 40 + i));
  const range = (of: (run: Run) => number): string => {
    const all = runs.map((run) => Math.round(of(run)));
    return [...new Set([Math.min(...all), Math.max(...all)])].join(' to ');
  };
  rows[`${rigs} rigs`] = {
    ms: range((run) => run.ms),
    'ms again': range((run) => run.again),
    'days late x severity': range((run) => run.lateness),
    'bound of it': range((run) => run.bound),
    'naive late': range((run) => run.naive.lateness),
    visits: range((run) => run.visits),
    'naive visits': range((run) => run.naive.visits),
    'without a day': range((run) => run.unplaced),
    'last day':
      runs
        .map(({ last }) => last)
        .sort()
        .at(-1) ?? '',
    'naive last':
      runs
        .map(({ naive }) => naive.last)
        .sort()
        .at(-1) ?? '',
  };
}
console.table(rows);
