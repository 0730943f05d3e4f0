// What the computation works on: rigs, policies and fleets with everything that `like`, `use`, `under` and the built-in
// library add to what was written. Plain, immutable data; every value says where it comes from.
import type { Span } from '../grammar/problem.ts';
import type { PastRecord } from '../records/file.ts';
import type { FleetStatement } from '../statements/fleet.ts';
import type { Finding as FindingLine } from '../statements/past.ts';
import type { PlanStatement, QuoteStatement } from '../statements/plans.ts';
import type { PolicyStatement } from '../statements/policy.ts';
import type { IdentityStatement, StockStatement } from '../statements/rig.ts';
import type { ItemKind } from '../statements/roof.ts';
import type { Ref } from '../statements/slot.ts';
import type { Range, ThreePoints } from '../statements/slots/lists.ts';
import type { TaskRate } from '../statements/slots/quantities.ts';
import type { RoofPoint, Size } from '../statements/slots/shapes.ts';
import type { Month, OffRoad, Severity, Side, Task, Way } from '../statements/words.ts';
import type { Day } from '../values/day.ts';
import type { Length } from '../values/length.ts';
import type { Money } from '../values/money.ts';
import type { Percent } from '../values/numbers.ts';
import type { Effort, Period } from '../values/period.ts';
import type { MoneyRate } from '../values/rate.ts';
import type { Season } from '../values/season.ts';
import type { Temperature } from '../values/temperature.ts';

import type { BookingTable } from './bookings.ts';
import type { Material, Surface } from './materials.ts';
import type { Origin, Stated } from './stated.ts';

export type * from './materials.ts';
export type * from './stated.ts';

export type BandKind = 'edge' | 'front-cap' | 'rear-cap' | 'slide' | 'opening' | 'mount' | 'joint';

/** A policy with every default filled in from the built-in one; what has no default may be missing. */
export interface Policy {
  readonly name: string;
  readonly origin: Origin;
  readonly inspect: Stated<Period>;
  readonly inspectLimit: Stated<Period>;
  readonly dueSoon: Stated<Period>;
  /** By condition word, `not-seen`, `wet`, `leak`. */
  readonly followUp: Readonly<Record<string, Stated<Period>>>;
  /** By event: `struck`, `stored`, `repaired-leak`. */
  readonly lookAfter: Readonly<Record<string, Stated<Period>>>;
  readonly season: Stated<Season>;
  /** By month, the share of working days that weather takes; no default. */
  readonly slack: Readonly<Partial<Record<Month, Stated<Percent>>>>;
  /** By month, the normal low and high of a day at the site; no default. */
  readonly normals: Readonly<Partial<Record<Month, Stated<Range<Temperature>>>>>;
  /** When tape is laid and sealant gunned before noon: days of the year, or above a normal high. */
  readonly beforeNoon: Stated<Season | Temperature>;
  /** How long a roof is free on a day on which the rig comes back and leaves again; no default. */
  readonly turnRound?: Stated<Effort>;
  readonly currency?: Stated<string>;
  readonly labour?: Stated<MoneyRate>;
  readonly tax?: Stated<{ readonly percent: Percent; readonly on: 'materials' | 'all' }>;
  readonly realInterest: Stated<Percent>;
  readonly horizon: Stated<Period>;
  /** The share of the seams touched up in a year. */
  readonly touchUp: Stated<ThreePoints<Percent>>;
  /** How long all seams go between two recoats by the calendar. */
  readonly recoat: Stated<ThreePoints<Period>>;
  readonly daysOff: Readonly<Record<OffRoad, Stated<ThreePoints<Period>>>>;
  /** The chance in a year that a leak is missed, and what its repair costs; no default. */
  readonly missedLeak: Readonly<Partial<Record<Way, Stated<{ readonly chance: Percent; readonly cost: Money }>>>>;
  readonly spare: Stated<Percent>;
  readonly rollWaste: Stated<Length>;
  readonly margin: Stated<Length>;
  readonly bite: Stated<Length>;
  readonly frame: Stated<'full-lap' | 'short-lap'>;
  readonly beadLine: Stated<'centre' | 'flange'>;
  readonly smother: Stated<Length | 'none'>;
  readonly splices: Stated<'when-needed' | 'allowed'>;
  readonly bands: Readonly<Record<BandKind, Stated<Length>>>;
  readonly rates: Readonly<Record<Task, Stated<ThreePoints<TaskRate> | 'none'>>>;
  /** Names of cleaners, looked up where the policy was written. */
  readonly washWith?: Stated<string>;
  readonly wipeWith?: Stated<string>;
  readonly curb: Stated<'left' | 'right'>;
  readonly units: Stated<'us' | 'metric'>;
  readonly workday: Stated<Effort>;
  /** Rules that it silences on all rigs under it. */
  readonly accepts: readonly (Extract<PolicyStatement, { word: 'accept' }> & { readonly file: string })[];
  readonly severities: Readonly<Record<string, Stated<Severity>>>;
  readonly leads: Readonly<Record<string, Stated<Period>>>;
}

