export { type Container, type ContainerPurchase, cheapestContainers } from './containers.ts';
export type * from './linear.ts';
export { cutFleet } from './pooled.ts';
export type * from './problem.ts';
export { cutRolls } from './voluntary.ts';
