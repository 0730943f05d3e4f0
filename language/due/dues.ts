// Everything that falls due on a rig, and the questions that are asked of it.
import type { Dates, RigView } from '../resolve/types.ts';
import { rigState } from '../seams/fold.ts';
import type { RigState } from '../seams/state.ts';
import { calendarOf } from './calendar.ts';
import { type Due, type Ground, statuses } from './due.ts';
import { findingDues } from './findings.ts';
import { inspectionDues, storageDues, strikeDues } from './inspection.ts';
import { leakDues } from './leaks.ts';
import { planDues, quoteDues, stockDues } from './papers.ts';
import { sealantDues } from './sealant.ts';
import { tapeDues } from './tape.ts';

/**
 * What falls due on a rig, by date, seen from the as-of date; records after it are left out. A model has no records and
 * no dues. Deadlines inside storage are moved before or after it and say so. `state` may be given where it was worked out
 * for the same as-of date already.
 */
export function duesOf(view: RigView, dates: Dates, state: RigState = rigState(view, dates.asOf)): readonly Due[] {
  if (view.rig.kind === 'model') return [];
  const ground: Ground = { view, dates, state, calendar: calendarOf(view) };
  const dues = [
    ...inspectionDues(ground),
    ...strikeDues(ground),
    ...storageDues(ground),
    ...findingDues(ground),
    ...leakDues(ground),
    ...sealantDues(ground),
    ...tapeDues(ground),
    ...planDues(ground),
    ...quoteDues(ground),
    ...stockDues(ground),
  ];
  return dues.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
}

/** The due with the earliest date that is still ahead or today; undefined where all is behind. */
export function nextDue(dues: readonly Due[]): Due | undefined {
  return dues
    .filter((due) => due.days >= 0)
    .reduce<Due | undefined>((a, b) => (a && a.days <= b.days ? a : b), undefined);
}

/** The most pressing due: by status, then the longest overdue or the soonest. */
export function worst(dues: readonly Due[]): Due | undefined {
  let best: Due | undefined;
  for (const due of dues) {
    const graver = best ? statuses.indexOf(due.status) - statuses.indexOf(best.status) : 1;
    if (graver > 0 || (graver === 0 && due.date < (best as Due).date)) best = due;
  }
  return best;
}

/** The first day after the as-of date on which the status of any due changes, if no record is added until then. */
export function nextChange(dues: readonly Due[], asOf: string): string | undefined {
  let next: string | undefined;
  for (const { changes } of dues) {
    for (const day of changes) if (day > asOf && (next === undefined || day < next)) next = day;
  }
  return next;
}
