// The dew point of air.

/**
 * The dew point in degrees Celsius of air at a temperature (Celsius) and a relative humidity (percent, above 0).
 * Magnus form with the coefficients of Alduchov and Eskridge, 1996: Improved Magnus form approximation of saturation vapor
 * pressure, J. Appl. Meteor. 35. Throws RangeError where the humidity is not above 0.
 */
export function dewPoint(celsius: number, humidityPercent: number): number {
  if (!(humidityPercent > 0)) throw new RangeError('the relative humidity must be above 0');
  const [a, b] = [17.625, 243.04];
  const gamma = Math.log(humidityPercent / 100) + (a * celsius) / (b + celsius);
  return (b * gamma) / (a - gamma);
}
