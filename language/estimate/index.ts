// The estimate of a rig, and its form.
export { figuresIn } from './assumptions.ts';
export { estimateOf, estimateWithNeeds } from './estimate.ts';
export { pooledPurchases, type RigNeeds } from './pooled.ts';
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
export { Estimate, Pooled } from './schema.ts';
export { type Visit, visitsOf } from './visits.ts';
