// Words that headings, lists and calendars share.

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
