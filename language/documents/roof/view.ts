// What the roof plan beside the text shows: the drawing by condition and by due date, and every seam in walking order with
// all that is known of it in words.
import type { Due } from '../../due/index.ts';
import { seamLength } from '../../measure/length.ts';
import type { Item, RigView } from '../../resolve/types.ts';
import type { RigState } from '../../seams/index.ts';
import { lengthText, type System } from '../../values/display.ts';
import { shown } from '../sheets/shown.ts';
import { walkingOrder } from '../sheets/walking.ts';
import { type By, type Classed, type Classing, classing } from './classes.ts';
import { firstDues, itemsOf, workDues } from './due-classes.ts';
import { roofPlan } from './plan.ts';
import { shapesOf } from './shapes.ts';

/** A seam or an item of the roof as a line of words. */
export interface SeamLine {
  readonly item: string;
  /** `roadside edge, cracked, 18 ft 8 in, due 18 Oct 2026`. */
  readonly says: string;
  /** Why the due is due; missing where nothing is. */
  readonly why?: string;
  /** Why it is not on the drawing; missing where it is. */
  readonly missing?: string;
  /** Its class in the legend of each drawing. */
  readonly class: Readonly<Record<By, string>>;
}

/** One of the two drawings, with the classes that it shows. */
export interface Drawing {
  /** SVG; every drawn seam is a group with `data-item`. */
  readonly svg: string;
  readonly legend: readonly { readonly id: string; readonly words: string }[];
}

export interface RoofView {
  readonly name: string;
  /** `25 Nov 2026`. */
  readonly asOf: string;
  readonly drawings: Readonly<Record<By, Drawing>>;
  readonly seams: readonly SeamLine[];
  /** What is to be known of the whole: where water falls to, what falls due on all of it. */
  readonly notes: readonly string[];
}

/** The widest that the roof is drawn, in units of the picture in which letters are 2.4 high: readable on a screen. */
const screenWidth = 105;

/** Everything that a view of the roof shows. Items that have been taken away are left out. */
export function roofView(view: RigView, state: RigState): RoofView {
  const { rig } = view;
  const by = { condition: classing(view, state, 'condition'), due: classing(view, state, 'due') };
  const dues = workDues(view, state);
  const first = firstDues(dues);
  const missing = new Map(shapesOf(rig).map(({ item, missing: why }) => [item.name, why]));
  const system = rig.policy.units.value;
  const seams = walkingOrder(rig)
    .flatMap(({ items }) => items)
    .flatMap((item): readonly SeamLine[] => {
      const worst = { condition: by.condition.worst(item.name), due: by.due.worst(item.name) };
      if (!worst.condition || !worst.due) return [];
      const due = first.get(item.name);
      const measured = seamLength(item, rig.roof, system);
      const says = [
        `${shown(item.name)} ${item.kind}`,
        conditionText(by.condition.parts(item.name), system),
        ...(measured.ok ? [measured.value.all.figure.text] : []),
        dueText(due),
      ];
      const where = missing.get(item.name);
      return [
        {
          item: item.name,
          says: says.join(', '),
          ...(due ? { why: because(due) } : {}),
          ...(where === undefined ? {} : { missing: where }),
          class: { condition: worst.condition.of.id, due: worst.due.of.id },
        },
      ];
    });
  const drawing = (way: By): Drawing => ({
    svg: roofPlan(view, state, { by: way, id: `plan-${way}`, width: screenWidth, inPage: true, bare: true }),
    legend: legendOf(by[way], rig.items),
  });
  return {
    name: shown(rig.name),
    asOf: dayInWords(state.asOf),
    drawings: { condition: drawing('condition'), due: drawing('due') },
    seams,
    notes: [
      rig.roof ? '' : 'The roof has no size, so nothing can be drawn: write `roof LENGTH by WIDTH`.',
      rig.roof && !rig.falls ? 'Where water falls to is not recorded.' : '',
      seams.some(({ item }) => by.condition.worst(item)?.wet) ? 'A drop marks what was found wet.' : '',
      ...dues.filter((due) => itemsOf(due).length === 0).map((due) => `${capital(dueText(due))}: ${because(due)}.`),
    ].filter((note) => note !== ''),
  };
}

function legendOf({ classes, parts }: Classing, items: readonly Item[]): Drawing['legend'] {
  const used = new Set(items.flatMap(({ name }) => parts(name).map(({ of }) => of.id)));
  return classes.filter(({ id }) => used.has(id)).map(({ id, words }) => ({ id, words }));
}

function conditionText(parts: readonly Classed[], system: System): string {
  const words = ({ of, wet }: Classed) => `${of.words}${wet ? ', wet' : ''}`;
  const [only, ...more] = parts;
  if (only && more.length === 0) return words(only);
  const end = (to: number | undefined) => (to === undefined ? 'its end' : lengthText(to, system));
  return parts.map((part) => `${words(part)} from ${lengthText(part.from, system)} to ${end(part.to)}`).join(', ');
}

function dueText(due: Due | undefined): string {
  if (due === undefined) return 'nothing due';
  if (due.status === 'overdue') return `overdue since ${dayInWords(due.date)}`;
  return due.days === 0 ? 'due today' : `due ${dayInWords(due.date)}`;
}

const because = (due: Due): string => due.because.replace(/\.$/, '');
const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `2026-10-18` as it is read out: `18 Oct 2026`. */
function dayInWords(date: string): string {
  const [year, month, day] = date.split('-').map(Number);
  return `${day} ${months[(month ?? 1) - 1]} ${year}`;
}
