// The state of each seam on a date, and the clocks that run on it.
export {
  type Allowed,
  allowedAt,
  type Clock,
  type ClockEnds,
  type ColdNote,
  type CoverAnswer,
  clockEnds,
  clocksOf,
  coldNote,
  coverAllowed,
  firstDay,
  type Moment,
} from './clocks.ts';
export { type CoatCount, coatCount, coatsOf } from './coats.ts';
export { extentOf } from './extent.ts';
export { rigState, roleOf, type Step, seamStates, stateAt } from './fold.ts';
export { levelOf, rank } from './looks.ts';
export { damp, moistureCall, moistureLevels, risePoints } from './moisture.ts';
export {
  isThere,
  type Layer,
  type Leak,
  moistureTrend,
  type Reading,
  type RigState,
  type SeamState,
  type Since,
  type Stretch,
  type Strike,
  type Verb,
} from './state.ts';
export { type Ground, groundOf, surfacesOf } from './surface.ts';
export { repairs } from './work.ts';
