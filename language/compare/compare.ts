// What a change costs: two projects, record by record, and what follows from the records.
import type { LinearPrograms } from '../cutting/index.ts';
import { deferral } from '../documents/cautions.ts';
import { libraryVersion } from '../library/index.ts';
import type { Declaration } from '../records/file.ts';
import { filesNamedBy } from '../resolve/claims.ts';
import type { Dates } from '../resolve/types.ts';
import { fromMinor, minorUnits, minusMoney } from '../values/money.ts';
import { changesOf, entriesOf } from './entries.ts';
import { type NamesNow, namesNow } from './names.ts';
import { buyChanged, nothing, outcomeOfFleet, visitsChanged } from './outcome.ts';
import { type RigThen, rigChanged, viewsByFile, wasCalled } from './rig.ts';
import type { Comparison, FleetChange, MoneyChange, RigChange, SharedChange } from './schema.ts';
import { declarationAt, type Pair, type Place, paired, type Side, sameSpan, survey } from './side.ts';

export interface Asked {
  /** What the two sides are called. */
  readonly from: string;
  readonly to: string;
  readonly dates: Dates;
  /** How a path is told. */
  readonly fileName: (path: string) => string;
  /** Proves more of what a fleet buys. */
  readonly lp?: LinearPrograms;
}

const rigKinds: ReadonlySet<Declaration['kind']> = new Set(['rig']);
const fleetKinds: ReadonlySet<Declaration['kind']> = new Set(['fleet']);
const sharedKinds: ReadonlySet<Declaration['kind']> = new Set([
  'tape',
  'sealant',
  'primer',
  'cleaner',
  'coating',
  'surface',
  'policy',
  'group',
  'model',
]);

/**
 * What changed from one project to another. Where a record stands does not count: renamed files and moved rigs are no changes.
 * Both sides are seen on one date. What reads the same texts on both sides is not worked out.
 */
