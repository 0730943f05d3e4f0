// What the extension and the page of a calendar say to each other.
import * as z from 'zod';
import type { Calendar, CalendarAddress } from '../../language/protocol/index.ts';

/** Whatever the page shows, all of it each time. */
export interface ShowCalendar {
  readonly kind: 'show';
  readonly of: CalendarAddress;
  /** Missing where there never was one. */
  readonly calendar?: Calendar;
  /** That it is not that of the text, and why; empty where it is. */
  readonly note: string;
}

/** What a person does on the page. */
export const fromCalendarSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('ready') }),
  /** Go to the line of an entry, by its number. */
  z.object({ kind: z.literal('go'), entry: z.int().nonnegative() }),
]);
export type FromCalendar = Readonly<z.infer<typeof fromCalendarSchema>>;

/** What the editor keeps of a calendar over a restart. */
export const keptCalendarSchema = z.object({ uri: z.string(), name: z.string() });
