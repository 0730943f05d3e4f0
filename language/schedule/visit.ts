// A placed visit as the schedule tells it, with names that stay the same from one schedule to the next.

import type { RigWork } from './board.ts';
import type { Job } from './job.ts';
import { titleOf } from './job.ts';
import { edgeOf, laidUnder } from './laying.ts';
import { compare } from './obstacle.ts';
import { endOf, type Held } from './place.ts';
import type { Step } from './steps.ts';
import type { ScheduledTask, Visit } from './types.ts';
import { isHeatSensitive, morningOnly } from './weather.ts';
import { rankOf } from './words.ts';

/** The visits of a rig in order of time, and the name of each. */
export function namedVisits(work: RigWork): {
  readonly visits: readonly Visit[];
  readonly ids: ReadonlyMap<Held, string>;
} {
  const rig = work.ground.view.rig.name;
  const inTime = [...work.held].sort((a, b) => compare(a.packed.days[0] as string, b.packed.days[0] as string));
  const sentence = sentenceOf(work);
  const name = counter();
  const nameTask = counter();
  const ids = new Map(inTime.map((visit) => [visit, name(`${rig}/${workOf(visit.jobs)}`)]));
  const visits = inTime.map((visit) => {
    const taskIds = new Map(visit.steps.map(({ key }) => [key, nameTask(`${rig}/${key}`)]));
    const tasks = visit.steps.map((step) => {
      const because = [...step.because, ...brokenLaps(step, visit, inTime, work)].map(sentence);
      return taskOf(step, visit, taskIds, because);
    });
    const deadline = visit.jobs.flatMap(({ limit, due }) => [limit?.date ?? [], due?.date ?? []].flat()).sort()[0];
    return {
      id: ids.get(visit) as string,
      rig,
      title: inOrder(visit.jobs).map(titleOf).join('; '),
      plans: inOrder(visit.jobs).map((job) => work.keys.get(job) as string),
      ...(work.days.yard === undefined ? {} : { yard: work.days.yard }),
      ...(visit.team.of.name === undefined ? {} : { crewName: visit.team.of.name }),
      ...(visit.bay === undefined ? {} : { bay: visit.bay }),
      days: visit.packed.days,
      tasks,
      minutes: round(visit.steps.reduce((sum, { minutes }) => sum + minutes, 0)),
      people: visit.team.people.length,
      crew: visit.team.people,
      order: visit.order,
      ...(deadline === undefined ? {} : { deadline }),
      because: [
        ...visit.because,
        ...late(visit, deadline),
        ...indoors(visit),
        ...mornings(visit, work),
        ...openNights(tasks, visit),
      ].map(sentence),
      clocks: visit.clocks,
    };
  });
  return { visits, ids };
}

/** What is laid bare on one day and closed on a later one, where no roof is over it. */
function openNights(tasks: readonly ScheduledTask[], { bay }: Held): readonly string[] {
  if (bay !== undefined) return [];
  const items = [...new Set(tasks.flatMap(({ task, items: mine }) => (opening.has(task) ? mine : [])))];
  const nights = items.flatMap((item) => {
    const days = (of: ReadonlySet<string>) =>
      tasks.flatMap((task) => (of.has(task.task) && task.items.includes(item) ? [task.date] : [])).sort();
    const bare = days(opening)[0];
    const closed = days(closing).at(-1);
    return bare !== undefined && closed !== undefined && bare < closed ? [`${item} from ${bare} to ${closed}`] : [];
  });
  if (nights.length === 0) return [];
  return [
    `open over night: ${nights.join(', ')}: cover it every evening and before rain, and strip no more in a day than can be closed in it`,
  ];
}

const opening: ReadonlySet<string> = new Set(['strip', 'strip-hard', 'replace', 'rebed']);
const closing: ReadonlySet<string> = new Set(['gun', 'gun-around', 'lay', 'frame']);

