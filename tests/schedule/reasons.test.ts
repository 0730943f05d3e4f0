// Of several things that stand against a day, which one is told.
import { describe, expect, test } from 'vitest';
import { scheduleOfFleet } from '../../language/schedule/index.ts';
import { projectOf } from '../project/workspace.ts';
import { fleetOf, materials, rig } from './yard.ts';

const pair = '  crew 2 for 8 h each on mon to fri';

describe('the reason for a day', () => {
  test('is what lasted, and not the weekend behind it', () => {
    // 2027-04-17 is a Saturday.
    const { visits } = fleetOf(`${pair}\n  closed 2027-04-01 to 2027-04-17`, { Auk: 'tape front with Strip' });
    expect(visits[0]).toMatchObject({ days: ['2027-04-19'], because: ['Nobody works from 2027-04-01 to 2027-04-17.'] });
  });
  test('is the weekend where nothing else stands against an earlier day', () => {
    const { visits } = fleetOf(pair, { Auk: 'tape front with Strip after 2027-04-17' });
    expect(visits[0]).toMatchObject({ days: ['2027-04-19'], because: ['Nobody works on Saturdays.'] });
  });
});

describe('the reason for no day', () => {
  test('is what lasts, and not what ends before', () => {
    const auk = 'stored 2026-11-02 to 2027-03-14\n inspect';
    const { unplaced } = fleetOf(`${pair}\n  closed 2027-01-11 to 2040-01-01`, { Auk: auk });
    expect(unplaced.map(({ because }) => because)).toEqual(['nobody works from 2027-01-11 to 2040-01-01']);
  });
  test('is a booking of a table that has no end', () => {
    const yard = `fleet Yard {\n  rigs "a.rig"\n${pair}\n  bookings from "b.csv"\n}\n`;
    const files = {
      'a.rig': materials + rig('Auk', 'inspect') + yard,
      'b.csv': 'rig,first,last\nAuk,2027-01-11,9999-12-31\n',
    };
    const [found] = projectOf(files).fleets('a.rig');
    if (!found) throw new Error('no fleet');
    const { unplaced } = scheduleOfFleet(found.fleet, found.views, { asOf: '2027-01-10', today: '2027-01-10' });
    expect(unplaced.map(({ because }) => because)).toEqual(['Auk is booked from 2027-01-11 to 9999-12-31']);
  });
});
