// What the papers of a whole fleet are made from, gathered once.
import { type Due, duesOf } from '../../due/index.ts';
import type { Estimate } from '../../estimate/index.ts';
import type { CompareResult } from '../../lifecost/schema.ts';
import type { Dates, Fleet, RigView } from '../../resolve/types.ts';
import { dueIds, type Schedule, type ScheduledDue, type Visit } from '../../schedule/index.ts';
import { type RigState, rank, rigState } from '../../seams/index.ts';
import type { Papers } from '../papers.ts';

/** A rig of the fleet with what is known of it on the as-of date and what the papers say of it. */
export interface FleetRig {
  readonly name: string;
  /** The yard and the group that it belongs to, where the fleet has some. */
  readonly yard?: string;
  readonly group?: string;
  readonly view: RigView;
  readonly state: RigState;
  readonly estimate: Estimate;
  /** The ways to keep its seams tight over the years. */
  readonly compared: CompareResult;
  readonly visits: readonly Visit[];
  readonly dues: readonly FleetDue[];
}

/** What falls due as the schedule has it, with what it is made from. */
export interface FleetDue {
  readonly due: ScheduledDue;
  readonly from: Due;
  /** 0 for sound or unknown to 5 for open, the gravest of what it is about. */
  readonly severity: number;
}

export interface FleetScene {
  readonly name: string;
  readonly asOf: string;
  readonly fleet: Fleet;
  readonly rigs: readonly FleetRig[];
  readonly schedule: Schedule;
  readonly papers: Papers;
}

export function sceneOf(fleet: Fleet, views: readonly RigView[], papers: Papers, dates: Dates): FleetScene {
  const { schedule } = papers.schedule;
  const visits = byRig(schedule.visits);
  const dues = byRig(schedule.dues);
  return {
    name: fleet.name,
    asOf: dates.asOf,
    fleet,
    schedule,
    papers,
    rigs: views.map((view, i) => {
      const { name } = view.rig;
      const state = rigState(view, dates.asOf);
      const yard = fleet.yardOf(view.rig)?.name;
      const group = view.rig.group?.value;
      return {
        name,
        ...(yard === undefined ? {} : { yard }),
        ...(group === undefined ? {} : { group }),
        view,
        state,
        estimate: papers.estimate.estimates[i]!,
        compared: papers.estimate.comparisons[i]!.comparison,
        visits: visits.get(name) ?? [],
        dues: duesIn(inFleet(view, fleet), state, dates, dues.get(name) ?? []),
      };
    }),
  };
}

/** The bookings of a fleet decide on dues as well. */
function inFleet(view: RigView, fleet: Fleet): RigView {
  return view.booked ? view : { ...view, booked: fleet.booked.filter(({ rig }) => rig === view.rig.name) };
}

export function byRig<T extends { readonly rig: string }>(all: readonly T[]): ReadonlyMap<string, readonly T[]> {
  const out = new Map<string, T[]>();
  for (const one of all) {
    const mine = out.get(one.rig);
    if (mine) mine.push(one);
    else out.set(one.rig, [one]);
  }
  return out;
}

function duesIn(view: RigView, state: RigState, dates: Dates, scheduled: readonly ScheduledDue[]): FleetDue[] {
  const made = duesOf(view, dates, state);
  const byId = new Map(dueIds(view.rig.name, made).map((id, i) => [id, made[i]!]));
  return scheduled.flatMap((due) => {
    const from = byId.get(due.id);
    return from ? [{ due, from, severity: severityOf(from, state) }] : [];
  });
}

/** The gravest finding on what a due is about: 0 for sound or unknown to 5 for open; a leak that is open counts as open. */
function severityOf({ kind, word, item, items }: Due, state: RigState): number {
  if (kind === 'follow-up' && word === 'leak') return rank('open');
  return severityAt(items ?? (item === undefined ? [] : [item]), state);
}

/** The gravest finding at some seams: 0 for sound or unknown to 5 for open. */
export function severityAt(items: readonly string[], { seams }: RigState): number {
  const ranks = items.flatMap((name) =>
    (seams.get(name)?.stretches ?? []).flatMap(({ condition }) =>
      condition && condition.word !== 'renewed' ? rank(condition.word) : [],
    ),
  );
  return Math.max(0, ...ranks);
}

/** Dates that only say until or from when something holds ask for no work. */
const noWork: ReadonlySet<string> = new Set(['cover', 'tape-second-half', 'best-before', 'quote']);
export const asksForWork = ({ kind }: { readonly kind: string }): boolean => !noWork.has(kind);

/** The last day of a visit. */
export const endOf = ({ days }: Visit): string => days.at(-1) as string;
