// Rules of fleets: rigs that are there once, bookings that can be kept, a crew and bays that fit.
import picomatch from 'picomatch';
import type { Fix } from '../grammar/problem.ts';
import type { FleetDeclaration } from '../records/file.ts';
import { bookedByRig } from '../resolve/fleet.ts';
import type { Located } from '../resolve/located.ts';
import { folderOf, relativeTo, resolvePath } from '../resolve/paths.ts';
import type { FleetFrame, MaterialsOf, Origin } from '../resolve/types.ts';
import { seenFrom, shelvesOf } from '../resolve/yards.ts';
import type { Ref } from '../statements/slot.ts';
import { lengthText } from '../values/display.ts';
import { nearest } from '../values/nearest.ts';
import { checkCrew, crewRules } from './crew.ts';
import type { FreeDays } from './free-days.ts';
import { listed } from './listed.ts';
import type { Member } from './member.ts';
import { notFree } from './planning.ts';
import { family, type RuleEntry } from './rule.ts';
import { sizesInStock } from './which.ts';
import { checkYards, yardRules } from './yards.ts';

const rules = {
  'no-rigs': {
    severity: 'warning',
    title: 'A pattern finds no rig',
    why: 'A fleet has the rigs of the files that its patterns name, seen from its own folder.',
    fix: 'None: only the writer knows where the rigs are.',
  },
  'rig-twice': {
    severity: 'error',
    title: 'Two rigs of a fleet have one name',
    why: 'Bookings and outputs go by the name of the rig.',
    fix: 'None: only the writer knows the other name.',
  },
  'unit-twice': {
    severity: 'warning',
    title: 'Two rigs of a fleet have one unit number',
    why: 'On the sheet of the day a rig is known by its unit number.',
    fix: 'None: only the yard knows which is wrong.',
  },
  'vin-twice': {
    severity: 'error',
    title: 'Two rigs of a fleet have one VIN',
    why: 'A VIN belongs to one vehicle: a record was copied.',
    fix: 'None: compare with the plates.',
  },
  'booked-unknown': {
    severity: 'error',
    title: 'A rig is booked that is not in the fleet',
    why: 'It is misspelt, or no pattern of the fleet finds its file.',
    fix: 'Writes the nearest name.',
  },
  'bookings-overlap': {
    severity: 'warning',
    title: 'A rig is booked twice at one time',
    why: 'A rig may come back and leave on one day, but not be out twice.',
    fix: 'None: only the yard knows which booking holds.',
  },
  'booked-while-stored': {
    severity: 'warning',
    title: 'A rig is booked while it is laid up',
    why: 'One of the two cannot be. Before it leaves, a stored rig is looked at first.',
    fix: 'None: only the yard knows which holds.',
  },
  ...crewRules,
  ...yardRules,
  'bay-too-short': {
    severity: 'information',
    title: 'A bay is shorter than a roof',
    why: 'A rig is longer than its roof by hitch and ladder, so one whose roof is longer than the bay does not go in.',
    fix: 'None: the measures are what they are.',
  },
  'no-free-day-in-fleet': {
    severity: 'warning',
    title: 'Bookings and closed days leave no day for a plan',
    why: 'The rig alone would have a free day, but on those it is booked, the yard is closed or the crew is off.',
    fix: 'Where the plan names its day, writes the first one that is free in the fleet.',
  },
} as const satisfies Record<string, RuleEntry>;
type Found = Located & { readonly rule: keyof typeof rules };
type Place = Pick<Origin, 'file' | 'at'>;

export const fleets = family(rules);

export interface FleetContext {
  readonly fleet: FleetFrame;
  /** In the order of their files, and as written in each. */
  readonly members: readonly Member[];
  readonly declaration: FleetDeclaration;
  readonly material: MaterialsOf;
}

/** What is wrong with a fleet as a whole. Findings about plans stand in the files of the rigs. */
export function* checkFleet(context: FleetContext): Iterable<Located> {
  yield* patterns(context);
  yield* twice(context);
  yield* bookings(context);
  yield* yard(context);
  yield* sizesInStock(shelvesOf(context.fleet), context.material);
  yield* plansInFleet(context);
}

