// What is late, with its reasons.
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { lateLines, lateSum } from '../../language/documents/fleet/late.ts';
import { daysBetween } from '../../language/values/calendar.ts';
import { fleetPapers, twoYards } from './fleets.ts';

const asOf = '2027-04-05';
const { scene, texts } = fleetPapers({ 'a.rig': twoYards }, asOf, 'a.rig');
const lines = lateLines(scene);
const of = (what: RegExp) => lines.filter((line) => what.test(`${line.rig} ${line.what}`));

describe('what is late', () => {
  it('is every overdue date that asks for work, once', () => {
    const overdue = scene.schedule.dues.filter(({ status }) => status === 'overdue');
    expect(overdue.length).toBeGreaterThan(3);
    for (const due of overdue) expect(lines.filter(({ id }) => id === due.id)).toHaveLength(1);
  });

  it('names the visit that is too late, the constraint that forbids an earlier one and how late it is then', () => {
    const [vent] = of(/Auk follow up vent/);
    expect(vent).toMatchObject({ yard: 'North', group: 'Coastal', condition: 'open', due: '2027-03-02', daysLate: 34 });
    expect(vent?.planned).toEqual({ first: '2027-04-15', last: '2027-04-15', daysLate: 44 });
    expect(vent?.because.join(' ')).toContain('The season (04-15 to 10-15) begins on 2027-04-15.');
  });

  it('says of what no day could hold which order it waits for and the first day that would do', () => {
    const [tape, ...more] = of(/Brant taping/);
    expect(more).toEqual([]);
    expect(tape).toMatchObject({ standing: 'no day', daysLate: 24, firstDay: '2027-04-26' });
    expect(tape?.waitsFor).toEqual([{ material: 'Strip', until: '2027-04-26' }]);
    expect(tape?.because.join(' ')).toContain('3 weeks');
  });

  it('says where nobody planned anything', () => {
    const [skylight] = of(/Brant follow up skylight/);
    expect(skylight).toMatchObject({ standing: 'no plan', condition: 'lifting' });
    expect(skylight?.because.at(-1)).toBe('No plan settles it.');
  });

  it('has the gravest first, of these what is over longest', () => {
    const order = lines.map(({ severity }) => severity);
    expect(order).toEqual([...order].sort((a, b) => b - a));
    expect(order[0]).toBe(5);
    expect(order.at(-1)).toBe(0);
  });

  it('counts a date that is not over yet but will be by its visit', () => {
    const text = twoYards.replaceAll(' before 2027-03-20', '');
    const early = lateLines(fleetPapers({ 'a.rig': text }, '2027-03-01', 'a.rig').scene);
    const vent = early.find(({ rig, what }) => rig === 'Auk' && /follow up vent/.test(what));
    expect(vent).toMatchObject({ due: '2027-03-02', daysLate: 0, standing: 'planned' });
    expect(vent?.planned?.daysLate).toBe(daysBetween('2027-03-02', vent?.planned?.last as string));
  });

  it('has sums on top that are those of its rows, by yard too', () => {
    const text = texts.get('Yard.late.md') as string;
    const all = lateSum('the fleet', lines);
    expect(all).toMatchObject({ lines: lines.length, withoutDay: 1 });
    expect(text).toContain(`| the fleet | ${all.lines} | ${all.over} | ${all.grave} |`);
    expect(text).toMatch(/## By yard[\s\S]*\| North \| /);
    const { data } = Papa.parse<Record<string, string>>(texts.get('Yard.late.csv') as string, {
      header: true,
      skipEmptyLines: true,
    });
    expect(data).toHaveLength(lines.length);
    expect(data.map(({ 'days late': days }) => Number(days))).toEqual(lines.map(({ daysLate = 0 }) => daysLate));
  });

  it('says so where nothing is', () => {
    const quiet = twoYards.replace(/\n {2}(strip|seal|tape) .*/g, '').replace(/lifting|open\n/g, 'sound\n');
    const on = fleetPapers({ 'a.rig': quiet }, '2026-09-01', 'a.rig');
    expect(on.texts.get('Yard.late.md')).toContain('Nothing that was recorded or planned is late');
  });
});
