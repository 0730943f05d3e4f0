import * as z from 'zod';
import { ask } from './ask.ts';

const position = z.object({ line: z.int().nonnegative(), character: z.int().nonnegative() });
/** The command that shows a calendar; its one argument is a {@link CalendarAddress}. The client has it. */
export const calendarCommand = 'rigseam.showCalendar';

const subject = z.object({ uri: z.string(), name: z.string() });
export const calendarAddressSchema = subject;
/** A rig or a fleet by the file that declares it. */
export type CalendarAddress = Readonly<z.infer<typeof subject>>;

export const calendarKinds = ['overdue', 'due', 'visit', 'booked', 'closed'] as const;

const entry = z.object({
  kind: z.enum(calendarKinds),
  days: z.array(z.iso.date()).readonly(),
  date: z.iso.date(),
  rig: z.string().optional(),
  says: z.string(),
  why: z.string().optional(),
  place: z.object({ uri: z.string(), range: z.object({ start: position, end: position }) }),
});
export type CalendarEntry = Readonly<z.infer<typeof entry>>;

/** What a calendar shows: see `Months` of `language/documents/month`. */
export const calendarSchema = z.object({
  name: z.string(),
  kind: z.enum(['rig', 'fleet']),
  asOf: z.iso.date(),
  months: z.array(z.object({ id: z.string(), days: z.int(), startsOn: z.int() })).readonly(),
  rigs: z.array(z.string()).readonly(),
  entries: z.array(entry).readonly(),
});
export type Calendar = Readonly<z.infer<typeof calendarSchema>>;

/** Request from the client: the calendar of a fleet or a rig as it is typed now; null where the file declares none such. */
export const calendarAsk = ask('rigseam/calendar', subject, calendarSchema.nullable());

/** Request from the client: what has a calendar, the fleets first; of one file, or without one of the whole workspace. */
export const calendarSubjectsAsk = ask(
  'rigseam/calendarSubjects',
  z.object({ uri: z.string().optional() }),
  z.array(subject.extend({ kind: z.enum(['rig', 'fleet']) })).readonly(),
);
