// The state of a rig on a date: a fold over its records up to that date.
import type { Event, Item, Place, Rig, RigView } from '../resolve/types.ts';
import { extentOf } from './extent.ts';
import { firstBead } from './layers.ts';
import { afterLook, afterRepair, leakOf } from './leaks.ts';
import { lookedAt, withFound, withReading } from './looks.ts';
import type { Leak, RigState, SeamState, Stretch } from './state.ts';
import { changed } from './stretches.ts';
import { aboutAll, afterWork, repairs } from './work.ts';

/** One record of the fold, with the items that it touches as they were before it. */
export interface Step {
  readonly event: Event;
  readonly before: ReadonlyMap<string, SeamState>;
  /** As it is after the record. */
  readonly after: (item: string) => SeamState | undefined;
  /** Leaks as they are after the record. */
  readonly leaks: readonly Leak[];
}

/**
 * What the records say of a rig up to a date, that day included. Records whose day is rough count from the last day
 * on which they can have been; records of one day as `rig.events` orders them. Linear in the records. `visit` sees each
 * record with the state before it, for rules that judge a record by what it was laid on.
 */
export function rigState(view: RigView, asOf: string, visit?: (step: Step) => void): RigState {
  const { rig, material } = view;
  const seams = new Map(rig.items.map((item) => [item.name, beginning(item, rig, view)]));
  const position = new Map<Event, number>();
  let leaks: readonly Leak[] = [];
  const struck: Event[] = [];

  for (const event of rig.events) {
    if (event.last > asOf) continue;
    position.set(event, position.size);
    const touched = touchedBy(event, seams);
    const before = visit && new Map([...touched.keys()].map((name) => [name, seams.get(name) as SeamState]));
    const { word } = event.record;
    if (word === 'found' || word === 'inspected') {
      for (const [name, { places, lines }] of touched) {
        let state = lookedAt(seams.get(name) as SeamState, event, places, lines, material);
        for (const place of places) state = atPlace(state, place, (stretch) => recordOfLook(stretch, event, view));
        seams.set(name, state);
      }
      leaks = leaks.map((leak) => afterLook(leak, event, seams));
    } else {
      for (const [name, { places }] of touched) {
        const state = seams.get(name) as SeamState;
        let next = state;
        for (const place of places) next = atPlace(next, place, (s) => afterWork(s, event, state.role, material));
        if (word === 'removed') next = { ...next, removed: event };
        if (word === 'replaced') next = { ...next, replaced: event };
        seams.set(name, next);
      }
      if (word === 'struck') struck.push(event);
      if (word === 'leaked') leaks = [...leaks, leakOf(event, [...touched.keys()], leaks)];
      else if (repairs.has(word)) leaks = leaks.map((leak) => afterRepair(leak, event, [...touched.keys()]));
    }
    if (visit && before) visit({ event, before, after: (item) => seams.get(item), leaks });
  }

  const since = (stretch: Stretch, event: Event) =>
    stretch.looked !== undefined && (position.get(stretch.looked) as number) > (position.get(event) as number);
  const strikes = struck.map((event) => {
    const names = event.places.length > 0 ? new Set(event.places.map((place) => place.item)) : seams.keys();
    const waiting = [...names].filter((name) => {
      const state = seams.get(name);
      return state && !state.removed && !state.stretches.every((stretch) => since(stretch, event));
    });
    return { event, waiting };
  });
  return { asOf, seams, leaks, strikes };
}

/** The state of each seam and item of a rig on a date. */
export function seamStates(view: RigView, asOf: string): ReadonlyMap<string, SeamState> {
  return rigState(view, asOf).seams;
}

/** The state of one item on a date; undefined for a name that the rig does not have. */
export function stateAt(view: RigView, item: string, date: string): SeamState | undefined {
  return seamStates(view, date).get(item);
}

const openKinds: ReadonlySet<Item['kind']> = new Set(['gasket', 'drain', 'channel', 'insert']);

/** Gaskets, drains, channels and inserts are kept open; the field is the membrane; all else is a seam. */
export function roleOf(item: Item): SeamState['role'] {
  return openKinds.has(item.kind) ? 'open' : item.kind === 'field' ? 'field' : 'sealed';
}

function beginning(item: Item, rig: Rig, view: RigView): SeamState {
  const role = roleOf(item);
  const extent = extentOf(item, rig.roof);
  const stretch: Stretch = {
    from: 0,
    ...(extent === undefined ? {} : { to: extent }),
    layers: role === 'sealed' ? [firstBead(item, rig, view.material)] : [],
    defects: [],
    onset: {},
    readings: [],
    lastOf: {},
  };
  return { item, role, stretches: [stretch], unread: rig.unread.all || rig.unread.items.has(item.name) };
}

interface Touch {
  /** Those that the record itself names. */
  readonly places: Place[];
  readonly lines: { line: Event['findings'][number]['line']; place: Place }[];
}

/** The items that a record is about, each with its places and lines, in the order of the record. */
function touchedBy(event: Event, seams: ReadonlyMap<string, SeamState>): ReadonlyMap<string, Touch> {
  const out = new Map<string, Touch>();
  const touch = (name: string): Touch | undefined => {
    const known = out.get(name);
    if (known || !seams.has(name)) return known;
    const made: Touch = { places: [], lines: [] };
    out.set(name, made);
    return made;
  };
  const { record } = event;
  for (const place of event.places) {
    touch(place.item)?.places.push(place);
  }
  for (const { line, places } of event.findings) {
    for (const place of places) touch(place.item)?.lines.push({ line, place });
  }
  if (record.word === 'leaked') {
    for (const { name, at } of record.suspects ?? []) if (!out.has(name)) touch(name)?.places.push({ item: name, at });
  }
  if (event.places.length === 0 && isAboutAll(event)) {
    for (const { item } of seams.values()) {
      if (record.word === 'coated' && item.wall) continue;
      touch(item.name)?.places.push({ item: item.name, at: record.at });
    }
  }
  return out;
}

/** Whether a record without places is about the whole roof: a look without findings, a wash, a coating. */
function isAboutAll({ record, findings }: Event): boolean {
  if (record.word === 'stored' || record.word === 'trip' || record.targets?.length) return false;
  const look = record.word === 'inspected' || record.word === 'found';
  return look ? findings.length === 0 && !record.brokenFindings?.length : aboutAll.has(record.word);
}

function atPlace(state: SeamState, place: Place, change: (stretch: Stretch) => Stretch): SeamState {
  return { ...state, stretches: changed(state.stretches, place, change) };
}

/** What the head of a look says of the places that it names: materials and a reading. */
function recordOfLook(stretch: Stretch, event: Event, view: RigView): Stretch {
  const { record } = event;
  if (record.word !== 'found' && record.word !== 'inspected') return stretch;
  const found = withFound(stretch, event, record.materials, view.material);
  return record.moisture ? withReading(found, event, record.moisture, record.inside) : found;
}
