// Who works how long on which day, and what of it is taken. The one thing here that changes while a schedule is made.
import type { Fleet, Policy } from '../resolve/types.ts';

/** Of a pair's time that is work, since two get in each other's way and one holds the ladder: 70 to 80 % (from memory). */
export const pairEfficiency = 0.75;

/** People who do one visit together. */
export interface Team {
  readonly people: readonly number[];
}

export interface Crew {
  readonly people: number;
  /** Of one person on a day. */
  readonly minutes: number;
  /** Those who can do a visit, in a fixed order: pairs for work on a ladder, anybody for a look. */
  teams(looking: boolean): readonly Team[];
  /** What a team has left of a day, each of its people. */
  left(team: Team, day: string): number;
  take(team: Team, day: string, minutes: number): void;
}

/** The crew of a fleet, else one person for the hours of the policy's workday. A crew of nobody has no hours. */
export function crewOf(policy: Policy, fleet?: Fleet): Crew {
  const people = Math.max(1, fleet?.crew?.people ?? 1);
  const nobody = fleet?.crew?.people === 0;
  const minutes = nobody ? 0 : (fleet?.crew?.minutes ?? policy.workday.value.minutes);
  const taken = Array.from({ length: people }, () => new Map<string, number>());
  const used = (person: number, day: string) => taken[person]?.get(day) ?? 0;
  const singles = Array.from({ length: people }, (_, i): Team => ({ people: [people - 1 - i] }));
  const pairs = Array.from({ length: Math.floor(people / 2) }, (_, i): Team => ({ people: [2 * i, 2 * i + 1] }));
  return {
    people,
    minutes,
    teams: (looking) => (looking || pairs.length === 0 ? singles : pairs),
    left: (team, day) => minutes - Math.max(...team.people.map((person) => used(person, day))),
    take: (team, day, spent) => {
      for (const person of team.people) taken[person]?.set(day, used(person, day) + spent);
    },
  };
}

/** How much one minute of a team's day does, in minutes of one person. */
export function speedOf({ people }: Team): number {
  return people.length === 1 ? 1 : people.length * pairEfficiency;
}
