// The lines of a policy that say how the years go: what the life cost counts with.
import { source } from './clauses.ts';
import { must, needed, row } from './row.ts';
import { after, threePoints } from './slots/lists.ts';
import { money, percent, period } from './slots/quantities.ts';
import { oneOf } from './slots/words.ts';
import { offRoad, ways } from './words.ts';

const fact = { class: 'fact', key: 'word' } as const;

const realInterest = row('real-interest', {
  ...fact,
  help: 'The interest above inflation with which later costs are discounted.',
  example: 'real-interest 3 %',
  places: { percent: must(percent) },
  clauses: source,
});
const horizon = row('horizon', {
  ...fact,
  help: 'The years over which choices are compared.',
  example: 'horizon 12 years',
  places: { period: must(period) },
  clauses: source,
});
const touchUp = row('touch-ups', {
  ...fact,
  help: 'The share of the seams that is touched up in a year where they are looked after by condition: least, likely, most.',
  example: 'touch-ups 10 %, 15 %, 20 %',
  places: { share: must(threePoints(percent)) },
  clauses: source,
});
const recoat = row('recoats', {
  ...fact,
  help: 'After how long all seams are sealed again where that goes by the calendar: least, likely, most.',
  example: 'recoats every 2 years, 3 years, 5 years',
  places: { every: must(after(['every'], threePoints(period))) },
  clauses: source,
});
const daysOff = row('days-off', {
  class: 'fact',
  key: 'name',
  help: 'How many days a rig is off the road for some work: least, likely, most.',
  example: 'days-off strip 3 days, 4 days, 5 days',
  places: { work: must(oneOf('some work', offRoad)), off: must(threePoints(period)) },
  clauses: source,
});
const missedLeak = row('missed-leak', {
  class: 'fact',
  key: 'name',
  help: 'What if a leak is missed: its chance in a year where the seams are kept in this way, and what its repair costs. Nothing is assumed where this is not written.',
  example: 'missed-leak recoat 2 % at 4000 USD',
  places: { way: must(oneOf('a way to keep the seams', ways)), chance: must(percent) },
  clauses: { cost: needed('at', money, 'What the repair costs.'), ...source },
});

export const yearRows = [realInterest, horizon, touchUp, recoat, daysOff, missedLeak] as const;
