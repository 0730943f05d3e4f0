// The schedule of a rig or a fleet: dated visits, what falls due, what could not be placed, and why.
import type { Dates, Fleet, RigView } from '../resolve/types.ts';
import { type Site, shelvesOf, sitesOf } from '../resolve/yards.ts';
import { assumptionsOf } from './assumptions.ts';
import { type Board, emptyBoard, type RigWork } from './board.ts';
import { clustersOf } from './clusters.ts';
import { crewOf } from './crew.ts';
import { scheduledDues } from './dues.ts';
import { groundOf, titleOf } from './job.ts';
import { inOrder, movedSince } from './moved.ts';
import { compare } from './obstacle.ts';
import { tooLong } from './too-long.ts';
import type { Moved, Schedule, Unplaced, Visit } from './types.ts';
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
  const part = {
    planned: visitsOf([ground], board, undefined, previous),
    board,
    ...(previous ? { earlier: previous } : {}),
  };
  return scheduled(view.rig.name, 'rig', dates, [part], previous !== undefined);
}

/**
 * The schedule of a fleet: the rigs of each yard share its crews, its bays and its closed days, and each keeps its bookings;
 * yards do not wait for one another. Two people of one crew work together on a roof; one is enough for a look. Without a crew
 * one person works the policy's workday.
 */
export function scheduleOfFleet(fleet: Fleet, views: readonly RigView[], dates: Dates, previous?: Schedule): Schedule {
  const shelf = shelvesOf(fleet);
  const sites = sitesOf(fleet, views);
  const parts = sites.map((site): Part => {
    const earlier = previous && (sites.length > 1 || fleet.yards.length > 0 ? partOf(previous, site, sites) : previous);
    const grounds = site.views.map((view) => groundOf(inFleet(view, fleet), dates, shelf, waitedFor(view, previous)));
    const board = () => emptyBoard(dates.asOf, crewOf(fleet.policy, site.fleet), site.fleet);
    return {
      fleet: site.fleet,
      planned: visitsOf(grounds, board, site.fleet, earlier),
      board,
      ...(earlier ? { earlier } : {}),
    };
  });
  return scheduled(fleet.name, 'fleet', dates, parts, previous !== undefined);
}

function waitedFor(view: RigView, previous: Schedule | undefined): Schedule['waiting'] {
  return previous?.waiting?.filter(({ rig }) => rig === view.rig.name);
}

/** The bookings of a fleet decide on dues as well. */
function inFleet(view: RigView, fleet: Fleet): RigView {
  return view.booked ? view : { ...view, booked: fleet.booked.filter(({ rig }) => rig === view.rig.name) };
}

/** What is scheduled on a board of its own: a rig, or the rigs of one yard. */
interface Part {
  readonly fleet?: Fleet;
  readonly planned: Visits;
  readonly board: () => Board;
  readonly earlier?: Schedule;
}

function scheduled(
  name: string,
  kind: Schedule['kind'],
  { asOf }: Dates,
  parts: readonly Part[],
  again: boolean,
): Schedule {
  const work = parts.flatMap(({ planned }) => planned.work);
  const named = work.map(namedVisits);
  const visits = named
    .flatMap((mine) => mine.visits)
    .sort((a, b) => compare(a.days[0] as string, b.days[0] as string) || compare(a.rig, b.rig) || compare(a.id, b.id));
  const yards = parts.flatMap(({ fleet, planned: { lateness } }) => {
    if (!fleet || fleet.yards.length === 0) return [];
    return [{ ...(fleet.yard ? { name: fleet.yard.name } : {}), lateness }];
  });
  return {
    name,
    kind,
    asOf,
    visits,
    dues: work
      .flatMap((one, i) => scheduledDues(one, (visit) => named[i]?.ids.get(visit) as string))
      .sort((a, b) => compare(a.date, b.date) || compare(a.rig, b.rig)),
    unplaced: parts.flatMap(({ planned, board }) => planned.work.flatMap((one) => unplacedOf(one, board()))),
    waiting: work.flatMap(waitingOf).sort((a, b) => compare(a.until, b.until) || compare(a.rig, b.rig)),
    moved: again ? movedOf(parts, visits, asOf) : [],
    lateness: {
      days: parts.reduce((sum, { planned }) => sum + planned.lateness.days, 0),
      bound: parts.reduce((sum, { planned }) => sum + planned.lateness.bound, 0),
    },
    ...(yards.length > 0 ? { yards } : {}),
    assumptions: assumptionsOf(
      parts.map(({ planned, fleet }) => ({ work: planned.work, ...(fleet ? { fleet } : {}) })),
    ),
  };
}

function movedOf(parts: readonly Part[], visits: readonly Visit[], asOf: string): readonly Moved[] {
  const moved = parts.flatMap(({ planned, board, earlier }) => {
    const rigs = new Set(planned.work.map(({ ground }) => ground.view.rig.name));
    const mine = parts.length > 1 ? visits.filter(({ rig }) => rigs.has(rig)) : visits;
    return earlier ? movedSince(earlier, mine, planned, asOf, board) : [];
  });
  return parts.length > 1 ? inOrder(moved) : moved;
}

/** What an earlier schedule says of the rigs of one yard; rigs that are gone belong to the first. */
function partOf(previous: Schedule, site: Site, sites: readonly Site[]): Schedule {
  const here = new Set(site.views.map(({ rig }) => rig.name));
  const there = new Set(sites.flatMap(({ views }) => views.map(({ rig }) => rig.name)));
  const isMine = ({ rig }: { readonly rig: string }) => here.has(rig) || (site === sites[0] && !there.has(rig));
  const lateness = previous.yards?.find(({ name }) => name === site.fleet.yard?.name)?.lateness ?? previous.lateness;
  return {
    ...previous,
    visits: previous.visits.filter(isMine),
    unplaced: previous.unplaced.filter(isMine),
    ...(lateness ? { lateness } : {}),
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
