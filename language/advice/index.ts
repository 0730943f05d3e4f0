// What to do, seam by seam: the table of advice and what it says of a rig.
export { adviceFrom, adviceOf } from './advice.ts';
export { advicePage } from './reference.ts';
export type { AdviceRow, InterimRow } from './row.ts';
export {
  type Action,
  actions,
  type By,
  type Excluded,
  type From,
  type Interim,
  type Preparation,
  type Reason,
  SeamAdvice,
  type Step,
  type Urgency,
  urgencies,
} from './schema.ts';
export { interimTable, table } from './table.ts';
