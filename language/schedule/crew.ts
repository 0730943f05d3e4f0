// Who works how long on which day, and what of it is taken. The one thing here that changes while a schedule is made.
import type { Fleet, Policy } from '../resolve/types.ts';
import { canDo, type Shift, shiftsOf } from './shift.ts';
import type { PlanWord } from './words.ts';

/** Of a pair's time that is work, since two get in each other's way and one holds the ladder: 70 to 80 % (from memory). */
export const pairEfficiency = 0.75;

/** People of one crew who do one visit together. */
export interface Team {
  /** By their numbers in the crew. */
  readonly people: readonly number[];
  readonly of: Shift;
  /** Of one person on a day. */
  readonly minutes: number;
}

export interface Crew {
  /** Those who can do a visit, in a fixed order: pairs for work on a ladder, anybody for a look. */
  teams(words: ReadonlySet<PlanWord>): readonly Team[];
  /** What a team has left of a day, each of its people. */
  left(team: Team, day: string): number;
  take(team: Team, day: string, minutes: number): void;
}

/** One crew with what is taken of each of its people's days. */
interface Gang {
  readonly shift: Shift;
  readonly taken: readonly Map<string, number>[];
  readonly singles: readonly Team[];
  readonly pairs: readonly Team[];
}

/**
 * The crews of a fleet or of a yard, else one person for the hours of the policy's workday. A crew of nobody has no hours.
 * Those with the fewest skills come first, so that those who can do more stay free for it.
 */
export function crewOf(policy: Policy, fleet?: Fleet): Crew {
  const crews = fleet?.crews ?? [];
  const shifts = shiftsOf(fleet);
  const numbers = new Map<string | undefined, number>();
  const gangs = shifts.map((shift, i): Gang => {
    const crew = crews[i];
    const people = Math.max(1, crew?.people ?? 1);
    const minutes = crew?.people === 0 ? 0 : (crew?.minutes ?? policy.workday.value.minutes);
    // Crews without a name are told apart by the numbers of their people.
    const from = numbers.get(shift.name) ?? 0;
    numbers.set(shift.name, from + people);
    const team = (...some: readonly number[]): Team => ({ people: some.map((n) => from + n), of: shift, minutes });
    return {
      shift,
      taken: Array.from({ length: from + people }, () => new Map<string, number>()),
      singles: Array.from({ length: people }, (_, n) => team(people - 1 - n)),
      pairs: Array.from({ length: Math.floor(people / 2) }, (_, n) => team(2 * n, 2 * n + 1)),
    };
  });
  const skills = (i: number) => crews[i]?.skills?.length ?? Number.POSITIVE_INFINITY;
  const inTurn = gangs
    .map((gang, i) => ({ gang, count: skills(i) }))
    .sort((a, b) => (a.count === b.count ? 0 : a.count - b.count));
  const gangOf = new Map(gangs.map((gang) => [gang.shift, gang]));
  const used = ({ of }: Team, person: number, day: string) => gangOf.get(of)?.taken[person]?.get(day) ?? 0;
  return {
    teams: (words) => {
      const looking = [...words].every((word) => word === 'inspect');
      return inTurn.flatMap(({ gang: { shift, singles, pairs } }) =>
        !canDo(words, shift) ? [] : looking || pairs.length === 0 ? singles : pairs,
      );
    },
    left: (team, day) => team.minutes - Math.max(...team.people.map((person) => used(team, person, day))),
    take: (team, day, spent) => {
      for (const person of team.people) gangOf.get(team.of)?.taken[person]?.set(day, used(team, person, day) + spent);
    },
  };
}

/** The minutes of one person's day in a crew of a fleet or a yard; without a crew, of the policy's workday. */
export function workdayIn(policy: Policy, fleet?: Fleet, name?: string): number {
  const crew = fleet?.crews.find((each) => each.name === name) ?? fleet?.crews[0];
  return crew?.people === 0 ? 0 : (crew?.minutes ?? policy.workday.value.minutes);
}

/** How much one minute of a team's day does, in minutes of one person. */
export function speedOf({ people }: Pick<Team, 'people'>): number {
  return people.length === 1 ? 1 : people.length * pairEfficiency;
}
