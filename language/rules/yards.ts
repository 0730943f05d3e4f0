// Rules of the yards of a fleet: whom each serves, and whether somebody there can do what is planned.
import type { Fix } from '../grammar/problem.ts';
import type { Located } from '../resolve/located.ts';
import type { FleetFrame, FleetYard } from '../resolve/types.ts';
import { seenFrom } from '../resolve/yards.ts';
import type { Ref } from '../statements/slot.ts';
import { nearest } from '../values/nearest.ts';
import { listed } from './listed.ts';
import type { Member } from './member.ts';
import type { RuleEntry } from './rule.ts';

export const yardRules = {
  'yard-twice': {
    severity: 'error',
    title: 'Two yards of a fleet have one name',
    why: 'Schedules and calendars tell yards apart by their names.',
    fix: 'None: only the fleet knows the other name.',
  },
  'served-twice': {
    severity: 'error',
    title: 'Two yards serve one rig',
    why: 'A rig is worked on in one yard, by the crews and in the bays of that one. The first that is written holds.',
    fix: 'None: only the fleet knows which yard it is.',
  },
  'serves-unknown': {
    severity: 'error',
    title: 'A yard serves something that is not there',
    why: 'A yard serves rigs of its fleet and groups that rigs of the fleet belong to: the name is misspelt, or no pattern of the fleet finds the file.',
    fix: 'Writes the nearest name.',
  },
  'yard-serves-nobody': {
    severity: 'hint',
    tag: 'unnecessary',
    title: 'A yard serves no rig',
    why: 'Nothing is planned there. Who is worked on there stands behind `serves`.',
    fix: 'None: only the fleet knows whom it serves.',
  },
  'no-crew-here': {
    severity: 'information',
    title: 'Rigs of a fleet with yards have no crew',
    why: 'A yard has crews of its own. Where none is written, one person is counted with, who works the hours of the policy on any day.',
    fix: 'None: only the fleet knows who works there.',
  },
  'no-skill-for-plan': {
    severity: 'warning',
    title: 'No crew can do a plan',
    why: 'A crew with skills does only what these say. Where no crew of the yard can do a plan, it gets no day.',
    fix: 'None: who can do it, and where, is for the fleet to say.',
  },
} as const satisfies Record<string, RuleEntry>;
type Found = Located & { readonly rule: keyof typeof yardRules };

export function* checkYards(fleet: FleetFrame, members: readonly Member[]): Iterable<Found> {
  if (fleet.yards.length > 0) yield* serving(fleet, members);
  yield* skills(fleet, members);
}

