// What may stand in the block of a fleet, and of a yard of it.
import { bookingsRow } from './bookings.ts';
import { note } from './clauses.ts';
import { planRows } from './plans.ts';
import { climateRows } from './policy-season.ts';
import { type StockStatement, stockRows } from './rig.ts';
import { blockTable, clause, may, must, needed, type RecordOf, row } from './row.ts';
import { date, weekdays } from './slots/dates.ts';
import { list, range } from './slots/lists.ts';
import { count, effort, length } from './slots/quantities.ts';
import { crewName, flag, groupOrRig, newName, oneOf, pathLike, rigName, text } from './slots/words.ts';

const rigs = row('rigs', {
  class: 'fact',
  key: 'word',
  help: 'The files of the rigs, by pattern.',
  example: 'rigs "../rigs/*.rig"',
  places: { patterns: must(list(pathLike('"../rigs/*.rig"'))) },
});
const crew = row('crew', {
  class: 'fact',
  key: 'name',
  help: 'How many people work how long on which days. Several crews have names.',
  example: 'crew Ladder 2 for 8 h each on mon to fri',
  places: { name: may(newName('Ladder')), people: must(count) },
  clauses: {
    hours: needed('for', effort, 'The hours of a day.'),
    each: clause('each', flag, 'The hours are those of each person.'),
    on: clause('on', weekdays, 'The days of the week.'),
  },
});
const skill = row('skill', {
  class: 'fact',
  key: 'name',
  help: 'The work that a crew can do, with what belongs to it, as the wipe before tape. A crew of which none is written does everything.',
  example: 'skill Ladder tape, seal, strip',
  places: {
    crew: must(crewName),
    work: must(
      list(
        oneOf(
          'a kind of work',
          planRows.map(({ word }) => word),
        ),
      ),
    ),
  },
  clauses: note,
});
const off = row('off', {
  class: 'fact',
  key: 'none',
  help: 'Days on which one crew does not work.',
  example: 'off Ladder 2027-07-01 to 2027-07-14',
  places: { crew: must(crewName), days: must(range(date, true)) },
  clauses: note,
});
const bay = row('bay', {
  class: 'fact',
  key: 'name',
  help: 'A place to work on a rig.',
  example: 'bay Shed indoor 40 ft',
  places: {
    name: must(newName('Shed')),
    where: may(oneOf('`indoor` or `outdoor`', ['indoor', 'outdoor'])),
    length: may(length),
  },
  clauses: note,
});
const closed = row('closed', {
  class: 'fact',
  key: 'none',
  help: 'Days on which nobody works.',
  example: 'closed 2026-12-24 to 2027-01-03',
  places: { days: must(range(date, true)) },
  clauses: note,
});
const booked = row('booked', {
  class: 'fact',
  key: 'none',
  help: 'Days on which a rig is out.',
  example: 'booked Heron 2027-06-10 to 2027-06-24',
  places: { rig: must(rigName), days: must(range(date, true)) },
  clauses: { from: clause('for', text, 'Who has it.'), ...note },
});
const serves = row('serves', {
  class: 'fact',
  key: 'none',
  help: 'The rigs that are worked on here, by their group or by their name.',
  example: 'serves Coastal, Heron',
  places: { served: must(list(groupOrRig)) },
  clauses: note,
});

/** What a fleet has of its own, or each of its yards. */
const placeRows = [crew, skill, off, bay, closed] as const;
const yardRows = [...placeRows, serves, ...climateRows] as const;
const yard = row('yard', {
  class: 'fact',
  key: 'name',
  help: 'One of several places of a fleet, with crews, bays, closed days, a shelf and a climate of its own. A rig that no yard serves has those that stand directly in the fleet.',
  example: 'yard Harbour { crew 2 for 8 h each on mon to fri  serves Coastal }',
  places: { name: must(newName('Harbour')) },
  clauses: note,
  block: blockTable('yard', [...yardRows, ...stockRows]),
});

const rows = [rigs, ...placeRows, booked, bookingsRow, yard] as const;
export const fleetTable = blockTable('fleet', [...rows, ...stockRows]);

/** A line in the block of a yard. */
export type YardLine = RecordOf<(typeof yardRows)[number]> | StockStatement;
type YardStatement = RecordOf<typeof yard> & { readonly lines?: readonly YardLine[] };
export type FleetStatement = RecordOf<Exclude<(typeof rows)[number], typeof yard>> | YardStatement;
