// Work that goes by the piece or by the whole roof has a rate, and its hours are in the sum.
import { expect, test } from 'vitest';
import { estimate, rigWith } from './asked.ts';

const hoursOf = (plan: string, task: string, before = '') => {
  const lines = estimate(
    `${before}${rigWith('opening vent 16 in by 16 in at 6 ft, 4 ft', 'mount rack 4 in by 4 in at 8 ft, 4 ft count 3', plan)}`,
  );
  return lines.labour.filter((line) => line.task === task).map(({ hours }) => hours.likely.value);
};

test('replacing, patching, tightening, drying out, a temporary cover: each piece', () => {
  expect(hoursOf('replace vent', 'replace')).toEqual([1]);
  expect(hoursOf('patch vent', 'patch')[0]).toBeCloseTo(1 / 3, 9);
  expect(hoursOf('tighten rack', 'tighten')[0]).toBeCloseTo(3 / 6, 9);
  expect(hoursOf('dry vent', 'dry-out')).toEqual([0.5]);
  expect(hoursOf('cover vent', 'temporary-cover')[0]).toBeCloseTo(1 / 3, 9);
});

test('coating: the whole roof, with all its passes', () => {
  const coat = 'coating Roof { container 5 gal at 150 USD covers 50 sq-ft per gal passes 2 }';
  // 224 sq ft at 120 sq ft an hour.
  expect(hoursOf('coat with Roof', 'coat', coat)[0]).toBeCloseTo(224 / 120, 9);
});

test('a rate of none counts it with another task', () => {
  const none = 'policy None like Standard { rate tighten none }\n';
  const text = `${none}${rigWith('gasket air-con 14 in by 14 in at 9 ft, 4 ft', 'tighten air-con').replace(/under \w+/, 'under None')}`;
  expect(estimate(text).labour.map(({ task }) => task)).toEqual(['set-up']);
});
