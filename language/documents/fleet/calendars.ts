// A calendar for each crew and each bay of a fleet that has several.
import type { TextFile } from '../../protocol/index.ts';
import type { Fleet } from '../../resolve/types.ts';
import { lastIndoors } from '../../schedule/bay.ts';
import type { Visit } from '../../schedule/index.ts';
import { namePartsOf } from '../file-names.ts';
import { placeIcs } from '../schedule-ics.ts';
import { endOf, type FleetScene } from './scene.ts';

/**
 * `NAME.bay-BAY.ics`: the visits of one bay, with the days on which a rig stands there after its work until rain does no harm.
 * A bay without a visit has an empty one, so that whoever follows it sees that nothing is planned.
 */
export function calendarsOf({ name, fleet, rigs, papers }: FleetScene): readonly TextFile[] {
  const stays = (visit: Visit) => lastIndoors(endOf(visit), visit.clocks);
  const bays = baysOf(fleet);
  return each(
    bays.map(({ bay, yard }) =>
      bays.some((one) => one.bay === bay && one.yard !== yard) ? `${yard ?? name}-${bay}` : bay,
    ),
    (title, part, i) => {
      const { bay, yard } = bays[i]!;
      const visits = rigs
        .filter((rig) => rig.yard === yard)
        .flatMap((rig) => rig.visits.filter((visit) => visit.bay === bay));
      return { name: `${name}.bay-${part}.ics`, text: placeIcs(papers.schedule, title, visits.sort(byDay), stays) };
    },
  );
}

/** The indoor bays of a fleet and of its yards; two yards may have one of the same name. */
function baysOf({ bays, yards }: Fleet): readonly { readonly bay: string; readonly yard?: string }[] {
  const indoor = (all: Fleet['bays']) => [
    ...new Set(all.filter(({ where }) => where === 'indoor').map((bay) => bay.name.name)),
  ];
  return [
    ...indoor(bays).map((bay) => ({ bay })),
    ...yards.flatMap((yard) => indoor(yard.bays).map((bay) => ({ bay, yard: yard.name }))),
  ];
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
const byDay = (a: Visit, b: Visit) => compare(a.days[0] as string, b.days[0] as string) || compare(a.id, b.id);

function each(
  names: readonly string[],
  write: (name: string, part: string, i: number) => TextFile,
): readonly TextFile[] {
  if (names.length < 2) return [];
  const parts = namePartsOf(names);
  return names.map((name, i) => write(name, parts[i] as string, i));
}
