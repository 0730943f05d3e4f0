import { describe, expect, it } from 'vitest';
import { type Entry, monthsOf } from '../../language/documents/month/index.ts';
import { projectOf } from '../project/workspace.ts';

const text = `
policy Yard {
  inspect every 6 months
  due-soon 30 days
}
rig Plover under Yard {
  roof 20 ft by 8 ft epdm
  edge roadside
  found 2026-01-05 all with unknown
  inspected 2026-07-01 { rest sound }
  inspect before 2026-12-20
}
rig Teal under Yard {
  roof 20 ft by 8 ft epdm
  edge roadside
  found 2026-01-05 all with unknown
}
fleet Shore under Yard {
  rigs "*.rig"
  crew 2 for 8 h each on mon to fri
  booked Teal 2026-10-20 to 2026-11-03
  booked Plover 2026-12-01 to 2026-12-02
  closed 2026-12-24 to 2027-01-03
}
`;
const dates = { asOf: '2026-11-25', today: '2026-11-25' };
const project = projectOf({ 'a.rig': text });
const [fleet] = project.fleets('a.rig');
const months = monthsOf({ kind: 'fleet', fleet: fleet!.fleet, views: fleet!.views }, dates);
const on = (day: string) => months.entries.filter(({ days }) => days.includes(day));
const lineOf = ({ at }: Entry) => text.slice(at[0], at[1]);

describe('the months', () => {
  it('begin the month before the as-of date and hold more than a year', () => {
    // 1 October 2026 is a Thursday, 1 February 2027 a Monday of 28 days.
    expect(months.months[0]).toEqual({ id: '2026-10', days: 31, startsOn: 4 });
    expect(months.months.find(({ id }) => id === '2027-02')).toEqual({ id: '2027-02', days: 28, startsOn: 1 });
    expect(months.months.at(-1)?.id).toBe('2027-11');
  });

  it('show a booking on each of its days, also where it began before them', () => {
    for (const day of ['2026-10-20', '2026-11-03'])
      expect(on(day).map(({ rig, kind }) => [rig, kind])).toContainEqual(['Teal', 'booked']);
    expect(on('2026-11-04').filter(({ kind }) => kind === 'booked')).toEqual([]);
    const booked = on('2026-12-01').find(({ kind }) => kind === 'booked');
    expect(lineOf(booked!)).toBe('booked Plover 2026-12-01 to 2026-12-02');
  });

  it('show closed days for all', () => {
    expect(on('2027-01-03').map(({ kind, rig }) => [kind, rig])).toContainEqual(['closed', undefined]);
    expect(on('2027-01-04').filter(({ kind }) => kind === 'closed')).toEqual([]);
  });

  it('show what falls due at the record that it follows from', () => {
    // Six months after the look of 1 July 2026.
    const due = on('2027-01-01').find(({ kind, rig }) => kind === 'due' && rig === 'Plover');
    expect(due?.says).toMatch(/^inspect /);
    expect(due?.why).toMatch(/6 months/);
  });

  it('keep what was due before the months among the overdue', () => {
    // Teal was never looked at since 5 January 2026: due on 5 July.
    const old = months.entries.find(
      ({ kind, rig, date }) => kind === 'overdue' && rig === 'Teal' && date === '2026-07-05',
    );
    expect(old?.days).toEqual([]);
  });

  it('show planned work on the day of its visit, and not while the rig is out', () => {
    const visits = months.entries.filter(({ kind, rig }) => kind === 'visit' && rig === 'Plover');
    expect(visits.length).toBeGreaterThan(0);
    for (const { days } of visits) for (const day of days) expect(['2026-12-01', '2026-12-02']).not.toContain(day);
  });
});

it('a rig has a calendar of its own, without bookings', () => {
  const [view] = project.rigs('a.rig');
  const own = monthsOf({ kind: 'rig', view: view! }, dates);
  expect(own.rigs).toEqual(['Plover']);
  expect(own.entries.some(({ kind }) => kind === 'booked' || kind === 'closed')).toBe(false);
  expect(own.entries.length).toBeGreaterThan(0);
});
