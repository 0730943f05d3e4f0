// What may stand in the block of a fleet.
import { note } from './clauses.ts';
import { stockRows } from './rig.ts';
import { blockTable, clause, may, must, needed, type RecordOf, row } from './row.ts';
import { date, weekdays } from './slots/dates.ts';
import { list, range } from './slots/lists.ts';
import { count, effort, length } from './slots/quantities.ts';
import { flag, newName, oneOf, pathLike, rigName, text } from './slots/words.ts';

const rigs = row('rigs', {
  class: 'fact',
  key: 'word',
  help: 'The files of the rigs, by pattern.',
  example: 'rigs "../rigs/*.rig"',
  places: { patterns: must(list(pathLike('"../rigs/*.rig"'))) },
});
const crew = row('crew', {
  class: 'fact',
  key: 'word',
  help: 'How many people work how long on which days.',
  example: 'crew 2 for 8 h each on mon to fri',
  places: { people: must(count) },
  clauses: {
    hours: needed('for', effort, 'The hours of a day.'),
    each: clause('each', flag, 'The hours are those of each person.'),
    on: clause('on', weekdays, 'The days of the week.'),
  },
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

const rows = [rigs, crew, bay, closed, booked] as const;
export const fleetTable = blockTable('fleet', [...rows, ...stockRows]);

export type FleetStatement = RecordOf<(typeof rows)[number]>;
