// When the whole roof is to be looked at: by interval, after a blow, round storage.
import { isThere, type SeamState } from '../seams/state.ts';
import { addDays, addPeriod } from '../values/calendar.ts';
import { orBeforeDeparture, type Span } from './calendar.ts';
import { ageStart, type Due, dateInput, dueOn, type Ground, originOf, periodInput } from './due.ts';

/** When the roof was last looked at as a whole, and what that day hangs on. */
interface FullLook {
  /** Missing while something was never looked at. */
  readonly date?: string;
  /** The items that were looked at longest ago, or never. */
  readonly items: readonly string[];
}

/**
 * What counts as a full look: every item that is on the rig was looked at, in one inspection or in several, or was at
 * least said to be `not-seen` (which has a date of its own). The day is that of the item that was looked at longest ago;
 * of a seam, of its stretch that was. Items about which lines could not be read are left out. A part that was fitted
 * since (`since`) counts from then.
 */
export function fullLook({ state, dates }: Ground): FullLook {
  let date: string | undefined;
  let items: string[] = [];
  const never: string[] = [];
  for (const seam of state.seams.values()) {
    if (seam.unread || !isThere(seam, dates.asOf)) continue;
    const own = lookDay(seam);
    if (own === undefined) never.push(seam.item.name);
    else if (date === undefined || own < date) [date, items] = [own, [seam.item.name]];
    else if (own === date) items.push(seam.item.name);
  }
  if (never.length > 0) return { items: never };
  return date === undefined ? { items } : { date, items };
}

function lookDay({ item, stretches }: SeamState): string | undefined {
  let oldest: string | undefined;
  for (const { looked, notSeen } of stretches) {
    const days = [looked, notSeen?.last].filter((event) => event !== undefined).map(ageStart);
    if (item.since) days.push(ageStart(item.since));
    if (days.length === 0) return undefined;
    const day = days.sort().at(-1) as string;
    if (oldest === undefined || day < oldest) oldest = day;
  }
  return oldest;
}

/**
 * The next inspection: the last full look plus the policy's interval, the k-th one on `start + k x interval`. Never
 * counted from before the rig was acquired. A roof that was never looked at counts from when it was acquired (else first
 * used, else built), and is looked at before it first leaves; where no such day is known, it is due now.
 */
export function inspectionDues(ground: Ground): readonly Due[] {
  const { view, dates, state, calendar } = ground;
  const { rig } = view;
  if (rig.unread.all || state.seams.size === 0) return [];
  const every = rig.policy.inspect;
  const look = fullLook(ground);
  if (look.date === undefined && look.items.length === 0) return [];
  const acquired = rig.identity.acquired;
  const from = look.date === undefined ? (acquired ?? rig.identity.inService ?? rig.identity.built) : undefined;
  const known = look.date ?? (from && ageStart(from.value));
  const named = listed(look.items);

  if (known === undefined || known > dates.asOf) {
    if (known !== undefined) return [];
    const because = `No look at ${named} is recorded, nor a day from which to count.`;
    const explained = { rule: 'never looked at', formula: 'as_of', inputs: [dateInput('as_of', dates.asOf)] };
    return [
      dueOn({ kind: 'inspect', items: look.items, date: dates.asOf, because, explained, nature: 'expiry' }, ground),
    ];
  }
  const mine = acquired && ageStart(acquired.value);
  const start = mine !== undefined && mine > known && mine <= dates.asOf ? mine : known;
  const deadline = addPeriod(start, every.value);
  const { date, departure } =
    look.date === undefined ? orBeforeDeparture(deadline, start, calendar) : { date: deadline, departure: undefined };
  const said =
    look.date === undefined
      ? `No look at ${named} is recorded since ${start}`
      : start === known
        ? `The last full look was on ${known} (${named})`
        : `The last full look was on ${known}, before the rig was acquired on ${start}`;
  const inputs = [dateInput('start', start, from?.origin), periodInput('every', every)];
  const because = departure
    ? `${said}; the rig leaves on ${departure.first}, and the roof is looked at before that.`
    : `${said}; every seam is looked at every ${every.value.text}.`;
  const explained = {
    rule: 'every seam is looked at by the interval of the policy',
    formula: departure ? 'min(start + every, departure - 1 day)' : 'start + every',
    inputs: departure ? [...inputs, dateInput('departure', departure.first, departure.origin)] : inputs,
  };
  const recurs = { start, every: every.value };
  return [dueOn({ kind: 'inspect', items: look.items, date, because, explained, recurs, notBefore: start }, ground)];
}

