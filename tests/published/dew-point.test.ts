import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dewPoint } from '../../language/measure/dew-point.ts';
import { sealantOf } from '../measure/items.ts';
import { findings } from '../rules/snippet.ts';

// Reference points from a meteorological package's tests (seen; tolerance 0.05 C); Magnus form of Alduchov and Eskridge 1996.
describe('dew point', () => {
  it.each([
    [20, 100, 20],
    [20, 52.5224541378, 10],
    [35, 84.5391163313, 32],
    [25, 15.4779832381, -3],
  ])('%d C at %d %% is %d C', (celsius, humidity, dew) => {
    expect(Math.abs(dewPoint(celsius, humidity) - dew)).toBeLessThan(0.05);
  });

  // Worked example of a coating specification that cites ISO 8502-4 (seen): 70 F, 65 % gives 57 F.
  it('70 F at 65 % is 57 F, to the degree', () => {
    expect(Math.abs(dewPoint((70 - 32) / 1.8, 65) * 1.8 + 32 - 57)).toBeLessThan(1);
  });

  it('has no dew point in air without moisture', () => {
    expect(() => dewPoint(20, 0)).toThrow(RangeError);
  });

  // By its definition: air that is saturated at its dew point holds the moisture of this air.
  it('is where the vapour of the air saturates it', () => {
    const saturated = (celsius: number) => Math.exp((17.625 * celsius) / (243.04 + celsius));
    fc.assert(
      fc.property(
        fc.double({ min: -30, max: 50, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        (t, rh) => {
          const dew = dewPoint(t, rh);
          expect(dew).toBeLessThanOrEqual(t + 1e-9);
          expect(saturated(dew)).toBeCloseTo((saturated(t) * rh) / 100, 9);
        },
      ),
    );
  });
});

// Nothing is laid unless the surface is at least 5 F (3 C) above the dew point (rule seen in specifications that cite ISO
// 8502-4:1993). Worked example (seen): 70 F, 65 %, dew point 57 F, surface at least 62 F; the example rounds down: 57.7 F
// by the formula, so that 62 F is refused and 63 F is not.
describe('the margin above it', () => {
  const asked = (air: string, surface: string, humidity: string) =>
    findings(
      `  stripped 2026-05-01 vent\n  sealed 2026-05-01 vent with Lap air ${air} surface ${surface} humidity ${humidity}`,
      'too-near-dew-point',
    ).map(({ message }) => message);

  it.each([
    ['57 F', 1],
    ['61 F', 1],
    ['62 F', 1],
    ['63 F', 0],
    ['70 F', 0],
  ])('at 70 F and 65 %% on a surface of %s: %d', (surface, count) => {
    expect(asked('70 F', surface, '65 %')).toHaveLength(count);
  });

  it('names the dew point and the least surface, to a degree of the worked example', () => {
    const [message = ''] = asked('70 F', '60 F', '65 %');
    const [dew = 0, least = 0] = [...message.matchAll(/(?:point is|and) (\d+) F/g)].map(([, degrees]) =>
      Number(degrees),
    );
    expect(Math.abs(dew - 57)).toBeLessThanOrEqual(1);
    expect(Math.abs(least - 62)).toBeLessThanOrEqual(1);
  });

  it('holds in degrees Celsius: 20 C at 52.5 % has its dew point at 10 C', () => {
    expect(asked('20 C', '12.7 C', '52.5 %')).toHaveLength(1);
    expect(asked('20 C', '13 C', '52.5 %')).toEqual([]);
  });

  it('asks for all three figures: what is not recorded is not judged', () => {
    const only = (clauses: string) =>
      findings(`  stripped 2026-05-01 vent\n  sealed 2026-05-01 vent with Lap ${clauses}`, 'too-near-dew-point');
    expect(only('air 70 F surface 57 F')).toEqual([]);
    expect(only('air 70 F humidity 99 %')).toEqual([]);
  });
});

// Sealant is applied from 4 to 32 C (UFGS 07920, 08900, seen). The library gives each family a range of its own, from
// memory: each holds the middle of the published frame, and none is open to frost.
describe('the air to apply sealant in', () => {
  it.each(['GenericSolventLap', 'GenericHybridLap', 'GenericHybrid', 'GenericUrethane', 'GenericSilicone'])(
    '%s',
    (name) => {
      const { low, high } = sealantOf('', name).apply!.value;
      expect(low.celsius).toBeGreaterThanOrEqual(0);
      expect(low.celsius).toBeLessThanOrEqual(18);
      expect(high.celsius).toBeGreaterThanOrEqual(32);
    },
  );
});
