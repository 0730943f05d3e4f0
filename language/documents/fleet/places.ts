// The crews and the indoor bays of a fleet and its yards, with the visits that each of them has.
import type { Crew, Fleet } from '../../resolve/types.ts';
import { lastIndoors } from '../../schedule/bay.ts';
import type { Visit } from '../../schedule/index.ts';
import { endOf, type FleetScene } from './scene.ts';

export interface Place {
  /** As it is called in the fleet: with its yard before it where two yards have one of the same name. */
  readonly title: string;
  readonly yard?: string;
  /** In order of time. */
  readonly visits: readonly Visit[];
}

/** A crew, or all crews of a place that have no name. */
export interface CrewPlace extends Place {
  readonly crews: readonly Crew[];
  /** Days on which its yard is closed. */
  readonly closed: Fleet['closed'];
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
const inTime = (visits: readonly Visit[]): readonly Visit[] =>
  [...visits].sort((a, b) => compare(a.days[0] as string, b.days[0] as string) || compare(a.id, b.id));

/** Which yard a visit is in: its own word, else that of its rig. */
function yardsOfVisits({ rigs }: FleetScene): ReadonlyMap<Visit, string | undefined> {
  return new Map(rigs.flatMap(({ yard, visits }) => visits.map((visit) => [visit, visit.yard ?? yard] as const)));
}

interface Named {
  readonly name?: string;
  readonly yard?: string;
}

/** A title for each, unlike all others. */
function titled<T extends Named>(all: readonly T[], fleet: string): readonly (T & { readonly title: string })[] {
  return all.map((one) => {
    const { name, yard } = one;
    const twice = all.filter((other) => other.name === name).length > 1;
    const place = yard ?? fleet;
    return { ...one, title: name === undefined ? place : twice ? `${place}-${name}` : name };
  });
}

/** The indoor bays as written: those of the fleet, then those of its yards. */
export function bayPlaces(scene: FleetScene): readonly Place[] {
  const { fleet } = scene;
  const yards = yardsOfVisits(scene);
  const indoor = (bays: Fleet['bays']) => [
    ...new Set(bays.filter(({ where }) => where === 'indoor').map((bay) => bay.name.name)),
  ];
  const bays: readonly Named[] = [
    ...indoor(fleet.bays).map((name) => ({ name })),
    ...fleet.yards.flatMap((yard) => indoor(yard.bays).map((name) => ({ name, yard: yard.name }))),
  ];
  return titled(bays, scene.name).map(({ name, yard, title }) => ({
    title,
    ...(yard === undefined ? {} : { yard }),
    visits: inTime([...yards].flatMap(([visit, at]) => (visit.bay === name && at === yard ? [visit] : []))),
  }));
}

/** The last day on which a rig stands in its bay: rain does its new work no harm from the next one on. */
export const staysUntil = (visit: Visit): string => lastIndoors(endOf(visit), visit.clocks);

/** The crews as written; of a place that writes of none there is none. */
export function crewPlaces(scene: FleetScene): readonly CrewPlace[] {
  const { fleet } = scene;
  const yards = yardsOfVisits(scene);
  const of = (crews: readonly Crew[], closed: Fleet['closed'], yard?: string) =>
    [...new Set(crews.map(({ name }) => name))].map((name) => ({
      ...(name === undefined ? {} : { name }),
      ...(yard === undefined ? {} : { yard }),
      crews: crews.filter((crew) => crew.name === name),
      closed,
    }));
  const all = [
    ...of(fleet.crews, fleet.closed),
    ...fleet.yards.flatMap((yard) => of(yard.crews, [...fleet.closed, ...yard.closed], yard.name)),
  ];
  return titled(all, scene.name).map(({ name, yard, title, crews, closed }) => ({
    title,
    ...(yard === undefined ? {} : { yard }),
    crews,
    closed,
    visits: inTime([...yards].flatMap(([visit, at]) => (visit.crewName === name && at === yard ? [visit] : []))),
  }));
}
