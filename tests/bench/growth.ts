// How a figure grows with the size of a workspace: the exponent of size that fits it best.

export interface Figure {
  readonly name: string;
  /** One value a size; undefined where it was not measured. */
  readonly values: readonly (number | undefined)[];
  readonly digits: number;
}

/** The slope of the logarithm of the values over that of the sizes, by least squares: 1 is linear. Fewer than two: undefined. */
export function exponentOf(sizes: readonly number[], values: readonly (number | undefined)[]): number | undefined {
  const points = sizes.flatMap((size, i) => {
    const value = values[i];
    return value === undefined || value <= 0 ? [] : [[Math.log(size), Math.log(value)] as const];
  });
  if (points.length < 2) return undefined;
  const mean = (of: 0 | 1) => points.reduce((sum, point) => sum + point[of], 0) / points.length;
  const [x, y] = [mean(0), mean(1)];
  const above = points.reduce((sum, point) => sum + (point[0] - x) * (point[1] - y), 0);
  return above / points.reduce((sum, point) => sum + (point[0] - x) ** 2, 0);
}

/** Prints a table: a row a figure, a column a size, and the exponent behind. */
export function printGrowth(sizes: readonly number[], figures: readonly Figure[]): void {
  const cell = (text: string) => text.padStart(11);
  console.log(
    `  ${'rigs'.padEnd(56)}${sizes.map((size) => cell(size.toLocaleString('en'))).join('')}${cell('exponent')}`,
  );
  for (const { name, values, digits } of figures) {
    if (values.every((value) => value === undefined)) continue;
    const cells = sizes.map((_, i) => cell(values[i] === undefined ? '–' : (values[i] as number).toFixed(digits)));
    console.log(`  ${name.padEnd(56)}${cells.join('')}${cell(exponentOf(sizes, values)?.toFixed(2) ?? '–')}`);
  }
}