/** A pattern that matches only files without a rig finds none as well. */
function* patterns({ fleet, members, declaration }: FleetContext): Iterable<Found> {
  const files = [...new Set(members.map(({ file }) => file))];
  for (const statement of declaration.statements) {
    if (statement.word !== 'rigs') continue;
    const empty = statement.patterns.filter((pattern) => {
      const matches = picomatch(resolvePath(folderOf(fleet.file), pattern), { nobrace: true, noext: true });
      return !files.some((file) => matches(file));
    });
    if (empty.length > 0)
      yield {
        rule: 'no-rigs',
        file: fleet.file,
        at: statement.spans.patterns ?? statement.at,
        message: `No file that ${listed(empty)} names has a rig. The path is seen from the folder of this file, such as \`"../rigs/*.rig"\`.`,
      };
  }
}

/** The later one by path is reported, where it stands. */
function* twice({ fleet, members }: FleetContext): Iterable<Located> {
  const rigsLine = { file: fleet.file, at: fleet.nameAt };
  const seen = (file: string) => relativeTo(folderOf(fleet.file), file);
  yield* same(
    members,
    ({ name }) => name,
    (rig, first) => ({
      rule: 'rig-twice',
      ...rigsLine,
      message: `${fleet.name} has two rigs called \`${rig.name}\`, in ${seen(first.file)} and in ${seen(rig.file)}: give one of them another name.`,
      related: [first, rig].map(({ file, nameAt }) => ({ file, at: nameAt, message: 'A rig of that name.' })),
    }),
  );
  yield* same(
    members,
    ({ name }) => name.toLowerCase(),
    (rig, first) =>
      rig.name === first.name
        ? undefined
        : {
            rule: 'names-differ-in-case',
            file: rig.file,
            at: rig.nameAt,
            message: `\`${rig.name}\` and \`${first.name}\` in ${fleet.name} differ in their case only: some machines do not tell files of these names apart.`,
            related: [{ file: first.file, at: first.nameAt, message: 'The other one.' }],
          },
  );
  for (const [rule, fact, what] of [
    ['unit-twice', 'unit', 'unit number'],
    ['vin-twice', 'vin', 'VIN'],
  ] as const) {
    yield* same(
      members,
      (rig) => rig[fact]?.value,
      (rig, first) => {
        const [mine, other] = [rig[fact] as { origin: Place }, first[fact] as { origin: Place }];
        return {
          rule,
          rig: rig.name,
          file: mine.origin.file,
          at: mine.origin.at,
          message: `${rig.name} and ${first.name} have the same ${what}, \`${rig[fact]?.value}\`: one of them is wrong.`,
          related: [{ file: other.origin.file, at: other.origin.at, message: `The ${what} of ${first.name}.` }],
        };
      },
    );
  }
}

function* same<T>(
  rigs: readonly Member[],
  key: (rig: Member) => string | undefined,
  found: (rig: Member, first: Member) => T | undefined,
): Iterable<T> {
  const firsts = new Map<string, Member>();
  for (const rig of rigs) {
    const k = key(rig);
    if (k === undefined) continue;
    const first = firsts.get(k);
    if (!first) firsts.set(k, rig);
    else {
      const one = found(rig, first);
      if (one) yield one;
    }
  }
}

