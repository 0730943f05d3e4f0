// Rigs that share a crew, its bays and its days.
import { describe, expect, test } from 'vitest';
import { fleetOf, told } from './yard.ts';

const pair = '  crew 2 for 8 h each on mon to fri';
const tape = 'tape front with Strip';
const big = 'strip openings, rear\n seal openings, rear with Lap';

/** Minutes of one person on each day, as the tasks begin. */
function minutesByDay({ visits }: ReturnType<typeof fleetOf>): ReadonlyMap<string, number> {
  const out = new Map<string, number>();
  for (const { tasks } of visits) for (const { date, minutes } of tasks) out.set(date, (out.get(date) ?? 0) + minutes);
  return out;
}

describe('a crew', () => {
  test('three rigs share it: what does not fit on one day goes on the next working day', () => {
    // 2027-04-15 is a Thursday.
    const schedule = fleetOf(pair, { Auk: big, Brant: big, Curlew: big });
    expect(told(schedule).map((line) => line.replace(/ stripping.*/, ''))).toEqual([
      'Auk 2027-04-15',
      'Brant 2027-04-16',
      'Curlew 2027-04-19',
    ]);
    expect(schedule.visits[1]?.because).toEqual(['The crew has no time left on 2027-04-15.']);
    for (const minutes of minutesByDay(schedule).values()) expect(minutes).toBeLessThanOrEqual(2 * 480 * 0.75 + 0.05);
  });
  test('small jobs of several rigs share a day', () => {
    const schedule = fleetOf(pair, { Auk: tape, Brant: tape, Curlew: tape });
    expect(new Set(schedule.visits.flatMap(({ days }) => days))).toEqual(new Set(['2027-04-15']));
  });
  test('two on a roof, one for a look', () => {
    const schedule = fleetOf(pair, { Auk: tape, Brant: 'inspect' });
    expect(schedule.visits.map(({ rig, people }) => [rig, people])).toEqual([
      ['Brant', 1],
      ['Auk', 2],
    ]);
    expect(fleetOf('  crew 1 for 8 h each on mon to fri', { Auk: tape }).visits[0]?.people).toBe(1);
  });
  test('a crew of nobody does nothing', () => {
    const none = fleetOf('  crew 0 for 8 h each on mon to fri', { Auk: tape });
    expect(none.visits).toEqual([]);
    expect(none.unplaced).toMatchObject([{ rig: 'Auk', title: 'taping of front' }]);
  });
  test('two pairs do two roofs at a time', () => {
    const days = (crew: string) => fleetOf(crew, { Auk: big, Brant: big }).visits.flatMap((visit) => visit.days);
    expect(days('  crew 4 for 8 h each on mon to fri')).toEqual(['2027-04-15', '2027-04-15']);
    expect(days(pair)).toEqual(['2027-04-15', '2027-04-16']);
  });
  test('not on a weekend, and a visit passes over it', () => {
    const visit = fleetOf(pair, { Auk: 'strip all after 2027-04-16\n seal all with Lap' }).visits[0];
    expect(visit?.days.slice(0, 2)).toEqual(['2027-04-16', '2027-04-19']);
    const pinned = fleetOf(pair, { Auk: `${tape} on 2027-04-17` });
    expect(pinned.unplaced[0]).toMatchObject({ because: 'nobody works on Saturdays', firstDay: '2027-04-19' });
  });
  test('not while it is closed, nor over it', () => {
    const closed = `${pair}\n  closed 2027-04-16 to 2027-04-20`;
    expect(fleetOf(closed, { Auk: `${tape} after 2027-04-16` }).visits[0]).toMatchObject({
      days: ['2027-04-21'],
      because: ['Nobody works from 2027-04-16 to 2027-04-20.'],
    });
    const long = fleetOf(closed, { Auk: 'strip all\n seal all with Lap' }).visits[0];
    expect(long?.days[0]).toBe('2027-04-21');
    expect(long?.days.length).toBeGreaterThan(1);
  });
  test('the most pressing first: the last day, then the worst finding, then the name', () => {
    const found = (word: string) => `inspected 2027-04-20 {\n vent ${word}\n rest sound\n }\n ${big}`;
    const rigs = {
      Auk: big,
      Brant: found('cracked'),
      Curlew: found('open'),
      Dunlin: `${big.replace('Lap', 'Lap before 2027-05-05')}`,
    };
    const schedule = fleetOf(pair, rigs, '2027-05-02');
    expect(schedule.visits.map(({ rig, days }) => [rig, days[0]])).toEqual([
      ['Curlew', '2027-05-03'],
      ['Dunlin', '2027-05-04'],
      ['Brant', '2027-05-05'],
      ['Auk', '2027-05-06'],
    ]);
  });
  test('a pinned day is kept against what presses more', () => {
    const schedule = fleetOf(pair, { Auk: `${big} before 2027-04-20`, Brant: `${big} on 2027-04-15` });
    expect(schedule.visits.map(({ rig, days }) => [rig, days[0]])).toEqual([
      ['Brant', '2027-04-15'],
      ['Auk', '2027-04-16'],
    ]);
  });
});

describe('bookings', () => {
  test('the rig is in the yard, and stays until its drive clock ends', () => {
    const booked = (days: string) =>
      fleetOf(`${pair}\n  booked Auk ${days}`, { Auk: 'seal vent with Lap' }).visits[0]?.days[0];
    expect(booked('2027-04-14 to 2027-04-18')).toBe('2027-04-19');
    expect(booked('2027-04-16 to 2027-04-20')).toBe('2027-04-21');
    expect(booked('2027-04-17 to 2027-04-20')).toBe('2027-04-15');
  });
  test('only of that rig', () => {
    expect(
      fleetOf(`${pair}\n  booked Auk 2027-04-14 to 2027-04-18`, { Auk: tape, Brant: tape }).visits[0],
    ).toMatchObject({
      rig: 'Brant',
      days: ['2027-04-15'],
    });
  });
});

describe('bays', () => {
  const crew = '  crew 4 for 8 h each on mon to fri';
  const days = (bays: string, work = big) =>
    fleetOf(`${crew}\n${bays}`, { Auk: work, Brant: work }).visits.map((visit) => visit.days[0]);
  test('an open roof takes a bay until rain does it no harm', () => {
    expect(days('  bay Shed indoor 40 ft')).toEqual(['2027-04-15', '2027-04-16']);
    expect(days('  bay Shed indoor 40 ft\n  bay Barn indoor 30 ft')).toEqual(['2027-04-15', '2027-04-15']);
  });
  test('tape alone takes none; a rig that is too long for it stays in the yard', () => {
    expect(days('  bay Shed indoor 40 ft', tape)).toEqual(['2027-04-15', '2027-04-15']);
    expect(days('  bay Shed indoor 10 ft')).toEqual(['2027-04-15', '2027-04-15']);
  });
  test('out of season work on a set day is done indoors, what has no day waits for the season', () => {
    const schedule = fleetOf(`${pair}\n  bay Shed indoor 40 ft`, { Auk: `${tape} before 2027-02-01`, Brant: tape });
    expect(schedule.visits.map(({ rig, days }) => [rig, days[0]])).toEqual([
      ['Auk', '2027-01-11'],
      ['Brant', '2027-04-15'],
    ]);
    expect(schedule.visits[0]?.because).toContain('It stands in Shed while the roof is open or it is out of season.');
  });
});
