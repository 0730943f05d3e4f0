// The estimate of a rig, and its form.
export { figuresIn } from './assumptions.ts';
export { estimateOf } from './estimate.ts';
export type {
  Assumption,
  CuttingList,
  JobLine,
  LabourLine,
  PieceLine,
  Priced,
  Purchase,
  PurchaseLine,
  Question,
  StockLine,
  Totals,
  VisitLine,
} from './schema.ts';
export { Estimate } from './schema.ts';
export { type Visit, visitsOf } from './visits.ts';
