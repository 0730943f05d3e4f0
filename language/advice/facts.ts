// What the table of advice asks of a stretch of a seam, worked out once.
import type { Calendar, Due } from '../due/index.ts';
import { ageStart } from '../due/index.ts';
import type { Dates, Item, Material, RigView, Stated } from '../resolve/types.ts';
import { type CoverAnswer, coverAllowed } from '../seams/clocks.ts';
import { type CoatCount, coatCount } from '../seams/coats.ts';
import { rank } from '../seams/looks.ts';
import { moistureCall } from '../seams/moisture.ts';
import type { Layer, Leak, RigState, SeamState, Stretch } from '../seams/state.ts';
import { type Ground, groundOf, surfacesOf } from '../seams/surface.ts';
import type { Condition, Defect, Family } from '../statements/words.ts';
import { addPeriod } from '../values/calendar.ts';
import type { Period } from '../values/period.ts';

/** One rig on a date with all that follows from its records. */
export interface Scene {
  readonly view: RigView;
  readonly dates: Dates;
  readonly state: RigState;
  readonly dues: readonly Due[];
  readonly calendar: Calendar;
  /** Materials that the record speaks of. */
  readonly atHand: readonly Material[];
}

export interface Facts {
  readonly scene: Scene;
  readonly seam: SeamState;
  readonly item: Item;
  readonly stretch: Stretch;
  readonly word?: Condition | 'renewed';
  readonly ground: Ground;
  /** The surfaces that meet in the seam, whatever lies on them. */
  readonly sides: readonly string[];
  readonly coats: CoatCount;
  readonly cover: CoverAnswer;
  readonly thermoplastic: boolean;
  /** Something of silicone lies here, lay here, or is the surface. */
  readonly silicone: boolean;
  /** The gravest leak for which the item is suspected, or at which it was mended, and that no look has closed. */
  readonly leak?: Leak;
  readonly call?: ReturnType<typeof moistureCall>;
  /** A temporary cover that still holds. */
  readonly covered: boolean;
  /** Of the length of the item, how much was found with hairlines or worse; 1 where its length is not known. */
  readonly worn: number;
  /** The part's age and life, where both are known. */
  readonly part?: PartLife;
}

export interface PartLife {
  /** The earliest day on which it can have been fitted. */
  readonly fitted: string;
  readonly life: NonNullable<Item['partLife']>;
  /** When its shorter life ends. */
  readonly from: string;
  /** It ends within two years (or has ended): then work that should outlast it is not done. */
  readonly near: boolean;
}

/** Parts that are due for service within this time get no tape (trade practice, no published figure). */
export const serviceAhead: Period = { months: 24, days: 0, text: '2 years' };

const siliconeFamilies: ReadonlySet<Family | undefined> = new Set<Family>(['silicone', 'acetoxy-silicone']);
const siliconeSurfaces: ReadonlySet<string> = new Set(['silicone', 'acetoxy-silicone', 'silicone-coating']);
export const ofSilicone = (layer: Pick<Layer, 'family'> | undefined): boolean => siliconeFamilies.has(layer?.family);
export const isSiliconeSurface = (surface: string): boolean => siliconeSurfaces.has(surface);

export function factsOf(seam: SeamState, stretch: Stretch, scene: Scene): Facts {
  const { view, dates } = scene;
  const { item } = seam;
  const ground = groundOf(stretch, item, view.rig.roof);
  const sides = surfacesOf(item, view.rig.roof);
  const leak = leakAt(item.name, scene.state);
  const call = moistureCall(stretch);
  const part = partLife(seam, scene);
  return {
    scene,
    seam,
    item,
    stretch,
    ...(stretch.condition ? { word: stretch.condition.word } : {}),
    ground,
    sides,
    coats: coatCount(stretch, view.material),
    cover: coverAllowed(stretch, { date: dates.asOf }, view.material),
    thermoplastic: sides.some((name) => view.surface(name)?.group === 'thermoplastic'),
    silicone:
      [...stretch.layers, stretch.coating, stretch.film].some(ofSilicone) ||
      [...sides, ...ground.surfaces].some(isSiliconeSurface),
    ...(leak ? { leak } : {}),
    ...(call ? { call } : {}),
    covered: stretch.temporary !== undefined && (stretch.temporary.until?.last ?? dates.asOf) >= dates.asOf,
    worn: wornShare(seam),
    ...(part ? { part } : {}),
  };
}

/** The open leak at an item: of several the one that came back most often, then the latest. */
export function leakAt(item: string, { leaks }: Pick<RigState, 'leaks'>): Leak | undefined {
  let worst: Leak | undefined;
  for (const leak of leaks) {
    if (leak.closed) continue;
    const here = leak.suspects.includes(item) || leak.repairs.some(({ items }) => items.includes(item));
    if (here && (worst === undefined || leak.earlier >= worst.earlier)) worst = leak;
  }
  return worst;
}

function wornShare({ stretches }: SeamState): number {
  const end = stretches.at(-1)?.to;
  if (end === undefined || end === 0) return 1;
  const worn = stretches.filter(({ condition }) => condition && isAtLeast(condition.word, 'hairline'));
  return worn.reduce((sum, { from, to = end }) => sum + to - from, 0) / end;
}

function partLife({ item, replaced }: SeamState, { view, dates }: Scene): PartLife | undefined {
  const life = item.partLife;
  const since = replaced ?? item.since ?? view.rig.identity.built?.value;
  if (!life || !since) return undefined;
  const fitted = ageStart(since);
  const from = addPeriod(fitted, life.value.low);
  return { fitted, life, from, near: from <= addPeriod(dates.asOf, serviceAhead) };
}

export const isAtLeast = (word: Condition | 'renewed' | undefined, least: Condition): boolean =>
  word !== undefined && word !== 'renewed' && rank(word) >= rank(least);

/** Found at this level or worse, and not mended since. */
export const atLeast = ({ word }: Pick<Facts, 'word'>, least: Condition): boolean => isAtLeast(word, least);

export const hasDefect = ({ stretch }: Pick<Facts, 'stretch'>, ...names: readonly Defect[]): boolean =>
  names.some((name) => stretch.defects.includes(name));

/** Its last reading or a finding says wet. */
export const isWet = ({ stretch, call }: Facts): boolean =>
  stretch.wet !== undefined || call === 'open-up' || call === 'find-source';

/** Water came in here and no repair is recorded since. */
export const leaksNow = ({ leak }: Facts): boolean => leak !== undefined && leak.repairs.length === 0;

/** A period of the policy for a finding, or for an event. */
export const within = (word: string, { view }: Scene): Stated<Period> | undefined =>
  view.rig.policy.followUp[word] ?? view.rig.policy.lookAfter[word];
