// By when: the day of the due that a row names, or one that follows from the policy.
import { movedOutOfStorage, orBeforeDeparture } from '../due/calendar.ts';
import { ageStart, type Due } from '../due/index.ts';
import { addPeriod } from '../values/calendar.ts';
import { type Period, periodOf } from '../values/period.ts';
import { type Facts, leaksNow, type Scene, within } from './facts.ts';
import type { ByWhat } from './row.ts';
import type { By } from './schema.ts';

/** An open seam that is covered is repaired within this time at most (common practice, no published figure). */
const repairAtMost: Period = periodOf(0, 7);

/** The day by which; undefined where neither policy nor record gives one. */
export function byOf(what: ByWhat | undefined, facts: Facts): By | undefined {
  if (what === undefined) return undefined;
  const own = plainBy(what, facts);
  const mends = what === 'finding' || what === 'repair' || what === 'strip' || what === 'bare';
  const leak = mends && leaksNow(facts) ? plainBy('leak', facts) : undefined;
  return leak && (own === undefined || leak.date < own.date) ? leak : own;
}

function plainBy(what: ByWhat, facts: Facts): By | undefined {
  const { word, scene, leak } = facts;
  switch (what) {
    case 'finding':
      return first(facts, (due) => due.kind === 'follow-up' && due.word === word && due.item === facts.item.name);
    case 'repair':
      return word === 'open' ? repairOfOpen(facts) : plainBy('finding', facts);
    case 'strip':
      return first(facts, (due) => due.kind === 'strip' && due.item === facts.item.name) ?? plainBy('finding', facts);
    case 'wet':
      return first(facts, (due) => due.kind === 'follow-up' && due.word === 'wet' && due.item === facts.item.name);
    case 'reading':
      return first(facts, (due) => due.kind === 're-read' && due.item === facts.item.name);
    case 'leak':
    case 'leak-look':
      return leak && leakBy(leak, scene);
    case 'bare':
      return bareBy(facts);
    case 'struck':
      return first(facts, (due) => due.kind === 'event-look' && about(due, facts));
    case 'not-seen':
      return first(facts, (due) => due.kind === 'not-seen' && due.item === facts.item.name);
    case 'temporary':
      return first(facts, (due) => due.kind === 'temporary-cover' && due.item === facts.item.name);
    case 'inspect':
      return nextLook(facts);
  }
}

/** The day by which a leak is followed up, or looked at after its repair. */
export function leakBy(leak: NonNullable<Facts['leak']>, { dues }: Pick<Scene, 'dues'>): By | undefined {
  const source = leak.repairs.at(-1)?.event ?? leak.event;
  const kind = leak.repairs.length > 0 ? 'leak-look' : 'follow-up';
  const own = dues.find((due) => due.kind === kind && due.word === 'leak' && isFrom(due, source));
  return own && ofDue(own);
}

const isFrom = ({ sourceEvent }: Due, { file, record }: NonNullable<Facts['leak']>['event']) =>
  sourceEvent?.file === file && sourceEvent.at[0] === record.at[0];
const about = ({ item, items }: Due, facts: Facts) =>
  item === facts.item.name || items?.includes(facts.item.name) === true;

function first({ scene }: Facts, wanted: (due: Due) => boolean): By | undefined {
  const due = scene.dues.find(wanted);
  return due && ofDue(due);
}

const ofDue = ({ date, status, because }: Due): By => ({ date, status, because });

/**
 * The cover and the repair of something open are two deadlines: the policy's time for `open` is that of the cover; the
 * repair follows within 7 days of the finding, or before the rig leaves, or by the end of the cover, whichever is first,
 * unless the policy itself gives more.
 */
function repairOfOpen(facts: Facts): By | undefined {
  const { scene, stretch } = facts;
  const event = stretch.onset.open ?? stretch.condition?.event;
  const cover = plainBy('finding', facts);
  if (!event) return cover;
  const start = ageStart(event);
  const bound = orBeforeDeparture(addPeriod(start, repairAtMost), start, scene.calendar);
  const until = stretch.temporary?.until;
  const end = until && ageStart(until);
  const date = end !== undefined && end < bound.date ? end : bound.date;
  if (cover && cover.date >= date) return cover;
  const leaves = bound.departure ? ', and before the rig leaves' : '';
  const because = `Found open on ${start}: covered at once, and repaired within ${repairAtMost.text}${leaves}.`;
  return dated(date, because, start, scene);
}

/**
 * The next look at it: by the policy's interval from the last look or from the work since; with the look at the whole roof
 * where that comes before. What was never looked at has the date of the whole roof.
 */
function nextLook(facts: Facts): By | undefined {
  const { scene, stretch, item, word } = facts;
  const roof = first(facts, ({ kind }) => kind === 'inspect' || kind === 'storage-look');
  const event = word === 'renewed' ? stretch.condition?.event : stretch.looked;
  if (!event) return roof;
  const start = ageStart(event);
  const { inspect } = scene.view.rig.policy;
  const date = addPeriod(start, inspect.value);
  if (roof && roof.date > start && roof.date <= date) return roof;
  const did = word === 'renewed' ? `was ${event.record.word}` : 'was last looked at';
  const because = `${item.name} ${did} on ${start}; every seam is looked at every ${inspect.value.text}.`;
  return dated(date, because, start, scene);
}

/** What is bare is treated like what is open, from the day on which it was laid bare. */
function bareBy(facts: Facts): By | undefined {
  const { scene, stretch } = facts;
  const period = within('open', scene);
  if (!stretch.bare || !period) return undefined;
  const start = ageStart(stretch.bare);
  const { date } = orBeforeDeparture(addPeriod(start, period.value), start, scene.calendar);
  const because = `It was ${stretch.bare.record.word} on ${start} and is bare: like something open, it is seen to within ${period.value.text}.`;
  return dated(date, because, start, scene);
}

/** A day by which, moved out of storage like the rig's dues, with its status. */
function dated(day: string, because: string, start: string, { dates, view, calendar }: Scene): By {
  const { asOf } = dates;
  const date = movedOutOfStorage(day, start, asOf, calendar)?.date ?? day;
  const soon = addPeriod(date, view.rig.policy.dueSoon.value, -1);
  const status = asOf > date ? 'overdue' : asOf === date ? 'due' : asOf >= soon ? 'soon' : 'not-due';
  return { date, status, because };
}
