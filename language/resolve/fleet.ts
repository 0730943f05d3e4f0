// A fleet with its crew and its calendar; who its rigs are, the project knows.
import type { FleetDeclaration } from '../records/file.ts';
import { days } from '../statements/words.ts';
import type { Entry } from './names.ts';
import { originOf } from './origin.ts';
import type { FleetFrame, Policy } from './types.ts';

/** The bookings of a fleet by the name of the rig. */
export function bookedByRig({ booked }: FleetFrame): ReadonlyMap<string, FleetFrame['booked']> {
  const out = new Map<string, FleetFrame['booked'][number][]>();
  for (const span of booked) {
    const known = out.get(span.rig);
    if (known) known.push(span);
    else out.set(span.rig, [span]);
  }
  return out;
}

export function resolveFleet({ declaration, file }: Entry<FleetDeclaration>, policy: Policy): FleetFrame {
  const { statements } = declaration;
  const crew = statements.find((s) => s.word === 'crew');
  return {
    name: declaration.name,
    file,
    at: declaration.at,
    nameAt: declaration.nameAt,
    policy,
    ...(crew
      ? {
          crew: {
            people: crew.people.count,
            // `each` says that the hours are those of every person; without it they are those of the crew together.
            minutes: crew.each ? crew.hours.minutes : crew.hours.minutes / Math.max(1, crew.people.count),
            days: (crew.on ?? ['mon', 'tue', 'wed', 'thu', 'fri']).map((day) => days.indexOf(day) + 1),
            origin: originOf(file, crew.at),
          },
        }
      : {}),
    bays: statements.flatMap((s) => (s.word === 'bay' ? [{ ...s, file }] : [])),
    closed: statements.flatMap((s) =>
      s.word === 'closed' ? [{ first: s.days.low.first, last: s.days.high.last, origin: originOf(file, s.at) }] : [],
    ),
    booked: statements.flatMap((s) =>
      s.word === 'booked'
        ? [{ rig: s.rig.name, first: s.days.low.first, last: s.days.high.last, origin: originOf(file, s.at) }]
        : [],
    ),
    stock: statements.flatMap((s) => (s.word === 'on-hand' || s.word === 'bought' ? [{ ...s, file }] : [])),
  };
}
