import { describe, expect, it } from 'vitest';
import { withoutPoints } from '../../language/rules/three-points.ts';
import { fleetTable } from '../../language/statements/fleet.ts';
import { historyTable } from '../../language/statements/past.ts';
import { policyTable } from '../../language/statements/policy.ts';
import { modelTable, rigTable } from '../../language/statements/rig.ts';
import { mended, said, under } from './asked.ts';

describe('three points', () => {
  it.each([
    ['tape T { life 25 years, 15 years, 8 years }', '25 years, 15 years, 8 years', '8 years, 15 years, 25 years'],
    [
      'tape T { life 2 years, 18 months, 3 years on epdm }',
      '2 years, 18 months, 3 years',
      '18 months, 2 years, 3 years',
    ],
    ['policy P { touch-ups 20 %, 10 %, 15 % }', '20 %, 10 %, 15 %', '10 %, 15 %, 20 %'],
    [
      'policy P { recoats every 5 years, 3 years, 2 years }',
      'every 5 years, 3 years, 2 years',
      'every 2 years, 3 years, 5 years',
    ],
    ['policy P { days-off strip 5 days, 4 days, 3 days }', '5 days, 4 days, 3 days', '3 days, 4 days, 5 days'],
    [
      'policy P { rate lay 70 ft per h, 40 ft per h, 25 ft per h }',
      '70 ft per h, 40 ft per h, 25 ft per h',
      '25 ft per h, 40 ft per h, 70 ft per h',
    ],
    ['policy P { rate set-up 1 h, 30 min, 2 h }', '1 h, 30 min, 2 h', '30 min, 1 h, 2 h'],
  ])('out of order are named and put in order: %s', (text, wrong, right) => {
    const [finding] = said('points-out-of-order', text);
    expect(finding).toMatchObject({ severity: 'warning' });
    expect(under(text, finding!)).toBe(wrong);
    const after = mended(text, finding!);
    expect(after).toBe(text.replace(wrong, right));
    expect(said('points-out-of-order', after)).toEqual([]);
  });

  it.each([
    'tape T { life 8 years, 15 years, 25 years }',
    'tape T { life 15 years }',
    'policy P { rate lay none }',
    'policy P { rate set-up 45 min }',
  ])('in order, or one alone, are silent: %s', (text) => {
    expect(said('points-out-of-order', text)).toEqual([]);
  });
});

it('are looked for in every block that has lines of them', () => {
  const haveThem = (table: { readonly rows: Iterable<object> }) =>
    [...table.rows].some((row) => JSON.stringify(row).includes('or three: least, likely, most'));
  expect(haveThem(policyTable)).toBe(true);
  const tables = { rig: rigTable, model: modelTable, history: historyTable, fleet: fleetTable };
  expect(new Set(Object.keys(tables))).toEqual(withoutPoints);
  for (const table of Object.values(tables)) expect(haveThem(table)).toBe(false);
});
