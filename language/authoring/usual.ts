// What is usual on a kind of rig: a beginning for a first record, to be measured and corrected by its keeper.
import type { System } from '../values/display.ts';

export const rigKinds = ['travel-trailer', 'fifth-wheel', 'motorhome', 'van', 'truck-camper'] as const;
export type RigKind = (typeof rigKinds)[number];

export interface UsualKind {
  readonly title: string;
  /** Length and width of the roof, as an example of what to type. From memory. */
  readonly size: Readonly<Record<System, readonly [length: string, width: string]>>;
  /** Whether sheet meets rails and caps all round; the roof of a van is one sheet of steel. */
  readonly hasEdges: boolean;
  /** What is ticked before anybody has chosen. From memory. */
  readonly parts: readonly PartName[];
}

export interface UsualPart {
  /** The statement word of the language. */
  readonly word: 'opening' | 'mount' | 'gasket' | 'drain' | 'channel';
  readonly title: string;
  readonly more: string;
  /** Outside of the flange; the first figure runs along the roof. */
  readonly size?: Readonly<Record<System, string>>;
  /** The usual surface of the part. */
  readonly of?: 'abs' | 'aluminium' | 'polycarbonate';
  /** How many of it may be chosen one by one. */
  readonly most: number;
}

const flange = (us: string, metric: string) => ({ us, metric });

/** Flange sizes of a usual 28 ft trailer: design page on the trade, section 3.6; the feet of solar panels from memory. */
export const usualParts = {
  vent: {
    word: 'opening',
    title: 'Roof vent',
    more: 'a fan or a lid that opens',
    size: flange('16 1/2 in by 16 1/2 in', '42 cm by 42 cm'),
    of: 'abs',
    most: 4,
  },
  skylight: {
    word: 'opening',
    title: 'Skylight',
    more: 'a dome that stays shut, as over a shower',
    size: flange('30 in by 20 in', '76 cm by 51 cm'),
    of: 'polycarbonate',
    most: 2,
  },
  'fridge-vent': {
    word: 'opening',
    title: 'Refrigerator vent',
    more: 'a long hood over the refrigerator',
    size: flange('26 in by 10 in', '66 cm by 25 cm'),
    of: 'abs',
    most: 1,
  },
  stack: {
    word: 'opening',
    title: 'Plumbing stack',
    more: 'a pipe with a flange and a cap',
    size: flange('round 6 1/2 in', 'round 165 mm'),
    of: 'abs',
    most: 3,
  },
  antenna: {
    word: 'mount',
    title: 'Antenna',
    more: 'a plate that is screwed down',
    size: flange('8 in by 8 in', '20 cm by 20 cm'),
    most: 2,
  },
  gland: {
    word: 'mount',
    title: 'Cable gland',
    more: 'where a cable goes through',
    size: flange('4 in by 5 in', '10 cm by 13 cm'),
    most: 2,
  },
  'ladder-foot': {
    word: 'mount',
    title: 'Ladder foot',
    more: 'of a fixed ladder at the rear',
    size: flange('3 in by 4 in', '8 cm by 10 cm'),
    most: 2,
  },
  'panel-foot': {
    word: 'mount',
    title: 'Foot of a solar panel',
    more: 'a bracket that is screwed down',
    size: flange('2 in by 3 in', '5 cm by 8 cm'),
    most: 4,
  },
  'air-con': {
    word: 'gasket',
    title: 'Air conditioner',
    more: 'sits on a gasket: looked at, never sealed or taped',
    size: flange('14 in by 14 in', '36 cm by 36 cm'),
    most: 2,
  },
  spout: {
    word: 'drain',
    title: 'Gutter spout',
    more: 'kept open, never sealed or taped',
    most: 4,
  },
} as const satisfies Record<string, UsualPart>;
export type PartName = keyof typeof usualParts;
export const partNames = Object.keys(usualParts) as [PartName, ...PartName[]];

const towed = [
  ...repeated('vent', 3),
  'skylight',
  'fridge-vent',
  ...repeated('stack', 3),
  'antenna',
  ...repeated('gland', 2),
  ...repeated('ladder-foot', 2),
  'air-con',
] as const satisfies readonly PartName[];

export const usualKinds: Readonly<Record<RigKind, UsualKind>> = {
  'travel-trailer': {
    title: 'Travel trailer',
    size: { us: ['28 ft', '8 ft'], metric: ['8.5 m', '2.4 m'] },
    hasEdges: true,
    parts: towed,
  },
  'fifth-wheel': {
    title: 'Fifth wheel',
    size: { us: ['34 ft', '8 ft'], metric: ['10.4 m', '2.4 m'] },
    hasEdges: true,
    parts: towed,
  },
  motorhome: {
    title: 'Motorhome',
    size: { us: ['30 ft', '8 ft 2 in'], metric: ['9.1 m', '2.5 m'] },
    hasEdges: true,
    parts: towed,
  },
  van: {
    title: 'Van',
    size: { us: ['14 ft', '5 ft 6 in'], metric: ['4.3 m', '1.7 m'] },
    hasEdges: false,
    parts: ['vent', 'gland'],
  },
  'truck-camper': {
    title: 'Truck camper',
    size: { us: ['16 ft', '7 ft'], metric: ['4.9 m', '2.1 m'] },
    hasEdges: true,
    parts: [...repeated('vent', 2), 'fridge-vent', 'stack', 'gland'],
  },
};

function repeated<N extends PartName>(name: N, times: number): readonly N[] {
  return Array<N>(times).fill(name);
}

/** Groups of surfaces that a roof is made of. A coating is no membrane: it is recorded with `coated`, over what it lies on. */
const roofing: ReadonlySet<string> = new Set(['rubber', 'thermoplastic', 'moulded', 'metal']);

/** Whether a surface of that group may be the membrane or the skin of a roof; one that a yard declares itself may be anything. */
export const isRoofing = (group: string | undefined, isBuiltIn: boolean): boolean =>
  !isBuiltIn || (group !== undefined && roofing.has(group));