/** A seam or an item of a roof, from the rig or from what it is like. Several places or a count make one item. */
export interface Item {
  readonly kind: ItemKind;
  /** Side names are canonical: `curbside`, `roadside`. */
  readonly name: string;
  readonly origin: Origin;
  readonly doc?: string;
  /** Of an edge or cap its own side; of a slide or joint the side or wall it is on. */
  readonly side?: Side;
  readonly wall: boolean;
  /** The outside of the flange. */
  readonly size?: Size;
  /** The hole inside the flange, where `cutout` gives it: of a round flange, how wide its pipe is. */
  readonly hole?: Size;
  /** The length that a joint, channel or insert is written with. */
  readonly run?: Length;
  /** An explicit `length`. */
  readonly length?: Length;
  readonly wide?: Length;
  readonly bead?: { readonly width: Length; readonly height: Length };
  /** The surface of the part itself (`of abs`). */
  readonly surface?: string;
  readonly between?: readonly [string, string];
  readonly places: readonly RoofPoint[];
  /** How many alike: the count, or the number of places, at least 1. */
  readonly count: number;
  readonly since?: Day;
  readonly until?: Day;
  /** Has a cover, shroud or cap that comes off first. */
  readonly comesOff: boolean;
  /** Has a lid that is opened for service. */
  readonly serviced: boolean;
  readonly partLife?: Stated<Range<Period>>;
}

/** A seam or item that a record is about, and the stretch of it, in nanometres from its beginning. */
export interface Place {
  readonly item: string;
  readonly from?: number;
  readonly to?: number;
  /** Where the name, or the set that it belongs to, stands. */
  readonly at: Span;
}

/** A record of what happened, with its places worked out. */
export interface Event {
  readonly record: PastRecord;
  readonly file: string;
  /** The first and the last day on which it can have been; the same day unless the date is rough. */
  readonly first: string;
  readonly last: string;
  readonly time?: string;
  /** Empty for a record about the roof as a whole (`washed`, `struck` without a place). */
  readonly places: readonly Place[];
  readonly findings: readonly { readonly line: FindingLine; readonly places: readonly Place[] }[];
}

/** A plan, with its places worked out. */
export interface Plan {
  readonly statement: PlanStatement;
  readonly file: string;
  readonly places: readonly Place[];
}

export interface Roof {
  readonly along: Length;
  readonly across: Length;
  readonly surface?: string;
  readonly since?: Day;
  readonly origin: Origin;
}

export interface Rig {
  readonly kind: 'rig' | 'model';
  readonly name: string;
  readonly file: string;
  /** The heading. */
  readonly at: Span;
  readonly nameAt: Span;
  readonly doc?: string;
  /** What it is like, nearest first. */
  readonly bases: readonly string[];
  readonly roof?: Roof;
  readonly falls?: Stated<'edges' | 'rear' | 'front' | 'curbside' | 'roadside'>;
  readonly items: readonly Item[];
  readonly factory?: Stated<string>;
  readonly identity: {
    readonly unit?: Stated<string>;
    readonly vin?: Stated<string>;
    readonly built?: Stated<Day>;
    readonly inService?: Stated<Day>;
    readonly acquired?: Stated<Day>;
    readonly keptUntil?: Stated<Day>;
    readonly dayRate?: Stated<Money>;
  };
  /** The group that it or what it is like belongs to. */
  readonly group?: Stated<string>;
  readonly policy: Policy;
  /** In order of time. */
  readonly events: readonly Event[];
  readonly stored: readonly { readonly first: string; readonly last: string; readonly origin: Origin }[];
  readonly trips: readonly { readonly first: string; readonly last: string; readonly origin: Origin }[];
  readonly plans: readonly Plan[];
  readonly quotes: readonly (QuoteStatement & { readonly file: string })[];
  readonly accepts: readonly (Extract<IdentityStatement, { word: 'accept' }> & { readonly file: string })[];
  readonly stock: readonly (StockStatement & { readonly file: string })[];
  /** Former names of items, by the name now. */
  readonly formerly: Readonly<Record<string, readonly string[]>>;
  /**
   * What could not be read: rules that conclude from absence stay silent about these items, and about everything when
   * `all` is set, so that one half-typed line raises no alarm elsewhere.
   */
  readonly unread: { readonly all: boolean; readonly items: ReadonlySet<string> };
}

