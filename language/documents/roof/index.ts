// The plan of a roof to scale.
export type { By } from './classes.ts';
export { type PlanOptions, planOf, planStyle, roofPlan } from './plan.ts';
export { itemsAt } from './spot.ts';
export type { Piece } from './tape.ts';
export { type Drawing, type RoofView, roofView, type SeamLine } from './view.ts';
