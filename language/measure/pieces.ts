// The pieces of tape that an item takes: strips of straight seams, frames of flanges.
import type { Explained } from '../explain.ts';
import type { Item, Policy, Rig, Tape } from '../resolve/types.ts';
import type { RoofPoint } from '../statements/slots/shapes.ts';
import type { System } from '../values/display.ts';
import { type Length, lengthOf } from '../values/length.ts';
import { done, type Read, refused } from '../values/quantity.ts';
import { type Strips, stripsOf } from './band.ts';
import { type Long, lengthInput, long } from './figure.ts';
import { rectangleFrame, roundFrame } from './frame.ts';
import { type LayKey, layKey } from './layorder.ts';
import { isPart, type Side, type Stretch, seamLength, straightSides, stretchLength } from './length.ts';
import { keepOffOf, type Span } from './splicing.ts';
import { whyNoTape } from './treatable.ts';

/** One piece of tape, end laps included. */
export interface TapePiece {
  readonly item: string;
  /** Which of several alike, from 1. */
  readonly copy: number;
  /** `strip`, `rear strip`, `outer side`, `front side` ... */
  readonly what: string;
  readonly nm: number;
  readonly figure: Explained;
  /** A side of a frame, which takes longer to lay than a straight strip. */
  readonly frame: boolean;
  readonly lay: LayKey;
  /** From its front end: where no splice should lie. Missing for what is never long enough to be spliced. */
  readonly keepOff?: readonly Span[];
}

/** The pieces of an item, and the strips that lie side by side where it is a straight seam. */
export interface TapePieces {
  readonly pieces: readonly TapePiece[];
  readonly strips?: Strips;
}

/** What of a rig the pieces depend on. */
export type Roofed = Pick<Rig, 'roof' | 'items'>;

/** The order in which the sides of a slide roof are laid: both ends, then along the outside. */
const SIDE_ORDER = ['seam', 'rear end', 'front end', 'outer side'];

/**
 * The pieces of tape that an item takes in a given tape, for each of its copies. A straight seam takes its strips, each
 * as long as the seam and an end lap at both ends; a flange a frame of four. A stretch of a seam takes a strip of just
 * that stretch. Refused, with the reason, for what must not be taped or cannot be measured.
 */
export function tapePieces(
  item: Item,
  rig: Roofed,
  policy: Policy,
  tape: Tape,
  stretch: Stretch | undefined,
  system: System,
): Read<TapePieces> {
  const never = whyNoTape(item);
  if (never !== undefined) return refused(never);
  const seam = seamLength(item, rig.roof, system);
  if (!seam.ok) return seam;
  const whole = seam.value.each.nm;
  const part = isPart(stretch, whole) ? stretch : undefined;
  if (part !== undefined && stretchLength(part, whole) === 0)
    return refused('this stretch lies beyond the end of the seam');
  const sides = straightSides(item, rig.roof);
  if (sides !== undefined) return straight(item, sides, rig, policy, tape, part, system);
  if (part !== undefined) return partOfFrame(item, whole, rig, tape, part, system);
  return frame(item, rig, policy, tape, system);
}

function straight(
  item: Item,
  sides: readonly Side[],
  rig: Roofed,
  policy: Policy,
  tape: Tape,
  part: Stretch | undefined,
  system: System,
): Read<TapePieces> {
  const strips = stripsOf(item, policy, tape, system);
  if (!strips.ok) return strips;
  const runs = runsOf(item, sides, rig, tape, part, system);
  const pieces = copies(item).flatMap((copy) =>
    runs.flatMap(({ what, length, keepOff }) =>
      Array.from({ length: strips.value.count }, (_, i) => ({
        item: item.name,
        copy,
        what: stripName(item, what, i, strips.value.count),
        nm: length.nm,
        figure: length.figure,
        frame: false,
        lay: layKey(item, rig, copy, SIDE_ORDER.indexOf(what) * 100 + i),
        keepOff,
      })),
    ),
  );
  return done({ pieces, strips: strips.value });
}

