// Charts of the comparison of ways.

export * from './bars.ts';
export { type ChartOptions, comparisonChart, comparisonFigure, rangeChart, rangeFigure } from './comparison.ts';
