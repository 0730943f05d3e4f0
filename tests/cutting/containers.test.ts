import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Container, cheapestContainers } from '../../language/cutting/index.ts';

/** 10.3 fl oz (US) is 304.6 mL; a case holds 12. Prices of check case A, trade notes 3.7. */
const CARTRIDGE: Container = { id: 'cartridge', volume: 304.6084, price: 950 };
const CASE: Container = { id: 'case', volume: 12 * 304.6084, price: 10200 };

describe('cartridges and cases', () => {
  const buy = (cartridges: number, onHand = 0) => {
    const { buy, cost } = cheapestContainers(cartridges * CARTRIDGE.volume, [CARTRIDGE, CASE], onHand);
    return { buy: buy.map(({ id, count }) => `${count} ${id}`), cost };
  };

  it('buys 4 cartridges when 5.645 are needed and 2 are on hand (check case A)', () => {
    expect(buy(5.645, 2 * CARTRIDGE.volume)).toEqual({ buy: ['4 cartridge'], cost: 3800 });
  });

  it('changes to the case where eleven cartridges cost more', () => {
    expect(buy(10)).toEqual({ buy: ['10 cartridge'], cost: 9500 });
    expect(buy(10.1)).toEqual({ buy: ['1 case'], cost: 10200 });
    expect(buy(13)).toEqual({ buy: ['1 cartridge', '1 case'], cost: 11150 });
  });

  it('does not buy one more for a rounding error', () => {
    expect(buy(0.1 + 0.2 + 0.7).cost).toBe(950);
    const thirds = 3 * (CARTRIDGE.volume / 3) + 1e-12;
    expect(cheapestContainers(thirds, [CARTRIDGE], 0).buy).toEqual([{ id: 'cartridge', count: 1 }]);
  });

  it('says what is on hand, spare and short', () => {
    expect(cheapestContainers(1000, [{ id: 'can', volume: 946, price: 900 }], 100)).toEqual({
      buy: [{ id: 'can', count: 1 }],
      cost: 900,
      volume: 946,
      spare: 46,
      onHandUsed: 100,
      short: 0,
      proven: true,
    });
    expect(cheapestContainers(100, [CARTRIDGE], 250)).toMatchObject({ buy: [], cost: 0, spare: 150, onHandUsed: 100 });
    expect(cheapestContainers(100, [], 30)).toMatchObject({ buy: [], short: 70, onHandUsed: 30, spare: 0 });
    expect(cheapestContainers(0, [CARTRIDGE], 0)).toMatchObject({ buy: [], cost: 0, short: 0, proven: true });
  });

  it('takes the fewest of free containers', () => {
    const free = { id: 'sample', volume: 100, price: 0 };
    expect(cheapestContainers(250, [free, CARTRIDGE], 0)).toMatchObject({ buy: [{ id: 'sample', count: 3 }], cost: 0 });
  });

  it('serves a very large need and admits that it did not search all of it', () => {
    const odd = [
      { id: 'can', volume: 946, price: 1003 },
      { id: 'pail', volume: 18_927, price: 16_001 },
    ];
    const found = cheapestContainers(1e8, odd, 0);
    expect(found.volume).toBeGreaterThanOrEqual(1e8 * (1 - 1e-9));
    expect(found.proven).toBe(false);
    expect(found.cost).toBeLessThanOrEqual(Math.ceil(1e8 / 18_927) * 16_001);
  });

  it('refuses a container without volume', () => {
    expect(() => cheapestContainers(1, [{ id: 'x', volume: 0, price: 1 }], 0)).toThrow(RangeError);
  });
});

/** All counts up to what the need can use; the least of (cost, surplus, containers). */
function bruteForce(need: number, onSale: readonly Container[]): { cost: number; volume: number; containers: number } {
  let best = { cost: Infinity, volume: Infinity, containers: Infinity };
  const choose = (k: number, cost: number, volume: number, containers: number): void => {
    if (volume >= need) {
      const order = cost - best.cost || volume - best.volume || containers - best.containers;
      if (order < 0 || best.cost === Infinity) best = { cost, volume, containers };
      return;
    }
    for (let next = k; next < onSale.length; next++) {
      const one = onSale[next]!;
      choose(next, cost + one.price, volume + one.volume, containers + 1);
    }
  };
  choose(0, 0, 0, 0);
  return best;
}

it('agrees with trying all counts: cost, then surplus, then number of containers', () => {
  const container = fc.record({
    volume: fc.integer({ min: 1, max: 12 }),
    price: fc.integer({ min: 0, max: 12 }),
  });
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 40 }),
      fc.array(container, { minLength: 1, maxLength: 3 }),
      fc.integer({ min: 0, max: 10 }),
      (need, sizes, onHand) => {
        const onSale = sizes.map((size, i) => ({ id: `c${i}`, ...size }));
        const found = cheapestContainers(need, onSale, onHand);
        const truth = need > onHand ? bruteForce(need - onHand, onSale) : { cost: 0, volume: 0, containers: 0 };
        const containers = found.buy.reduce((sum, { count }) => sum + count, 0);
        expect({ cost: found.cost, volume: found.volume, containers }).toEqual(truth);
        expect(found.spare).toBeCloseTo(onHand + found.volume - need, 9);
      },
    ),
    { numRuns: 2000, seed: 41 },
  );
});
