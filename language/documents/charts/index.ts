// Charts of the comparison of ways.
export { type ChartOptions, comparisonChart, comparisonFigure, rangeChart, rangeFigure } from './comparison.ts';
