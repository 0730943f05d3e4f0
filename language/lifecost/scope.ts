// Which seams the ways to keep them are compared on, and what each of them would take.
import { partEnd } from '../due/index.ts';
import { seamLength } from '../measure/length.ts';
import { tapePieces } from '../measure/pieces.ts';
import { whyNoSealant } from '../measure/treatable.ts';
import type { Item, RigView, Sealant, Tape } from '../resolve/types.ts';
import {
  coatCount,
  coatsOf,
  groundOf,
  isThere,
  type RigState,
  rank,
  type SeamState,
  surfacesOf,
} from '../seams/index.ts';
import { daysBetween } from '../values/calendar.ts';
import type { Period } from '../values/period.ts';
import { type ThreePoint, threePoint } from './threepoint.ts';

/** Days in a year, that of the calendar on average. */
const YEAR = 365.2425;

/** Nothing is taped over a part that is due for service within so many years (common practice, no source). */
const PART_SOON = 2;

/** One seam, or all that are alike, as the comparison counts it. */
export interface Kept {
  readonly item: Item;
  /** Of all copies, in nanometres. */
  readonly nm: number;
  /** Coats that lie on it now; what is not known counts as at the limit. */
  readonly coats: number;
  /** What lies there takes no bead of this sealant: it has to come off, and its film with it. */
  readonly refuses: boolean;
  /** What its findings ask for today, whichever way is taken. */
  readonly now: 'nothing' | 'seal' | 'strip and seal';
  readonly tape: { readonly ok: true; readonly stripFirst: boolean; readonly life: ThreePoint } | Refusal;
}

interface Refusal {
  readonly ok: false;
  readonly why: string;
}

/** The seams of a rig that a bead of sealant keeps tight, in the order of the roof. */
export function keptSeams(view: RigView, state: RigState, sealant: Sealant, tape: Tape | undefined): readonly Kept[] {
  const { roof, policy } = view.rig;
  return [...state.seams.values()].flatMap((seam) => {
    const { item } = seam;
    if (seam.role !== 'sealed' || !isThere(seam, state.asOf) || whyNoSealant(item) !== undefined) return [];
    const length = seamLength(item, roof, policy.units.value);
    if (!length.ok || length.value.all.nm === 0) return [];
    const refuses = seam.stretches.some((stretch) => {
      const { kind, surfaces } = groundOf(stretch, item, roof);
      return kind !== 'surface' && surfaces.some((surface) => sealant.bonding[surface]?.value === 'never');
    });
    return [
      {
        item,
        nm: length.value.all.nm,
        coats: refuses ? sealant.coatsAtMost.value : coatsOn(seam, view, sealant),
        refuses,
        now: neededNow(seam),
        tape: tape ? taping(seam, view, tape, state.asOf) : { ok: false, why: 'no tape with a price is declared' },
      },
    ];
  });
}

function coatsOn(seam: SeamState, view: RigView, sealant: Sealant): number {
  const most = Math.max(...seam.stretches.map((stretch) => coatsOf(stretch).count));
  const limit = sealant.coatsAtMost.value;
  const full = seam.stretches.some((stretch) => {
    const count = coatCount(stretch, view.material);
    return count.atLimit || count.unknown;
  });
  return full ? limit : Math.min(most, limit);
}

function neededNow(seam: SeamState): Kept['now'] {
  const words = seam.stretches.flatMap(({ condition }) =>
    condition && condition.word !== 'renewed' ? condition.word : [],
  );
  const worst = Math.max(-1, ...words.map(rank));
  if (worst >= rank('cracked')) return 'strip and seal';
  return worst >= rank('hairline') || seam.stretches.some(({ bare }) => bare) ? 'seal' : 'nothing';
}

function taping(seam: SeamState, view: RigView, tape: Tape, asOf: string): Kept['tape'] {
  const { item } = seam;
  const { rig } = view;
  const pieces = tapePieces(item, rig, rig.policy, tape, undefined, rig.policy.units.value);
  if (!pieces.ok) return { ok: false, why: pieces.message };
  const sides = surfacesOf(item, rig.roof);
  const never = sides.find((surface) => tape.bonding[surface]?.value === 'never');
  if (never !== undefined) return { ok: false, why: `${tape.name} is not for ${never}` };
  const grounds = seam.stretches.map((stretch) => groundOf(stretch, item, rig.roof));
  const lying = grounds.flatMap(({ kind, surfaces }) => (kind === 'surface' ? [] : surfaces));
  if (lying.some((surface) => surface.includes('silicone')))
    return { ok: false, why: 'silicone lies there: nothing but silicone holds on what it leaves' };
  const life = lifeOf(tape, sides);
  if (life === undefined) return { ok: false, why: `how long ${tape.name} lasts there is not written (\`life\`)` };
  const sits = lying.every((surface) => ['yes', 'label'].includes(tape.bonding[surface]?.value ?? 'test'));
  const [part] = partEnd(seam, view);
  const left = part === undefined ? undefined : daysBetween(asOf, part.date) / YEAR;
  if (left !== undefined && left < PART_SOON) return { ok: false, why: `the part is due for renewal by ${part?.date}` };
  return { ok: true, stripFirst: !sits || neededNow(seam) === 'strip and seal', life: cut(life, left) };
}

/** The life of tape on the surfaces that meet in a seam: the shortest of those given for them, else the general one. */
export function lifeOf(tape: Tape, surfaces: readonly string[]): ThreePoint | undefined {
  const here = tape.lives.filter(({ on }) => on?.some((surface) => surfaces.includes(surface)));
  const known = here.length > 0 ? here : tape.lives.filter(({ on }) => on === undefined);
  const [shortest] = known
    .map(({ value }) => pointsOf([years(value.least), years(value.likely), years(value.most)]))
    .sort((a, b) => a.likely - b.likely);
  return shortest;
}

/** Tape comes off with its part. */
function cut(life: ThreePoint, left: number | undefined): ThreePoint {
  const to = (value: number) => Math.min(value, left ?? value);
  return threePoint(to(life.least), to(life.likely), to(life.most), life.shape);
}

/** Three points in order, whatever order they were written in. */
export function pointsOf(values: readonly [number, number, number]): ThreePoint {
  const [least, likely, most] = [...values].sort((a, b) => a - b) as [number, number, number];
  return threePoint(least, likely, most);
}

/** A calendar period in years. */
export function years({ months, days }: Pick<Period, 'months' | 'days'>): number {
  return months / 12 + days / YEAR;
}
