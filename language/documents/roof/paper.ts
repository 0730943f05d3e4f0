// From millimetres of the roof to millimetres of paper: the scale, the turn, the room that the drawing takes.
import type { Rig, Roof } from '../../resolve/types.ts';
import { mm, type Outline, type Shaped } from './shapes.ts';

/** A number as it stands in the picture: to a thousandth of a millimetre, the same on every machine. */
export function n(value: number): number {
  const rounded = Math.round(value * 1000) / 1000;
  return rounded === 0 ? 0 : rounded;
}

/** Usual scales: 1 mm of paper for so many of the roof. */
const scales = [5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000];

export interface Paper {
  /** 1 : scale. */
  readonly scale: number;
  /** Size of the roof on paper. */
  readonly along: number;
  readonly across: number;
  /** How far slides reach out above and below, on paper. */
  readonly above: number;
  readonly below: number;
  readonly x: (x: number) => number;
  readonly y: (y: number) => number;
  /** The outline on paper. */
  readonly box: (outline: Box) => Box;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/**
 * The front lies on the left. Seen from above, the right of travel is then up: the curb side, unless it is on the left.
 * The scale is the first of the usual ones that leaves the drawing at most so wide.
 */
export function paperFor(rig: Rig, roof: Roof, shapes: readonly Shaped[], width: number): Paper {
  const [along, across] = [mm(roof.along), mm(roof.across)];
  const boxes = shapes.flatMap(({ outlines }) => outlines.map(boxOf));
  const low = Math.min(0, ...boxes.map(({ y }) => y));
  const high = Math.max(across, ...boxes.map(({ y, h }) => y + h));
  const scale = scales.find((one) => along / one <= width) ?? Math.ceil(along / width);
  const turned = rig.policy.curb.value === 'left';
  const y = (value: number) => (turned ? across - value : value) / scale;
  return {
    scale,
    along: along / scale,
    across: across / scale,
    above: (turned ? high - across : -low) / scale,
    below: (turned ? -low : high - across) / scale,
    x: (x) => x / scale,
    y,
    box: (box) => ({
      x: box.x / scale,
      y: turned ? y(box.y + box.h) : y(box.y),
      w: box.w / scale,
      h: box.h / scale,
    }),
  };
}

/** The rectangle round an outline. */
export function boxOf(outline: Outline): Box {
  switch (outline.shape) {
    case 'rectangle':
      return outline;
    case 'round':
      return { x: outline.x - outline.r, y: outline.y - outline.r, w: 2 * outline.r, h: 2 * outline.r };
    case 'point':
      return { x: outline.x, y: outline.y, w: 0, h: 0 };
    case 'runs': {
      const points = outline.runs.flatMap(({ from, to }) => [from, to]);
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
      const [x, y] = [Math.min(...xs), Math.min(...ys)];
      return { x, y, w: Math.max(...xs) - x, h: Math.max(...ys) - y };
    }
  }
}

export const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
