// Scheduling as the literature knows it: lists, what decodes them into dates, a search over lists, bounds. It knows no rig.
export { leastAssignment } from './assignment.ts';
export { type Bounds, boundsOf } from './bounds.ts';
export { type Cost, compareCost } from './cost.ts';
export type { Before, List } from './list.ts';
export { type Activity, type Capacity, latenessOf, makespanOf, type Project, type Starts } from './project.ts';
export { type Decoder, type Found, search } from './search.ts';
export { serial } from './serial.ts';
export { type Aim, type Solution, solve } from './solve.ts';
