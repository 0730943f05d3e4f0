import { describe, expect, it } from 'vitest';
import { addPeriod } from '../../language/values/calendar.ts';
import { of, one } from './ask.ts';

const facts = 'acquired 2021-04-10';

describe('the next inspection', () => {
  it('is an interval after the last full look, and says from what', () => {
    const due = one('inspect', '  inspected 2026-04-18 { rest sound }', '2026-05-01');
    expect(due).toMatchObject({ date: '2026-10-18', status: 'not-due', days: 170, nature: 'deadline' });
    expect(due.explained.inputs.map(({ name, text }) => [name, text])).toEqual([
      ['start', '2026-04-18'],
      ['every', '6 months'],
    ]);
    expect(due.explained.inputs[1]?.origin).toMatchObject({ file: 'a.rig', kind: 'record' });
  });

  it.each([
    ['2026-09-17', 'not-due', 31],
    ['2026-09-18', 'soon', 30],
    ['2026-10-17', 'soon', 1],
    ['2026-10-18', 'due', 0],
    ['2026-10-20', 'overdue', -2],
  ])('on %s it is %s', (asOf, status, days) => {
    expect(one('inspect', '  inspected 2026-04-18', asOf)).toMatchObject({ status, days });
  });

  it('keeps to the end of a month: 31 August and 6 months is 28 February, and the k-th does not drift', () => {
    const due = one('inspect', '  inspected 2025-08-31', '2025-09-01');
    expect(due.date).toBe('2026-02-28');
    const { start, every } = due.recurs!;
    expect([1, 2, 3].map((k) => addPeriod(start, every, k))).toEqual(['2026-02-28', '2026-08-31', '2027-02-28']);
  });

  it('waits for the item that was looked at longest ago; a part of the roof is no full look', () => {
    const due = one('inspect', '  inspected 2026-04-18\n  inspected 2026-06-01 { openings sound }', '2026-07-01');
    expect(due.date).toBe('2026-10-18');
    expect(due.items).toEqual(['curbside', 'roadside', 'front', 'air-con', 'drip-rail', 'membrane']);
  });

  it('counts what was not seen as answered for: that has a date of its own', () => {
    const lines = '  inspected 2025-04-18\n  inspected 2026-04-18 {\n    roadside not-seen\n    rest sound\n  }';
    expect(one('inspect', lines, '2026-05-01').date).toBe('2026-10-18');
    expect(one('not-seen', lines, '2026-05-01')).toMatchObject({ item: 'roadside', date: '2026-10-18' });
    expect(of('not-seen', `${lines}\n  inspected 2026-05-01 roadside`, '2026-05-02')).toEqual([]);
  });

  it('of a roof that nobody looked at counts from when it was acquired, and is before it leaves', () => {
    expect(one('inspect', '', '2021-05-01', undefined, facts)).toMatchObject({ date: '2021-10-10' });
    const trip = one('inspect', '  trip 2021-06-12 to 2021-06-20', '2021-05-01', undefined, facts);
    expect(trip.date).toBe('2021-06-11');
    expect(trip.because).toContain('leaves on 2021-06-12');
    expect(one('inspect', '', '2021-05-01', undefined, '')).toMatchObject({ date: '2021-05-01', status: 'due' });
  });

  it('never counts from before it was acquired', () => {
    expect(one('inspect', '  inspected 2020-12-01', '2021-05-01', undefined, facts).date).toBe('2021-10-10');
  });

  it('of a rough date counts from the earliest day', () => {
    expect(one('inspect', '  inspected 2026-04', '2026-05-01').date).toBe('2026-10-01');
    expect(one('inspect', '  found before 2026-04-01', '2026-05-01').date).toBe('2026-09-30');
  });
});

describe('storage', () => {
  const stored = '  stored 2026-11-01 to 2027-03-31\n';
  it('nothing falls due inside: before it while that is ahead, else after it', () => {
    const lines = `${stored}  inspected 2026-07-10`;
    expect(one('inspect', lines, '2026-09-01')).toMatchObject({
      date: '2026-10-31',
      moved: { from: '2027-01-10', to: 'before storage' },
    });
    expect(one('inspect', lines, '2026-12-01')).toMatchObject({
      date: '2027-04-01',
      moved: { from: '2027-01-10', to: 'after storage' },
      status: 'not-due',
    });
  });
  it('a finding on its eve goes after it', () => {
    const lines = `${stored}  inspected 2026-10-31 { vent lifting }`;
    expect(one('follow-up', lines, '2026-10-31', 'vent')).toMatchObject({
      date: '2027-04-01',
      moved: { to: 'after storage' },
    });
  });
  it('runs into the next storage without a gap', () => {
    const lines = `${stored}  stored 2027-04-01 to 2027-05-31\n  inspected 2026-07-10`;
    expect(one('inspect', lines, '2026-12-01').date).toBe('2027-06-01');
  });
  it('is looked at before, unless it was just looked at', () => {
    expect(one('storage-look', `${stored}  inspected 2026-07-10`, '2026-09-01').date).toBe('2026-10-31');
    expect(of('storage-look', `${stored}  inspected 2026-10-20`, '2026-10-21')).toEqual([]);
  });
  it('is looked at after, before the first trip', () => {
    const lines = `${stored}  inspected 2026-10-25\n`;
    expect(one('storage-look', lines, '2027-04-02').date).toBe('2027-04-14');
    expect(one('storage-look', `${lines}  trip 2027-04-05 to 2027-04-08`, '2027-04-02').date).toBe('2027-04-04');
    expect(of('storage-look', `${lines}  inspected 2027-04-03`, '2027-04-04')).toEqual([]);
  });
  it('does not move what only expires', () => {
    const lines = `${stored}  quote "shop A" 1450 USD for recoat until 2027-01-31`;
    expect(one('quote', lines, '2026-12-01')).toMatchObject({ date: '2027-01-31', nature: 'expiry' });
  });
});

describe('a blow', () => {
  it('asks for a look within a day, until everything that was struck was looked at', () => {
    const blow = '  inspected 2026-05-01\n  struck 2026-05-02 front, vent by branch\n';
    const due = one('event-look', blow, '2026-05-02');
    expect(due).toMatchObject({ date: '2026-05-03', items: ['front', 'vent'] });
    expect(due.because).toContain('struck by branch on 2026-05-02');
    expect(of('event-look', `${blow}  inspected 2026-05-03 { caps, vent sound }`, '2026-05-04')).toEqual([]);
  });
});
