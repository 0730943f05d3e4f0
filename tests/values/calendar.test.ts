import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  addMinutes,
  addPeriod,
  dateOfEpochDay,
  daysBetween,
  daysInMonth,
  epochDay,
  isValidDate,
  periodBetween,
  weekday,
} from '../../language/values/calendar.ts';

const days = fc.integer({ min: -20_000, max: 60_000 });

describe('dates', () => {
  it('are valid when they are in the calendar', () => {
    expect(['2024-02-29', '2026-12-31', '0001-01-01'].every(isValidDate)).toBe(true);
    const wrong = ['2026-02-29', '2026-13-01', '2026-00-01', '2026-04-31', '2026-4-1', '2026-04-00', '', '2026-04'];
    expect(wrong.some(isValidDate)).toBe(false);
  });

  it('days go forth and back', () => {
    fc.assert(
      fc.property(days, days, (a, b) => {
        const [from, to] = [dateOfEpochDay(a), dateOfEpochDay(b)];
        expect(isValidDate(from)).toBe(true);
        expect(epochDay(from)).toBe(a);
        expect(daysBetween(from, to)).toBe(b - a);
        expect(addDays(from, b - a)).toBe(to);
        expect(from < to).toBe(a < b); // ISO dates compare as text
        // 1970-01-01 was a Thursday.
        expect(weekday(from)).toBe(((((a + 3) % 7) + 7) % 7) + 1);
      }),
    );
  });

  it('agree with the calendar of the machine', () => {
    fc.assert(
      fc.property(days, (n) => {
        const machine = new Date(n * 86_400_000).toISOString().slice(0, 10);
        expect(dateOfEpochDay(n)).toBe(machine);
      }),
    );
  });

  it('refuse to be reckoned with when they are none', () => {
    expect(() => addDays('2026-02-30', 1)).toThrow(RangeError);
    expect(() => daysBetween('2026-02-30', '2026-03-01')).toThrow(RangeError);
  });

  it('end with the years of four digits, so that they still compare as text', () => {
    expect(addDays('9999-12-31', 1)).toBe('9999-12-31');
    expect(addDays('9999-12-30', 1)).toBe('9999-12-31');
    expect(addPeriod('2026-04-18', { months: 12 * 9000, days: 0 })).toBe('9999-12-31');
    expect(addPeriod('2026-04-18', { months: 0, days: 1e15 })).toBe('9999-12-31');
    expect(addDays('0000-01-01', -1)).toBe('0000-01-01');
    expect(addPeriod('2026-04-18', { months: 12 * 9000, days: 0 }, -40)).toBe('0000-01-01');
  });

  it('months have their length', () => {
    expect(['2024-02', '2026-02', '2026-04', '2026-12'].map(daysInMonth)).toEqual([29, 28, 30, 31]);
  });
});

describe('periods', () => {
  it('come months first, then days', () => {
    expect(addPeriod('2026-01-31', { months: 1, days: 1 })).toBe('2026-03-01');
  });

  it('do not drift: the k-th is counted from the start', () => {
    const monthly = { months: 1, days: 0 };
    expect([1, 2, 3].map((k) => addPeriod('2026-01-31', monthly, k))).toEqual([
      '2026-02-28',
      '2026-03-31',
      '2026-04-30',
    ]);
    expect(addPeriod(addPeriod('2026-01-31', monthly), monthly)).toBe('2026-03-28');
    expect(addPeriod('2026-03-31', monthly, -1)).toBe('2026-02-28');
    expect(addPeriod('2026-03-31', monthly, 0)).toBe('2026-03-31');
  });

  it('between two dates lead from the one to the other', () => {
    fc.assert(
      fc.property(days, fc.nat(20_000), (a, n) => {
        const [from, to] = [dateOfEpochDay(a), dateOfEpochDay(a + n)];
        expect(addPeriod(from, periodBetween(from, to))).toBe(to);
      }),
    );
  });
});

describe('minutes', () => {
  it('run over midnight and round up', () => {
    expect(addMinutes('2026-04-20', '14:30', 90)).toEqual({ date: '2026-04-20', time: '16:00' });
    expect(addMinutes('2026-04-20', '14:30', 24 * 60)).toEqual({ date: '2026-04-21', time: '14:30' });
    expect(addMinutes('2026-12-31', '23:59', 0.5)).toEqual({ date: '2027-01-01', time: '00:00' });
  });
});
