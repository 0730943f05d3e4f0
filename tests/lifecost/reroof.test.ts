import { describe, expect, it } from 'vitest';
import { compared, way } from './ways.ts';

describe('a new roof that has a price', () => {
  const quote = 'quote "A" 9000 USD for reroof';
  const end = (comparison = compared({ rig: [quote], policy: ['horizon 30 years'] }), key = 'touch-up') =>
    way(key, comparison).courses.find(({ title }) => title === 'a new roof at the end of the membrane');

  it('comes due in every other way when the membrane ends, and the membrane no longer ends the comparison', () => {
    const comparison = compared({ rig: [quote], policy: ['horizon 30 years'] });
    expect(compared({ policy: ['horizon 30 years'] }).horizon.value).toBe(13);
    expect(comparison.horizon.value).toBe(30);
    for (const { key } of comparison.ways) {
      if (key === 'reroof-1') expect(end(comparison, key)).toBeUndefined();
      // Once, with certainty: EPDM of 2020 lasts 10, 15 or 20 years, so 3.4, 8.4 or 13.4 from now.
      else expect(end(comparison, key)?.works[0]?.number.value, key).toBeCloseTo(1, 9);
    }
    // The price and ten days off, between its worth at the earliest and at the latest year.
    const [cost, present] = [9000 + 10 * 60, end(comparison)?.present.value as number];
    expect(present).toBeLessThan(cost / 1.03 ** 3);
    expect(present).toBeGreaterThan(cost / 1.03 ** 14);
  });

  it('is left out where its quote no longer holds, or where nothing says when the membrane was laid', () => {
    const past = `${quote} until 2026-09-30`;
    expect(compared({ rig: [past], policy: ['horizon 30 years'] }).horizon.value).toBe(13);
    expect(end(compared({ rig: [past] }))).toBeUndefined();
  });

  it('costs the less the later it comes', () => {
    const free = compared({ rig: [quote], policy: ['horizon 30 years', 'real-interest 0 %'] });
    expect(end(free)?.present.value).toBeCloseTo(9000 + 10 * 60, 6);
  });
});
