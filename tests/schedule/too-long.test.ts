// A plan that takes more days than follow each other free: what it takes, and the lines that would do.
import { describe, expect, test } from 'vitest';
import { scheduleOfRig } from '../../language/schedule/index.ts';
import { addDays } from '../../language/values/calendar.ts';
import { projectOf } from '../project/workspace.ts';
import { materials, rig } from './yard.ts';

const asOf = '2027-05-02';
const policy = 'policy Short like Home { workday 4 h }\n';
const weekend = 'after 2027-05-08 before 2027-05-09';

function made(lines: string) {
  const [view] = projectOf({ 'a.rig': `${materials}${policy}${rig('Gull', lines, 'Short')}` }).rigs('a.rig');
  if (!view) throw new Error('no rig');
  return scheduleOfRig(view, { asOf, today: asOf });
}

/** From Monday to Friday it is away; it is at home on `home` days of each weekend, for longer than anybody plans. */
function away(home: 1 | 2): string {
  const weeks = Array.from({ length: 200 }, (_, i) => addDays('2027-05-03', 7 * i));
  return weeks.map((monday) => `trip ${monday} to ${addDays(monday, 6 - home)}`).join('\n ');
}

const because = (lines: string) => [...new Set(made(lines).unplaced.map((one) => one.because))].join('\n');
const both = (days: string) => `strip edges ${days}\n seal edges with Lap ${days}`;

describe('a weekend', () => {
  test('too short for both sides: the hours, the days, and the lines of each part', () => {
    const said = because(both(weekend));
    expect(said).toContain(
      'it takes 8.6 h of work, 3 days of 4 h, and no more than 2 days (2027-05-08 to 2027-05-09) follow each other free',
    );
    expect(said).toContain(
      'split it, each part with days of its own, the roof not washed again for 7 days (Lap): `strip curbside` and `seal curbside with Lap`; then `strip roadside` and `seal roadside with Lap`',
    );
  });
  test('the lines that are told have days, each part within a weekend', () => {
    const lines = because(both(weekend)).match(/(?<=`)(strip|seal)[^`]*(?=`)/g) ?? [];
    expect(lines).toHaveLength(4);
    const dated = lines.map(
      (line, i) => `${line} after 2027-05-${i < 2 ? '08' : '22'} before 2027-05-${i < 2 ? '09' : '23'}`,
    );
    const { visits, unplaced } = made(dated.join('\n '));
    expect(unplaced).toEqual([]);
    expect(visits.map(({ days }) => days)).toEqual([
      ['2027-05-08', '2027-05-09'],
      ['2027-05-22', '2027-05-23'],
    ]);
  });
  test('tape: what laps over another comes after it', () => {
    expect(because(`tape front, edges with Strip after 2027-05-09 before 2027-05-09`)).toMatch(
      /`tape roadside with Strip`.*`tape curbside with Strip`.*`tape front with Strip`$/,
    );
  });
  test('long enough, nothing is said', () => {
    expect(made(both('after 2027-05-08 before 2027-05-10')).unplaced).toEqual([]);
    expect(because(`trip 2027-05-03 to 2027-06-01\n ${both(weekend)}`)).not.toContain('split');
  });
});

describe('what splitting does not mend', () => {
  test('a seam that alone is too long: by stretches', () => {
    const said = because('strip curbside after 2027-05-09 before 2027-05-09\n seal curbside with Lap');
    expect(said).toMatch(/no more than 1 day \(2027-05-09\) follow/);
    expect(said).not.toContain('split it');
    expect(said).toContain('give it more days, or the day more hours');
  });
  test('a clock that runs into every trip is the reason, though a trip was met first', () => {
    const said = because(`${away(2)}\n strip curbside\n seal curbside with Lap`);
    expect(said).toMatch(/^Lap may not be driven before .*, and Gull is on a trip/);
    expect(said).not.toContain('split it');
    expect(because(`${away(2)}\n ${both('')}`)).not.toContain('split it');
  });
  test('the same without trips has days', () => {
    expect(made(both('')).unplaced).toEqual([]);
  });
});

test('days at home that are always too few, though nothing ends it: the lines too', () => {
  const said = because(`${away(1)}\n tape edges, front with Strip`);
  expect(said).toContain('no more than 1 day');
  expect(said).toMatch(/split it, .*`tape roadside with Strip`/);
});
