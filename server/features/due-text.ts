// What falls due, in the words of a lens or a hint.
import type { ScheduledDue } from '../../language/schedule/index.ts';

export function dueText({ title, date, status, days }: ScheduledDue): string {
  return `${title} by ${date}${distance(status, days)}`;
}

export function distance(status: ScheduledDue['status'], days: number): string {
  if (status === 'overdue') return ` (overdue ${counted(-days, 'day')})`;
  if (days === 0) return ' (today)';
  return status === 'not-due' ? '' : ` (in ${counted(days, 'day')})`;
}

export const counted = (n: number, noun: string) => `${n} ${noun}${n === 1 ? '' : 's'}`;
