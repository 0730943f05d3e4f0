import { describe, expect, it } from 'vitest';
import { tornado } from '../../language/lifecost/index.ts';

describe('the tornado', () => {
  const inputs = {
    price: { low: 10, base: 12, high: 15 },
    days: { low: 1, base: 1, high: 5 },
    rate: { low: 0, base: 0, high: 0 },
  };
  const { base, bars } = tornado(inputs, ({ price, days, rate }) => price - 20 + 3 * days + rate);

  it('has the result at the base of all', () => {
    expect(base).toBe(-5);
  });

  it('varies one input at a time, widest swing first', () => {
    expect(bars.map(({ name, atLow, atHigh, swing }) => [name, atLow, atHigh, swing])).toEqual([
      ['days', -5, 7, 12],
      ['price', -7, -2, 5],
      ['rate', -5, -5, 0],
    ]);
  });

  it('says which input alone can turn the choice', () => {
    expect(bars.filter((bar) => bar.decides).map((bar) => bar.name)).toEqual(['days']);
  });

  it('sees a swing whose end is at the base', () => {
    const bent = tornado({ x: { low: -1, base: 0, high: 1 } }, ({ x }) => x * x);
    expect(bent.bars[0]).toMatchObject({ atLow: 1, atHigh: 1, swing: 1, decides: false });
  });
});
