// Under the plan: the scale bar, the legend, and what has no place on the roof.
import type { Rig } from '../../resolve/types.ts';
import { shown } from '../sheets/shown.ts';
import type { Classing } from './classes.ts';
import { box, type Drawn, fillOf, group, path, text } from './ink.ts';
import { letters, widthOf, wrapped } from './labels.ts';
import { n, type Paper } from './paper.ts';
import type { Shaped } from './shapes.ts';

const row = letters + 1.8;

/** The drawing and its height, `width` millimetres wide. */
export function foot(
  shapes: readonly Shaped[],
  classes: Classing,
  paper: Paper | undefined,
  rig: Rig,
  id: string,
  width: number,
): { readonly drawn: readonly Drawn[]; readonly height: number } {
  const drawn: Drawn[] = [];
  let y = 0;
  if (paper) {
    drawn.push(...scaleBar(rig, paper));
    y += 6;
    const used = new Set(shapes.flatMap(({ item }) => classes.parts(item.name).map(({ of }) => of.id)));
    const entries = classes.classes.filter(({ id: one }) => used.has(one));
    let x = 0;
    for (const one of entries) {
      const wide = 6 + widthOf(one.words) + 3;
      if (x > 0 && x + wide > width) {
        x = 0;
        y += row;
      }
      const swatch = { class: 'roof-line', fill: fillOf(one, id), stroke: '#111111', 'stroke-width': 0.3 };
      drawn.push(
        group(
          { 'data-legend': one.id },
          box({ x, y, w: 4.6, h: letters + 0.4 }, swatch),
          text(x + 5.6, y + letters * 0.85, one.words),
        ),
      );
      x += wide;
    }
    y += row;
  }
  for (const line of notes(shapes, classes, paper, rig).flatMap((note) => wrapped(note, width))) {
    drawn.push(text(0, y + letters * 0.85, line));
    y += row - 0.8;
  }
  return { drawn, height: y };
}

/** The scale bar alone. */
export const barOf = (rig: Rig, paper: Paper) => ({ drawn: scaleBar(rig, paper), height: 4 });

/** A bar in the units of the policy, between two and six centimetres long where that can be. */
function scaleBar({ policy }: Rig, { scale }: Paper): readonly Drawn[] {
  const us = policy.units.value === 'us';
  const unit = us ? 304.8 : 1000;
  const steps = us ? [1, 2, 3, 5, 10, 20, 50] : [0.5, 1, 2, 5, 10, 20];
  const count = steps.find((one) => (one * unit) / scale >= 20) ?? steps.at(-1)!;
  const long = (count * unit) / scale;
  const words = `${count} ${us ? 'ft' : 'm'}, drawn 1 : ${scale}`;
  return [
    group(
      { 'data-bar': `${count} ${us ? 'ft' : 'm'}`, 'data-length': n(long) },
      path(`M0 1v2.4h${n(long)}v-2.4M${n(long / 2)} 2.2v1.2`, { 'stroke-width': 0.4 }),
      text(long + 2, 3.2, words),
    ),
  ];
}

const falling: Readonly<Record<string, string>> = {
  edges: 'Water falls to both side edges (arrows).',
  rear: 'Water falls to the rear (arrows).',
  front: 'Water falls to the front (arrows).',
  curbside: 'Water falls to the curb side (arrows).',
  roadside: 'Water falls to the road side (arrows).',
};

function notes(
  shapes: readonly Shaped[],
  classes: Classing,
  paper: Paper | undefined,
  { falls }: Rig,
): readonly string[] {
  const named = shapes
    .filter(({ item, outlines }) => outlines.length === 0 && classes.worst(item.name))
    .map(
      ({ item, missing }) =>
        `${shown(item.name)} (${missing}): ${classes
          .parts(item.name)
          .map(({ of }) => of.words)
          .filter((words, i, all) => all.indexOf(words) === i)
          .join('; ')}`,
    );
  const wet = shapes.some(({ item }) => classes.worst(item.name)?.wet);
  return [
    ...(paper ? [falls ? (falling[falls.value] ?? '') : 'Where water falls to is not recorded.'] : []),
    ...(wet ? ['A drop marks what was found wet.'] : []),
    ...(named.length > 0 ? [`Not drawn: ${named.join('. ')}.`] : []),
  ];
}