/** The sides, or what of them lies in the stretch, with an end lap at both ends. */
function runsOf(
  item: Item,
  sides: readonly Side[],
  rig: Roofed,
  tape: Tape,
  part: Stretch | undefined,
  system: System,
): readonly { readonly what: Side['what']; readonly length: Long; readonly keepOff: readonly Span[] }[] {
  const endLap = lengthInput('end_lap', tape.endLap.value, system, tape.endLap.origin);
  const origin = item.kind === 'edge' || item.kind === 'cap' ? rig.roof?.origin : item.origin;
  let start = 0;
  return sides.flatMap(({ what, length }) => {
    const local = part && { from: (part.from ?? 0) - start, to: (part.to ?? Number.POSITIVE_INFINITY) - start };
    start += length.nm;
    const covered: Length = local ? lengthOf(Math.round(stretchLength(local, length.nm)), system) : length;
    if (covered.nm === 0) return [];
    const lap = tape.endLap.value.nm;
    const piece = { start: Math.max(0, local?.from ?? 0) - lap, length: covered.nm + 2 * lap };
    return [
      {
        what,
        keepOff: keepOffOf(item, rig, piece, length.nm),
        length: long(covered.nm + 2 * tape.endLap.value.nm, system, {
          rule: `${local ? 'the stretch' : 'the length'} and an end lap at both ends`,
          formula: 'length + 2 * end_lap',
          inputs: [lengthInput('length', covered, system, origin), endLap],
        }),
      },
    ];
  });
}

function stripName(item: Item, what: Side['what'], index: number, count: number): string {
  const name = what === 'seam' ? 'strip' : what;
  if (count === 1) return name;
  if (count === 2 && item.kind === 'cap') return index === 0 ? 'rear strip' : 'forward strip';
  if (count === 2 && item.kind === 'edge') return index === 0 ? 'outer strip' : 'inner strip';
  return `${what === 'seam' ? '' : `${what}, `}strip ${index + 1} of ${count}`;
}

function frame(item: Item, rig: Roofed, policy: Policy, tape: Tape, system: System): Read<TapePieces> {
  const size = item.size;
  if (size === undefined) return refused('it has no size');
  let sides: { readonly front: Long; readonly flank: Long };
  if (size.shape === 'round') {
    const four = roundFrame(size, item.hole, policy, tape, system);
    if (!four.ok) return four;
    sides = { front: four.value, flank: four.value };
  } else {
    const four = rectangleFrame(size, item.hole, policy, tape, system, item.origin);
    if (!four.ok) return four;
    sides = four.value;
  }
  const pieces = copies(item).flatMap((copy) => {
    const [first, second] = flanks(item.places[copy - 1], rig);
    const four = [
      ['rear side', sides.front],
      [first, sides.flank],
      [second, sides.flank],
      ['front side', sides.front],
    ] as const;
    return four.map(([what, { nm, figure }], i) => ({
      item: item.name,
      copy,
      what,
      nm,
      figure,
      frame: true,
      lay: layKey(item, rig, copy, i),
    }));
  });
  return done({ pieces });
}

/** A stretch of a flange takes one strip: a frame is one tape wide. */
function partOfFrame(
  item: Item,
  whole: number,
  rig: Roofed,
  tape: Tape,
  part: Stretch,
  system: System,
): Read<TapePieces> {
  const round = lengthOf(Math.round(whole), system);
  const [run] = runsOf(item, [{ what: 'seam', length: round }], rig, tape, part, system);
  const pieces = copies(item).map((copy) => ({
    item: item.name,
    copy,
    what: 'strip',
    nm: run!.length.nm,
    figure: run!.length.figure,
    frame: true,
    lay: layKey(item, rig, copy, 0),
  }));
  return done({ pieces });
}

/** The outboard flank first, so that the inboard one, which lies higher, laps it. */
function flanks(place: RoofPoint | undefined, rig: Roofed): readonly [string, string] {
  const curb = place?.across === undefined || !rig.roof || place.across.nm <= rig.roof.across.nm / 2;
  return curb ? ['curbside flank', 'roadside flank'] : ['roadside flank', 'curbside flank'];
}

function copies(item: Item): readonly number[] {
  return Array.from({ length: item.count }, (_, i) => i + 1);
}
