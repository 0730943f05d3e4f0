import { describe, expect, it } from 'vitest';
import { findings } from './snippet.ts';

const rule = 'used-past-best-before';
const bought = (bestBefore: string, lot = 'K1', material = 'Lap') =>
  `  bought 2024-01-10 ${material} 2 cartridges lot "${lot}" best-before ${bestBefore}\n`;
const sealed = (day: string, clauses = 'lot "K1"') => `  sealed ${day} vent with Lap used 1 cartridge ${clauses}\n`;

describe('material past its best-before date', () => {
  it('is found by its lot, at the material of the record', () => {
    const [finding, ...more] = findings(bought('2026-05-31') + sealed('2026-06-01'), rule);
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      severity: 'warning',
      item: 'vent',
      message: expect.stringContaining('`Lap` of lot K1 was best before 2026-05-31, and the work is of 2026-06-01'),
      related: [{ message: 'The lot was bought here.' }],
    });
  });
  it('does on its last day; a month stands for its last day', () => {
    expect(findings(bought('2026-06-01') + sealed('2026-06-01'), rule)).toEqual([]);
    expect(findings(bought('2026-06') + sealed('2026-06-30'), rule)).toEqual([]);
    expect(findings(bought('2026-06') + sealed('2026-07-01'), rule)).toHaveLength(1);
  });
  it('of a rough day the earliest counts', () => {
    expect(findings(bought('2026-06-15') + sealed('2026-06'), rule)).toEqual([]);
    expect(findings(bought('2026-05-15') + sealed('2026-06'), rule)).toHaveLength(1);
  });
  it('is not guessed without a lot, from another lot, or from another material of that lot', () => {
    expect(findings(bought('2026-05-31') + sealed('2026-06-01', ''), rule)).toEqual([]);
    expect(findings(bought('2026-05-31') + sealed('2026-06-01', 'lot "K2"'), rule)).toEqual([]);
    expect(findings(bought('2026-05-31', 'K1', 'Fast') + sealed('2026-06-01'), rule)).toEqual([]);
  });
  it('of a lot that was bought twice counts by its latest date', () => {
    expect(findings(bought('2026-05-31') + bought('2027-05-31') + sealed('2026-06-01'), rule)).toEqual([]);
  });
  it('is not asked about work after the as-of date', () => {
    expect(findings(bought('2026-05-31') + sealed('2026-06-10'), rule, { asOf: '2026-06-09' })).toEqual([]);
  });
  it('can be accepted for an item', () => {
    const accept = `  accept ${rule} on vent until 2026-12-31 because "bond tested by hand"\n`;
    expect(findings(bought('2026-05-31') + sealed('2026-06-01') + accept, rule)).toEqual([]);
  });
});
