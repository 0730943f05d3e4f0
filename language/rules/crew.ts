// Rules of the crews of a fleet: days on which they work, somebody who does, names that are theirs alone.
import type { Fix, Span } from '../grammar/problem.ts';
import { allLines, type FleetDeclaration } from '../records/file.ts';
import type { Located } from '../resolve/located.ts';
import type { FleetFrame } from '../resolve/types.ts';
import type { FleetStatement, YardLine } from '../statements/fleet.ts';
import type { Ref } from '../statements/slot.ts';
import { nearest } from '../values/nearest.ts';
import type { RuleEntry } from './rule.ts';

export const crewRules = {
  'crew-without-days': {
    severity: 'information',
    title: 'A crew has no days',
    why: 'Without days of the week the crew works from Monday to Friday.',
    fix: 'Writes what is taken: `on mon to fri`.',
  },
  'crew-of-nobody': {
    severity: 'warning',
    title: 'A crew has no people or no hours',
    why: 'Nobody works, so that no plan of the fleet gets a day. Days on which nobody is there are written `closed`; without a `crew` one person works the hours of the policy.',
    fix: 'Writes a crew of one where there are no people; how many hours there are is for the yard to say.',
  },
  'crew-without-name': {
    severity: 'information',
    title: 'One of several crews has no name',
    why: 'Schedules and calendars tell crews apart by their names, and only a crew with a name can have skills and days off.',
    fix: 'None: only the yard knows what it calls its crews.',
  },
  'crew-twice': {
    severity: 'error',
    title: 'Two crews of a fleet have one name',
    why: 'A crew is known by its name in all yards of a fleet. Skills and days off of that name would be those of both.',
    fix: 'None: only the yard knows the other name.',
  },
  'crew-unknown': {
    severity: 'error',
    title: 'A crew is not there',
    why: 'Skills and days off are those of a crew that the fleet or one of its yards has.',
    fix: 'Writes the nearest name.',
  },
} as const satisfies Record<string, RuleEntry>;
type Found = Located & { readonly rule: keyof typeof crewRules };
type Line = Exclude<FleetStatement, { word: 'yard' }> | YardLine;
type CrewLine = Extract<Line, { word: 'crew' }>;

/** What is wrong with the crews as they are written. */
export function* checkCrew({ file, name }: FleetFrame, declaration: FleetDeclaration): Iterable<Found> {
  const lines = [...allLines(declaration)] as unknown as readonly Line[];
  const crews = lines.filter((line) => line.word === 'crew');
  for (const crew of crews) yield* checkOne(crew, crews.length, file, name);
  const named = new Map<string, CrewLine>();
  for (const crew of crews) {
    if (!crew.name) continue;
    const first = named.get(crew.name.name);
    if (!first) named.set(crew.name.name, crew);
    else
      yield {
        rule: 'crew-twice',
        file,
        at: crew.name.at,
        message: `${name} already has a crew \`${crew.name.name}\`: give this one another name.`,
        related: [{ file, at: first.name?.at ?? first.at, message: 'The other crew.' }],
      };
  }
  for (const line of lines)
    if ((line.word === 'off' || line.word === 'skill') && !named.has(line.crew.name))
      yield unknown(line.crew, file, name, named.keys());
  yield* unnamed(declaration, file);
}

/** Of several crews in one place. */
function* unnamed({ statements }: FleetDeclaration, file: string): Iterable<Found> {
  const places: readonly (readonly { readonly word: string }[])[] = [
    statements,
    ...statements.flatMap((s) => (s.word === 'yard' ? [s.lines ?? []] : [])),
  ];
  for (const place of places) {
    const crews = place.filter((line): line is CrewLine => line.word === 'crew');
    if (crews.length < 2) continue;
    for (const { name, at } of crews)
      if (!name)
        yield {
          rule: 'crew-without-name',
          file,
          at,
          message: 'There are several crews here: write a name behind `crew`, such as `crew Ladder 2 for 8 h each`.',
        };
  }
}

function unknown({ name, at }: Ref, file: string, fleet: string, crews: Iterable<string>): Found {
  const all = [...crews];
  const close = nearest(name, all);
  const fixes: Fix[] = close === undefined ? [] : [{ label: `Write \`${close}\``, at, text: close }];
  const hint =
    close !== undefined
      ? `Did you mean \`${close}\`?`
      : all.length === 0
        ? 'Its crew has no name yet: write it behind `crew`, such as `crew Ladder 2 for 8 h each`.'
        : 'Write a `crew` of that name, or the name of another one.';
  return { rule: 'crew-unknown', file, at, message: `${fleet} has no crew \`${name}\`. ${hint}`, fixes };
}

function* checkOne(crew: CrewLine, count: number, file: string, name: string): Iterable<Found> {
  const where = { file, at: crew.at };
  if (!crew.on) {
    const end: Span = [crew.at[1], crew.at[1]];
    yield {
      rule: 'crew-without-days',
      ...where,
      message: 'No days are written for the crew: Monday to Friday are taken. Write them, such as `on mon to fri`.',
      fixes: [{ label: 'Write `on mon to fri`', at: end, text: ' on mon to fri' }],
    };
  }
  const people = crew.spans.people;
  const nobody = crew.people.count === 0;
  const who = count > 1 && crew.name ? `crew ${crew.name.name} of ${name}` : name;
  const so = count > 1 ? 'so that it gets no plan' : 'so that no plan gets a day';
  const closed = 'For days on which nobody is there write `closed DATE to DATE`.';
  if (nobody) {
    yield {
      rule: 'crew-of-nobody',
      ...where,
      message: `Nobody works in ${who}, ${so}. ${closed}`,
      fixes: people ? [{ label: 'Write a crew of 1', at: people, text: '1' }] : [],
    };
  } else if (crew.hours.minutes === 0) {
    yield {
      rule: 'crew-of-nobody',
      ...where,
      message: `${count > 1 && crew.name ? `Crew ${crew.name.name}` : 'The crew'} of ${name} has no hours, ${so}. ${closed}`,
    };
  }
}
