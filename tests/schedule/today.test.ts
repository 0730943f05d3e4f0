// The morning of a day of work: what stands on it stays on it, and a lost day goes behind what is told already.
import { describe, expect, test } from 'vitest';
import { morningDate } from '../../language/documents/morning/index.ts';
import { Schedule, scheduleOfFleet } from '../../language/schedule/index.ts';
import { projectOf } from '../project/workspace.ts';
import { materials, rig } from './yard.ts';

const big = 'strip openings, rear after 2027-05-01\n seal openings, rear with Lap after 2027-05-01';
const names = ['Auk', 'Brant', 'Curlew'] as const;
const all = Object.fromEntries(names.map((name) => [name, big]));

function yard(on: string, before?: Schedule, lines = '', rigs: Readonly<Record<string, string>> = all): Schedule {
  const texts = Object.entries(rigs).map(([name, plans]) => rig(name, plans));
  const crew = lines.includes('crew') ? '' : 'crew 2 for 8 h each on mon to fri\n';
  const text = `${materials}${texts.join('')}fleet Yard under Home {\n rigs "a.rig"\n${crew}${lines}\n}\n`;
  const [found] = projectOf({ 'a.rig': text }).fleets('a.rig');
  if (!found) throw new Error('no fleet');
  const earlier = before && Schedule.parse(JSON.parse(JSON.stringify(before)));
  return scheduleOfFleet(found.fleet, found.views, { asOf: on, today: on }, earlier);
}

const days = ({ visits }: Schedule) => visits.map((visit) => `${visit.rig} ${visit.days.join(' ')}`);

// Sunday; the work begins on Monday the 3rd.
const before = yard('2027-05-02');

describe('written in the morning', () => {
  test('today stays today, nothing moves, and the page of the morning is of today', () => {
    expect(days(before)).toEqual(['Auk 2027-05-03', 'Brant 2027-05-04', 'Curlew 2027-05-05']);
    const morning = yard('2027-05-03', before);
    expect(days(morning)).toEqual(days(before));
    expect(morning.moved).toEqual([]);
    expect(morningDate(morning)).toBe('2027-05-03');
  });
  test('written twice in a morning it is the same', () => {
    const once = yard('2027-05-03', before);
    expect(yard('2027-05-03', once)).toEqual(once);
  });
  test('without an earlier schedule nothing is told for today, so that work begins tomorrow', () => {
    expect(days(yard('2027-05-03'))[0]).toBe('Auk 2027-05-04');
  });
  test('what a record of today did is no work any more, and the page is of the next day with work', () => {
    const done = `stripped 2027-05-03 openings, rear\n sealed 2027-05-03 openings, rear with Lap\n ${big}`;
    const evening = yard('2027-05-03', before, '', { ...all, Auk: done });
    expect(days(evening)).toEqual(['Brant 2027-05-04', 'Curlew 2027-05-05']);
    expect(morningDate(evening)).toBe('2027-05-04');
    expect(evening.moved?.map(({ because }) => because)).toEqual(['It is done: recorded on 2027-05-03.']);
  });
  test('new work does not come into a day that has begun', () => {
    const more = yard('2027-05-03', before, '', { ...all, Auk: `${big}\n inspect`, Dunlin: 'inspect' });
    expect(days(more).filter((line) => line.includes('2027-05-03'))).toEqual(['Auk 2027-05-03']);
    expect(more.visits[0]?.plans).toEqual(before.visits[0]?.plans);
  });
  test('a plan that is written for today is done today', () => {
    const lines = { Auk: 'inspect on 2027-05-03' };
    expect(days(yard('2027-05-03', undefined, '', lines))).toEqual(['Auk 2027-05-03']);
  });
  test('the lateness is not below its bound', () => {
    const open = { Auk: `inspected 2027-04-20 {\n vent open\n }\n ${big}` };
    const first = yard('2027-05-02', undefined, '', open);
    const { lateness } = yard('2027-05-03', first, '', open);
    expect(lateness?.days).toBeGreaterThan(0);
    expect(lateness?.days).toBe(lateness?.bound);
  });
});

test('work of several days that has begun goes on today', () => {
  const long = 'strip all\n seal all with Lap';
  const first = yard('2027-05-02', undefined, '', { Auk: long });
  const [visit] = first.visits;
  expect(visit?.days.length).toBeGreaterThan(1);
  const second = yard('2027-05-04', first, '', { Auk: long });
  expect(second.visits[0]?.days[0]).toBe('2027-05-04');
  expect(second.moved).toEqual([]);
});

describe('a lost day', () => {
  const last = '2027-05-06';
  test.each([
    ['closed', 'closed 2027-05-03 to 2027-05-03'],
    ['booked', 'booked Auk 2027-05-02 to 2027-05-03'],
  ])('%s: what stood on it goes behind what is frozen, which stays', (_, lines) => {
    for (const on of ['2027-05-02', '2027-05-03']) {
      const after = yard(on, before, lines);
      expect(days(after), on).toEqual(['Brant 2027-05-04', 'Curlew 2027-05-05', `Auk ${last}`]);
      expect(after.moved).toMatchObject([{ rig: 'Auk', from: '2027-05-03', to: last }]);
    }
  });
  test('of nothing recorded of yesterday: behind today and the rest of the week', () => {
    const after = yard('2027-05-04', before);
    expect(days(after)).toEqual(['Brant 2027-05-04', 'Curlew 2027-05-05', `Auk ${last}`]);
  });
  test('of a whole fleet with nobody there: no visit, and the reason', () => {
    const none = yard('2027-05-03', before, 'crew 0 for 8 h each on mon to fri');
    expect(none.visits).toEqual([]);
    expect(none.unplaced).toHaveLength(6);
    expect(none.unplaced[0]?.because).toMatch(/crew/);
  });
});
