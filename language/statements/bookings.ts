// Bookings that are kept in a file of their own.
import { note } from './clauses.ts';
import { needed, row } from './row.ts';
import { pathLike } from './slots/words.ts';

export const bookingsRow = row('bookings', {
  class: 'fact',
  key: 'none',
  help: 'A table (`.csv`) or a calendar (`.ics`) of days on which rigs are out. A table has the columns rig (or unit, or vin), first, last and, if you like, who and note; an event of a calendar names its rig in its place, its title or a category.',
  example: 'bookings from "bookings.csv"',
  places: {},
  clauses: { path: needed('from', pathLike('"bookings.csv"'), 'The file, seen from the folder of this one.'), ...note },
});