/** Looks after a blow: within the time that the policy gives, until every item that was struck has been looked at. */
export function strikeDues(ground: Ground): readonly Due[] {
  const within = ground.view.rig.policy.lookAfter.struck;
  if (!within) return [];
  return ground.state.strikes.flatMap(({ event, waiting }) => {
    const items = waiting.filter((name) => isKnown(ground, name));
    if (items.length === 0) return [];
    const start = ageStart(event);
    const by = 'by' in event.record && event.record.by !== undefined ? ` by ${event.record.by}` : '';
    const because = `The roof was struck${by} on ${start} and ${listed(items)} not looked at since; a look is asked for within ${within.value.text}.`;
    const inputs = [dateInput('struck', start, originOf(event)), periodInput('within', within)];
    const explained = { rule: 'a look after a blow or a strain', formula: 'struck + within', inputs };
    const date = addPeriod(start, within.value);
    return [dueOn({ kind: 'event-look', items, date, because, explained, source: event, notBefore: start }, ground)];
  });
}

const isKnown = ({ state, dates }: Ground, name: string) => {
  const seam = state.seams.get(name);
  return seam !== undefined && !seam.unread && isThere(seam, dates.asOf);
};

/**
 * Looks round storage, by the policy's time for `stored`: before the next storage, unless there was a full look within
 * that time before it; and after the last one that has begun, within that time or before the rig first leaves, whichever
 * is first.
 */
export function storageDues(ground: Ground): readonly Due[] {
  const { view, dates, calendar } = ground;
  const within = view.rig.policy.lookAfter.stored;
  if (!within || view.rig.unread.all) return [];
  const look = fullLook(ground);
  if (look.date === undefined && look.items.length === 0) return [];
  const out: Due[] = [];

  const next = calendar.stored.find((span) => span.first > dates.asOf);
  if (next && !(look.date !== undefined && look.date >= addPeriod(next.first, within.value, -1))) {
    const because = `The rig is laid up from ${next.first}: the roof is looked at before that.`;
    const inputs = [dateInput('stored', next.first, next.origin)];
    const explained = { rule: 'a look before storage', formula: 'stored - 1 day', inputs };
    out.push(dueOn({ kind: 'storage-look', date: addDays(next.first, -1), because, explained }, ground));
  }
  const last = calendar.stored.findLast((span) => span.first <= dates.asOf);
  if (last && !(look.date !== undefined && look.date > last.last)) out.push(afterStorage(last, ground, within));
  return out;
}

function afterStorage(span: Span, ground: Ground, within: Parameters<typeof periodInput>[1]): Due {
  const { calendar } = ground;
  const deadline = addPeriod(span.last, within.value);
  const { date, departure } = orBeforeDeparture(deadline, span.last, calendar);
  const because = departure
    ? `The rig was laid up until ${span.last} and leaves on ${departure.first}: the roof is looked at before that.`
    : `The rig was laid up until ${span.last}: the roof is looked at within ${within.value.text} after it.`;
  const inputs = [dateInput('stored_until', span.last, span.origin), periodInput('within', within)];
  const explained = {
    rule: 'a look after storage, before the first trip',
    formula: departure ? 'min(stored_until + within, departure - 1 day)' : 'stored_until + within',
    inputs: departure ? [...inputs, dateInput('departure', departure.first, departure.origin)] : inputs,
  };
  return dueOn({ kind: 'storage-look', date, because, explained, notBefore: span.last }, ground);
}

/** Names for a sentence: all of a few, else the first with the number of the others. */
export function listed(names: readonly string[]): string {
  if (names.length <= 3) return names.join(', ');
  return `${names.slice(0, 2).join(', ')} and ${names.length - 2} more`;
}