export interface Fleet extends FleetFrame {
  readonly rigs: readonly Rig[];
}

/** What a fleet says by itself, without its rigs. */
export interface FleetFrame {
  readonly name: string;
  readonly file: string;
  readonly at: Span;
  readonly nameAt: Span;
  readonly policy: Policy;
  /** The first of the crews. */
  readonly crew?: Crew;
  /** The crews that stand directly in the fleet. */
  readonly crews: readonly Crew[];
  readonly bays: readonly (Extract<FleetStatement, { word: 'bay' }> & { readonly file: string })[];
  readonly closed: readonly { readonly first: string; readonly last: string; readonly origin: Origin }[];
  readonly booked: readonly {
    readonly rig: string;
    readonly first: string;
    readonly last: string;
    readonly origin: Origin;
  }[];
  /** Its files of bookings; what they book is in `booked` where the rigs are known (`withBookings`). */
  readonly tables?: readonly BookingTable[];
  readonly stock: readonly (StockStatement & { readonly file: string })[];
  readonly yards: readonly FleetYard[];
  /** Which yard serves a rig; undefined where it has what stands directly in the fleet. */
  readonly yardOf: (rig: Pick<Served, 'name' | 'group'>) => FleetYard | undefined;
  /** The fleet as one of its yards sees it: then crews, bays, closed days and the shelf are those of that yard. */
  readonly yard?: FleetYard;
}

/** A rig as far as it decides which yard serves it. */
export interface Served {
  readonly name: string;
  readonly group?: { readonly value: string };
}

/** People who work together on days of their own. */
export interface Crew {
  /** Missing where a fleet has one crew and calls it nothing. */
  readonly name?: string;
  readonly nameAt?: Span;
  readonly people: number;
  /** Of one person on a day. */
  readonly minutes: number;
  /** Days of the week, 1 for Monday. */
  readonly days: readonly number[];
  /** The words of the plans that it can do; missing for a crew that does everything. */
  readonly skills?: readonly string[];
  readonly off: FleetFrame['closed'];
  readonly origin: Origin;
}

/** One of several places of a fleet. */
export interface FleetYard {
  readonly name: string;
  readonly nameAt: Span;
  readonly origin: Origin;
  readonly crews: readonly Crew[];
  readonly bays: FleetFrame['bays'];
  /** Its own; the closed days of the fleet hold at each of its yards. */
  readonly closed: FleetFrame['closed'];
  readonly stock: FleetFrame['stock'];
  /** What it says of its climate; what it leaves unsaid the policies say. */
  readonly climate: Pick<Policy, 'slack' | 'normals'> & Partial<Pick<Policy, 'beforeNoon'>>;
  /** Groups and rigs, as written. */
  readonly serves: readonly Ref[];
}

/** Materials by name, as seen from where a rig is written; undefined for a name that nothing has. */
export type MaterialsOf = (name: string) => Material | undefined;

/** Surfaces by name, the built-in ones among them. */
export type SurfacesOf = (name: string) => Surface | undefined;

/** Everything about one rig that the computation needs. */
export interface RigView {
  readonly rig: Rig;
  readonly material: MaterialsOf;
  readonly surface: SurfacesOf;
  /** Every material that is visible where the rig is written, the user's own first, each name once. */
  readonly materialNames: () => readonly string[];
  /** Days on which a fleet has the rig out, when it is looked at as part of that fleet. */
  readonly booked?: readonly { readonly first: string; readonly last: string; readonly origin: Origin }[];
}

/** The two dates from outside. Records may not lie after `today`; outputs speak of `asOf`, and records after it are left out. */
export interface Dates {
  readonly asOf: string;
  readonly today: string;
}
