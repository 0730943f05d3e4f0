// Rigs and fleets in a few lines, and their schedules.
import { type Schedule, scheduleOfFleet, scheduleOfRig } from '../../language/schedule/index.ts';
import type { ScheduledTask, Visit } from '../../language/schedule/types.ts';
import { projectOf } from '../project/workspace.ts';

export const materials = `
tape Strip { width 4 in  roll 50 ft at 60 USD  end-lap 2 in  side-lap 1 in  bonds-to epdm, abs, solvent-lap, tape }
sealant Lap {
  family solvent-lap
  grade self-levelling
  cartridge 10.3 fl-oz at 10 USD
  bead 1 in by 1/4 in
  rain 2 h to 6 h
  drive 12 h to 24 h
  wash 7 days
  cover 30 days to 60 days
  bonds-to epdm, abs, solvent-lap
}
sealant Rubber { family silicone  cartridge 10.3 fl-oz at 10 USD  bead 1 in by 1/4 in  cover never }
policy Home { season 04-15 to 10-15  workday 8 h }
`;

export const roof = `
  roof     20 ft by 8 ft  epdm
  edge     curbside, roadside
  cap      front  wide 5 in
  cap      rear   wide 2 in
  opening  vent      16 in by 16 in  at 6 ft, 4 ft   of abs
  opening  skylight  30 in by 22 in  at 12 ft, 4 ft  of abs
  comes-off vent
  inspected 2026-06-01 { rest sound }
`;

/** A rig with a roof of its own and these lines. */
export const rig = (name: string, lines: string, policy = 'Home') =>
  `rig ${name} under ${policy} {${roof}${lines}\n}\n`;

/** The schedule of a rig that has these lines, as of a day in winter unless another is given. */
export function scheduleOf(lines: string, asOf = '2027-01-10', more = ''): Schedule {
  const [view] = projectOf({ 'a.rig': `${materials}${more}${rig('Gull', lines)}` }).rigs('a.rig');
  if (!view) throw new Error('no rig');
  return scheduleOfRig(view, { asOf, today: asOf });
}

/** The schedule of a fleet with these lines and rigs. */
export function fleetOf(
  lines: string,
  rigs: Readonly<Record<string, string>>,
  asOf = '2027-01-10',
  policy = '',
): Schedule {
  const texts = Object.entries(rigs).map(([name, plans]) => rig(name, plans, 'Site'));
  const site = `policy Site like Home {\n ${policy}\n}\n`;
  const text = `${materials}${site}${texts.join('')}fleet Yard under Site {\n  rigs "a.rig"\n${lines}\n}\n`;
  const [found] = projectOf({ 'a.rig': text }).fleets('a.rig');
  if (!found) throw new Error('no fleet');
  return scheduleOfFleet(found.fleet, found.views, { asOf, today: asOf });
}

/** `2027-04-15 wash, taping of front`, a line for each visit. */
export const told = ({ visits }: Schedule) =>
  visits.map(({ rig, days, title }) => `${rig === 'Gull' ? '' : `${rig} `}${days.join(' ')} ${title}`);

export function onlyVisit(schedule: Schedule): Visit {
  const [visit, ...others] = schedule.visits;
  if (!visit || others.length > 0) throw new Error(`${schedule.visits.length} visits`);
  return visit;
}

/** `lay rear`, in the order of work; without what every visit has. */
export const tasksOf = (visit: Visit, ...words: readonly string[]) =>
  visit.tasks
    .filter(({ task }) => words.length === 0 || words.includes(task))
    .map(({ task, items }) => [task, ...items].join(' '));

export function taskOf(visit: Visit, words: string): ScheduledTask {
  const found = visit.tasks.find(({ task, items }) => [task, ...items].join(' ') === words);
  if (!found) throw new Error(`no task ${words}`);
  return found;
}
