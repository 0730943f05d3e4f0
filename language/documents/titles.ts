// Words that headings, lists and calendars share.
import type { Visit } from '../schedule/index.ts';

/** A title of up to two jobs as it is; of more, the kinds of work: `wash, stripping, taping, sealing`. */
export function shortTitle(title: string): string {
  const jobs = title.split('; ');
  if (jobs.length <= 2) return title;
  return [...new Set(jobs.map((job) => job.split(' ')[0] as string))].join(', ');
}

/** What each clock of fresh work lets happen. */
export const clockText = {
  rain: 'may be rained on',
  drive: 'may be driven',
  wash: 'may be washed',
  cover: 'may be covered with tape',
} as const;

/** Who does a visit and where: ` of crew Ladder at Harbour`; empty where a fleet is one place with one crew. */
export function whoseOf({ crewName, yard }: Pick<Visit, 'crewName' | 'yard'>): string {
  return `${crewName === undefined ? '' : ` of crew ${crewName}`}${yard === undefined ? '' : ` at ${yard}`}`;
}

/** The bay and the yard of a visit: `Shed, Harbour`. */
export function placeOf({ bay, yard }: Pick<Visit, 'bay' | 'yard'>): string {
  return [bay, yard].filter((name) => name !== undefined).join(', ');
}
