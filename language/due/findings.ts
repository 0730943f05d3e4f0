// The follow-up of what was found: conditions, wet, readings, what was not seen, temporary covers.
import type { Event, Stated } from '../resolve/types.ts';
import { coatCount } from '../seams/coats.ts';
import { rank } from '../seams/looks.ts';
import { moistureCall, moistureLevels } from '../seams/moisture.ts';
import { isThere, moistureTrend, type SeamState, type Stretch } from '../seams/state.ts';
import { type Condition, conditions } from '../statements/words.ts';
import { addPeriod } from '../values/calendar.ts';
import { type Period, periodOf } from '../values/period.ts';
import { orBeforeDeparture } from './calendar.ts';
import { ageStart, type Due, dateInput, dueOn, type Ground, originOf, type Plain, periodInput } from './due.ts';

/** What these are done before the rig next leaves, whichever is first: wind and rain on the road make them worse. */
const beforeLeaving: ReadonlySet<string> = new Set<Condition>(['lifting', 'open']);

/** Up to this level the follow-up is another look, so that it counts from the last one; above, from the first finding. */
const looksOnly: Condition = 'hairline';

/** All follow-ups of one rig's findings. Items that are gone have none; what cannot be read hides nothing that was. */
export function findingDues(ground: Ground): readonly Due[] {
  const out: Due[] = [];
  for (const seam of ground.state.seams.values()) {
    if (!isThere(seam, ground.dates.asOf)) continue;
    out.push(...conditionDues(seam, ground));
    const single = [notSeenDue, wetDue, readingDue, temporaryDue].map((make) => {
      return earliest(seam.stretches.map((stretch) => make(seam, stretch, ground)));
    });
    for (const plain of single) if (plain) out.push(dueOn(plain, ground));
  }
  return out;
}

/** One due per item and condition, the earliest of its stretches; with it a strip where no further coat may go on. */
function conditionDues(seam: SeamState, ground: Ground): readonly Due[] {
  const byWord = new Map<string, Plain>();
  let strip: Plain | undefined;
  for (const stretch of seam.stretches) {
    const plain = followUp(seam, stretch, ground);
    if (!plain?.word) continue;
    byWord.set(plain.word, earliest([byWord.get(plain.word), plain]) as Plain);
    strip = earliest([strip, stripOf(seam, stretch, plain, ground)]);
  }
  return [...byWord.values(), ...(strip ? [strip] : [])].map((plain) => dueOn(plain, ground));
}

/**
 * The follow-up of a condition: the earliest of the policy's times for its level and the graver ones below it that it has
 * passed through, each from the first finding at that level; ended by a repair or a better finding.
 */
function followUp({ item }: SeamState, stretch: Stretch, { view, calendar }: Ground): Plain | undefined {
  const { condition, onset } = stretch;
  if (!condition || condition.word === 'renewed' || condition.word === 'sound') return undefined;
  const { word } = condition;
  const single = rank(word) <= rank(looksOnly);
  const levels = single ? [word] : conditions.slice(rank(looksOnly) + 1, rank(word) + 1);
  return earliest(
    levels.map((level): Plain | undefined => {
      const within = view.rig.policy.followUp[level];
      const event = single ? condition.event : onset[level];
      if (!within || !event) return undefined;
      const start = ageStart(event);
      const deadline = addPeriod(start, within.value);
      const bound = beforeLeaving.has(level) ? orBeforeDeparture(deadline, start, calendar) : { date: deadline };
      const leaves = bound.departure ? `, and before the rig leaves on ${bound.departure.first}` : '';
      return {
        kind: 'follow-up',
        item: item.name,
        word,
        date: bound.date,
        because: `${item.name} was found ${level} on ${start}${level === word ? '' : ` and is ${word} by now`}; it is followed up within ${within.value.text}${leaves}.`,
        explained: {
          rule: `a finding of ${level} is followed up`,
          formula: bound.departure ? 'min(found + within, departure - 1 day)' : 'found + within',
          inputs: [
            dateInput('found', start, originOf(event)),
            periodInput('within', within),
            ...(bound.departure ? [dateInput('departure', bound.departure.first, bound.departure.origin)] : []),
          ],
        },
        source: condition.event,
        notBefore: start,
      };
    }),
  );
}

/** Where a cracked or worse seam has all the coats that it may have, the follow-up is to strip it. */
function stripOf({ item, role }: SeamState, stretch: Stretch, plain: Plain, { view }: Ground): Plain | undefined {
  const word = plain.word as Condition;
  if (role !== 'sealed' || rank(word) < rank('cracked')) return undefined;
  const coats = coatCount(stretch, view.material);
  if (!coats.atLimit) return undefined;
  const reason = coats.unknown
    ? 'what lies under it is unknown, which counts as at the limit'
    : `${coats.count} coats lie on it of at most ${coats.limit?.value}`;
  const limit = coats.limit
    ? [{ name: 'limit', value: coats.limit.value, text: `${coats.limit.value} coats`, origin: coats.limit.origin }]
    : [];
  return {
    ...plain,
    kind: 'strip',
    because: `${item.name} is ${word} and ${reason}: it is stripped, not coated over.`,
    explained: {
      ...plain.explained,
      rule: 'no coat beyond the limit: strip by the follow-up of the finding',
      inputs: [
        ...plain.explained.inputs,
        { name: 'coats', value: coats.count, text: `${coats.count} coats` },
        ...limit,
      ],
    },
  };
}

