// The schedule: a chapter of the computation with two questions.
export { scheduleOfFleet, scheduleOfRig } from './schedule.ts';
export { Schedule, ScheduledDue, ScheduledTask, Unplaced, Visit } from './types.ts';
