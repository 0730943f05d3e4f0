import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { addDays, addPeriod, isValidDate, periodBetween, weekday } from '../../language/values/calendar.ts';
import { readPeriod } from '../../language/values/period.ts';
import { certain, quantityFrom } from '../../language/values/quantity.ts';
import { inSeason, readSeason } from '../../language/values/season.ts';

const period = (text: string) => certain(readPeriod(quantityFrom(text) ?? { terms: [] }));

describe('month ends and leap years (documentation of the tc39 Temporal proposal, PlainDate, seen)', () => {
  it('a day that the month lacks becomes its last', () => {
    expect(addPeriod('2019-01-31', period('1 month'))).toBe('2019-02-28');
    expect(addPeriod('2019-03-31', period('1 month'), -1)).toBe('2019-02-28');
    expect(addPeriod('2006-08-24', period('20 years 4 months'))).toBe('2026-12-24');
  });

  it('2006-08-24 until 2019-01-31 is 12 years, 5 months and 7 days', () => {
    expect(periodBetween('2006-08-24', '2019-01-31')).toEqual({ months: 12 * 12 + 5, days: 7 });
  });

  it('2100 is no leap year', () => {
    expect(isValidDate('2100-02-29')).toBe(false);
    expect(isValidDate('2000-02-29')).toBe(true);
  });
});

interface Recurrence {
  readonly id: string;
  readonly description: string;
  readonly dtstart: string;
  readonly expected: readonly string[];
}

const FILE = join(import.meta.dirname, '..', '..', '..', 'shared', 'checks', 'rfc5545-recurrence.json');
const PREFIX = 'rfc5545-3.8.5.3-';

/** Each example that is "some first dates, then the same again every so often", and how often. */
const STEADY: readonly (readonly [id: string, every: string])[] = [
  ['01', '1 day'],
  ['03', '2 days'],
  ['05', '1 year'],
  ['07', '1 week'],
  ['09', '1 week'],
  ['11', '2 weeks'],
  ['17', '1 month'],
  ['19', '18 months'],
  ['21', '1 year'],
  ['33', '2 weeks'],
];

describe('recurrences (RFC 5545 section 3.8.5.3)', () => {
  if (!existsSync(FILE)) {
    it('are read from a folder beside the project', (context) => {
      const why = 'RFC 5545 recurrences left out: ../shared/checks/rfc5545-recurrence.json is not there';
      console.warn(why);
      context.skip(why);
    });
    return;
  }
  const examples = JSON.parse(readFileSync(FILE, 'utf8')) as readonly Recurrence[];
  const example = (id: string) => {
    const found = examples.find((one) => one.id === PREFIX + id);
    if (found === undefined) throw new Error(`no example ${id}`);
    return found;
  };

  it.each(STEADY)('example %s: start + k x %s gives every date', (id, every) => {
    const { dtstart, expected } = example(id);
    const step = period(every);
    const firsts = expected.filter((date) => date < addPeriod(dtstart, step));
    expect(firsts.length).toBeLessThan(expected.length);
    const made: string[] = [];
    for (let k = 0; made.length < expected.length; k++) {
      made.push(...firsts.map((date) => addPeriod(date, step, k)));
    }
    expect(made.slice(0, expected.length)).toEqual(expected);
  });

  it('example 27, every Thursday in June, July and August: weekly, in a season', () => {
    const { dtstart, expected } = example('27');
    const summer = certain(readSeason('06-01', '08-31'));
    const made: string[] = [];
    for (let date = dtstart; made.length < expected.length; date = addDays(date, 7)) {
      if (inSeason(date, summer)) made.push(date);
    }
    expect(made).toEqual(expected);
    expect(made.every((date) => weekday(date) === 4)).toBe(true);
  });

  it('example 35, the 15th and 30th: RFC 5545 skips 30 February where this calendar takes the last day', () => {
    const { expected } = example('35');
    expect(expected).not.toContain('2007-02-28');
    expect(addPeriod('2007-01-30', period('1 month'))).toBe('2007-02-28');
    expect(addPeriod('2007-01-30', period('1 month'), 2)).toBe(expected.at(-1));
  });
});
