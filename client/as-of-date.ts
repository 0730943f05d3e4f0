/** Whether a text is a day of the calendar, written `2026-10-01`, or empty (today). */
export function isDateOrEmpty(text: string): boolean {
  if (text === '') return true;
  const [, year, month, day] = text.match(/^(\d{4})-(\d{2})-(\d{2})$/) ?? [];
  if (!year || !month || !day) return false;
  const date = new Date(`${text}T00:00:00Z`);
  // A day that the month does not have is moved on to the next month by the clock: then it is not the same day.
  return date.getUTCMonth() + 1 === Number(month) && date.getUTCDate() === Number(day);
}

/** What is wrong with an as-of date that a person is typing, with what to write; undefined when it is good. */
export function asOfProblem(text: string): string | undefined {
  const date = text.trim();
  if (isDateOrEmpty(date)) return undefined;
  if (/^\d{4}-\d{2}-\d{2}$/.test(date)) return `The calendar has no ${date}.`;
  return 'Write year, month and day, such as 2026-10-01. Empty means today.';
}
