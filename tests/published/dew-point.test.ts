import { describe, expect, it } from 'vitest';
import { dewPoint } from '../../language/measure/dew-point.ts';

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
});
