// The advice on a rig: each stretch of each seam walks down the table, and the first row that holds decides.
import { calendarOf, type Due, duesOf } from '../due/index.ts';
import type { Dates, RigView } from '../resolve/types.ts';
import { rigState } from '../seams/fold.ts';
import { isThere, type Leak, type RigState, type SeamState, type Stretch } from '../seams/state.ts';
import { lengthText } from '../values/display.ts';
import { byOf, leakBy } from './by.ts';
import { type Facts, factsOf, type Scene } from './facts.ts';
import { allowedFrom, excludedHere } from './limits.ts';
import { atHandOf } from './materials.ts';
import { changesOf, unknownOf } from './open-questions.ts';
import { preparationOf } from './preparation.ts';
import { leakReason, reasonsOf, whyOf } from './reasons.ts';
import type { AdviceRow } from './row.ts';
import { type Interim, type SeamAdvice, urgencies } from './schema.ts';
import { interimTable, rowById, table } from './table.ts';

/**
 * The advice on every item that is on the rig on the as-of date, the most pressing first; stretches of an item stand apart
 * where it differs. A leak of which nobody knows where it comes in is advice on the roof as a whole. Records after the
 * as-of date are left out, so that a past date gives what was true then. A model has no records and gets none.
 */
export function adviceOf(view: RigView, dates: Dates): readonly SeamAdvice[] {
  const state = rigState(view, dates.asOf);
  return adviceFrom(view, dates, state, duesOf(view, dates, state));
}

/** The same, where the state and the dues of that date are worked out already. `only` is the name of an item. */
export function adviceFrom(
  view: RigView,
  dates: Dates,
  state: RigState,
  dues: readonly Due[],
  only?: string,
): readonly SeamAdvice[] {
  if (view.rig.kind === 'model') return [];
  const scene: Scene = { view, dates, state, dues, calendar: calendarOf(view), atHand: atHandOf(view, dates.asOf) };
  const seams = [...state.seams.values()].filter(
    (seam) => isThere(seam, dates.asOf) && (only === undefined || seam.item.name === only),
  );
  const all = seams.flatMap((seam) => onItem(seam, scene));
  return only === undefined ? inOrder([...roofLeaks(scene), ...all]) : inOrder(all);
}

/** By urgency, then by date; what is alike stays in the order of the roof. */
function inOrder(all: readonly SeamAdvice[]): readonly SeamAdvice[] {
  const day = ({ by, interim }: SeamAdvice) =>
    [by?.date, interim?.by?.date].filter((one) => one !== undefined).sort()[0] ?? '9999';
  return [...all].sort((a, b) => {
    const graver = urgencies.indexOf(a.urgency) - urgencies.indexOf(b.urgency);
    if (graver !== 0) return graver;
    return day(a) < day(b) ? -1 : day(a) > day(b) ? 1 : 0;
  });
}

type Told = Omit<SeamAdvice, 'item' | 'from' | 'to' | 'where'>;

function onItem(seam: SeamState, scene: Scene): readonly SeamAdvice[] {
  const runs: { told: Told; text: string; first: Stretch; last: Stretch }[] = [];
  for (const stretch of seam.stretches) {
    const told = onStretch(factsOf(seam, stretch, scene));
    const text = JSON.stringify(told);
    const before = runs.at(-1);
    if (before?.text === text) before.last = stretch;
    else runs.push({ told, text, first: stretch, last: stretch });
  }
  const system = scene.view.rig.policy.units.value;
  return runs.map(({ told, first, last }) => {
    if (runs.length === 1) return { item: seam.item.name, ...told };
    const { from } = first;
    const { to } = last;
    const end = to === undefined ? 'its end' : lengthText(to, system);
    const begin = from === 0 ? (system === 'us' ? '0 ft' : '0 m') : lengthText(from, system);
    const where = `${begin} to ${end}`;
    return { item: seam.item.name, from, ...(to === undefined ? {} : { to }), where, ...told };
  });
}

/** The row that decides. */
export const rowFor = (facts: Facts): AdviceRow => table.find((row) => row.holds(facts)) as AdviceRow;

function onStretch(facts: Facts): Told {
  const row = rowFor(facts);
  const interim = interimOf(facts);
  const after = afterwards(row, facts);
  const by = byOf(row.by, facts);
  const preparation = preparationOf(row.action, facts);
  return {
    row: row.id,
    action: row.action,
    what: row.what,
    urgency: row.urgency,
    ...(interim ? { interim } : {}),
    ...(after ? { afterwards: { row: after.id, action: after.action, what: after.what } } : {}),
    reasons: reasonsOf(row, facts),
    ...(by ? { by } : {}),
    allowed: allowedFrom(facts),
    ...(preparation ? { preparation } : {}),
    excluded: excludedHere(row.action, facts),
    wouldChange: changesOf(row, facts),
    unknown: unknownOf(facts),
  };
}

function interimOf(facts: Facts): Interim | undefined {
  const row = interimTable.find((one) => one.holds(facts));
  if (!row) return undefined;
  const by = byOf(row.by, facts);
  return {
    row: row.id,
    action: row.action,
    what: row.what,
    reasons: reasonsOf(row, facts, false),
    ...(by ? { by } : {}),
  };
}

/** What the table says once a question of damp or of a leak is answered, where that is work. */
function afterwards(row: AdviceRow, facts: Facts): AdviceRow | undefined {
  if (row.asks !== 'moisture' && row.asks !== 'leak') return undefined;
  const rest = table.slice(table.indexOf(row) + 1);
  const next = rest.find((one) => one.asks !== 'moisture' && one.asks !== 'leak' && one.holds(facts));
  return next && next.action !== 'leave' && next.action !== 'look again' ? next : undefined;
}

/** Open leaks of which no suspect is on the rig: they are about the roof as a whole. */
function roofLeaks(scene: Scene): readonly SeamAdvice[] {
  const { state, dates } = scene;
  const here = (item: string) => {
    const seam = state.seams.get(item);
    return seam !== undefined && isThere(seam, dates.asOf);
  };
  const open = state.leaks.filter(({ closed, suspects }) => !closed && !suspects.some(here));
  return open.map((leak) => onRoof(leak, scene));
}

function onRoof(leak: Leak, scene: Scene): SeamAdvice {
  const { earlier, repairs } = leak;
  const row = rowById(
    repairs.length > 0 ? 'leak-repaired' : earlier >= 2 ? 'leak-third' : earlier === 1 ? 'leak-second' : 'leak',
  );
  const by = leakBy(leak, scene);
  return {
    row: row.id,
    action: row.action,
    what: row.what,
    urgency: row.urgency,
    reasons: [leakReason(leak), whyOf(row)],
    ...(by ? { by } : {}),
    allowed: [],
    excluded: [],
    wouldChange: [
      ...(repairs.length > 0
        ? []
        : ['Once a place is suspected, a clause `suspect NAME` in the record brings the advice to it.']),
      ...(row.changes ?? []),
    ],
    unknown: ['Where the water comes in is not known.'],
  };
}
