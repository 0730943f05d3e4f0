// The records of a rig as the book tells them: what was written down up to the as-of date, and of which seam.
import { folderOf } from '../../resolve/paths.ts';
import type { Event, Place, RigView } from '../../resolve/types.ts';
import type { RigState } from '../../seams/index.ts';
import { rigState } from '../../seams/index.ts';
import type { System } from '../../values/display.ts';
import type { Percent } from '../../values/numbers.ts';
import type { Papers } from '../papers.ts';

/** What every part of the book is made from. */
export interface Account {
  readonly view: RigView;
  readonly state: RigState;
  readonly papers: Papers;
  readonly asOf: string;
  readonly system: System;
  /** The folder that the page lies in. */
  readonly folder: string;
  /** Records up to the as-of date, in order of time. */
  readonly events: readonly Event[];
}

export function accountOf(view: RigView, papers: Papers, asOf: string): Account {
  return {
    view,
    state: rigState(view, asOf),
    papers,
    asOf,
    system: view.rig.policy.units.value,
    folder: folderOf(view.rig.file),
    events: view.rig.events.filter(({ last }) => last <= asOf),
  };
}

export type Line = Event['findings'][number]['line'];

/** A record as far as it speaks of some items: its own places among them, and the lines of its findings about them. */
export interface Told {
  readonly event: Event;
  readonly places: readonly Place[];
  readonly lines: readonly { readonly line: Line; readonly places: readonly Place[] }[];
}

/** What the records say of an item, in order of time; records about the roof as a whole are told with the roof. */
export function toldOf(events: readonly Event[], item: string): readonly Told[] {
  const mine = (places: readonly Place[]) => places.filter((place) => place.item === item);
  return events.flatMap((event) => {
    const lines = event.findings
      .map(({ line, places }) => ({ line, places: mine(places) }))
      .filter(({ places }) => places.length > 0);
    const places = mine(event.places);
    return places.length > 0 || lines.length > 0 ? [{ event, places, lines }] : [];
  });
}

/** A reading of the moisture meter where it was taken. */
export interface ReadingTold {
  readonly event: Event;
  readonly items: readonly string[];
  readonly inside?: string;
  readonly moisture: Percent;
}

/** All readings in order of time. */
export function readingsOf(events: readonly Event[]): readonly ReadingTold[] {
  return events.flatMap((event) => {
    const { record } = event;
    const named = [...new Set(event.places.map(({ item }) => item))];
    const own = 'moisture' in record ? record.moisture : undefined;
    const inside = 'inside' in record ? record.inside : undefined;
    const first = own ? [{ event, items: named, ...(inside ? { inside } : {}), moisture: own }] : [];
    const found = event.findings.flatMap(({ line, places }) => {
      const where = line.inside ?? inside;
      const items = [...new Set(places.map(({ item }) => item))];
      return line.moisture ? [{ event, items, ...(where ? { inside: where } : {}), moisture: line.moisture }] : [];
    });
    return [...first, ...found];
  });
}

/** The words of a record that its date, verb and places do not say. */
export const evidenceOf = ({ record }: Event) =>
  record.word === 'stored' || record.word === 'trip' ? undefined : record;
