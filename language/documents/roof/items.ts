// The seams and items of the plan: one group each, with its name and its state in words, its tape and its label.
import { el } from '../sheets/element.ts';
import { shown } from '../sheets/shown.ts';
import type { Class, Classed, Classing } from './classes.ts';
import { box, type Drawn, fillOf, group, path, text } from './ink.ts';
import { type Label, labelsFor, letters, type Named } from './labels.ts';
import { type Box, boxOf, n, type Paper } from './paper.ts';
import { type Outline, partOf, ribbon, type Shaped } from './shapes.ts';
import type { Laid } from './tape.ts';

/** Seams are drawn at least so thick, in millimetres of paper: patterns need room. */
export const thinnest = 1.8;

export function itemGroups(
  shapes: readonly Shaped[],
  classes: Classing,
  laid: readonly Laid[],
  paper: Paper,
  id: string,
): readonly Drawn[] {
  const there = shapes.filter(({ item, outlines }) => outlines.length > 0 && classes.worst(item.name));
  const numbers = laid.map(({ number }) => ({
    x: paper.x(number.x) - 1.7,
    y: paper.y(number.y) - 1.7,
    w: 3.4,
    h: 3.4,
  }));
  const tapes = laid.map(({ outline }) => paper.box(outline));
  const labels = labelsOf(there, [...numbers, ...tapes], paper);
  return there.map((shape, i) => {
    const { item } = shape;
    const mine = laid.filter(({ piece }) => piece.item === item.name);
    const name = `${shown(item.name)}: ${shown(classes.words(item.name))}`;
    const count = mine.length === 0 ? '' : `; tape ${mine.map(({ piece }) => piece.number).join(', ')}`;
    return group(
      { 'data-item': shown(item.name), 'data-kind': item.kind, role: 'img', 'aria-label': `${name}${count}` },
      el('title', {}, `${name}${count}`),
      ...shape.outlines.flatMap((outline) => drawn(outline, shape, classes, paper, id)),
      ...mine.map((one) => tape(one, paper)),
      ...mine.map((one) => numberOf(one, paper)),
      ...(labels[i] ?? []).map(({ text: words, x, y }) => text(x, y, words)),
    );
  });
}

function drawn(outline: Outline, { item }: Shaped, classes: Classing, paper: Paper, id: string): readonly Drawn[] {
  const worst = classes.worst(item.name)!;
  const style = (of: Class) => ({
    class: 'roof-line',
    fill: fillOf(of, id),
    stroke: '#111111',
    'stroke-width': 0.3,
    'data-class': of.id,
  });
  switch (outline.shape) {
    case 'rectangle':
      return [box(paper.box(outline), style(worst.of)), ...drops(worst, paper.box(outline))];
    case 'round': {
      const at = { cx: n(paper.x(outline.x)), cy: n(paper.y(outline.y)), r: n(outline.r / paper.scale) };
      return [el('circle', { ...at, ...style(worst.of) }), ...drops(worst, paper.box(boxOf(outline)))];
    }
    case 'point': {
      const [x, y] = [paper.x(outline.x), paper.y(outline.y)];
      return [
        path(`M${n(x)} ${n(y - 1.4)}l1.4 1.4l-1.4 1.4l-1.4 -1.4z`, {
          ...style(worst.of),
          'data-at': `${n(x)} ${n(y)}`,
        }),
        ...drops(worst, { x, y, w: 0, h: 0 }),
      ];
    }
    case 'runs': {
      const whole =
        item.kind === 'slide'
          ? [
              box(paper.box(boxOf(outline)), {
                class: 'roof-line',
                fill: 'none',
                stroke: '#111111',
                'stroke-width': 0.2,
              }),
            ]
          : [];
      const parts = classes.parts(item.name).flatMap((part) => {
        const [from, to] = [part.from / 1_000_000, (part.to ?? Number.POSITIVE_INFINITY) / 1_000_000];
        return partOf(outline.runs, from, to).flatMap((run) => {
          const at = paper.box(ribbon(run, thinnest * paper.scale));
          return [box(at, style(part.of)), ...drops(part, at)];
        });
      });
      return [...whole, ...parts];
    }
  }
}

