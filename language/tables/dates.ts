// A day as a table has it.
import { isValidDate } from '../values/calendar.ts';

export type ReadDay = { readonly day: string } | { readonly message: string };

/** Reads `2027-06-10`; a time of day behind it, as spreadsheets add one, is passed over. */
export function readDay(written: string): ReadDay {
  const text = written.trim();
  if (text === '') return { message: 'A day is missing here, such as 2027-06-10.' };
  const [day = ''] = /^\d{4}-\d{2}-\d{2}(?=$|[T ]\d{1,2}:\d{2})/.exec(text) ?? [];
  if (day === '') return { message: `A day is written as year, month, day, such as 2027-06-10; \`${text}\` is none.` };
  return isValidDate(day) ? { day } : { message: `\`${day}\` is no day of the calendar.` };
}
