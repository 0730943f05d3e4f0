// What follows up a finding: the plan that is there already, or the one that could be written.
import { itemsOf, type OpenPlan, openPlans } from '../resolve/done.ts';
import type { PlanStatement } from '../statements/plans.ts';
import { addDays } from '../values/calendar.ts';
import type { FollowUp, Related } from './finding.ts';
import { type FreeDays, firstFree } from './free-days.ts';
import { once, type RigContext } from './rule.ts';

type Word = PlanStatement['word'];

/** Washing, drying and covering look at nothing and mend nothing. */
const passing = new Set<Word>(['wash', 'dry', 'cover']);

/** Where the day is past: a week, so that somebody can get there. From memory. */
const NOTICE = 7;

export interface Followed {
  /** A sentence about the plan that is there, with a blank before it; else empty. */
  readonly said: string;
  readonly related: readonly Related[];
  readonly followUp?: FollowUp;
}

/**
 * For a finding about some items, or about the whole rig where there are none: the open plan that acts on it, else a plan of
 * `word` to be done by `date`, an ISO date. Where that is past or taken it is a free day soon.
 */
export function followedUp(context: RigContext, word: Word, items: readonly string[], date?: string): Followed {
  const plan = once(context, plans).find((one) => actsOn(one, word, items));
  if (plan) {
    const { file, statement } = plan;
    return { said: ` ${plannedText(statement)}`, related: [{ file, at: statement.at, message: 'The plan.' }] };
  }
  const { asOf } = context.dates;
  const latest = date !== undefined && date > asOf ? date : addDays(asOf, NOTICE);
  const { day } = firstFree(asOf, away(context));
  const before = day !== undefined && day > latest ? day : latest;
  return { said: '', related: [], followUp: { word, items, before } };
}

/** A plan that was not kept is none: another rule speaks of it. */
const plans = ({ view, dates: { asOf } }: RigContext): readonly OpenPlan[] =>
  openPlans(view.rig, asOf).filter(({ statement: { on, before } }) => ((on ?? before)?.last ?? asOf) >= asOf);

function actsOn(plan: OpenPlan, word: Word, items: readonly string[]): boolean {
  const own = plan.statement.word;
  // What is mended is looked at on the way; a look mends nothing.
  if (own !== word && (passing.has(own) || (own === 'inspect' && word !== 'inspect'))) return false;
  const named = itemsOf(plan);
  if (named.length === 0) return own === word;
  return items.length > 0 && items.every((item) => named.includes(item));
}

function plannedText({ word, on, after, before }: PlanStatement): string {
  const when = [on && `on ${on.text}`, after && `after ${after.text}`, before && `before ${before.text}`].filter(
    Boolean,
  );
  return `It is planned: \`${[word, ...when].join(' ')}\`.`;
}

/** A look or an urgent repair waits for no season, only for the rig. */
function away({ view: { rig, booked = [] } }: RigContext): FreeDays {
  return {
    taken: [
      ...rig.stored.map((span) => ({ ...span, by: 'stored' })),
      ...rig.trips.map((span) => ({ ...span, by: 'on a trip' })),
      ...booked.map((span) => ({ ...span, by: 'booked' })),
    ],
  };
}