export function compareProjects(before: Side, after: Side, asked: Asked): Comparison {
  const steps = comparing(before, after, asked);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** The same a rig or a fleet at a time, for whoever has something else to do between them. */
export function* comparing(
  before: Side,
  after: Side,
  { from, to, dates, fileName, lp }: Asked,
): Generator<void, Comparison> {
  const seen = survey(before, after);
  const pairs = (kinds: ReadonlySet<Declaration['kind']>) => {
    const mine = ({ kind, file }: Place) => kinds.has(kind) && seen.touched.has(file);
    return paired(seen.before.filter(mine), seen.after.filter(mine));
  };
  const listed = { before: filesInFleets(before, seen.before), after: filesInFleets(after, seen.after) };
  const names = new Map<string, NamesNow>();
  const viewsOf = new Map([before, after].map((side) => [side, viewsByFile(side)]));
  const then = (side: Side, place: Place | undefined, files: ReadonlySet<string>): RigThen | undefined => {
    const view =
      place &&
      viewsOf
        .get(side)?.(place.file)
        .find(({ rig }) => sameSpan(rig.at, place.at));
    return view && { side, place, view, inFleet: files.has(place.file) };
  };
  yield;
  const rigs: RigChange[] = [];
  for (const pair of pairs(rigKinds)) {
    const old = then(before, pair.before, listed.before);
    const now = then(after, pair.after, listed.after);
    const was = pair.before?.name;
    if (was !== undefined) names.set(was, namesNow(was, now?.view));
    const change = rigChanged(old, now, dates, fileName);
    if (change) rigs.push(change);
    yield;
  }
  const namesOf = (rig: string) => names.get(rig) ?? namesNow(rig, undefined);
  const fleets: FleetChange[] = [];
  for (const pair of pairs(fleetKinds)) {
    const change = fleetChanged(before, after, pair, { dates, fileName, namesOf, ...(lp && { lp }) });
    if (change) fleets.push(change);
    yield;
  }
  return {
    document: 'rigseam/compare/1',
    from,
    to,
    asOf: dates.asOf,
    library: libraryVersion,
    shared: pairs(sharedKinds).flatMap((pair) => sharedChanged(before, after, pair, fileName) ?? []),
    rigs,
    fleets,
    money: moneyOf(rigs),
    note: deferral,
  };
}

/** The files whose rigs some fleet of a side has. */
function filesInFleets(side: Side, places: readonly Place[]): ReadonlySet<string> {
  return new Set(
    places.flatMap((place) =>
      place.kind === 'fleet' ? filesNamedBy(declarationAt(side, place), place.file, side.files) : [],
    ),
  );
}

const changeOf = ({ before, after }: Pair) => (before && after ? 'changed' : after ? 'added' : 'removed');

function headOf(pair: Pair, fileName: (path: string) => string) {
  const { name, file } = (pair.after ?? pair.before) as Place;
  return { name, ...wasCalled(pair), change: changeOf(pair), file: fileName(file) } as const;
}

function entriesAt(side: Side, place: Place | undefined) {
  return place ? entriesOf(declarationAt(side, place), side.project.text(place.file) ?? '') : [];
}

function sharedChanged(
  before: Side,
  after: Side,
  pair: Pair,
  fileName: (path: string) => string,
): SharedChange | undefined {
  const { kind } = (pair.after ?? pair.before) as Place;
  const records = changesOf(entriesAt(before, pair.before), entriesAt(after, pair.after));
  const head = headOf(pair, fileName);
  return head.change === 'changed' && records.length === 0 ? undefined : { ...head, kind, records };
}

function fleetChanged(
  before: Side,
  after: Side,
  pair: Pair,
  asked: Pick<Asked, 'dates' | 'fileName' | 'lp'> & { readonly namesOf: (rig: string) => NamesNow },
): FleetChange | undefined {
  const { dates, fileName, lp, namesOf } = asked;
  // One after the other: a fleet holds all its rigs, and two of them are twice as many.
  const on = ({ project, paths }: Side, place: Place | undefined) => {
    const fleet = place && project.fleets(place.file).find(({ fleet: one }) => sameSpan(one.at, place.at));
    const outcome = fleet ? outcomeOfFleet(fleet, dates, lp) : nothing;
    const rigs = fleet?.fleet.rigs.map(({ name }) => name) ?? [];
    for (const path of paths) project.release(path);
    return { outcome, rigs };
  };
  const { outcome: earlier, rigs: old } = on(before, pair.before);
  const { outcome: later, rigs: now } = on(after, pair.after);
  const had = new Set(old.map((name) => namesOf(name).rig));
  const has = new Set(now);
  const change: FleetChange = {
    ...headOf(pair, fileName),
    joined: [...has].filter((name) => !had.has(name)),
    left: [...had].filter((name) => !has.has(name)),
    // Which files it lists is where its rigs lie; who joined and left is told.
    records: changesOf(entriesAt(before, pair.before), entriesAt(after, pair.after)),
    buy: buyChanged(earlier, later),
    visits: visitsChanged(earlier, later, namesOf),
  };
  const { joined, left, records, buy, visits } = change;
  const same = [joined, left, records, buy, visits].every((list) => list.length === 0);
  return change.change === 'changed' && same ? undefined : change;
}

/** The totals of the rigs that changed, by currency: no rate of exchange is known. */
function moneyOf(rigs: readonly RigChange[]): readonly MoneyChange[] {
  const currencies = new Set(
    rigs.flatMap(({ totalBefore, totalAfter }) =>
      [totalBefore, totalAfter].flatMap((total) => (total ? [total.money.currency] : [])),
    ),
  );
  return [...currencies].sort().map((currency) => {
    const sum = (side: 'totalBefore' | 'totalAfter') =>
      fromMinor(
        rigs.reduce((units, rig) => {
          const money = rig[side]?.money;
          return money?.currency === currency ? units + minorUnits(money) : units;
        }, 0),
        currency,
      );
    const [before, after] = [sum('totalBefore'), sum('totalAfter')];
    const incomplete = rigs.filter(({ totalBefore, totalAfter }) =>
      [totalBefore, totalAfter].some((total) => total?.money.currency === currency && !total.complete),
    );
    return {
      currency,
      before,
      after,
      difference: minusMoney(after, before),
      incomplete: incomplete.map(({ name }) => name),
    };
  });
}
