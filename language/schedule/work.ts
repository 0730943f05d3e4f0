// The parts of each kind of work on one item: what is done, with what, how long it takes, how long it has to wait.

import type { Takeoff } from '../estimate/takeoff.ts';
import { compareKeys } from '../measure/layorder.ts';
import type { Item, Rig } from '../resolve/types.ts';
import type { Task } from '../statements/words.ts';
import type { Duration } from '../values/period.ts';
import { minutesOf } from './hours.ts';
import type { Job } from './job.ts';
import { namesOf } from './words.ts';

/** A task without its day and without what comes before it. Minutes are those of one person. */
export interface Part {
  readonly task: string;
  readonly label: string;
  readonly items: readonly string[];
  readonly materials: readonly string[];
  readonly minutes: number;
  readonly waits: number;
  readonly because: readonly string[];
}

const notCounted = 'no rate is known for it: its hours are not counted';

/** A look at the roof from outside and inside, for all that is to be inspected in a visit. */
export function lookOf(jobs: readonly Job[], rig: Rig): readonly Part[] {
  const whole = jobs.some((job) => job.items.length === 0);
  const items = whole ? [] : [...new Set(jobs.flatMap((job) => job.items))];
  const what = whole || items.length === rig.items.length ? 'every seam' : namesOf(items);
  return [
    {
      ...plain('inspect', `inspect ${what}`, items, minutesOf('inspect', 'roof', rig)),
      because: ['looked at before anything is washed: stains show where water went'],
    },
    {
      ...plain('inspect-inside', 'look and measure inside', items, minutesOf('inspect-inside', { times: 1 }, rig)),
      because: ['leaks are found inside'],
    },
  ];
}

/** Old sealant or tape comes off. Undefined for what has none or cannot be measured. */
export function strippingOf({ takeoff, view: { rig } }: Job, item: Item): readonly Part[] {
  return takeoff.stripped
    .filter((each) => each.item === item.name)
    .map(({ hard, length }) => {
      const task = hard ? 'strip-hard' : 'strip';
      const minutes = minutesOf(task, { nm: length.nm }, rig);
      return {
        ...plain(task, `strip ${item.name}`, [item.name], minutes),
        because: ['stripped before anything is laid on it'],
      };
    });
}

/** A part or rail is taken off and bedded anew. */
export function beddingOf({ takeoff, view: { rig }, materials }: Job, item: Item): readonly Part[] {
  const length = takeoff.bedded[takeoff.items.indexOf(item)];
  if (length === undefined) return [];
  const minutes = minutesOf('rebed', { nm: length.nm }, rig);
  return [
    {
      ...plain('rebed', `take off ${item.name} and bed it anew`, [item.name], minutes),
      materials: materials.map(({ name }) => name),
      because: ['bedded before it is sealed'],
    },
  ];
}

const labels: Partial<Record<Job['word'], (where: string) => string>> = {
  cover: (where) => `put a temporary cover on ${where}`,
  dry: (where) => `dry out ${where}`,
};

/** The rates of work that is no taping, sealing or stripping. */
const rates: Partial<Record<Job['word'], Task>> = {
  replace: 'replace',
  patch: 'patch',
  tighten: 'tighten',
  coat: 'coat',
  dry: 'dry-out',
  cover: 'temporary-cover',
};

/** Replacing, patching, tightening, drying out, a temporary cover: by the piece; coating: by the roof. */
export function wordOf({ word, materials, view: { rig } }: Job, items: readonly Item[]): readonly Part[] {
  const names = items.map(({ name }) => name);
  const where = names.length === 0 ? 'the roof' : namesOf(names);
  const label = labels[word]?.(where) ?? `${word} ${where}`;
  const why = word === 'dry' ? ['nothing is closed up before two readings say that it is dry'] : [];
  const rate = rates[word];
  const times = Math.max(
    1,
    items.reduce((sum, { count }) => sum + count, 0),
  );
  const minutes = rate === undefined ? 0 : minutesOf(rate, rate === 'coat' ? 'roof' : { times }, rig);
  return [
    {
      ...plain(word === 'cover' ? 'temporary-cover' : word, label, names, minutes),
      materials: materials.map(({ name }) => name),
      because: [...why, ...(minutes > 0 ? [] : [notCounted])],
    },
  ];
}

