// A calendar for each crew and each bay of a fleet that has several.
import type { TextFile } from '../../protocol/index.ts';
import { namePartsOf } from '../file-names.ts';
import { placeIcs } from '../schedule-ics.ts';
import { bayPlaces, crewPlaces, type Place, staysUntil } from './places.ts';
import type { FleetScene } from './scene.ts';

/**
 * `NAME.crew-CREW.ics` with the visits of one crew and `NAME.bay-BAY.ics` with those of one bay, there with the days on which a
 * rig stands after its work until rain does no harm. One without a visit is empty, so that whoever follows it sees that nothing
 * is planned.
 */
export function calendarsOf(scene: FleetScene): readonly TextFile[] {
  const { name, papers } = scene;
  return [
    ...each(crewPlaces(scene), ({ title, visits }, part) => ({
      name: `${name}.crew-${part}.ics`,
      text: placeIcs(papers.schedule, title, visits),
    })),
    ...each(bayPlaces(scene), ({ title, visits }, part) => ({
      name: `${name}.bay-${part}.ics`,
      text: placeIcs(papers.schedule, title, visits, staysUntil),
    })),
  ];
}

function each(places: readonly Place[], write: (place: Place, part: string) => TextFile): readonly TextFile[] {
  if (places.length < 2) return [];
  const parts = namePartsOf(places.map(({ title }) => title));
  return places.map((place, i) => write(place, parts[i] as string));
}
