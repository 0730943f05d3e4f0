// The schedule: a chapter of the computation with three questions.

export { dayPlan, type Yard } from './day.ts';
export { DayPlan, DayRow, HeldBack, KitLine } from './day-plan.ts';
export { dueIds } from './dues.ts';
export { planKeys } from './plan-keys.ts';
export { scheduleOfFleet, scheduleOfRig } from './schedule.ts';
export { Moved, Schedule, ScheduledDue, ScheduledTask, Unplaced, Visit, Waiting } from './types.ts';
