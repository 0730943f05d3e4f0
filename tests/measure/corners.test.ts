import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stripsFor } from '../../language/measure/band.ts';
import { rectangleFrame, roundFrame } from '../../language/measure/frame.ts';
import { tapePieces } from '../../language/measure/pieces.ts';
import type { Policy, Stated, Tape } from '../../language/resolve/types.ts';
import { type Length, lengthOf } from '../../language/values/length.ts';
import { inches, itemOf, nm, policyOf, tapeOf } from './items.ts';

// Whether pieces of tape close the corners and cover their band, by laying them down as rectangles in a plane. Lengths
// are inches, in eighths. It shares nothing with the formulas.

interface Rectangle {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

const rectangle = (x0: number, x1: number, y0: number, y1: number): Rectangle => ({ x: [x0, x1], y: [y0, y1] });
const areaOf = ({ x, y }: Rectangle) => (x[1] - x[0]) * (y[1] - y[0]);
const holds = ({ x, y }: Rectangle, [px, py]: readonly [number, number]) =>
  x[0] < px && px < x[1] && y[0] < py && py < y[1];

/** The cells that the sides of all rectangles cut the plane into: middle and area of each. */
function cellsOf(
  all: readonly Rectangle[],
): readonly { readonly middle: readonly [number, number]; readonly area: number }[] {
  const cuts = (axis: 'x' | 'y') => [...new Set(all.flatMap((each) => each[axis]))].sort((a, b) => a - b);
  const spans = (along: readonly number[]) => along.slice(1).map((end, i) => [along[i]!, end] as const);
  return spans(cuts('x')).flatMap(([x0, x1]) =>
    spans(cuts('y')).map(([y0, y1]) => ({
      middle: [(x0 + x1) / 2, (y0 + y1) / 2] as const,
      area: (x1 - x0) * (y1 - y0),
    })),
  );
}

/** The area of the ring between two rectangles that is covered so many times, by number of layers. */
function layersOf(tape: readonly Rectangle[], outer: Rectangle, inner: Rectangle): ReadonlyMap<number, number> {
  const layers = new Map<number, number>();
  for (const { middle, area } of cellsOf([...tape, outer, inner])) {
    const ring = holds(outer, middle) && !holds(inner, middle);
    const count = tape.filter((piece) => holds(piece, middle)).length;
    // Outside the ring nothing lies: no tape over the lid, none beyond the outer edge.
    if (!ring) expect(count).toBe(0);
    else layers.set(count, (layers.get(count) ?? 0) + area);
  }
  return layers;
}

const eighths = (least: number, most: number) => fc.integer({ min: least * 8, max: most * 8 }).map((n) => n / 8);
const origin = { file: 'a.rig', at: [0, 1] as const, kind: 'record' as const };
const stated = (inch: number): Stated<Length> => ({ value: lengthOf(nm(inch)), origin });
const tapeWith = (width: number, endLap: number): Pick<Tape, 'name' | 'width' | 'endLap'> => ({
  name: 'T',
  width: stated(width),
  endLap: stated(endLap),
});
const policyWith = (frame: 'full-lap' | 'short-lap', bite: number): Pick<Policy, 'frame' | 'bite' | 'margin'> => ({
  frame: { value: frame, origin },
  bite: stated(bite),
  margin: stated(1),
});

/** A flange with a corner at 0, 0; x runs along the roof to the rear. */
interface Flange {
  readonly along: number;
  readonly across: number;
  readonly width: number;
  readonly bite: number;
  readonly lap: number;
}
const flange: fc.Arbitrary<Flange> = fc.record({
  along: eighths(6, 60),
  across: eighths(6, 60),
  width: eighths(2, 12),
  bite: eighths(0, 2),
  lap: eighths(1, 4),
});

describe('a frame round a rectangle', () => {
  const laid = (frame: 'full-lap' | 'short-lap', { along: L, across: W, width: t, bite: i, lap }: Flange) => {
    const size = { shape: 'rectangle', along: lengthOf(nm(L)), across: lengthOf(nm(W)) } as const;
    const got = rectangleFrame(size, undefined, policyWith(frame, i), tapeWith(t, lap), 'us', undefined);
    if (!got.ok) throw new Error(got.message);
    const [front, flank] = [inches(got.value.front), inches(got.value.flank)];
    const o = t - i;
    // Each piece lies with its middle at the middle of its side.
    const across = [(W - front) / 2, (W + front) / 2] as const;
    const length = [(L - flank) / 2, (L + flank) / 2] as const;
    const tape = [
      rectangle(-o, i, ...across),
      rectangle(L - i, L + o, ...across),
      rectangle(...length, -o, i),
      rectangle(...length, W - i, W + o),
    ];
    return {
      tape,
      layers: layersOf(tape, rectangle(-o, L + o, -o, W + o), rectangle(i, L - i, i, W - i)),
      total: 2 * t * (front + flank),
    };
  };
  const usable = flange.filter(({ along, across, width, bite }) => bite < width && 2 * bite < Math.min(along, across));

  it('with full laps covers the ring once and each corner square exactly twice', () => {
    fc.assert(
      fc.property(usable, (given) => {
        const { layers, total } = laid('full-lap', given);
        expect([...layers.keys()].sort()).toEqual([1, 2]);
        expect(layers.get(2)).toBeCloseTo(4 * given.width ** 2, 9);
        expect(layers.get(1)! + 2 * layers.get(2)!).toBeCloseTo(total, 6);
      }),
    );
  });

  it('with short laps leaves no hole, and is double where the flanks lap under front and rear', () => {
    fc.assert(
      fc.property(usable, (given) => {
        const { layers, total } = laid('short-lap', given);
        const lap = Math.min(given.lap, given.width);
        expect([...layers.keys()].sort()).toEqual([1, 2]);
        expect(layers.get(2)).toBeCloseTo(4 * given.width * lap, 6);
        expect(layers.get(1)! + 2 * layers.get(2)!).toBeCloseTo(total, 6);
      }),
    );
  });
});

describe('a square frame round a round flange', () => {
  it('hides the whole flange but what its riser needs, closes its corners and reaches a margin beyond it', () => {
    let framed = 0;
    fc.assert(
      fc.property(eighths(3, 14), eighths(1, 5), eighths(2, 8), (D, riser, t) => {
        const size = { shape: 'round', diameter: lengthOf(nm(D)) } as const;
        const hole = { shape: 'round', diameter: lengthOf(nm(riser)) } as const;
        const got = roundFrame(size, hole, policyWith('full-lap', 1), tapeWith(t, 2), 'us');
        if (!got.ok) return;
        framed++;
        const half = inches(got.value) / 2;
        const a = half - t;
        const tape = [
          rectangle(-half, -a, -half, half),
          rectangle(a, half, -half, half),
          rectangle(-half, half, -half, -a),
          rectangle(-half, half, a, half),
        ];
        const layers = layersOf(tape, rectangle(-half, half, -half, half), rectangle(-a, a, -a, a));
        expect([...layers.keys()].sort()).toEqual([1, 2]);
        expect(layers.get(2)).toBeCloseTo(4 * t * t, 6);
        // All round the edge of the flange: tape lies on it, 1/4 in inside it too, and reaches 1 in past it at the sides.
        for (let degree = 0; degree < 360; degree += 5) {
          const at = (r: number) =>
            [r * Math.cos((degree / 180) * Math.PI), r * Math.sin((degree / 180) * Math.PI)] as const;
          const covered = (r: number) => tape.some((piece) => holds(piece, at(r)));
          expect([covered(D / 2 - 1e-9), covered(D / 2 - 0.25 + 1e-9)]).toEqual([true, true]);
        }
        expect(half).toBeGreaterThanOrEqual(D / 2 + 1);
        expect(a).toBeGreaterThanOrEqual(riser / 2 + 0.5);
      }),
      { numRuns: 400 },
    );
    expect(framed).toBeGreaterThan(50);
  });

  it('of 7 in with a riser of 2 in and 4 in tape takes 50 in (trade notes)', () => {
    const { item, rig } = itemOf('opening stack round 7 in cutout round 2 in');
    const got = tapePieces(item, rig, policyOf('margin 1 in'), tapeOf(), undefined, 'us');
    if (!got.ok) throw new Error(got.message);
    expect(got.value.pieces.reduce((sum, piece) => sum + inches(piece), 0)).toBe(50);
  });
});

describe('strips side by side', () => {
  it('cover the band and its margins, lap each other by the side lap, and reach an end lap beyond both ends', () => {
    fc.assert(
      fc.property(
        eighths(1, 24),
        eighths(0, 2),
        eighths(2, 12),
        eighths(0, 1),
        eighths(12, 400),
        eighths(0, 4),
        (B, m, t, v, L, e) => {
          fc.pre(v < t);
          const strips = stripsFor(stated(B), stated(m), { width: stated(t), sideLap: stated(v) }, 'joint', 'us');
          if (!strips.ok) throw new Error(strips.message);
          const { item, rig } = itemOf(`joint seam ${L} in wide ${B} in`);
          const policy = { ...rig.policy, margin: stated(m) };
          const tape: Tape = { ...tapeOf(), width: stated(t), sideLap: stated(v), endLap: stated(e) };
          const got = tapePieces(item, rig, policy, tape, undefined, 'us');
          if (!got.ok) throw new Error(got.message);
          const lengths = got.value.pieces.map(inches);
          const n = lengths.length;
          const covered = n * t - (n - 1) * v;
          const laid = lengths.map((length, k) => {
            const y = -covered / 2 + k * (t - v);
            return rectangle((L - length) / 2, (L + length) / 2, y, y + t);
          });
          const band = rectangle(0, L, -B / 2 - m, B / 2 + m);
          for (const { middle } of cellsOf([...laid, band])) {
            if (holds(band, middle)) expect(laid.some((piece) => holds(piece, middle))).toBe(true);
          }
          for (const piece of laid) expect(piece.x.map((end) => end + e)).toEqual([0, L + 2 * e]);
          const total = laid.reduce((sum, piece) => sum + areaOf(piece), 0);
          expect(total).toBeCloseTo((L + 2 * e) * (covered + (n - 1) * v), 6);
          expect(total).toBeGreaterThanOrEqual(areaOf(band));
        },
      ),
    );
  });
});

describe('a slide roof', () => {
  it('its three strips lap each other at both outer corners', () => {
    fc.assert(
      fc.property(eighths(24, 160), eighths(12, 40), eighths(1, 2), (L, W, band) => {
        const { item, rig } = itemOf(`slide lounge ${L} in by ${W} in on curbside wide ${band} in`);
        const tape = tapeOf();
        const got = tapePieces(item, rig, rig.policy, tape, undefined, 'us');
        if (!got.ok) throw new Error(got.message);
        const length = (what: string) => inches(got.value.pieces.find((piece) => piece.what === what)!);
        const [outer, front, rear] = [length('outer side'), length('front end'), length('rear end')];
        // The outer side lies along y = 0 from x = 0 to L, the ends run from it to y = W; 4 in tape, its middle on the seam.
        const out = (outer - L) / 2;
        const laid = [
          rectangle(-out, L + out, -2, 2),
          rectangle(-2, 2, -(front - W) / 2, W + (front - W) / 2),
          rectangle(L - 2, L + 2, -(rear - W) / 2, W + (rear - W) / 2),
        ];
        // On the roof both strips lie at a corner, and each goes round it by the end lap, beyond half the band.
        for (const [x, s] of [
          [0, 1],
          [L, -1],
        ] as const) {
          for (const [dx, dy, least] of [
            [1, 1, 2],
            [-1, 1, 1],
            [1, -1, 1],
            [-1, -1, 1],
          ] as const) {
            const at = [x + (s * dx * band) / 2, (dy * band) / 2] as const;
            expect(laid.filter((piece) => holds(piece, at)).length).toBeGreaterThanOrEqual(least);
          }
        }
      }),
    );
  });
});
