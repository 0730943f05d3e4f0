// A rig's part of the schedule of its fleet, for whoever has that rig in hand.
import type { Dates, Fleet, RigView } from '../resolve/types.ts';
import { addPeriod } from '../values/calendar.ts';
import { cautionsFor } from './cautions.ts';
import { dangersOf } from './dangers.ts';
import { lookedAtToo, type Papers, type SchedulePaper } from './papers.ts';

/** A schedule of one rig that counts with the bookings, bays and crew of the fleet that it is taken from. */
export interface PartOfFleet extends SchedulePaper {
  readonly partOf: string;
}

/** Without the visits that begin later than `due-soon`: nobody carries the papers of a whole yard for a year. */
export function comingVisits(papers: Papers, { policy }: Fleet, { asOf }: Dates): Papers {
  const until = addPeriod(asOf, policy.dueSoon.value);
  const { schedule } = papers.schedule;
  const visits = schedule.visits.filter(({ days }) => (days[0] as string) <= until);
  return { ...papers, schedule: { ...papers.schedule, schedule: { ...schedule, visits } } };
}

/**
 * The parts of the rigs whose next visit comes soon, each with all that the fleet's schedule says of the rig: later visits too.
 * The days are those of the fleet, nothing is placed anew.
 */
export function partsOfFleet(
  papers: Papers,
  fleet: Fleet,
  views: readonly RigView[],
  dates: Dates,
): readonly PartOfFleet[] {
  const soon = new Set(comingVisits(papers, fleet, dates).schedule.schedule.visits.map(({ rig }) => rig));
  return views.filter(({ rig }) => soon.has(rig.name)).map((view) => partOf(papers.schedule, view, dates));
}

function partOf(paper: SchedulePaper, view: RigView, { asOf }: Dates): PartOfFleet {
  const { name } = view.rig;
  const mine = <T extends { readonly rig: string }>(all: readonly T[]) => all.filter(({ rig }) => rig === name);
  // How late all are together is no matter of one rig.
  const { lateness: _, visits, dues, unplaced, waiting = [], moved = [], ...rest } = paper.schedule;
  return {
    ...paper,
    name,
    kind: 'rig',
    partOf: paper.name,
    cautions: cautionsFor(lookedAtToo(dangersOf(view, asOf), mine(dues))),
    schedule: {
      ...rest,
      name,
      kind: 'rig',
      visits: mine(visits),
      dues: mine(dues),
      unplaced: mine(unplaced),
      waiting: mine(waiting),
      moved: mine(moved),
    },
  };
}