function* bookings({ fleet, members, declaration }: FleetContext): Iterable<Found> {
  const rigs = new Map(members.map((rig) => [rig.name, rig]));
  const refs = new Map(declaration.statements.flatMap((s) => (s.word === 'booked' ? [[s.at, s.rig] as const] : [])));
  for (const [name, spans] of bookedByRig(fleet)) {
    const rig = rigs.get(name);
    // With no rig at all the pattern is to blame, and says so.
    if (!rig && rigs.size > 0)
      for (const { origin } of spans)
        yield unknown(refs.get(origin.at) ?? { name, at: origin.at }, origin, fleet, rigs);
    const inTime = [...spans].sort((a, b) => (a.first < b.first ? -1 : a.first > b.first ? 1 : 0));
    /** Of those before, the one that is out longest. */
    let before: (typeof inTime)[number] | undefined;
    for (const span of inTime) {
      const { file, at } = span.origin;
      if (before && before.last > span.first)
        yield {
          rule: 'bookings-overlap',
          file,
          at,
          message: `${name} is booked from ${span.first}, and until ${before.last} it is out already. Back and out on one day is fine.`,
          related: [{ file: before.origin.file, at: before.origin.at, message: 'The other booking.' }],
        };
      if (!before || span.last > before.last) before = span;
      const stored = rig?.stored.find(({ first, last }) => first <= span.last && span.first <= last);
      if (stored)
        yield {
          rule: 'booked-while-stored',
          file,
          at,
          message: `${name} is booked ${span.first} to ${span.last} and stored ${stored.first} to ${stored.last}: one of the two cannot be.`,
          related: [{ file: stored.origin.file, at: stored.origin.at, message: 'Stored.' }],
        };
    }
  }
}

function unknown(name: Ref, { file }: Origin, fleet: FleetFrame, rigs: ReadonlyMap<string, Member>): Found {
  const { at } = name;
  const close = nearest(name.name, rigs.keys());
  const hint = close === undefined ? 'Does a pattern under `rigs` find its file?' : `Did you mean \`${close}\`?`;
  const fixes: Fix[] = close === undefined ? [] : [{ label: `Write \`${close}\``, at, text: close }];
  return { rule: 'booked-unknown', file, at, message: `${fleet.name} has no rig \`${name.name}\`. ${hint}`, fixes };
}

function* yard(context: FleetContext): Iterable<Located> {
  const { fleet, members, declaration } = context;
  yield* checkCrew(fleet, declaration);
  yield* checkYards(fleet, members);
  for (const site of sites(context)) {
    for (const { name, length, file, at } of site.fleet.bays) {
      if (!length) continue;
      const long = site.members.filter(({ along }) => along !== undefined && along > length.nm);
      if (long.length === 0) continue;
      const longest = Math.max(...long.map(({ along }) => along ?? 0));
      yield {
        rule: 'bay-too-short',
        file,
        at,
        message: `${name.name} is ${length.text} long; the ${long.length === 1 ? 'roof' : 'roofs'} of ${listed(long.map((rig) => rig.name))} ${long.length === 1 ? 'is' : 'are'} longer, up to ${lengthText(longest, fleet.policy.units.value)}.`,
      };
    }
  }
}

/** The fleet as each of its yards sees it, with the rigs that it serves. */
function sites({ fleet, members }: FleetContext): readonly Pick<FleetContext, 'fleet' | 'members'>[] {
  if (fleet.yards.length === 0) return [{ fleet, members }];
  return [...fleet.yards, undefined].map((yard) => ({
    fleet: seenFrom(yard, fleet),
    members: members.filter((rig) => fleet.yardOf(rig) === yard),
  }));
}

/** Only of plans that the rig alone could keep: what hinders those is said in the file of the rig. */
function* plansInFleet(context: FleetContext): Iterable<Found> {
  const booked = bookedByRig(context.fleet);
  for (const { fleet, members } of sites(context)) {
    const closed = fleet.closed.map((span) => ({ ...span, by: 'closed' }));
    const indoor = fleet.bays.some(({ where }) => where === 'indoor');
    const weekdays = [...new Set(fleet.crews.flatMap((crew) => crew.days))];
    for (const { name, plans } of members) {
      for (const plan of plans) {
        const { season, taken } = plan.days;
        const days: FreeDays = {
          taken: [...taken, ...(booked.get(name) ?? []).map((span) => ({ ...span, by: 'booked' })), ...closed],
          ...(season && !indoor ? { season } : {}),
          ...(fleet.crews.length > 0 ? { weekdays } : {}),
        };
        const found = notFree(plan, days, plan.from, plan.to);
        if (!found) continue;
        yield {
          ...found,
          rule: 'no-free-day-in-fleet',
          rig: name,
          file: plan.file,
          at: plan.at,
          message: `In ${fleet.name}: ${found.message}`,
        };
      }
    }
  }
}
