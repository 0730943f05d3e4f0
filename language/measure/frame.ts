// Frames of tape round a flange: how far they reach, how their corners close, where a round flange can have one.
import type { Input } from '../explain.ts';
import type { Policy, Tape } from '../resolve/types.ts';
import type { Size } from '../statements/slots/shapes.ts';
import { lengthText, type System } from '../values/display.ts';
import { type Length, lengthOf } from '../values/length.ts';
import { done, type Read, refused } from '../values/quantity.ts';
import { type Long, lengthInput, long } from './figure.ts';

/** The lengths of a frame: front and rear run across, the two flanks along. */
export interface Frame {
  readonly front: Long;
  readonly flank: Long;
}

const QUARTER_INCH = 6_350_000;
const STEP = { us: QUARTER_INCH, metric: 5_000_000 } as const;

/**
 * A frame round a rectangle of `along` by `across`, with width t, bite i onto the flange, reach o = t - i, end lap e.
 * Full-lap: front and rear W + 2o, flanks L + 2o, double at the corners. Short-lap: flanks L - 2i + 2e, between them; a
 * lap longer than the tape is wide would reach out beyond front and rear. Refused where the bite is wider than the flange
 * round its hole, if that is known: the tape would lie over the opening.
 */
export function rectangleFrame(
  size: Extract<Size, { shape: 'rectangle' }>,
  hole: Size | undefined,
  policy: Pick<Policy, 'bite' | 'frame'>,
  tape: Pick<Tape, 'name' | 'width' | 'endLap'>,
  system: System,
  origin: Input['origin'],
): Read<Frame> {
  if (tape.width === undefined) return refused(`the width of ${tape.name} is not known`);
  const [width, bite] = [tape.width.value, policy.bite.value];
  const reach = width.nm - bite.nm;
  if (reach <= 0) return refused(`${width.text} of tape with a bite of ${bite.text} does not reach past the flange`);
  const least = Math.min(size.along.nm, size.across.nm);
  if (2 * bite.nm >= least) return refused('the flange is too small for a frame: boot or sealant only');
  const leg = hole && legOf(size, hole);
  if (leg !== undefined && bite.nm > leg) {
    return refused(
      `a bite of ${bite.text} is wider than its flange of ${lengthText(leg, system)}, so that tape would lie over the opening: boot or sealant only`,
    );
  }
  const side = (name: string, length: Length): Input => lengthInput(name, length, system, origin);
  const shared = [
    lengthInput('tape_width', width, system, tape.width.origin),
    lengthInput('bite', bite, system, policy.bite.origin),
  ];
  const outer = (name: string, length: Length): Long =>
    long(length.nm + 2 * reach, system, {
      rule: 'to the outer corner at both ends',
      formula: `${name} + 2 * (tape_width - bite)`,
      inputs: [side(name, length), ...shared],
    });
  const front = outer('across', size.across);
  if (policy.frame.value === 'full-lap') return done({ front, flank: outer('along', size.along) });
  const lap = tape.endLap;
  const flank = size.along.nm - 2 * bite.nm + 2 * Math.min(lap.value.nm, width.nm);
  return done({
    front,
    flank: long(flank, system, {
      rule: 'between front and rear, lapped under both',
      formula: 'along - 2 * bite + 2 * min(end_lap, tape_width)',
      inputs: [side('along', size.along), ...shared, lengthInput('end_lap', lap.value, system, lap.origin)],
    }),
  });
}

/** How wide a flange is round its hole, where it is narrowest; 0 where the hole reaches beyond it. */
function legOf(size: Extract<Size, { shape: 'rectangle' }>, hole: Size): number {
  const [along, across] = hole.shape === 'round' ? [hole.diameter, hole.diameter] : [hole.along, hole.across];
  return Math.max(0, Math.min(size.along.nm - along.nm, size.across.nm - across.nm) / 2);
}

/**
 * Half the inner side of a square frame round a round flange, in nanometres: the greatest step (1/4 in or 5 mm) that
 * hides the flange's edge in the inner corners, a <= (D/2 - 1/4 in) / sqrt 2. Refused where it leaves no 1/2 in to a
 * riser of radius r or a + t does not reach a margin m past the flange. (Arithmetic; the clearances are from memory.)
 */
export function squareHalf(
  { diameter, riser, width, margin }: { diameter: number; riser: number; width: number; margin: number },
  system: System,
): Read<number> {
  const none = refused('no square frame covers this round flange: boot or sealant only');
  const half = Math.floor((diameter / 2 - QUARTER_INCH) / Math.SQRT2 / STEP[system]) * STEP[system];
  if (half <= 0 || half < riser / 2 + 2 * QUARTER_INCH) return none;
  return half + width < diameter / 2 + margin ? none : done(half);
}

/** The four like pieces of a square frame round a round flange whose pipe has the diameter of the hole: 2 (a + t) each. */
export function roundFrame(
  size: Extract<Size, { shape: 'round' }>,
  hole: Size | undefined,
  policy: Pick<Policy, 'margin'>,
  tape: Pick<Tape, 'name' | 'width'>,
  system: System,
): Read<Long> {
  if (tape.width === undefined) return refused(`the width of ${tape.name} is not known`);
  if (hole?.shape !== 'round') {
    return refused('how wide its pipe is, is not written (`cutout round …`): boot or sealant only');
  }
  const width = tape.width.value;
  const measures = {
    diameter: size.diameter.nm,
    riser: hole.diameter.nm,
    width: width.nm,
    margin: policy.margin.value.nm,
  };
  const half = squareHalf(measures, system);
  if (!half.ok) return half;
  return done(
    long(2 * (half.value + width.nm), system, {
      rule: 'a square frame that hides the edge of the flange in its inner corners',
      formula: '2 * (half_side + tape_width)',
      inputs: [
        lengthInput('half_side', lengthOf(half.value, system), system),
        lengthInput('tape_width', width, system, tape.width.origin),
      ],
    }),
  );
}
