// Several crews of one place: who can do what, on which days.
import { describe, expect, test } from 'vitest';
import { scheduleOfFleet } from '../../language/schedule/index.ts';
import { Schedule } from '../../language/schedule/types.ts';
import { projectOf } from '../project/workspace.ts';
import { fleetOf, materials, rig } from './yard.ts';

const two = `
  crew Ladder 2 for 8 h each on mon to fri
  skill Ladder tape, seal, strip
  crew Rinse 1 for 6 h each on sat
  skill Rinse wash, inspect`;
const tape = 'tape front with Strip';
const big = 'strip openings, rear\n seal openings, rear with Lap';

const who = ({ visits }: Schedule) =>
  visits.map(({ rig: name, title, days, crewName, people }) => [name, title, days[0], crewName, people]);

describe('skills', () => {
  test('each kind of work goes to a crew that can do it, on the days of that crew', () => {
    // 2027-04-15 is a Thursday, 2027-01-16 the first Saturday.
    expect(who(fleetOf(two, { Auk: tape, Brant: 'inspect' }))).toEqual([
      ['Brant', 'inspection', '2027-01-16', 'Rinse', 1],
      ['Auk', 'taping of front', '2027-04-15', 'Ladder', 2],
    ]);
  });
  test('a visit is one crew at work: what takes another one is a visit of its own', () => {
    const schedule = fleetOf(two, { Auk: `wash\n ${tape}` });
    expect(who(schedule).map(([, title, , crew]) => [title, crew])).toEqual([
      ['taping of front', 'Ladder'],
      ['wash', 'Rinse'],
    ]);
    const together = fleetOf('  crew Any 2 for 8 h each on mon to fri', { Auk: `wash\n ${tape}` });
    expect(who(together)).toEqual([['Auk', 'wash; taping of front', '2027-04-15', 'Any', 2]]);
  });
  test('people of two crews do no roof together', () => {
    const crews = '  crew A 1 for 8 h each on mon to fri\n  crew B 1 for 8 h each on mon to fri';
    const schedule = fleetOf(crews, { Auk: big, Brant: big });
    expect(schedule.visits.map(({ people }) => people)).toEqual([1, 1]);
    expect(schedule.visits.map(({ crewName, days }) => [crewName, days[0]])).toEqual([
      ['A', '2027-04-15'],
      ['B', '2027-04-15'],
    ]);
  });
  test('those with the fewest skills go first, so that who can do more stays free', () => {
    const crews =
      '  crew Any 1 for 8 h each on mon to fri\n  crew Look 1 for 8 h each on mon to fri\n  skill Look inspect';
    expect(who(fleetOf(crews, { Auk: 'inspect' }))[0]?.[3]).toBe('Look');
  });
  test('work that nobody can do is told by its word', () => {
    const { unplaced } = fleetOf(two, { Auk: 'coat with Lap', Brant: 'strip vent\n rebed vent with Lap' });
    expect(unplaced.map(({ rig: name, because }) => [name, because])).toEqual([
      ['Auk', 'no crew does coat'],
      ['Brant', 'no crew does rebed'],
    ]);
  });
  test('each part has a crew, but all of it belongs in one visit', () => {
    const apart = `
  crew A 2 for 8 h each on mon to fri
  skill A strip
  crew B 2 for 8 h each on mon to fri
  skill B seal`;
    expect(fleetOf(apart, { Auk: 'strip vent\n seal vent with Lap' }).unplaced[0]?.because).toBe(
      'no crew does strip and seal together, and they belong in one visit',
    );
  });
});

describe('days off', () => {
  const off = `  crew Ladder 2 for 8 h each on mon to fri\n  off Ladder 2027-04-16 to 2027-04-27 note "course"`;
  test('a crew is not there; the reason names it', () => {
    expect(fleetOf(off, { Auk: `${tape} after 2027-04-16` }).visits[0]).toMatchObject({
      days: ['2027-04-28'],
      because: ['Crew Ladder is off until 2027-04-27.'],
    });
  });
  test('no visit goes on over them', () => {
    const { visits } = fleetOf(off, { Auk: 'strip all\n seal all with Lap' });
    expect(visits[0]?.days[0]).toBe('2027-04-28');
    expect(visits[0]?.days.length).toBeGreaterThan(1);
  });
  test('another crew that can do it does it', () => {
    const more = `${off}\n  crew Spare 2 for 8 h each on mon to fri`;
    expect(fleetOf(more, { Auk: `${tape} after 2027-04-16` }).visits[0]).toMatchObject({
      days: ['2027-04-16'],
      crewName: 'Spare',
    });
  });
  test('a crew with a name and a day that it does not have', () => {
    const pinned = fleetOf('  crew Ladder 2 for 8 h each on mon to fri', { Auk: `${tape} on 2027-04-17` });
    expect(pinned.unplaced[0]).toMatchObject({
      because: 'crew Ladder does not work on Saturdays',
      firstDay: '2027-04-19',
    });
  });
});

describe('a new schedule', () => {
  const rigs = { Auk: big, Brant: big, Curlew: tape, Dunlin: 'inspect' };
  const days = ({ visits }: Schedule) => visits.map((visit) => [visit.rig, visit.days, visit.crewName, visit.crew]);
  const again = (lines: string, previous: Schedule) => {
    const texts = Object.entries(rigs).map(([name, plans]) => rig(name, plans, 'Site'));
    const text = `${materials}policy Site like Home {\n}\n${texts.join('')}fleet Yard under Site {\n  rigs "a.rig"\n${lines}\n}\n`;
    const found = projectOf({ 'a.rig': text }).fleets('a.rig')[0];
    if (!found) throw new Error('no fleet');
    const dates = { asOf: '2027-01-10', today: '2027-01-10' };
    return scheduleOfFleet(found.fleet, found.views, dates, previous);
  };
  test('leaves everything with its crew and its day when nothing changed', () => {
    const first = fleetOf(two, rigs);
    const second = again(two, first);
    expect(second.moved).toEqual([]);
    expect(days(second)).toEqual(days(first));
  });
  test('moves what its crew cannot keep, and says why', () => {
    const moved = again(`${two}\n  off Ladder 2027-04-15 to 2027-04-15`, fleetOf(two, rigs)).moved ?? [];
    expect(moved.length).toBeGreaterThan(0);
    expect(new Set(moved.map(({ from }) => from))).toEqual(new Set(['2027-04-15']));
    expect(moved.map(({ because }) => because)).toContain('Crew Ladder is off until 2027-04-15.');
  });
  test('is what its form says', () => {
    expect(() => Schedule.parse(fleetOf(two, rigs))).not.toThrow();
  });
});
