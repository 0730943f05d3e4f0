// The life of tape: its second half, in which its edges are watched, and its end.
import type { Input } from '../explain.ts';
import type { Origin, RigView, Tape } from '../resolve/types.ts';
import { isThere, type Layer, type SeamState } from '../seams/state.ts';
import { groundOf, surfacesOf } from '../seams/surface.ts';
import { addDays, addPeriod, daysBetween } from '../values/calendar.ts';
import type { Period } from '../values/period.ts';
import { ageStart, type Due, dateInput, dueOn, type Ground, originOf, type Plain, periodInput } from './due.ts';
import { earliest } from './findings.ts';

/** For each taped item the day on which the second half of its life begins, and the day on which it ends. */
export function tapeDues(ground: Ground): readonly Due[] {
  const out: Due[] = [];
  for (const seam of ground.state.seams.values()) {
    if (seam.role === 'open' || !isThere(seam, ground.dates.asOf)) continue;
    const lives = seam.stretches.flatMap((stretch) => {
      const { layer } = groundOf(stretch, seam.item, ground.view.rig.roof);
      const life = layer?.kind === 'tape' ? tapeLife(layer, seam, ground.view) : undefined;
      return life ? [life] : [];
    });
    const half = earliest(lives.map((life) => secondHalf(seam, life)));
    const end = earliest(lives.map((life) => endOf(seam, life)));
    for (const plain of [half, end]) if (plain) out.push(dueOn(plain, ground));
  }
  return out;
}

/** The likely life of tape where it lies. Dates are ISO days. */
export interface TapeLife {
  readonly layer: Layer;
  readonly start: string;
  /** Half way between start and end. */
  readonly half: string;
  readonly end: string;
  readonly endsBy: 'tape' | 'membrane' | 'part';
  readonly formula: string;
  readonly inputs: readonly Input[];
}

/**
 * How long tape is likely to last: the `likely` figure of its life on the surfaces that meet here (the shortest, where
 * several are given; else the figure without a surface), from the earliest day on which it can have been laid. Never
 * longer than the membrane at its most, nor than the part at its most. Undefined where no figure is known.
 */
export function tapeLife(layer: Layer, seam: SeamState, view: RigView): TapeLife | undefined {
  const material = layer.material === undefined ? undefined : view.material(layer.material);
  if (material?.kind !== 'tape' || layer.last === undefined) return undefined;
  const start = ageStart({ first: layer.first ?? layer.last, last: layer.last });
  const life = likelyLife(material, surfacesOf(seam.item, view.rig.roof), start);
  if (!life) return undefined;
  const ends = [
    {
      by: 'tape' as const,
      date: addPeriod(start, life.value),
      formula: 'laid + life',
      inputs: [periodInput('life', life)],
    },
    ...membraneEnd(seam, view),
    ...partEnd(seam, view),
  ];
  const first = earliest(ends) as (typeof ends)[number];
  const end = [first.date, start].sort().at(-1) as string;
  return {
    layer,
    start,
    half: addDays(start, Math.floor(daysBetween(start, end) / 2)),
    end,
    endsBy: first.by,
    formula: endFormula(ends, first.date < start),
    inputs: [dateInput('laid', start, layer.event && originOf(layer.event)), ...ends.flatMap((each) => each.inputs)],
  };
}

/** The first of the ends; a membrane whose time was over before gives the tape no life at all. */
function endFormula(ends: readonly End[], over: boolean): string {
  const formulas = ends.map(({ formula }) => formula).join(', ');
  const soonest = ends.length === 1 ? formulas : `min(${formulas})`;
  return over ? `max(laid, ${soonest})` : soonest;
}

function likelyLife(
  tape: Tape,
  surfaces: readonly string[],
  start: string,
): { value: Period; origin: Origin } | undefined {
  const here = tape.lives.filter(({ on }) => on?.some((surface) => surfaces.includes(surface)));
  const known = here.length > 0 ? here : tape.lives.filter(({ on }) => on === undefined);
  const ends = known.map(({ value, origin }) => ({
    value: value.likely,
    origin,
    date: addPeriod(start, value.likely),
  }));
  return earliest(ends);
}

export interface End {
  readonly by: TapeLife['endsBy'];
  readonly date: string;
  readonly formula: string;
  readonly inputs: readonly Input[];
}

function membraneEnd({ item }: SeamState, view: RigView): readonly End[] {
  return item.wall ? [] : endOfMembrane(view);
}

/** The day on which the life of the membrane ends at the latest; empty where its life or its age is not known. */
export function endOfMembrane({ rig, surface }: RigView): readonly End[] {
  if (!rig.roof?.surface) return [];
  const life = surface(rig.roof.surface)?.life;
  const laid = rig.roof.since ?? rig.identity.built?.value ?? rig.identity.inService?.value;
  if (!life || !laid) return [];
  const since = ageStart(laid);
  const most = { value: life.value.most, origin: life.origin };
  const inputs = [
    dateInput('membrane_laid', since, rig.roof.since ? rig.roof.origin : rig.identity.built?.origin),
    periodInput('membrane_life', most),
  ];
  return [{ by: 'membrane', date: addPeriod(since, most.value), formula: 'membrane_laid + membrane_life', inputs }];
}

/** The day on which the life of a part ends at the latest; empty where no life is written or nothing says when it was fitted. */
export function partEnd({ item, replaced }: SeamState, { rig }: RigView): readonly End[] {
  if (!item.partLife) return [];
  const fitted = replaced ?? item.since ?? rig.identity.built?.value;
  if (!fitted) return [];
  const since = ageStart(fitted);
  const inputs = [
    dateInput('part_fitted', since, replaced ? originOf(replaced) : item.origin),
    periodInput('part_life', { value: item.partLife.value.high, origin: item.partLife.origin }),
  ];
  return [{ by: 'part', date: addPeriod(since, item.partLife.value.high), formula: 'part_fitted + part_life', inputs }];
}

const reasons: Readonly<Record<TapeLife['endsBy'], string>> = {
  tape: 'its own life',
  membrane: 'the life of the membrane under it',
  part: 'the life of the part under it',
};

function secondHalf({ item }: SeamState, life: TapeLife): Plain {
  return {
    kind: 'tape-second-half',
    nature: 'from',
    item: item.name,
    date: life.half,
    because: `${item.name} was taped with ${life.layer.material} on ${life.start} and is likely to last until ${life.end} (${reasons[life.endsBy]}); from ${life.half} on it is in its second half, and its edges are watched.`,
    explained: {
      rule: 'the second half of the likely life of tape',
      formula: `laid + (${life.formula} - laid) / 2`,
      inputs: life.inputs,
    },
    ...(life.layer.event ? { source: life.layer.event } : {}),
  };
}

function endOf({ item }: SeamState, life: TapeLife): Plain {
  return {
    kind: 'tape-end',
    item: item.name,
    date: life.end,
    because: `${item.name} was taped with ${life.layer.material} on ${life.start} and is likely to last until ${life.end} (${reasons[life.endsBy]}).`,
    explained: {
      rule: 'the likely life of tape, never longer than the membrane or the part under it',
      formula: life.formula,
      inputs: life.inputs,
    },
    ...(life.layer.event ? { source: life.layer.event } : {}),
    notBefore: life.start,
  };
}
