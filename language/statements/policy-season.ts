// The lines of a policy that say what the seasons do to the work: days that weather takes, temperatures, mornings, turn days.
import { source } from './clauses.ts';
import { must, row } from './row.ts';
import { season } from './slots/dates.ts';
import { either, range } from './slots/lists.ts';
import { effort, percent, temperature } from './slots/quantities.ts';
import { oneOf } from './slots/words.ts';
import { months } from './words.ts';

const month = oneOf('a month', months);

const slack = row('slack', {
  class: 'fact',
  key: 'name',
  help: 'The share of the working days of a month that weather takes: so many are kept free of outdoor work, to make up for lost ones. Nothing is assumed where this is not written.',
  example: 'slack apr 30 %',
  places: { month: must(month), share: must(percent) },
  clauses: source,
});
const normals = row('normals', {
  class: 'fact',
  key: 'name',
  help: 'The normal low and high of a day of a month at the site: what is laid is planned for months in which its `apply` can be kept.',
  example: 'normals jul 62 F to 84 F',
  places: { month: must(month), air: must(range(temperature)) },
  clauses: source,
});
const beforeNoon = row('before-noon', {
  class: 'fact',
  key: 'word',
  help: 'The days of the year on which tape is laid and sealant gunned before noon, or the normal high above which that holds in a month.',
  example: 'before-noon 06-01 to 08-31',
  places: { when: must(either(season, temperature)) },
  clauses: source,
});
const turnRound = row('turn-round', {
  class: 'fact',
  key: 'word',
  help: 'How long the roof of a rig is free on a day on which it comes back and leaves again; without it nothing is planned then.',
  example: 'turn-round 30 min',
  places: { time: must(effort) },
  clauses: source,
});

/** What the place does to the work: a yard may say it of itself. */
export const climateRows = [slack, normals, beforeNoon] as const;
export const seasonRows = [...climateRows, turnRound] as const;
