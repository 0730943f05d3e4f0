// The work sheet of a rig: one block a visit, each on a page of its own, from the cautions to the lines of the record.

import type { CuttingList, Estimate } from '../../estimate/index.ts';
import type { RigView } from '../../resolve/types.ts';
import type { Visit } from '../../schedule/index.ts';
import type { RigState } from '../../seams/index.ts';
import { hoursText } from '../../values/display.ts';
import { planOf } from '../roof/index.ts';
import { shortTitle, whoseOf } from '../titles.ts';
import { recordLines } from './afterwards.ts';
import { cautionsBox } from './cautions-box.ts';
import { clockTable } from './clocks.ts';
import { type Element, el } from './element.ts';
import { materialsFor, toolsFor } from './kit.ts';
import { goNoGo } from './limits.ts';
import { blank, choice, clock, day, field, list, room, table, tick, typed } from './marks.ts';
import { page } from './page.ts';
import { shown } from './shown.ts';
import { stepList } from './steps.ts';
import { temperatureUnit } from './units.ts';
import { visitDangers } from './visit-dangers.ts';
import { drawnPieces, type VisitWork, workOf } from './visit-work.ts';

export interface WorkSheetInput {
  readonly view: RigView;
  readonly state: RigState;
  readonly estimate: Estimate;
  /** The visits of this rig in order of time. */
  readonly visits: readonly Visit[];
  /** The lists that tape is cut by: the rig's own, or those of a fleet that buys together. */
  readonly cutting: readonly CuttingList[];
  /** The folder that the files of the estimate are named from. */
  readonly folder: string;
}

/** The whole page. A rig without visits gets a page that says so. */
export function workSheet(input: WorkSheetInput): string {
  const { view, state, visits } = input;
  const unit = view.rig.identity.unit?.value;
  const head = el(
    'p',
    {},
    ...(unit === undefined ? [] : ['Unit ', typed(unit), '. ']),
    `As of ${state.asOf}, computed from what was recorded and planned.`,
  );
  const works = visits.map((visit) => workOf(visit, view, state, input.estimate, input.cutting, input.folder));
  const body =
    works.length === 0
      ? [
          el(
            'p',
            {},
            'No work is planned that a day could be found for. A plan is a line such as `tape front with MyTape`.',
          ),
        ]
      : works.map((work, i) => block(work, i, input));
  return page(`Work sheet: ${view.rig.name}`, head, ...body);
}

function block(work: VisitWork, index: number, { view, state, estimate }: WorkSheetInput): Element {
  const { visit } = work;
  const { rig, material } = view;
  const [first, last] = [visit.days[0] as string, visit.days.at(-1) as string];
  const when = first === last ? first : `${first} to ${last}`;
  const system = estimate.system;
  const unit = temperatureUnit(system);
  const lays = visit.tasks.some(({ task }) => laying.has(task));
  const lines = recordLines(work, material, system);
  return el(
    'section',
    index === 0 ? {} : { class: 'new' },
    el('h2', {}, `${when}: ${shown(shortTitle(visit.title))}`),
    el(
      'p',
      {},
      `${hoursText(visit.minutes)} of work, ${visit.people} ${visit.people === 1 ? 'person at work, a second one stands by' : 'people'}`,
      shown(whoseOf(visit)),
      visit.bay === undefined ? '.' : `, in ${shown(visit.bay)}.`,
      dueText(visit.deadline, last),
    ),
    el(
      'p',
      {},
      field('who', blank('who', 'middle')),
      field('who stands by', blank('who stands by', 'middle')),
      field('date', day('date of the work')),
      field('start', clock('start')),
      field('end', clock('end')),
    ),
    cautionsBox(visitDangers(work, view, state.asOf), 'h3'),
    ...(lays ? [el('h3', {}, 'Go or no go'), goNoGo(work.materials, system)] : []),
    el('h3', {}, 'Take along'),
    kit(work, view, estimate),
    ...cutting(work),
    ...(looksOnly(work)
      ? []
      : [
          el('h3', {}, work.pieces.length > 0 ? 'The roof with its numbered pieces' : 'The roof'),
          el(
            'div',
            { class: 'plan' },
            planOf(view, state, { ...plan, id: `v${index + 1}`, pieces: drawnPieces(work, material) }),
          ),
        ]),
    el('h3', {}, 'Steps'),
    ...stepList(work),
    ...(lays ? [el('h3', {}, 'Clocks'), clockTable(work.materials, visit)] : []),
    ...(looksOnly(work) ? [] : usedAndFound(work, unit)),
    ...(lines.length > 0
      ? [
          el('h3', {}, 'What to write down afterwards'),
          el(
            'p',
            {},
            `In the history of ${shown(rig.name)}, one line for each thing that was done; leave out what is not known:`,
          ),
          el('pre', {}, lines.join('\n')),
        ]
      : [el('p', {}, 'What is found goes onto the inspection sheet; its last lines are the ones to write down.')]),
  );
}

