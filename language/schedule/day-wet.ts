// What is done indoors if it is wet: pieces cut ahead, a look inside, parts to be ordered.
import type { Estimate } from '../estimate/schema.ts';
import type { RigView } from '../resolve/types.ts';
import { addDays } from '../values/calendar.ts';
import { kitOf } from './day-kit.ts';
import type { DayPlan } from './day-plan.ts';
import { absence, type RigDays } from './obstacle.ts';
import type { Schedule } from './types.ts';

/** So many days ahead work is prepared. */
const ahead = 7;

/** Indoor work of the day and of the week after it. */
export function wetDay(
  { visits, waiting = [] }: Schedule,
  date: string,
  rigs: ReadonlyMap<string, { readonly view: RigView; readonly days: RigDays }>,
  estimates?: ReadonlyMap<string, Estimate>,
): DayPlan['wetDay'] {
  const near = visits.filter(({ days }) => days.some((day) => day >= date && day <= addDays(date, ahead)));
  const inside = near.flatMap((visit) => {
    const rig = rigs.get(visit.rig);
    const there = rig && absence(date, { outOfStorage: true }, rig.days) === undefined;
    const look = visit.tasks.find(({ task }) => task === 'inspect-inside');
    return there && look ? [{ rig: visit.rig, what: look.label }] : [];
  });
  const cut = near.flatMap((visit) => {
    const view = rigs.get(visit.rig)?.view;
    const kit = view ? kitOf(visit.tasks, view, estimates?.get(visit.rig)) : [];
    return kit
      .filter(({ pieces }) => pieces !== undefined)
      .map(({ text }) => ({ rig: visit.rig, what: `cut ${text} for ${visit.days[0]}` }));
  });
  const bench = near.flatMap((visit) =>
    visit.tasks
      .filter(({ task }) => task === 'rebed' || task === 'replace')
      .map(({ items }) => ({ rig: visit.rig, what: `get ${items.join(', ')} ready on the bench` })),
  );
  const order = [...new Set(waiting.map(({ material }) => material))].map((what) => ({ what: `order ${what}` }));
  return [...inside, ...cut, ...bench, ...order];
}