function* serving(fleet: FleetFrame, members: readonly Member[]): Iterable<Found> {
  const { file, name, yards } = fleet;
  const rigs = new Set(members.map((rig) => rig.name));
  const groups = new Set(members.flatMap(({ group }) => (group ? [group.value] : [])));
  const isKnown = ({ name: ref }: Ref) => rigs.has(ref) || groups.has(ref);
  const first = new Map<string, FleetYard>();
  const servedBy = new Map<string, { readonly ref: Ref; readonly yard: FleetYard }[]>();
  for (const yard of yards) {
    const same = first.get(yard.name);
    if (!same) first.set(yard.name, yard);
    else
      yield {
        rule: 'yard-twice',
        file,
        at: yard.nameAt,
        message: `${name} already has a yard \`${yard.name}\`: give this one another name.`,
        related: [{ file, at: same.nameAt, message: 'The other yard.' }],
      };
    for (const ref of yard.serves) {
      const known = servedBy.get(ref.name);
      if (known) known.push({ ref, yard });
      else servedBy.set(ref.name, [{ ref, yard }]);
      // With no rig at all the pattern is to blame, and says so.
      if (members.length > 0 && !isKnown(ref)) yield unknown(ref, fleet, [...groups, ...rigs]);
    }
  }
  const told = new Set<string>();
  const counts = new Map<FleetYard | undefined, string[]>();
  for (const rig of members) {
    const yard = fleet.yardOf(rig);
    const mine = counts.get(yard);
    if (mine) mine.push(rig.name);
    else counts.set(yard, [rig.name]);
    const places = [
      ...(servedBy.get(rig.name) ?? []),
      ...(rig.group && rig.group.value !== rig.name ? (servedBy.get(rig.group.value) ?? []) : []),
    ].sort((a, b) => a.ref.at[0] - b.ref.at[0]);
    const [one, other] = [places[0], places.find((place) => place.yard !== places[0]?.yard)];
    const key = `${one?.ref.at[0]} ${other?.ref.at[0]}`;
    if (!one || !other || told.has(key)) continue;
    // Two yards with one group are told once, and not for each of its rigs.
    told.add(key);
    yield {
      rule: 'served-twice',
      file,
      at: other.ref.at,
      message: `${rig.name} is served by ${one.yard.name} already, and by ${other.yard.name} here: a rig is worked on in one yard.`,
      related: [{ file, at: one.ref.at, message: `${one.yard.name} serves it.` }],
    };
  }
  for (const yard of yards) {
    const { nameAt: at, crews } = yard;
    if (!counts.has(yard) && !yard.serves.some(isKnown))
      yield {
        rule: 'yard-serves-nobody',
        file,
        at,
        message: `${yard.name} serves no rig of ${name}: write groups or rigs behind \`serves\`.`,
      };
    else if (crews.length === 0 && counts.has(yard))
      yield noCrew(fleet, at, `${yard.name} has no crew of its own`, counts.get(yard) ?? []);
  }
  const rest = counts.get(undefined);
  if (rest && fleet.crews.length === 0)
    yield noCrew(fleet, fleet.nameAt, `No yard serves ${listed(rest)}, and ${name} has no crew of its own`, rest);
}

function noCrew({ file, policy }: FleetFrame, at: Located['at'], what: string, rigs: readonly string[]): Found {
  return {
    rule: 'no-crew-here',
    file,
    at,
    message: `${what}: for ${rigs.length === 1 ? 'one rig' : `${rigs.length} rigs`} one person is counted with, for ${policy.workday.value.text} on any day.`,
  };
}

function unknown({ name, at }: Ref, { file, name: fleet }: FleetFrame, known: readonly string[]): Found {
  const close = nearest(name, known);
  const fixes: Fix[] = close === undefined ? [] : [{ label: `Write \`${close}\``, at, text: close }];
  const hint = close === undefined ? 'Does a pattern under `rigs` find its file?' : `Did you mean \`${close}\`?`;
  const message = `${fleet} has no rig \`${name}\`, and none in a group of that name. ${hint}`;
  return { rule: 'serves-unknown', file, at, message, fixes };
}

/** What is planned for a rig and no crew of its yard has the skill for; each kind of work once a rig. */
function* skills(fleet: FleetFrame, members: readonly Member[]): Iterable<Found> {
  const places = new Map<FleetYard | undefined, ReadonlySet<string> | 'everything'>();
  for (const rig of members) {
    if (rig.work.length === 0) continue;
    const yard = fleet.yardOf(rig);
    let can = places.get(yard);
    if (can === undefined) {
      can = doneBy(seenFrom(yard, fleet));
      places.set(yard, can);
    }
    if (can === 'everything') continue;
    for (const { word, file, at } of rig.work) {
      if (can.has(word)) continue;
      const where = yard ? ` at ${yard.name}` : '';
      yield {
        rule: 'no-skill-for-plan',
        rig: rig.name,
        file,
        at,
        message: `In ${fleet.name}: no crew${where} does \`${word}\`. Write it behind the \`skill\` of a crew there, or let another yard serve the rig.`,
      };
    }
  }
}

function doneBy({ crews }: FleetFrame): ReadonlySet<string> | 'everything' {
  if (crews.length === 0 || crews.some(({ skills }) => !skills)) return 'everything';
  return new Set(crews.flatMap(({ skills }) => skills ?? []));
}
