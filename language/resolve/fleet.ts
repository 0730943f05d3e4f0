// A fleet with its crews, its yards and its calendar; who its rigs are, the project knows.
import { allLines, type FleetDeclaration } from '../records/file.ts';
import type { YardLine } from '../statements/fleet.ts';
import { days } from '../statements/words.ts';
import type { Entry } from './names.ts';
import { originOf, stated } from './origin.ts';
import type { Crew, FleetFrame, FleetYard, Policy, Stated } from './types.ts';
import { servedBy } from './yards.ts';

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

type Line = FleetDeclaration['statements'][number] | YardLine;

export function resolveFleet({ declaration, file }: Entry<FleetDeclaration>, policy: Policy): FleetFrame {
  const { statements } = declaration;
  // A crew is known by its name in the whole fleet, whatever block speaks of it.
  const all = [...allLines(declaration)] as unknown as readonly Line[];
  const yards = statements.flatMap((s): FleetYard[] => {
    if (s.word !== 'yard') return [];
    const lines = s.lines ?? [];
    return [
      {
        name: s.name.name,
        nameAt: s.name.at,
        origin: originOf(file, s.at),
        ...placeOf(lines, all, file),
        climate: climateOf(lines, file),
        serves: lines.flatMap((line) => (line.word === 'serves' ? line.served : [])),
      },
    ];
  });
  const place = placeOf(statements, all, file);
  const [crew] = place.crews;
  return {
    name: declaration.name,
    file,
    at: declaration.at,
    nameAt: declaration.nameAt,
    policy,
    ...(crew ? { crew } : {}),
    ...place,
    booked: statements.flatMap((s) =>
      s.word === 'booked'
        ? [{ rig: s.rig.name, first: s.days.low.first, last: s.days.high.last, origin: originOf(file, s.at) }]
        : [],
    ),
    yards,
    yardOf: servedBy(yards),
  };
}

/** What a fleet has directly, or one of its yards. */
function placeOf(
  lines: readonly Line[],
  all: readonly Line[],
  file: string,
): Pick<FleetYard, 'crews' | 'bays' | 'closed' | 'stock'> {
  return {
    crews: lines.flatMap((s) => (s.word === 'crew' ? [crewOf(s, all, file)] : [])),
    bays: lines.flatMap((s) => (s.word === 'bay' ? [{ ...s, file }] : [])),
    closed: lines.flatMap((s) =>
      s.word === 'closed' ? [{ first: s.days.low.first, last: s.days.high.last, origin: originOf(file, s.at) }] : [],
    ),
    stock: lines.flatMap((s) => (s.word === 'on-hand' || s.word === 'bought' ? [{ ...s, file }] : [])),
  };
}

function crewOf(crew: Extract<Line, { word: 'crew' }>, all: readonly Line[], file: string): Crew {
  const name = crew.name?.name;
  const skills = all.filter((s) => s.word === 'skill' && s.crew.name === name);
  return {
    ...(crew.name ? { name: crew.name.name, nameAt: crew.name.at } : {}),
    people: crew.people.count,
    // `each` says that the hours are those of every person; without it they are those of the crew together.
    minutes: crew.each ? crew.hours.minutes : crew.hours.minutes / Math.max(1, crew.people.count),
    days: (crew.on ?? ['mon', 'tue', 'wed', 'thu', 'fri']).map((day) => days.indexOf(day) + 1),
    ...(skills.length > 0 ? { skills: [...new Set(skills.flatMap((s) => (s.word === 'skill' ? s.work : [])))] } : {}),
    off: all.flatMap((s) =>
      s.word === 'off' && s.crew.name === name
        ? [{ first: s.days.low.first, last: s.days.high.last, origin: originOf(file, s.at) }]
        : [],
    ),
    origin: originOf(file, crew.at),
  };
}

/** Of two lines about one month the first holds. */
function climateOf(lines: readonly YardLine[], file: string): FleetYard['climate'] {
  const byMonth = <T>(entries: readonly (readonly [string, Stated<T>])[]) => Object.fromEntries([...entries].reverse());
  const noon = lines.find((s) => s.word === 'before-noon');
  return {
    slack: byMonth(lines.flatMap((s) => (s.word === 'slack' ? [[s.month, stated(s.share, file, s)] as const] : []))),
    normals: byMonth(lines.flatMap((s) => (s.word === 'normals' ? [[s.month, stated(s.air, file, s)] as const] : []))),
    ...(noon?.word === 'before-noon' ? { beforeNoon: stated(noon.when, file, noon) } : {}),
  };
}
