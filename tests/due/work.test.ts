import { describe, expect, it } from 'vitest';
import { dues, of, one } from './ask.ts';

describe('the look-hard date', () => {
  const sealed = '  sealed 2024-06-01 vent with Lap\n';
  it('is the period of the sealant after the last sealing', () => {
    expect(one('look-hard', sealed, '2025-01-01', 'vent')).toMatchObject({
      date: '2025-12-01',
      sourceEvent: { file: 'a.rig' },
    });
    expect(one('look-hard', sealed, '2025-01-01', 'dome').date).toBe('2021-09-10');
  });
  it('is moved on by a finding of sound after it, not by another', () => {
    expect(one('look-hard', `${sealed}  inspected 2025-11-15 { vent sound }`, '2026-01-01', 'vent').date).toBe(
      '2027-05-15',
    );
    expect(one('look-hard', `${sealed}  inspected 2025-11-15 { vent hairline }`, '2026-01-01', 'vent').date).toBe(
      '2025-12-01',
    );
    expect(one('look-hard', `  inspected 2024-05-01 { vent sound }\n${sealed}`, '2026-01-01', 'vent').date).toBe(
      '2025-12-01',
    );
  });
  it('does not stand where it is taped, bare or unknown', () => {
    expect(of('look-hard', `${sealed}  taped 2024-09-01 vent with Strip`, '2025-01-01', 'vent')).toEqual([]);
    expect(of('look-hard', `${sealed}  stripped 2024-09-01 vent`, '2025-01-01', 'vent')).toEqual([]);
    expect(of('look-hard', '  found 2024-09-01 all with unknown', '2025-01-01')).toEqual([]);
  });
  it('of a seam is that of its oldest stretch', () => {
    const lines = '  sealed 2024-06-01 curbside with Lap\n  sealed 2025-06-01 curbside from 6 ft to 9 ft with Lap';
    expect(one('look-hard', lines, '2025-07-01', 'curbside').date).toBe('2025-12-01');
  });
});

describe('the cover clock', () => {
  const sealed = '  sealed 2026-04-01 vent with Lap';
  it('says from when tape may go over fresh sealant, and is never overdue', () => {
    const due = one('cover', sealed, '2026-04-21');
    expect(due).toMatchObject({
      nature: 'from',
      item: 'vent',
      date: '2026-05-31',
      changes: ['2026-05-01', '2026-05-31'],
    });
    expect(due.because).toContain('never before 2026-05-01');
    expect(of('cover', sealed, '2026-05-31')).toEqual([]);
  });
});

describe('tape', () => {
  const facts = 'built 2024-01-01';
  const taped = '  taped 2026-07-05 front with Strip';
  const asOf = '2026-08-01';
  it('is in its second half from half its likely life, and ends with it', () => {
    expect(one('tape-end', taped, asOf, 'front', facts).date).toBe('2041-07-05');
    // 2026-07-05 to 2041-07-05 are 5479 days.
    expect(one('tape-second-half', taped, asOf, 'front', facts).date).toBe('2034-01-03');
    expect(one('tape-second-half', taped, '2040-01-01', 'front', facts)).toMatchObject({
      status: 'due',
      nature: 'from',
    });
  });
  it('lasts no longer than the membrane: built 2016, at most 20 years', () => {
    const due = one('tape-end', taped, asOf, 'front', 'built 2016-03-01');
    expect(due.date).toBe('2036-03-01');
    expect(due.because).toContain('membrane');
    expect(due.explained.formula).toBe('min(laid + life, membrane_laid + membrane_life)');
  });
  it('lasts no longer than the part: fitted 2020, at most 12 years', () => {
    const lines =
      '  part-life dome 8 years to 12 years\n  replaced 2020-05-01 dome\n  taped 2026-07-05 dome with Strip';
    expect(one('tape-end', lines, asOf, 'dome', facts)).toMatchObject({ date: '2032-05-01' });
  });
  it('on a membrane past its life has ended on the day it was laid', () => {
    const due = one('tape-end', taped, asOf, 'front', 'built 1990-01-01');
    expect(due.date).toBe('2026-07-05');
    expect(due.explained.formula).toBe('max(laid, min(laid + life, membrane_laid + membrane_life))');
  });
  it('without a `life` of its own takes the built-in one of the surface', () => {
    const text = '  taped 2026-07-05 front with GenericSeamTape';
    expect(one('tape-end', text, asOf, 'front', facts).date).toBe('2041-07-05');
  });
  it('on a wall does not know the membrane', () => {
    const due = one('tape-end', '  taped 2026-07-05 drip-rail with Strip', asOf, 'drip-rail', 'built 2016-03-01');
    expect(due.date).toBe('2041-07-05');
  });
  it('that was stripped has no dates', () => {
    expect(of('tape-end', `${taped}\n  stripped 2026-07-20 front`, asOf)).toEqual([]);
  });
});

describe('papers', () => {
  it('a plan has its day, and is done when its work is recorded since it may begin', () => {
    const plan = '  tape front with Strip after 2027-04-15 before 2027-06-30\n';
    expect(one('plan', plan, '2027-05-01')).toMatchObject({ item: 'front', word: 'tape', date: '2027-06-30' });
    expect(of('plan', `${plan}  taped 2027-05-02 front with Strip`, '2027-05-03')).toEqual([]);
    expect(of('plan', `${plan}  taped 2026-05-02 front with Strip`, '2027-05-03')).toHaveLength(1);
    expect(of('plan', '  inspect after 2026-12-31', '2026-05-03')).toEqual([]);
  });
  it('a quote expires', () => {
    expect(one('quote', '  quote "shop A" 1450 USD for recoat until 2027-03-31', '2027-04-02')).toMatchObject({
      status: 'overdue',
      days: -2,
    });
  });
  it('a count of the shelf beats purchases', () => {
    const bought = '  bought 2026-03-01 Lap 12 cartridges at 105 USD best-before 2028-03\n';
    const dates = (lines: string) => of('best-before', lines, '2026-05-01').map((due) => due.date);
    expect(dates(bought)).toEqual(['2028-03-31']);
    expect(dates(`${bought}  on-hand Lap 5 cartridges`)).toEqual(['2028-03-31']);
    expect(dates(`${bought}  on-hand Strip 18 ft`)).toEqual([]);
    expect(dates(`${bought}  on-hand Lap 5 cartridges best-before 2027-02`)).toEqual(['2027-02-28']);
  });
});

describe('records after the as-of date', () => {
  it('are left out', () => {
    const lines = '  inspected 2026-06-10 { vent open }\n  sealed 2026-06-12 vent with Lap';
    expect(one('follow-up', lines, '2026-06-11', 'vent').status).toBe('due');
    expect(dues(lines, '2026-06-12').some((due) => due.kind === 'follow-up')).toBe(false);
  });
});
