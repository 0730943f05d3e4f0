// An inspection as a walk: each seam in the order in which a person comes to it, with what was found last and how each
// condition is told there.
import { type Gauged, gaugeOf } from '../documents/sheets/gauges.ts';
import { lastFinding, lastNote } from '../documents/sheets/last-finding.ts';
import { walkingOrder } from '../documents/sheets/walking.ts';
import type { RigView } from '../resolve/types.ts';
import { groundOf, isThere, type RigState, type SeamState } from '../seams/index.ts';
import { type Condition, conditions } from '../statements/words.ts';
import { lengthText } from '../values/display.ts';
import { lengthOf } from '../values/length.ts';

export interface Station {
  readonly item: string;
  /** The leg of the walk that it is on. */
  readonly leg: string;
  /** What it is: `edge, 28 ft`. */
  readonly what: string;
  /** How long it is, exactly, where that is known. */
  readonly length?: string;
  /** What was found last. */
  readonly last: string;
  readonly lastNote?: string;
  /** The conditions from best to worst, each with its gauge. */
  readonly gauges: readonly { readonly word: Condition; readonly gauge: string }[];
}

export interface Walk {
  readonly name: string;
  readonly stations: readonly Station[];
  /** Who has inspected it, the last one first. */
  readonly people: readonly string[];
}

/** The walk round a rig as it stands on a date. */
export function walkRound({ rig }: RigView, state: RigState): Walk {
  const stations = walkingOrder(rig).flatMap(({ title, items }) =>
    items.flatMap(({ name }) => {
      const seam = state.seams.get(name);
      return seam && isThere(seam, state.asOf) ? [station(seam, title)] : [];
    }),
  );
  const people = rig.events.flatMap(({ record }) =>
    record.word === 'inspected' && record.by !== undefined ? [record.by] : [],
  );
  return { name: rig.name, stations, people: [...new Set(people.toReversed())] };

  function station(seam: SeamState, leg: string): Station {
    const system = rig.policy.units.value;
    const { item, stretches } = seam;
    const long = stretches.at(-1)?.to;
    const note = lastNote(seam);
    const things = gaugedAt(seam);
    return {
      item: item.name,
      leg,
      what: [
        item.kind,
        ...(item.count > 1 ? [`${item.count} alike`] : []),
        ...(long ? [lengthText(long, system)] : []),
      ].join(', '),
      ...(long ? { length: lengthOf(long, system).text } : {}),
      last: lastFinding(seam, system),
      ...(note ? { lastNote: note } : {}),
      gauges: conditions.map((word) => ({ word, gauge: things.map((thing) => gaugeOf(word, thing)).join('; ') })),
    };
  }

  function gaugedAt({ item, role, stretches }: SeamState): readonly Gauged[] {
    if (role === 'field') return ['membrane'];
    if (role === 'open') return ['part'];
    const tops = new Set(stretches.map((stretch) => groundOf(stretch, item, rig.roof).kind));
    const seams: readonly Gauged[] = [
      ...(tops.has('tape') ? (['tape'] as const) : []),
      ...(tops.size > 1 || !tops.has('tape') ? (['sealant'] as const) : []),
    ];
    return item.kind === 'mount' ? [...seams, 'fastener'] : seams;
  }
}
