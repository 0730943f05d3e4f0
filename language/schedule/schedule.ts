// The schedule of a rig or a fleet: dated visits, what falls due, what could not be placed, and why.
import type { Dates, Fleet, RigView } from '../resolve/types.ts';
import { assumptionsOf } from './assumptions.ts';
import { type Board, emptyBoard, type RigWork } from './board.ts';
import { clustersOf } from './clusters.ts';
import { crewOf } from './crew.ts';
import { scheduledDues } from './dues.ts';
import { groundOf, titleOf } from './job.ts';
import { movedSince } from './moved.ts';
import { compare } from './obstacle.ts';
import { tooLong } from './too-long.ts';
import type { Schedule, Unplaced } from './types.ts';
import { namedVisits } from './visit.ts';
import { type Visits, visitsOf } from './visits.ts';
import { waitingOf } from './waiting.ts';

/**
 * The schedule of one rig: its owner works alone, on any day of the week, for the hours of the policy's workday. Dates are
 * ISO dates, times minutes. Work is planned from the day after the as-of date, up to three years ahead; what an earlier schedule
 * put on the as-of date stays there, and so does a plan that is written for it. The same rig and dates give the same
 * schedule.
 */
export function scheduleOfRig(view: RigView, dates: Dates, previous?: Schedule): Schedule {
  const ground = groundOf(view, dates, [], waitedFor(view, previous));
  const board = () => emptyBoard(dates.asOf, crewOf(view.rig.policy));
  return scheduled(
    view.rig.name,
    'rig',
    dates,
    visitsOf([ground], board, undefined, previous),
    board,
    undefined,
    previous,
  );
}

/**
 * The schedule of a fleet: all rigs share its crew, its bays and its closed days, and each keeps its bookings. Two people
 * of the crew work together on a roof; one is enough for a look. Without a crew one person works the policy's workday.
 */
export function scheduleOfFleet(fleet: Fleet, views: readonly RigView[], dates: Dates, previous?: Schedule): Schedule {
  const grounds = views.map((view) => groundOf(inFleet(view, fleet), dates, fleet.stock, waitedFor(view, previous)));
  const board = () => emptyBoard(dates.asOf, crewOf(fleet.policy, fleet), fleet);
  return scheduled(fleet.name, 'fleet', dates, visitsOf(grounds, board, fleet, previous), board, fleet, previous);
}

function waitedFor(view: RigView, previous: Schedule | undefined): Schedule['waiting'] {
  return previous?.waiting?.filter(({ rig }) => rig === view.rig.name);
}

/** The bookings of a fleet decide on dues as well. */
function inFleet(view: RigView, fleet: Fleet): RigView {
  return view.booked ? view : { ...view, booked: fleet.booked.filter(({ rig }) => rig === view.rig.name) };
}

function scheduled(
  name: string,
  kind: Schedule['kind'],
  { asOf }: Dates,
  planned: Visits,
  board: () => Board,
  fleet?: Fleet,
  previous?: Schedule,
): Schedule {
  const { work, lateness } = planned;
  const named = work.map(namedVisits);
  const visits = named
    .flatMap((mine) => mine.visits)
    .sort((a, b) => compare(a.days[0] as string, b.days[0] as string) || compare(a.rig, b.rig) || compare(a.id, b.id));
  return {
    name,
    kind,
    asOf,
    visits,
    dues: work
      .flatMap((one, i) => scheduledDues(one, (visit) => named[i]?.ids.get(visit) as string))
      .sort((a, b) => compare(a.date, b.date) || compare(a.rig, b.rig)),
    unplaced: work.flatMap((one) => unplacedOf(one, board())),
    waiting: work.flatMap(waitingOf).sort((a, b) => compare(a.until, b.until) || compare(a.rig, b.rig)),
    moved: previous ? movedSince(previous, visits, planned, asOf, board) : [],
    lateness,
    assumptions: assumptionsOf(work, fleet),
  };
}

function unplacedOf(work: RigWork, board: Board): readonly Unplaced[] {
  const { ground, unplaced } = work;
  if (unplaced.length === 0) return [];
  const out = new Set(unplaced.map(({ job }) => job));
  const long = new Map(
    clustersOf(work).flatMap(({ jobs }) => {
      const found = jobs.some((job) => out.has(job)) ? tooLong(jobs, work, board) : undefined;
      return found ? jobs.map((job) => [job, `; ${found.because}: ${found.wayOut}`] as const) : [];
    }),
  );
  return [...unplaced]
    .sort((a, b) => a.job.row - b.job.row)
    .map(({ job, because, firstDay }) => ({
      rig: ground.view.rig.name,
      title: titleOf(job),
      items: job.items,
      because: `${because}${long.get(job) ?? ''}`,
      ...(firstDay === undefined ? {} : { firstDay }),
      file: job.plan.file,
      at: job.plan.statement.at,
    }));
}
