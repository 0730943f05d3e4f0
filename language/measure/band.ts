// How wide the band is that tape must cover, and how many strips side by side that takes.
import type { Explained } from '../explain.ts';
import type { BandKind, Item, Policy, Stated, Tape } from '../resolve/types.ts';
import type { System } from '../values/display.ts';
import type { Length } from '../values/length.ts';
import { done, type Read, refused } from '../values/quantity.ts';
import { type Long, lengthInput, long } from './figure.ts';

/** The strips of a seam. `slack` is what they cover beyond band and margins. */
export interface Strips {
  readonly count: number;
  readonly figure: Explained;
  readonly slack: Long;
  /** Less than 1/4 in to spare on a side edge, where a hand laid strip wanders. */
  readonly noSlack: boolean;
}

const QUARTER_INCH = 6_350_000;
/** Ratios of lengths nearer to a whole number than this are whole: it is far below what can be laid. */
const WHOLE = 1e-6;

/** The kind of seam that decides the default band; undefined for what is never covered. */
export function bandKind(item: Item): BandKind | undefined {
  switch (item.kind) {
    case 'cap':
      return (item.side ?? item.name) === 'front' ? 'front-cap' : 'rear-cap';
    case 'edge':
    case 'slide':
    case 'opening':
    case 'mount':
    case 'joint':
      return item.kind;
    default:
      return undefined;
  }
}

/** The band to be covered: as the item says, else the policy's for its kind. */
export function bandOf(item: Item, policy: Policy): Stated<Length> | undefined {
  if (item.wide !== undefined) return { value: item.wide, origin: item.origin };
  const kind = bandKind(item);
  return kind && policy.bands[kind];
}

/**
 * The least number n of strips of width t with n t - (n - 1) v >= B + 2 m: band B, margin m on each side, side lap v.
 * Refused where no number of strips reaches, since the side lap is not less than the width.
 */
export function stripsFor(
  band: Stated<Length>,
  margin: Stated<Length>,
  tape: { readonly width: Stated<Length>; readonly sideLap: Stated<Length> },
  kind: BandKind,
  system: System,
): Read<Strips> {
  const [B, m, t, v] = [band, margin, tape.width, tape.sideLap].map((each) => each.value.nm) as [number, ...number[]];
  if (v! >= t!)
    return refused(`a side lap of ${tape.sideLap.value.text} leaves nothing of a width of ${tape.width.value.text}`);
  const need = B + 2 * m!;
  const ratio = (need - v!) / (t! - v!);
  const count = Math.max(1, Math.ceil(ratio - WHOLE));
  const name = `${kind.replace('-', '_')}_band`;
  const inputs = [
    lengthInput(name, band.value, system, band.origin),
    lengthInput('margin', margin.value, system, margin.origin),
    lengthInput('tape_width', tape.width.value, system, tape.width.origin),
    lengthInput('side_lap', tape.sideLap.value, system, tape.sideLap.origin),
  ];
  const slack = count * t! - (count - 1) * v! - need;
  return done({
    count,
    figure: {
      value: count,
      unit: 'strips',
      text: count === 1 ? '1 strip' : `${count} strips`,
      rule: 'the fewest strips that cover the band and a margin on each side',
      formula: `max(1, ceil(round((${name} + 2 * margin - side_lap) / (tape_width - side_lap), 6)))`,
      inputs,
    },
    slack: long(slack, system, {
      rule: 'what the strips cover beyond band and margins',
      formula: `strips * tape_width - (strips - 1) * side_lap - ${name} - 2 * margin`,
      inputs: [...inputs, { name: 'strips', value: count, text: String(count) }],
    }),
    noSlack: kind === 'edge' && slack < QUARTER_INCH,
  });
}

/** The strips of an item's seam in a tape. Refused where tape has no width or the item no band. */
export function stripsOf(item: Item, policy: Policy, tape: Tape, system: System): Read<Strips> {
  const band = bandOf(item, policy);
  const kind = bandKind(item);
  if (band === undefined || kind === undefined) return refused('there is no band to cover');
  if (tape.width === undefined) return refused(`the width of ${tape.name} is not known`);
  const known = { width: tape.width, sideLap: tape.sideLap };
  return stripsFor(band, policy.margin, known, kind, system);
}
