import { describe, expect, it } from 'vitest';
import {
  atEndOf,
  coatings,
  type Frame,
  fixedLife,
  once,
  preceded,
  renewed,
  rowsOf,
  type Stream,
  type Work,
  yearlyChance,
} from '../../language/lifecost/index.ts';

const frame: Frame = { years: 12, rate: 0, timing: 'end', dayRate: 100 };
const work = (title: string, material = 10): Work => ({ title, material, labour: 0, days: 0 });
/** `0 strip, 2 recoat`: what happens when, for courses whose lives are certain. */
const course = (stream: Stream, within = frame) =>
  rowsOf(stream, within)
    .map((row) => `${row.year} ${row.work.title}`)
    .join(', ');

describe('coats', () => {
  const coating = { title: 'coats', recoat: work('recoat'), strip: work('strip'), life: fixedLife(2), limit: 3 };

  it('are counted up to the limit, then stripped, and so on', () => {
    expect(course(coatings({ ...coating, now: 1 }))).toBe('0 recoat, 2 recoat, 4 strip, 6 recoat, 8 recoat, 10 strip');
  });

  it('begin with a strip where the limit is reached, passed or not known', () => {
    const stripped = '0 strip, 2 recoat, 4 recoat, 6 strip, 8 recoat, 10 recoat';
    expect(course(coatings({ ...coating, now: 3 }))).toBe(stripped);
    expect(course(coatings({ ...coating, now: 5 }))).toBe(stripped);
    expect(course(coatings(coating))).toBe(stripped);
  });

  it('may wait for the first', () => {
    expect(course(coatings({ ...coating, now: 2, wait: fixedLife(1) }))).toBe(
      '1 recoat, 3 strip, 5 recoat, 7 recoat, 9 strip, 11 recoat',
    );
  });

  it('with a limit of one are stripped each time', () => {
    expect(course(coatings({ ...coating, limit: 1, life: fixedLife(5) }))).toBe('0 strip, 5 strip, 10 strip');
  });

  it.each([
    [0, 0],
    [2.5, 0],
    [2, -1],
  ])('refuse limit %f with %f on', (limit, now) => {
    expect(() => coatings({ ...coating, limit, now })).toThrow(RangeError);
  });
});

describe('other courses', () => {
  const tape = renewed(
    'tape',
    { work: work('tape'), life: fixedLife(4) },
    { work: work('new tape'), life: fixedLife(5) },
  );

  it('tape now, anew at the end of every life', () => {
    expect(course(tape)).toBe('0 tape, 4 new tape, 9 new tape');
  });

  it('nobody renews on the day of parting', () => {
    expect(course(tape, { ...frame, years: 9 })).toBe('0 tape, 4 new tape');
    expect(course(tape, { ...frame, years: 10 })).toBe('0 tape, 4 new tape, 9 new tape');
    expect(course(tape, { ...frame, years: 0 })).toBe('');
  });

  it('a shop first, then the course', () => {
    expect(course(preceded('shop', { work: work('shop'), life: fixedLife(3) }, tape))).toBe(
      '0 shop, 3 tape, 7 new tape',
    );
  });

  it('a single work in its year, the last one too', () => {
    expect(course(once('re-roof', work('re-roof'), 12))).toBe('12 re-roof');
    expect(course(once('re-roof', work('re-roof'), 0))).toBe('0 re-roof');
    expect(course(once('re-roof', work('re-roof'), 13))).toBe('');
  });

  it('a single work at the end of a life, unless the horizon is over', () => {
    expect(course(atEndOf('re-roof', fixedLife(11), work('re-roof')))).toBe('11 re-roof');
    expect(course(atEndOf('re-roof', fixedLife(12), work('re-roof')))).toBe('');
  });

  it('a loss by chance: the same expectation in every year, the last one too', () => {
    const rows = rowsOf(yearlyChance('leak', work('leak', 5000), 0.02, 12), frame);
    expect(rows.map((row) => row.year)).toEqual(Array.from({ length: 12 }, (_, i) => i + 1));
    for (const { number } of rows) expect(number).toBeCloseTo(0.02, 12);
    expect(rowsOf(yearlyChance('leak', work('leak', 5000), 0, 12), frame)).toEqual([]);
  });
});
