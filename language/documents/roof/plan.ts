// The plan of a roof to scale, as SVG. One unit of the picture is one millimetre of paper.

import { renderToString } from 'preact-render-to-string';
import type { RigView } from '../../resolve/types.ts';
import type { RigState } from '../../seams/index.ts';
import { el } from '../sheets/element.ts';
import { shortened, shown } from '../sheets/shown.ts';
import { around } from './around.ts';
import { type By, classing } from './classes.ts';
import { barOf, foot } from './foot.ts';
import { box, type Drawn, group, patterns, planStyle, text } from './ink.ts';
import { itemGroups } from './items.ts';
import { widthOf } from './labels.ts';
import { type Box, boxOf, n, type Paper, paperFor } from './paper.ts';
import { type Shaped, shapesOf } from './shapes.ts';
import { laidOn, type Piece } from './tape.ts';

export { planStyle } from './ink.ts';

export interface PlanOptions {
  /** What the patterns show; the condition where nothing is said. */
  readonly by?: By;
  /** Numbered pieces of tape of a work plan. */
  readonly pieces?: readonly Piece[];
  /** Before the names of patterns and titles: unique where several plans stand in one page. */
  readonly id?: string;
  /** The most that the roof may be long on paper, in millimetres. */
  readonly width?: number;
  /** A plan inside a page leaves its style to the page (`planStyle`). */
  readonly inPage?: boolean;
  /** Without heading, legend and notes: the page around it has them. */
  readonly bare?: boolean;
}

/**
 * The roof to scale as an SVG document: front on the left, one unit a millimetre of paper, `data-scale` millimetres of the
 * roof for each. Inside `g[data-roof]` the origin is the front end of the upper side. Every item is a group with its name
 * (`data-item`) and its state in words; what has no place on the roof is listed below.
 */
export function roofPlan(view: RigView, state: RigState, options: PlanOptions = {}): string {
  // Markup forbids the end of a section in plain text, and the renderer leaves it alone.
  return `${renderToString(planOf(view, state, options)).replaceAll(']]>', ']]&gt;')}\n`;
}

const margin = { left: 16, right: 12, top: 9 };

/** The same as an element, to be put into a page. */
export function planOf(view: RigView, state: RigState, options: PlanOptions = {}): Drawn {
  const { rig } = view;
  const { by = 'condition', pieces = [], id = 'roof', width = 165, inPage = false, bare = false } = options;
  const classes = classing(view, state, by);
  const shapes = shapesOf(rig);
  const title = `Roof of ${shown(rig.name)} ${by === 'due' ? 'by what falls due' : 'by condition'} as of ${state.asOf}`;
  if (rig.roof === undefined) return unmeasured(title, foot(shapes, classes, undefined, rig, id, 120), id, inPage);

  const paper = paperFor(rig, rig.roof, shapes, width);
  const laid = shapes.flatMap((shape) => laidOn(shape, pieces, rig));
  const [left, top] = [margin.left, (bare ? 3 : margin.top) + paper.above + 5];
  const words = bare ? 0 : Math.max(left + widthOf(title) + margin.right, 120);
  const wide = Math.max(left + paper.along + margin.right, words);
  const below = bare ? barOf(rig, paper) : foot(shapes, classes, paper, rig, id, wide - left - 4);
  const footTop = top + paper.across + paper.below + 8;
  const high = footTop + below.height + 3;
  const described = [
    `${rig.roof.along.text} by ${rig.roof.across.text}, drawn 1 to ${paper.scale}, the front on the left, the ${rig.policy.curb.value === 'left' ? 'road' : 'curb'} side above.`,
    ...shapes.map(({ item }) => `${shown(item.name)}: ${shown(classes.words(item.name)) || 'not there'}.`),
  ].join(' ');
  return el(
    'svg',
    {
      ...head(wide, high, id),
      'data-scale': paper.scale,
    },
    el('title', { id: `${id}-title` }, title),
    el('desc', { id: `${id}-desc` }, described),
    inPage ? null : el('style', {}, planStyle),
    patterns(classes.classes, id),
    box({ x: 0, y: 0, w: wide, h: high }, { class: 'roof-paper', fill: '#ffffff' }),
    bare ? null : text(left, 5, shortened(title, 90), { 'font-weight': 'bold', 'font-size': 3 }),
    group(
      { transform: `translate(${n(left)} ${n(top)})`, 'data-roof': shown(rig.name) },
      ...around(rig, paper, flatBoxes(shapes, paper)),
      ...itemGroups(shapes, classes, laid, paper, id),
    ),
    group({ transform: `translate(${n(left)} ${n(footTop)})` }, ...below.drawn),
  );
}

const round: ReadonlySet<string> = new Set(['edge', 'cap', 'slide']);

/** What lies on the roof apart from the seams that run round it, with room for its name. */
function flatBoxes(shapes: readonly Shaped[], paper: Paper): readonly Box[] {
  return shapes
    .filter(({ item }) => !round.has(item.kind))
    .flatMap(({ outlines }) =>
      outlines.map((outline) => {
        const { x, y, w, h } = paper.box(boxOf(outline));
        return { x: x - 3, y: y - 3.4, w: w + 6, h: h + 6.8 };
      }),
    );
}

function head(wide: number, high: number, id: string): Record<string, string> {
  return {
    xmlns: 'http://www.w3.org/2000/svg',
    width: `${n(wide)}mm`,
    height: `${n(high)}mm`,
    viewBox: `0 0 ${n(wide)} ${n(high)}`,
    role: 'img',
    'aria-labelledby': `${id}-title ${id}-desc`,
    'font-family': 'system-ui, sans-serif',
  };
}

/** A roof without a size has no plan: what is on it is listed. */
function unmeasured(title: string, below: ReturnType<typeof foot>, id: string, inPage: boolean): Drawn {
  const [wide, high] = [130, below.height + 16];
  return el(
    'svg',
    head(wide, high, id),
    el('title', { id: `${id}-title` }, title),
    el('desc', { id: `${id}-desc` }, 'The roof has no size: nothing can be drawn to scale.'),
    inPage ? null : el('style', {}, planStyle),
    box({ x: 0, y: 0, w: wide, h: high }, { class: 'roof-paper', fill: '#ffffff' }),
    text(4, 5, shortened(title, 70), { 'font-weight': 'bold', 'font-size': 3 }),
    text(4, 10, 'The roof has no size: write `roof LENGTH by WIDTH`.'),
    group({ transform: 'translate(4 14)' }, ...below.drawn),
  );
}
