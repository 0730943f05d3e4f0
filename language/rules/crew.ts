// Rules of the crew of a fleet: days on which it works, and somebody who does.
import type { Span } from '../grammar/problem.ts';
import type { FleetDeclaration } from '../records/file.ts';
import type { Located } from '../resolve/located.ts';
import type { FleetFrame } from '../resolve/types.ts';
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
} as const satisfies Record<string, RuleEntry>;
type Found = Located & { readonly rule: keyof typeof crewRules };

/** What is wrong with the crew as it is written. */
export function* checkCrew({ file, name }: FleetFrame, declaration: FleetDeclaration): Iterable<Found> {
  const crew = declaration.statements.find((statement) => statement.word === 'crew');
  if (!crew) return;
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
  const closed = 'For days on which nobody is there write `closed DATE to DATE`.';
  if (nobody) {
    yield {
      rule: 'crew-of-nobody',
      ...where,
      message: `Nobody works in ${name}, so that no plan gets a day. ${closed}`,
      fixes: people ? [{ label: 'Write a crew of 1', at: people, text: '1' }] : [],
    };
  } else if (crew.hours.minutes === 0) {
    yield {
      rule: 'crew-of-nobody',
      ...where,
      message: `The crew of ${name} has no hours, so that no plan gets a day. ${closed}`,
    };
  }
}