function notSeenDue({ item, unread }: SeamState, { notSeen }: Stretch, { view }: Ground): Plain | undefined {
  const within = view.rig.policy.followUp['not-seen'];
  if (!notSeen || !within || unread) return undefined;
  return fromFinding('not-seen', item.name, 'not-seen', notSeen.since, within, {
    because: (start) => `${item.name} could not be seen on ${start}; it is looked at within ${within.value.text}.`,
    rule: 'what was not seen is looked at',
  });
}

/** Wet ends by drying or by a later dry finding, not by work over it. */
function wetDue({ item }: SeamState, { wet }: Stretch, { view }: Ground): Plain | undefined {
  const within = view.rig.policy.followUp.wet;
  if (!wet || !within) return undefined;
  return fromFinding('follow-up', item.name, 'wet', wet.since, within, {
    because: (start) => `${item.name} was found wet on ${start}; it is looked at again within ${within.value.text}.`,
    rule: 'a wet place is looked at again',
  });
}

/** The source of the damp is sought within this time (from memory: trade practice, no published figure). */
const findSource: Period = periodOf(0, 7);

/**
 * What the last reading asks for: from 16 % on to read again by the policy's time for `wet`; from 20 % on, or after a rise
 * of 4 points, to find where it comes from within 7 days; from 25 % on to open up, within the same time.
 */
function readingDue({ item }: SeamState, stretch: Stretch, { view }: Ground): Plain | undefined {
  const reading = stretch.readings.at(-1);
  const call = moistureCall(stretch);
  const again = view.rig.policy.followUp.wet;
  if (!reading || !call || (call === 're-read' && !again)) return undefined;
  const period = call === 're-read' ? (again as Stated<Period>).value : findSource;
  const trend = moistureTrend(stretch) ?? 0;
  const rise = trend > 0 ? `, up ${Math.round(trend * 10) / 10} points` : '';
  const asks = {
    're-read': 'it is read again',
    'find-source': 'where it comes from is found, and nothing is closed up,',
    'open-up': 'it is opened up, or a professional looks at it,',
  }[call];
  const start = ageStart(reading.event);
  const input =
    call === 're-read'
      ? periodInput('within', again as Stated<Period>)
      : { name: 'within', value: period.text, text: `${period.text} (from memory)` };
  return {
    kind: 're-read',
    item: item.name,
    word: call,
    date: addPeriod(start, period),
    because: `${reading.text} was read at ${item.name} on ${start}${rise}; ${asks} within ${period.text}.`,
    explained: {
      rule: `a reading of ${moistureLevels.reread} % or more is followed up`,
      formula: 'read + within',
      inputs: [
        dateInput('read', start, originOf(reading.event)),
        input,
        { name: 'reading', value: reading.percent, unit: '%', text: reading.text },
      ],
      ...(call === 're-read' ? {} : { source: 'Smulski 1996, UMass: decay fungi need at least 20 %' }),
    },
    source: reading.event,
    notBefore: start,
  };
}

function temporaryDue({ item }: SeamState, { temporary }: Stretch): Plain | undefined {
  if (!temporary?.until) return undefined;
  const { event, until } = temporary;
  // Of a rough day the earliest counts: a cover that may have had its day is looked at.
  const date = ageStart(until);
  return {
    kind: 'temporary-cover',
    item: item.name,
    date,
    because: `The temporary cover on ${item.name} does until ${until.text}: by then it is repaired or covered anew.`,
    explained: {
      rule: 'a temporary cover expires',
      formula: 'until',
      inputs: [dateInput('until', date, originOf(event))],
    },
    source: event,
    notBefore: ageStart(event),
  };
}

function fromFinding(
  kind: Plain['kind'],
  item: string,
  word: string,
  event: Event,
  within: Stated<Period>,
  say: { readonly because: (start: string) => string; readonly rule: string },
): Plain {
  const start = ageStart(event);
  const inputs = [dateInput('found', start, originOf(event)), periodInput('within', within)];
  return {
    kind,
    item,
    word,
    date: addPeriod(start, within.value),
    because: say.because(start),
    explained: { rule: say.rule, formula: 'found + within', inputs },
    source: event,
    notBefore: start,
  };
}

/** The earliest of some; the first of those of one day. */
export function earliest<D extends { readonly date: string }>(dues: readonly (D | undefined)[]): D | undefined {
  let best: D | undefined;
  for (const due of dues) if (due && (best === undefined || due.date < best.date)) best = due;
  return best;
}
