// What falls due on a rig.
export { type Calendar, calendarOf, departureAfter, movedOutOfStorage, type Span } from './calendar.ts';
export { ageStart, type Due, type DueKind, type DueReason, type Nature, type Status, statuses } from './due.ts';
export { duesOf, nextChange, nextDue, worst } from './dues.ts';
export { type Lot, lotsOf } from './papers.ts';
export { endOfMembrane, partEnd, type TapeLife, tapeLife } from './tape.ts';
