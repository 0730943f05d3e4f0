// Whatever crews and yards there are: nobody works on days that are not theirs, at what they cannot do, or for two at once.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { scheduleOfFleet } from '../../language/schedule/index.ts';
import { weekday } from '../../language/values/calendar.ts';
import { projectOf } from '../project/workspace.ts';
import { manyRigs } from './many.ts';
import { materials, rig } from './yard.ts';

const words = ['inspect', 'wash', 'strip', 'seal', 'tape'];
const days = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

const crew = fc.record({
  people: fc.integer({ min: 1, max: 4 }),
  hours: fc.integer({ min: 4, max: 9 }),
  first: fc.nat(3),
  last: fc.integer({ min: 3, max: 6 }),
  skills: fc.option(fc.subarray(words, { minLength: 2 })),
  off: fc.option(fc.integer({ min: 10, max: 20 })),
});
const place = fc.array(crew, { minLength: 1, maxLength: 3 });

const dates = { asOf: '2027-04-10', today: '2027-04-10' };

function fleetFrom(
  places: readonly (readonly (typeof crew extends fc.Arbitrary<infer T> ? T : never)[])[],
  seed: number,
) {
  const many = manyRigs(9, seed);
  const texts = many.rigs.map(({ name, lines }, i) =>
    rig(name, [`group G${i % (places.length + 1)}`, ...lines].join('\n '), 'Home'),
  );
  const yards = places.map((crews, i) => {
    const lines = crews.flatMap(({ people, hours, first, last, skills, off }, k) => [
      `crew C${i}-${k} ${people} for ${hours} h each on ${days[first]} to ${days[last]}`,
      ...(skills ? [`skill C${i}-${k} ${skills.join(', ')}`] : []),
      ...(off ? [`off C${i}-${k} 2027-04-${off} to 2027-04-${off + 9}`] : []),
    ]);
    return `  yard Y${i} {\n    bay Shed indoor 40 ft\n    ${lines.join('\n    ')}\n    serves G${i}\n  }`;
  });
  const booked = many.booked.map((line) => `  ${line}`).join('\n');
  const text = `${materials}${texts.join('')}fleet Yards under Home {\n  rigs "a.rig"\n${yards.join('\n')}\n${booked}\n}\n`;
  const project = projectOf({ 'a.rig': text });
  expect(project.problems('a.rig').filter(({ at }) => at[0] > text.indexOf('fleet Yards'))).toEqual([]);
  const [found] = project.fleets('a.rig');
  if (!found) throw new Error('no fleet');
  return found;
}

test('crews keep their days, their skills and their hours, and a schedule that is made again stays', () => {
  let visits = 0;
  fc.assert(
    fc.property(fc.array(place, { minLength: 1, maxLength: 2 }), fc.nat(1000), (places, seed) => {
      const { fleet, views } = fleetFrom(places, seed);
      const schedule = scheduleOfFleet(fleet, views, dates);
      const crews = new Map(
        fleet.yards.flatMap((yard) => yard.crews.map((one) => [one.name, { ...one, yard }] as const)),
      );
      const busy = new Map<string, number>();
      visits += schedule.visits.length;
      for (const visit of schedule.visits) {
        const rigOf = fleet.rigs.find(({ name }) => name === visit.rig);
        expect(visit.yard).toBe(rigOf && fleet.yardOf(rigOf)?.name);
        const mine = crews.get(visit.crewName);
        if (!mine) {
          expect(visit.yard).toBeUndefined();
          continue;
        }
        expect(mine.yard.name).toBe(visit.yard);
        expect(visit.people).toBe(visit.crew?.length);
        for (const number of visit.crew ?? []) expect(number).toBeLessThan(mine.people);
        for (const plan of visit.plans ?? [])
          expect(mine.skills === undefined || mine.skills.includes(plan.split(' ')[0] as string)).toBe(true);
        for (const day of visit.days) {
          expect(mine.days).toContain(weekday(day));
          expect(mine.off.some(({ first, last }) => first <= day && day <= last)).toBe(false);
        }
        // All of a visit of one day is done on it: nobody has more of a day than there is.
        if (visit.days.length > 1) continue;
        const each = visit.minutes / (visit.people === 1 ? 1 : visit.people * 0.75);
        for (const number of visit.crew ?? []) {
          const key = `${visit.crewName} ${number} ${visit.days[0]}`;
          busy.set(key, (busy.get(key) ?? 0) + each);
          expect(busy.get(key)).toBeLessThanOrEqual(mine.minutes + 0.1);
        }
      }
      expect(scheduleOfFleet(fleet, views, dates, schedule).moved).toEqual([]);
    }),
    { numRuns: 15, seed: 7 },
  );
  expect(visits).toBeGreaterThan(100);
}, 60_000);
