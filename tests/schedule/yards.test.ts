// Several yards of one fleet: a board each, one schedule.
import { describe, expect, test } from 'vitest';
import { Schedule } from '../../language/schedule/types.ts';
import { fleetOf } from './yard.ts';

const crew = 'crew 2 for 8 h each on mon to fri';
const big = 'strip openings, rear\n seal openings, rear with Lap';
const tape = 'tape front with Strip';
const coastal = (lines: string) => `group Coastal\n ${lines}`;

const where = ({ visits }: Schedule) => visits.map(({ rig, days, yard, bay }) => [rig, days[0], yard, bay]);

describe('yards', () => {
  const two = `
  yard Harbour {
    ${crew}
    bay Shed indoor 40 ft
    serves Coastal
  }
  yard Inland {
    ${crew}
    bay Barn indoor 40 ft
    serves Brant
  }`;
  test('each has a crew and bays of its own', () => {
    expect(where(fleetOf(two, { Auk: coastal(big), Brant: big }))).toEqual([
      ['Auk', '2027-04-15', 'Harbour', 'Shed'],
      ['Brant', '2027-04-15', 'Inland', 'Barn'],
    ]);
  });
  test('rigs of one yard wait for one another, not for those of another yard', () => {
    const schedule = fleetOf(two, { Auk: coastal(big), Avocet: coastal(big), Brant: big });
    expect(where(schedule).map(([rig, day]) => [rig, day])).toEqual([
      ['Auk', '2027-04-15'],
      ['Brant', '2027-04-15'],
      ['Avocet', '2027-04-16'],
    ]);
  });
  test('what no yard serves has what stands directly in the fleet', () => {
    const schedule = fleetOf(`  ${crew}\n  bay Tent indoor 40 ft${two}`, { Auk: coastal(big), Curlew: big });
    expect(where(schedule)).toEqual([
      ['Auk', '2027-04-15', 'Harbour', 'Shed'],
      ['Curlew', '2027-04-15', undefined, 'Tent'],
    ]);
    expect(schedule.yards?.map(({ name }) => name)).toEqual(['Harbour', undefined]);
  });
  test('closed days of the fleet hold at every yard, those of a yard only there', () => {
    const closed = two.replace('yard Inland {', 'yard Inland {\n    closed 2027-04-15 to 2027-04-18');
    const plans = { Auk: coastal(tape), Brant: tape };
    expect(where(fleetOf(closed, plans)).map(([rig, day]) => [rig, day])).toEqual([
      ['Auk', '2027-04-15'],
      ['Brant', '2027-04-19'],
    ]);
    expect(where(fleetOf(`  closed 2027-04-15 to 2027-04-16${two}`, plans)).map(([rig, day]) => [rig, day])).toEqual([
      ['Auk', '2027-04-19'],
      ['Brant', '2027-04-19'],
    ]);
  });
  test('the climate is that of the yard, whatever the policy says of another place', () => {
    const cold = two.replace('yard Inland {', 'yard Inland {\n    slack apr 50 %\n    before-noon 04-01 to 04-30');
    const schedule = fleetOf(cold, { Auk: coastal(tape), Brant: tape }, '2027-01-10', 'slack apr 0 %');
    const [auk, brant] = schedule.visits;
    expect(auk?.because.join(' ')).not.toContain('before noon');
    expect(brant?.because.join(' ')).toContain('from 04-01 to 04-30');
    expect(schedule.assumptions).toContainEqual({
      what: 'kept free in apr for days that weather takes at Inland',
      value: '50 %',
      kind: 'record',
    });
  });
  test('a skill that a yard lacks is told with its name', () => {
    const skilled = `
  yard Harbour {
    crew Look 1 for 8 h each on mon to fri
    skill Look inspect
    serves Coastal
  }`;
    expect(fleetOf(skilled, { Auk: coastal(tape) }).unplaced[0]?.because).toBe('no crew at Harbour does tape');
  });
  test('lateness is told for each yard, and adds up', () => {
    const { yards = [], lateness } = fleetOf(two, {
      Auk: coastal(`${big} before 2027-04-16`),
      Brant: big,
    });
    expect(yards.reduce((sum, one) => sum + one.lateness.days, 0)).toBe(lateness?.days);
    expect(yards.map(({ name }) => name)).toEqual(['Harbour', 'Inland']);
  });
  test('a fleet without yards says nothing of any', () => {
    const schedule = fleetOf(`  ${crew}`, { Auk: tape });
    expect(schedule.yards).toBeUndefined();
    expect(schedule.visits[0]).not.toHaveProperty('yard');
    expect(schedule.visits[0]).not.toHaveProperty('crewName');
    expect(() => Schedule.parse(fleetOf(two, { Auk: coastal(big) }))).not.toThrow();
  });
});
