// Which plans can be done in one visit, going by their dates alone. The schedule may need more.
import type { OpenPlan } from '../resolve/done.ts';
import type { Plan } from '../resolve/types.ts';

/** The days on which all plans of a visit may be done; no `to` where nothing ends it. */
export interface Visit {
  readonly plans: readonly OpenPlan[];
  readonly from: string;
  readonly to?: string;
}

const OPEN_END = '9999-12-31';

/** The fewest visits that the dates of the plans allow, in order of time: intervals pierced at their earliest end. */
export function visitsOf(plans: readonly OpenPlan[], asOf: string): readonly Visit[] {
  const windows = plans.map((plan, i) => ({ plan, i, ...windowOf(plan, asOf) }));
  const waiting = [...windows].sort((a, b) => compare(a.to, b.to) || compare(a.from, b.from) || a.i - b.i);
  const visits: Visit[] = [];
  while (waiting.length > 0) {
    const point = waiting[0]!.to;
    const together = waiting.filter(({ from }) => from <= point);
    for (const one of together) waiting.splice(waiting.indexOf(one), 1);
    const from = together
      .map((one) => one.from)
      .sort()
      .at(-1)!;
    const inOrder = [...together].sort((a, b) => a.i - b.i).map(({ plan }) => plan);
    visits.push({ plans: inOrder, from, ...(point === OPEN_END ? {} : { to: point }) });
  }
  return visits;
}

/** `on` is that day, else from `after` (not before the as-of date) to `before`; what is late is done at once. */
function windowOf({ statement }: Plan, asOf: string): { readonly from: string; readonly to: string } {
  const { on, after, before } = statement;
  const earliest = on?.first ?? after?.first ?? asOf;
  const from = [earliest, asOf].sort()[1]!;
  const to = on?.last ?? before?.last ?? OPEN_END;
  return { from, to: [from, to].sort()[1]! };
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