function dueText(deadline: string | undefined, last: string): string {
  if (deadline === undefined) return '';
  return deadline < last ? ` Late: it was due by ${deadline}.` : ` Due by ${deadline}.`;
}

/** A look needs no plan here: the inspection sheet has it. */
const looksOnly = ({ visit }: VisitWork): boolean =>
  visit.tasks.every(({ task }) => task === 'set-up' || task.startsWith('inspect'));

const laying: ReadonlySet<string> = new Set(['lay', 'frame', 'gun', 'gun-around', 'coat', 'patch', 'prime']);
/** Fits between the margins of A4 and of US Letter. */
const plan = { inPage: true, width: 156 } as const;

function kit(work: VisitWork, view: RigView, { system }: Estimate): Element {
  const boxed = (text: string) => [tick(text), ` ${text}`];
  const materials = materialsFor(work, view.material, view.rig.policy, system);
  return el(
    'div',
    { class: 'kit' },
    list(toolsFor(work.visit).map(boxed)),
    ...(materials.length > 0 ? [list(materials.map(boxed))] : []),
    ...(work.rolls.length > 0 ? [list(work.rolls.map((roll) => boxed(shown(roll))))] : []),
  );
}

function cutting({ cuts, splices }: VisitWork): readonly Element[] {
  if (cuts.length === 0) return [];
  const rows = cuts.map(({ piece, part, length, from }) => [
    [tick(`piece ${piece.number} is cut`), ` ${piece.number}${part ? `, part ${part[0]} of ${part[1]}` : ''}`],
    typed(piece.item),
    shown(piece.what),
    length,
    typed(`${piece.tape}: ${from}`),
  ]);
  return [
    el('h3', {}, 'Cut'),
    el(
      'div',
      { class: 'snug' },
      table(
        'In the order in which they are laid; write the number on the liner',
        ['piece', 'on', 'as', 'length', 'from'],
        rows,
      ),
    ),
    ...(splices.length > 0 ? [list(splices)] : []),
  ];
}

function usedAndFound(work: VisitWork, unit: string): readonly Element[] {
  return [
    ...(work.materials.length > 0 ? [el('h3', {}, 'What was used'), used(work)] : []),
    el(
      'p',
      {},
      field('air', blank('air'), ` ${unit}`),
      field('surface', blank('surface'), ` ${unit}`),
      field('humidity', blank('humidity'), ' %'),
      choice('second look by another person'),
    ),
    room('what was found, what was not done and why', 4),
  ];
}

function used({ materials }: VisitWork): Element {
  const heads = ['material', 'used', 'lot', 'left over'];
  const rows = materials.map(({ name }) => [
    typed(name),
    blank(`${shown(name)}, used`, 'middle'),
    blank(`${shown(name)}, lot`, 'middle'),
    blank(`${shown(name)}, left over`, 'middle'),
  ]);
  const spare = [
    'other',
    blank('other, used', 'middle'),
    blank('other, lot', 'middle'),
    blank('other, left over', 'middle'),
  ];
  return el('div', { class: 'snug' }, table('Amount, lot and rest of each', heads, [...rows, spare]));
}
