// A figure that is known by three points: least, likely, most.
import { betaCdf } from './beta.ts';

/**
 * Three points and how chance lies between them. `triangular` is the default: it asks for nothing but the three points,
 * and gives the ends their weight. `pert` (a beta distribution of mean `(a + 4m + b) / 6`) trusts the likely value
 * four times as much as an end: that is a trust which somebody must have.
 */
export interface ThreePoint {
  readonly least: number;
  readonly likely: number;
  readonly most: number;
  readonly shape: 'triangular' | 'pert';
}

/** Three points in order; any may be alike. Throws a RangeError on points out of order. */
export function threePoint(
  least: number,
  likely: number,
  most: number,
  shape: ThreePoint['shape'] = 'triangular',
): ThreePoint {
  if (!(-Infinity < least && least <= likely && likely <= most && most < Infinity))
    throw new RangeError(`not in order: ${least}, ${likely}, ${most}`);
  return { least, likely, most, shape };
}

/** A figure that is known. */
export function certain(value: number): ThreePoint {
  return threePoint(value, value, value);
}

export function meanOf({ least, likely, most, shape }: ThreePoint): number {
  return shape === 'triangular' ? (least + likely + most) / 3 : (least + 4 * likely + most) / 6;
}

/** The variance; for `pert` that of the beta distribution, `(mean - a)(b - mean) / 7`, not the classical `((b - a) / 6)^2`. */
export function varianceOf(points: ThreePoint): number {
  const { least, likely, most, shape } = points;
  const mean = meanOf(points);
  if (shape === 'pert') return ((mean - least) * (most - mean)) / 7;
  const [low, high] = [likely - least, most - likely];
  return (low * low + low * high + high * high) / 18;
}

/** Chance that the figure is at most `x`. */
export function chanceUpTo(x: number, points: ThreePoint): number {
  const { least, likely, most } = points;
  if (x >= most) return 1;
  if (x < least) return 0;
  if (points.shape === 'pert') return betaCdf(...scaled(x, points));
  return x < likely
    ? (x - least) ** 2 / ((most - least) * (likely - least))
    : 1 - (most - x) ** 2 / ((most - least) * (most - likely));
}

/** The value that the figure does not exceed with chance `p`, from 0 to 1. */
export function quantileOf(p: number, points: ThreePoint): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`no chance: ${p}`);
  const { least, likely, most } = points;
  const range = most - least;
  if (range === 0) return likely;
  if (points.shape === 'triangular') {
    return p * range <= likely - least
      ? least + Math.sqrt(p * range * (likely - least))
      : most - Math.sqrt((1 - p) * range * (most - likely));
  }
  let [low, high] = [least, most];
  // 60 halvings of the range reach the last digit of a double.
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (chanceUpTo(middle, points) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The integral of `chanceUpTo` from minus infinity to `x`: by how much the figure falls short of `x`, on average. */
export function shortfallOf(x: number, points: ThreePoint): number {
  const { least, likely, most } = points;
  if (x <= least) return 0;
  if (x >= most) return x - meanOf(points);
  if (points.shape === 'triangular') {
    return x < likely
      ? (x - least) ** 3 / (3 * (most - least) * (likely - least))
      : x - meanOf(points) + (most - x) ** 3 / (3 * (most - least) * (most - likely));
  }
  const [u, a, b] = scaled(x, points);
  // x F(x) less the mean of what lies below x.
  return (most - least) * (u * betaCdf(u, a, b) - (a / (a + b)) * betaCdf(u, a + 1, b));
}

/** Chances on the points of a grid, from the point at `index` cells of `step` from 0 on. */
export interface Gridded {
  readonly index: number;
  readonly chances: readonly number[];
}

/**
 * The figure put on a grid: each value is shared between its two neighbours on the grid, the nearer one getting more, so
 * that the mean stays what it is. Exact from the integrated distribution; the chances add up to 1.
 */
export function gridded(points: ThreePoint, step: number): Gridded {
  if (!(step > 0)) throw new RangeError(`no step: ${step}`);
  const index = Math.floor(points.least / step);
  const cells = Math.ceil(points.most / step) - index + 1;
  const at = (cell: number) => shortfallOf((index + cell) * step, points) / step;
  const chances = Array.from({ length: cells }, (_, cell) => {
    const chance = at(cell + 1) - 2 * at(cell) + at(cell - 1);
    // What rounding alone leaves on a cell that has nothing.
    return chance < 1e-12 ? 0 : chance;
  });
  return { index, chances };
}

/** x on 0 ... 1, and the two shapes of the beta distribution. */
function scaled(x: number, { least, likely, most }: ThreePoint): [number, number, number] {
  const range = most - least;
  return [(x - least) / range, 1 + (4 * (likely - least)) / range, 1 + (4 * (most - likely)) / range];
}
