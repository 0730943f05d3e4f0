// The plain numbers that a comparison is made from: changed one by one, they show what decides.
import type { OffRoad, Way } from '../statements/words.ts';
import type { ThreePoint } from './threepoint.ts';

/** What work on all seams costs on one occasion. `setUp` is the part of the labour that falls due however little is done. */
export interface Cost {
  readonly material: number;
  readonly labour: number;
  readonly setUp: number;
}

/** How much of some seams, by length, carries so many coats now, and whether its findings ask for stripping today. */
export interface Coated {
  readonly share: number;
  readonly coats: number;
  readonly bad: boolean;
}

/** Seams that are taped, and what is left to sealant. */
export interface Taping {
  readonly first: Cost;
  /** The old tape off and new tape on. */
  readonly renewal: Cost;
  /** By the length of life that tape has there; the shares of the taped length add up to 1. */
  readonly lives: readonly { readonly share: number; readonly life: ThreePoint }[];
  /** What the findings of today ask for on what is not taped; missing where they ask for nothing. */
  readonly now?: Cost;
  /** What is not taped: its share of the length of all seams, how many seams that is, and what lies on them. */
  readonly rest: { readonly share: number; readonly seams: number; readonly coats: readonly Coated[] };
}

/** A shop's price for a job that keeps the seams for years. */
export interface Quoted {
  readonly from: string;
  readonly job: 'recoat' | 'tape' | 'strip' | 'reseal' | 'reroof';
  readonly price: number;
}

/** Money in one currency at today's prices; shares from 0 to 1; times in years, days in days. */
export interface Basis {
  readonly years: number;
  /** Real interest a year, 0.03 for 3 %. */
  readonly rate: number;
  /** 0 where the records name none. */
  readonly dayRate: number;
  readonly days: Readonly<Record<OffRoad, ThreePoint>>;
  readonly touchUp: ThreePoint;
  readonly recoatEvery: ThreePoint;
  /** What lies on the seams; the shares add up to 1. */
  readonly coats: readonly Coated[];
  /** The most coats that may lie one on another. */
  readonly limit: number;
  readonly seams: number;
  /** Sealing all seams over what lies there, and stripping them all first. */
  readonly recoat: Cost;
  readonly strip: Cost;
  /** What the findings of today ask for in any case; missing where they ask for nothing. */
  readonly now?: Cost;
  readonly tape?: Taping;
  readonly tapeEdges?: Taping;
  readonly quotes: readonly Quoted[];
  /** Where a new roof has a price: how long the membrane goes on, and what the cheapest costs then. */
  readonly membrane?: { readonly left: ThreePoint; readonly price: number };
  readonly missedLeak: Readonly<Partial<Record<Way, { readonly chance: number; readonly cost: number }>>>;
}
