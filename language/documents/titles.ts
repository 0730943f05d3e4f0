// Titles short enough for a heading and a calendar.

/** A title of up to two jobs as it is; of more, the kinds of work: `wash, stripping, taping, sealing`. */
export function shortTitle(title: string): string {
  const jobs = title.split('; ');
  if (jobs.length <= 2) return title;
  return [...new Set(jobs.map((job) => job.split(' ')[0] as string))].join(', ');
}