/** Wipe, prime where a primer is named or needed, lay, press. */
export function tapingOf(job: Job, item: Item, notes: readonly string[]): readonly Part[] {
  const { takeoff } = job;
  const { rig } = job.view;
  const pieces = takeoff.pieces.filter((piece) => piece.item === item.name);
  const sum = (frame: boolean) => pieces.reduce((nm, piece) => (piece.frame === frame ? nm + piece.nm : nm), 0);
  const [frame, straight] = [sum(true), sum(false)];
  const nm = frame + straight;
  const laid = [...pieces].sort((a, b) => compareKeys(a.lay, b.lay));
  const order = [...new Set(laid.map(({ what }) => what))];
  const minutes = along('lay', straight, rig) + along('frame', frame, rig);
  return [
    ...prepare(job, item, nm, takeoff.tapeLength?.nm ?? 0),
    {
      ...plain(
        frame > 0 ? 'frame' : 'lay',
        `lay tape on ${item.name}${order.length > 1 ? `: ${order.join(', then ')}` : ''}`,
        [item.name],
        minutes,
      ),
      materials: takeoff.tape ? [takeoff.tape.name] : [],
      because: [...notes, ...uncounted(pieces.length === 0, takeoff, item, 'no tape is named')],
    },
    ...some({
      ...plain('press', `press and roll ${item.name}`, [item.name], minutesOf('press', { nm }, rig)),
      because: ['rolled across first, then along: tape holds by pressure'],
    }),
  ];
}

/** Wipe and prime where it is named, then gun. */
export function sealingOf(job: Job, item: Item, earlier: string | undefined): readonly Part[] {
  const { takeoff } = job;
  const { rig } = job.view;
  const beads = takeoff.beads.filter((bead) => bead.item === item.name);
  const sum = (around: boolean) => beads.reduce((nm, bead) => (bead.around === around ? nm + bead.length.nm : nm), 0);
  const minutes = along('gun', sum(false), rig) + along('gun-around', sum(true), rig);
  const task = beads.some(({ around }) => around) ? 'gun-around' : 'gun';
  return [
    ...prepare(job, item, sum(true) + sum(false), takeoff.beadLength?.nm ?? 0),
    {
      ...plain(task, `gun sealant on ${item.name}`, [item.name], minutes),
      materials: takeoff.sealant ? [takeoff.sealant.name] : [],
      because: [
        sealedAfter[earlier ?? ''] ?? 'on a clean, dry surface',
        ...uncounted(beads.length === 0, takeoff, item, 'no sealant is named'),
      ],
    },
  ];
}

/** Nothing of a task takes no time. */
function along(task: Task, nm: number, rig: Rig): number {
  return nm > 0 ? minutesOf(task, { nm }, rig) : 0;
}

const afterTape = 'after the tape: a bead under it would have to cure first';
const sealedAfter: Readonly<Record<string, string>> = {
  lay: afterTape,
  frame: afterTape,
  press: afterTape,
  strip: 'after the old sealant is off',
  'strip-hard': 'after the old sealant is off',
  rebed: 'after it is bedded',
  replace: 'after the part is replaced',
  patch: 'after the patch',
};

function uncounted(nothing: boolean, { skipped }: Takeoff, item: Item, otherwise: string): readonly string[] {
  if (!nothing) return [];
  const reason = skipped.find((each) => each.item === item.name)?.reason ?? otherwise;
  return [`its hours are not counted: ${reason}`];
}

/** The last wipe, and the primer with its flash time: an item's share of what the plan takes. */
function prepare({ takeoff, view: { rig } }: Job, item: Item, nm: number, all: number): readonly Part[] {
  const share = all > 0 ? nm / all : 0;
  return takeoff.liquids.flatMap(({ task, material, length }) => {
    if ((task !== 'wipe' && task !== 'prime') || length === undefined) return [];
    const prime = task === 'prime';
    const flash = prime && material?.kind === 'primer' ? material.flash : undefined;
    const part = plain(
      task,
      prime ? `prime ${item.name} and let it flash off` : `wipe ${item.name} with two cloths`,
      [item.name],
      minutesOf(task, { nm: share * length.nm }, rig),
    );
    return some({
      ...part,
      materials: material ? [material.name] : [],
      waits: flash ? wholeMinutes(flash.value.high) : 0,
      because: [prime ? 'primed on a wiped, dry surface' : 'wiped just before: what lies open gets dirty again'],
    });
  });
}

/** A part that takes no time is none: a rate of `none` counts it with another task. */
function some(part: Part): readonly Part[] {
  return part.minutes > 0 ? [part] : [];
}

export function plain(task: string, label: string, items: readonly string[], minutes: number): Part {
  return { task, label, items, materials: [], minutes, waits: 0, because: [] };
}

function wholeMinutes(duration: Duration): number {
  return duration.kind === 'period' ? duration.days * 24 * 60 : duration.minutes;
}
