// The steps of a visit in laying order: each with a box to tick, its place, material, pieces, and how it is done.

import type { ScheduledTask } from '../../schedule/index.ts';
import { hoursText } from '../../values/display.ts';
import { type Content, type Element, el } from './element.ts';
import { tick } from './marks.ts';
import { shown } from './shown.ts';
import type { Cut, VisitWork } from './visit-work.ts';

/** How each kind of work is done: common practice; the label comes first. */
const how: Readonly<Record<string, string>> = {
  wash: 'From the ladder side, a part at a time; rinse until it runs clear. Nothing is laid on a wet surface.',
  strip: 'Plastic scraper first, the blade away from you and never on the membrane. All of it comes off.',
  'strip-hard': 'Plastic blades, in small bites; what is left of silicone keeps everything else from sticking.',
  wipe: 'One cloth wet, a dry one after it before it has flashed off. Turn to a clean face often.',
  prime: 'Thin and even, no puddles; wait until it has flashed off.',
  lay: 'Dry-fit it, take the liner off a hand at a time, lay it down without stretching. Round its corners.',
  frame:
    'In the order of the numbers; each piece laps the one before. A dab of sealant on each corner where four edges meet.',
  press: 'Roll across first, from the middle outwards, then along: edges, ends and laps last and hardest.',
  gun: 'One even bead, no gaps; a dab on each screw. Self-levelling sealant only on what lies flat.',
  'gun-around':
    'Once round without stopping at a corner; a dab on each screw. Self-levelling sealant only on what lies flat.',
  rebed: 'Lift it without bending, clean both faces, new bedding all round, screws in the old order, by hand.',
  'temporary-cover': 'Weighted and tied; no vent of furnace, heater, fridge or generator under it.',
  inspect: 'By the inspection sheet, before anything is washed.',
  'inspect-inside': 'By the indoor page of the inspection sheet.',
};

const lays: ReadonlySet<string> = new Set(['lay', 'frame']);

export function stepList({ visit, cuts }: VisitWork): readonly Element[] {
  const byDay = new Map<string, ScheduledTask[]>();
  for (const task of visit.tasks) byDay.set(task.date, [...(byDay.get(task.date) ?? []), task]);
  let done = 0;
  // How a kind of work is done is said at its first step.
  const told = new Set<string>();
  return [...byDay].flatMap(([date, tasks]) => {
    const first = done + 1;
    done += tasks.length;
    const steps = tasks.map((task) => {
      const known = told.has(task.task);
      told.add(task.task);
      return stepOf(task, cuts, known);
    });
    const list = el('ol', { class: first === 1 ? 'steps' : 'steps on', start: first }, ...steps);
    return byDay.size > 1 ? [el('h4', {}, date), list] : [list];
  });
}

function stepOf(task: ScheduledTask, cuts: readonly Cut[], known: boolean): Element {
  const materials = task.materials.length > 0 ? ` with ${task.materials.map(shown).join(', ')}` : '';
  const time = [
    ...(task.minutes > 0 ? [hoursText(task.minutes)] : []),
    ...(task.waits > 0 ? [`then wait ${hoursText(task.waits)}`] : []),
  ].join(', ');
  const pieces = lays.has(task.task) ? cuts.filter(({ piece }) => onTask(piece, task)) : [];
  const way = known ? undefined : how[task.task];
  const lap = lays.has(task.task) ? 'Laps: forward over rear.' : '';
  // The numbers of its pieces say the order better.
  const label = shown(pieces.length > 0 ? (task.label.split(':')[0] as string) : task.label);
  const why = task.because.map(shown).join(' ');
  const lines: Content[] = [
    el('b', {}, `${label}${materials}`, time ? ` (${time})` : ''),
    pieces.length > 0 ? el('p', { class: 'pieces' }, pieces.map(pieceText).join('; ')) : null,
    way || lap ? el('p', {}, [way, lap].filter(Boolean).join(' ')) : null,
    why ? el('p', { class: 'small' }, why) : null,
  ];
  return el('li', {}, tick(shown(task.label)), ...lines);
}

const onTask = (piece: Cut['piece'], task: ScheduledTask): boolean =>
  task.items.includes(piece.item) && (task.materials.length === 0 || task.materials.includes(piece.tape));

/** `piece 5, part 1 of 2, strip, 19 ft, from roll of 50 ft, number 1`. */
export function pieceText({ piece, part, length, from }: Cut): string {
  const share = part ? `, part ${part[0]} of ${part[1]}` : '';
  return `piece ${piece.number}${share}, ${shown(piece.what)}, ${length}, from ${shown(from)}`;
}