/** Names that are given once: the next time with the first number that is free. */
function counter(): (stem: string) => string {
  const given = new Set<string>();
  return (stem) => {
    let name = stem;
    for (let i = 2; given.has(name); i++) name = `${stem}/${i}`;
    given.add(name);
    return name;
  };
}

function inOrder(jobs: readonly Job[]): readonly Job[] {
  return [...jobs].sort((a, b) => rankOf(a.word) - rankOf(b.word) || a.row - b.row);
}

/** `strip-skylight,tape-front+rear`: the same whatever the order of the lines. */
function workOf(jobs: readonly Job[]): string {
  const parts = [...jobs]
    .sort((a, b) => rankOf(a.word) - rankOf(b.word))
    .map(({ word, named }) => {
      const names = [...named].sort();
      const shown = names.length > 3 ? [...names.slice(0, 2), `${names.length - 2}-more`] : names;
      return shown.length === 0 ? word : `${word}-${shown.join('+')}`;
    });
  return [...new Set(parts)].sort().join(',');
}

function taskOf(
  { key, task, label, items, materials, minutes, waits, after }: Step,
  { packed }: Held,
  ids: ReadonlyMap<string, string>,
  because: readonly string[],
): ScheduledTask {
  return {
    id: ids.get(key) as string,
    task,
    label,
    items,
    materials,
    date: packed.dayOf.get(key) as string,
    minutes: round(minutes),
    waits: round(waits),
    after: after.map((each) => ids.get(each) as string),
    because,
  };
}

/** Tape that is laid in an earlier visit than what it should lap over. */
function brokenLaps(step: Step, visit: Held, inTime: readonly Held[], { ground }: RigWork): readonly string[] {
  if (step.task !== 'lay') return [];
  const { items } = ground.view.rig;
  const over = items.find(({ name }) => name === step.items[0]);
  if (!over || edgeOf(over) === undefined) return [];
  return inTime.slice(inTime.indexOf(visit) + 1).flatMap((later) =>
    later.steps.flatMap(({ task, items: [name], key }) => {
      const under = items.find((item) => item.name === name);
      if (task !== 'lay' || !under || !laidUnder(under, over)) return [];
      return [
        `${under.name} is laid later, on ${later.packed.dayOf.get(key)}, though it belongs under ${over.name}: lay both in one visit, or bridge each corner with a patch or a bead on the forward edge`,
      ];
    }),
  );
}

function late(visit: Held, deadline: string | undefined): readonly string[] {
  const end = endOf(visit);
  return deadline !== undefined && end > deadline ? [`it is late: it was due by ${deadline}`] : [];
}

function indoors({ bay }: Held): readonly string[] {
  return bay === undefined ? [] : [`it stands in ${bay} while the roof is open or it is out of season`];
}

/** Tape and sealant of hot days. */
function mornings({ steps, packed, jobs }: Held, { days }: RigWork): readonly string[] {
  const materials = jobs.flatMap((job) => job.materials);
  const why = steps.flatMap(({ task, key }) =>
    isHeatSensitive(task) ? (morningOnly(packed.dayOf.get(key) as string, materials, days.weather) ?? []) : [],
  );
  return [...new Set(why)];
}

/** A sentence begins with a capital, but a name stays as it was written. */
function sentenceOf(work: RigWork): (text: string) => string {
  const { rig } = work.ground.view;
  const names = new Set([rig.name, ...rig.items.map(({ name }) => name)]);
  for (const { materials } of work.jobs) for (const { name } of materials) names.add(name);
  return (text) => {
    const [first = ''] = text.split(/[ ,:]/, 1);
    const begun = names.has(first) ? text : `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
    return begun.endsWith('.') ? begun : `${begun}.`;
  };
}

/** To a hundredth of a minute: what is below is noise of the arithmetic. */
function round(minutes: number): number {
  return Math.round(minutes * 100) / 100;
}
