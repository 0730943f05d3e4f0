// What moved since an earlier schedule, from when to when, and why.
import { doneBy } from '../resolve/done.ts';
import { attempt, type Board, emptyWork, type RigWork } from './board.ts';
import type { Cluster } from './clusters.ts';
import type { Kept } from './earlier.ts';
import { type Job, titleOf } from './job.ts';
import { compare } from './obstacle.ts';
import { planKeys } from './plan-keys.ts';
import type { Moved, Schedule, Visit } from './types.ts';
import type { Visits } from './visits.ts';

/** Moves by their day now, one for each visit of before and after. `board` gives an empty board. */
export function movedSince(
  earlier: Schedule,
  visits: readonly Visit[],
  { work, kept, refused }: Visits,
  asOf: string,
  board: () => Board,
): readonly Moved[] {
  const works = new Map(work.map((one) => [one.ground.view.rig.name, one]));
  const now = new Map(visits.flatMap((visit) => (visit.plans ?? []).map((plan) => [`${visit.rig}\n${plan}`, visit])));
  const before = new Set(earlier.visits.flatMap(({ rig, plans = [] }) => plans.map((plan) => `${rig}\n${plan}`)));
  const moves = earlier.visits.flatMap((visit): readonly Moved[] => {
    const mine = works.get(visit.rig);
    const from = visit.days[0] as string;
    const ahead = visit.days.find((day) => day >= asOf);
    const groups = new Map<string, { readonly plans: string[]; readonly to?: string; readonly because: string }>();
    for (const plan of visit.plans ?? []) {
      const there = now.get(`${visit.rig}\n${plan}`);
      const to = there?.days[0];
      // What was begun and has no record goes on: that is no move.
      if (to === from || (to !== undefined && to === ahead)) continue;
      const because =
        to === undefined
          ? whyGone(plan, mine, asOf)
          : whyMoved(visit, to, jobOf(plan, mine), { visits, kept, refused, asOf, board });
      const key = `${to} ${because}`;
      const group = groups.get(key) ?? { plans: [], ...(to === undefined ? {} : { to }), because };
      group.plans.push(plan);
      groups.set(key, group);
    }
    return [...groups.values()].map(({ plans, to, because }) => ({
      rig: visit.rig,
      title: titled(plans, visit, mine),
      from,
      ...(to === undefined ? {} : { to }),
      because,
    }));
  });
  const added = visits.flatMap((visit): readonly Moved[] => {
    const plans = (visit.plans ?? []).filter((plan) => !before.has(`${visit.rig}\n${plan}`));
    if (plans.length === 0) return [];
    const to = visit.days[0] as string;
    return [
      { rig: visit.rig, title: titled(plans, visit, works.get(visit.rig)), to, because: 'It is new, or had no day.' },
    ];
  });
  return inOrder([...moves, ...added]);
}

/** By the day now, else before. */
export function inOrder(moved: readonly Moved[]): readonly Moved[] {
  const day = ({ to, from }: Moved) => to ?? from ?? '';
  return [...moved].sort((a, b) => compare(day(a), day(b)) || compare(a.rig, b.rig) || compare(a.title, b.title));
}

function titled(plans: readonly string[], visit: Visit, work: RigWork | undefined): string {
  if (plans.length === visit.plans?.length) return visit.title;
  const jobs = plans.flatMap((plan) => jobOf(plan, work) ?? []);
  return jobs.length === plans.length ? jobs.map(titleOf).join('; ') : plans.join('; ');
}

function jobOf(plan: string, work: RigWork | undefined): Job | undefined {
  return work?.jobs.find((job) => work.keys.get(job) === plan);
}

/** Why what was planned has no visit any more. */
function whyGone(plan: string, work: RigWork | undefined, asOf: string): string {
  if (!work) return 'The rig is not there any more.';
  const job = jobOf(plan, work);
  if (job) {
    const out = work.unplaced.find((one) => one.job === job);
    return sentence(out?.because ?? 'no day was found');
  }
  const { rig } = work.ground.view;
  const keys = planKeys(rig);
  const written = rig.plans.find((one) => keys.get(one) === plan);
  const record = written && doneBy(written, rig, asOf);
  return record ? `It is done: recorded on ${record.first}.` : 'The plan is not there any more.';
}

interface Now {
  readonly visits: readonly Visit[];
  readonly kept: readonly Kept[];
  readonly refused: Visits['refused'];
  readonly asOf: string;
  readonly board: () => Board;
}

function whyMoved(visit: Visit, to: string, job: Job | undefined, { visits, kept, refused, asOf, board }: Now): string {
  const from = visit.days[0] as string;
  const partly = job?.plan.partly?.by.first;
  if (partly !== undefined && from <= partly)
    return `Some of it is done, recorded on ${partly}; what is left has this day.`;
  if (from < asOf) return `Its day, ${from}, is past and nothing is recorded of it.`;
  const mine = kept.find((one) => one.visit === visit);
  if (!mine) return 'It goes with other work now.';
  const alone = whyNotAlone(mine, board);
  if (alone !== undefined) return sentence(alone);
  const against = refused.get(mine);
  if (against === undefined) return to < from ? 'It can be done earlier now, and was late.' : 'Less is late this way.';
  // The day itself would do: somebody else has it.
  const days = new Set(visit.days);
  const known = new Set(kept.flatMap((one) => (one.wish.day === one.visit.days[0] ? [one.visit.id] : [])));
  const other = visits.find(
    (one) => one.rig !== visit.rig && !known.has(one.id) && one.days.some((day) => days.has(day)),
  );
  return other ? `${sentence(against).slice(0, -1)}: ${other.rig}, ${other.title}, has it.` : sentence(against);
}

/** What would forbid the day even if there were no other work: the rig's own calendar, its materials, its last day. */
function whyNotAlone({ clusters, wish }: Kept, board: () => Board): string | undefined {
  const [first] = clusters;
  if (!first) return undefined;
  const found = attempt(clusters as readonly Cluster[], emptyWork(first.rig), board(), wish);
  return 'refused' in found ? found.refused : undefined;
}

function sentence(text: string): string {
  const whole = text.endsWith('.') ? text : `${text}.`;
  return `${whole.charAt(0).toUpperCase()}${whole.slice(1)}`;
}