/** A drop beside what was found wet: it stands for itself, whatever the pattern says. */
function drops({ wet }: Classed, { x, y, w }: Box): readonly Drawn[] {
  if (!wet) return [];
  return [
    path(`M${n(x + w + 0.4)} ${n(y - 2.4)}c1.2 1.6 1.4 2.6 0 2.6c-1.4 0 -1.2 -1 0 -2.6z`, {
      fill: '#3f7fb5',
      'data-wet': 'wet',
    }),
  ];
}

function tape({ piece, outline }: Laid, paper: Paper): Drawn {
  return box(paper.box(outline), {
    class: 'roof-line',
    fill: 'none',
    stroke: '#111111',
    'stroke-width': 0.3,
    'stroke-dasharray': '1.2 0.6',
    'data-piece': piece.number,
  });
}

function numberOf({ piece, number }: Laid, paper: Paper): Drawn {
  const [x, y] = [paper.x(number.x), paper.y(number.y)];
  return group(
    {},
    el('circle', { cx: n(x), cy: n(y), r: 1.6, fill: '#ffffff', stroke: '#111111', 'stroke-width': 0.25 }),
    el(
      'text',
      { x: n(x), y: n(y + 0.75), fill: '#111111', 'font-size': 2.1, 'font-weight': 'bold', 'text-anchor': 'middle' },
      String(piece.number),
    ),
  );
}

/** The labels of each item: one for its first copy; the others get one where there is room. */
function labelsOf(shapes: readonly Shaped[], numbers: readonly Box[], paper: Paper): readonly (readonly Label[])[] {
  const flat = (outline: Outline) => outline.shape !== 'runs';
  const boxes = shapes.flatMap(({ outlines }) =>
    outlines.flatMap((outline) =>
      outline.shape === 'runs'
        ? outline.runs.map((run) => paper.box(ribbon(run, thinnest * paper.scale)))
        : [grown(paper.box(boxOf(outline)), outline.shape === 'point' ? 1.4 : 0)],
    ),
  );
  const frame = {
    x: 0.5,
    y: -paper.above - 1.5,
    w: paper.along - 1,
    h: paper.across + paper.above + paper.below + 3,
  };
  const asked = shapes.flatMap(({ item, outlines }, i) =>
    outlines.map((outline, copy) => ({
      i,
      named: {
        name: item.name,
        box: flat(outline)
          ? grown(paper.box(boxOf(outline)), outline.shape === 'point' ? 1.4 : 0)
          : spot(outline, paper),
        must: copy === 0,
      } satisfies Named,
    })),
  );
  const out: Label[][] = shapes.map(() => []);
  let taken: readonly Box[] = [...boxes, ...numbers];
  for (const { i, named } of asked) {
    const [label] = labelsFor([named], taken, frame);
    if (label === undefined) continue;
    out[i]!.push(label);
    taken = [
      ...taken,
      { x: label.x, y: label.y - letters * 0.8, w: [...label.text].length * letters * 0.54, h: letters },
    ];
  }
  return out;
}

const grown = ({ x, y, w, h: high }: Box, by: number): Box => ({
  x: x - by,
  y: y - by,
  w: w + 2 * by,
  h: high + 2 * by,
});

/** Where the label of a straight seam goes: a third along it. */
function spot(outline: Outline, paper: Paper): Box {
  if (outline.shape !== 'runs') return boxOf(outline);
  const run = outline.runs[outline.runs.length === 3 ? 1 : 0]!;
  const whole = paper.box(ribbon(run, thinnest * paper.scale));
  return whole.w >= whole.h
    ? { ...whole, x: whole.x + whole.w * 0.3, w: whole.w * 0.2 }
    : { ...whole, y: whole.y + whole.h * 0.2, h: whole.h * 0.1 };
}
