// Rules of dates: what falls due, said where the record stands from which it follows. Nothing here is ever an error.
import { type Due, duesOf } from '../due/index.ts';
import type { Located } from '../resolve/located.ts';
import { isLibrary } from '../resolve/origin.ts';
import { addPeriod } from '../values/calendar.ts';
import type { Related } from './finding.ts';
import { followedUp } from './follow-up.ts';
import { family, once, type RigContext } from './rule.ts';
import { workedOut } from './worked-out.ts';

const information = { severity: 'information' } as const;
const warning = { severity: 'warning' } as const;
const planIt =
  'Plans a look at the place, in time or within a week; what is planned already is named. The finding stays until it is done and recorded.';

const rules = {
  'inspection-due-soon': {
    ...information,
    title: 'The next inspection is due soon',
    why: 'Leaks are found inside and start at seams that nobody looked at. Every seam is looked at by the interval of the policy.',
    fix: planIt,
    source: 'common practice',
  },
  'inspection-overdue': {
    ...warning,
    title: 'An inspection is due or overdue',
    why: 'Every seam is looked at by the interval of the policy, after taping too. What was not seen is written `not-seen`.',
    fix: planIt,
    source: 'common practice',
  },
  'event-look-missing': {
    ...warning,
    title: 'Nobody looked after a blow, or before or after storage',
    why: 'Hail, branches, gales, low bridges and a winter under a cover leave marks that the next rain finds.',
    fix: planIt,
    source: 'common practice',
  },
  'look-hard-soon': {
    ...information,
    title: 'A seam is to be looked at hard soon',
    why: 'Sealant ages: it fades, chalks and cracks. A sound finding moves the date on; nothing is recoated by the calendar.',
    fix: planIt,
    source: 'common practice',
  },
  'look-hard-due': {
    ...warning,
    title: 'A seam is due to be looked at hard',
    why: 'Sealant ages: it fades, chalks and cracks. A sound finding moves the date on; nothing is recoated by the calendar.',
    fix: planIt,
    source: 'common practice',
  },
  'follow-up-due-soon': {
    ...information,
    title: 'A finding is to be followed up soon',
    why: 'A finding is acted on within the time of the policy: mended, or looked at again.',
    fix: planIt,
    source: 'common practice',
  },
  'follow-up-overdue': {
    ...warning,
    title: 'A finding was not followed up in time',
    why: 'What was found cracked, lifting, open or wet gets worse with each rain. A rig with an open or lifting seam had better not leave.',
    fix: planIt,
    source: 'common practice',
  },
  'not-seen-too-long': {
    ...warning,
    title: 'A place has not been seen for long',
    why: 'What cannot be seen (under snow, under a panel, under a tree) counts as not inspected.',
    fix: planIt,
    source: 'common practice',
  },
  'leak-not-looked-at': {
    ...warning,
    title: 'A leak was not followed up by a dry look',
    why: 'A repair closes no leak; only a later look or a water test that finds the place sound and dry does.',
    fix: planIt,
    source: 'common practice',
  },
  'strip-due': {
    ...warning,
    title: 'A seam is to be stripped',
    why: 'It is cracked or worse and has all the coats that it may have: no further one goes on.',
    fix: 'Plans to strip it, in time or within a week; what is planned already is named. The finding stays until it is done and recorded.',
    source: 'common practice',
  },
  'temporary-cover-expired': {
    ...warning,
    title: 'A temporary cover has expired',
    why: 'A patch or a tarp is no repair. Renew it or mend what is under it.',
    fix: 'Plans to cover it anew within a week; what is planned already is named. The finding stays until it is done and recorded.',
    source: 'common practice',
  },
  'tape-in-second-half': {
    ...information,
    title: 'Tape is in the second half of its life',
    why: 'Its edges are watched from now on, and its renewal is planned.',
    fix: 'None: nothing has to be changed, and nothing has to be done today.',
    source: 'the life of the material, else from memory; never longer than the membrane or the part',
  },
  'tape-past-life': {
    ...warning,
    title: 'Tape is past its likely life',
    why: 'It may hold longer; nobody should count on it.',
    fix: planIt,
    source: 'the life of the material, else from memory; never longer than the membrane or the part',
  },
  'best-before-soon': {
    ...information,
    title: 'Material on the shelf is soon past its best-before date',
    why: 'Published specifications use no sealant past its shelf life.',
    fix: 'None: it is used in time or it is not; either is recorded when it is done.',
    source: 'published: UFGS 07920',
  },
  'best-before-past': {
    ...warning,
    tag: 'deprecated',
    title: 'Material on the shelf is past its best-before date',
    why: 'Published specifications use no sealant past its shelf life.',
    fix: 'None: only a count of the shelf can tell what of it is left. Take it off the shelf, then off `on-hand`.',
    source: 'published: UFGS 07920',
  },
} as const;

type Rule = keyof typeof rules;

/** By kind of due: the rule when it is near, and when its day has come. Quotes, plans and clocks have families of their own. */
const spoken: Partial<Record<Due['kind'], { readonly soon?: Rule; readonly now: Rule }>> = {
  inspect: { soon: 'inspection-due-soon', now: 'inspection-overdue' },
  'event-look': { now: 'event-look-missing' },
  'storage-look': { now: 'event-look-missing' },
  'look-hard': { soon: 'look-hard-soon', now: 'look-hard-due' },
  'follow-up': { soon: 'follow-up-due-soon', now: 'follow-up-overdue' },
  're-read': { soon: 'follow-up-due-soon', now: 'follow-up-overdue' },
  'not-seen': { soon: 'follow-up-due-soon', now: 'not-seen-too-long' },
  'leak-look': { soon: 'follow-up-due-soon', now: 'leak-not-looked-at' },
  strip: { soon: 'follow-up-due-soon', now: 'strip-due' },
  'temporary-cover': { now: 'temporary-cover-expired' },
  'tape-second-half': { now: 'tape-in-second-half' },
  'tape-end': { now: 'tape-past-life' },
  'best-before': { soon: 'best-before-soon', now: 'best-before-past' },
};

/** Everything that falls due on the rig, worked out once. */
export const duesFor = (context: RigContext): readonly Due[] => once(context, allDues);
const allDues = (context: RigContext) => duesOf(context.view, context.dates, workedOut(context).state);

export const fallsDue = family(rules, function* (context): Iterable<Located & { readonly rule: Rule }> {
  const { rig } = context.view;
  if (rig.kind === 'model') return;
  const dues = duesFor(context);
  for (const due of dues) {
    const rule = ruleOf(due);
    if (isUnread(due, context) || isSaidElsewhere(due, dues)) continue;
    // A rig of which nothing at all is recorded is spoken of by another rule.
    if (rule === undefined || (due.kind === 'inspect' && rig.events.length === 0)) continue;
    const { said, related, ...plan } = planFor(due, rule, context);
    const place = due.sourceEvent ? placeOf(due, context) : { file: rig.file, at: rig.nameAt };
    yield {
      ...place,
      rule,
      message: `${sentence(due, context)}${said}`,
      rig: rig.name,
      related: [...relatedTo(due), ...related],
      ...plan,
      ...(due.item === undefined ? {} : { item: due.item }),
    };
  }
});

const nothing = { said: '', related: [] } as const;

/** What is planned against it, or could be. The shelf and what is only to be known need no plan. */
function planFor({ kind, item, items, date }: Due, rule: Rule, context: RigContext) {
  if (kind === 'best-before' || rule === 'tape-in-second-half') return nothing;
  const word = kind === 'strip' ? 'strip' : kind === 'temporary-cover' ? 'cover' : 'inspect';
  return followedUp(context, word, item === undefined ? (items ?? []) : [item], date);
}

/** Whether lines about it could not be read: what they say may have settled it. */
function isUnread({ item, items, kind }: Due, context: RigContext): boolean {
  if (kind === 'best-before') return false;
  const { seams } = workedOut(context).state;
  const about = item === undefined ? (items ?? []) : [item];
  return context.view.rig.unread.all || about.some((name) => seams.get(name)?.unread);
}

/** A high or rising reading has a rule of its own from its first day; a strip takes the place of the follow-up. */
function isSaidElsewhere({ kind, item, word }: Due, dues: readonly Due[]): boolean {
  if (kind === 're-read') return word !== 're-read';
  return kind === 'follow-up' && dues.some((one) => one.kind === 'strip' && one.item === item && one.word === word);
}

/** The lines that the date hangs on, where a person can change them; the record where it stands is not named again. */
function relatedTo({ explained, sourceEvent }: Due): Related[] {
  return explained.inputs.flatMap(({ name, text, origin }) =>
    origin && !isLibrary(origin.file) && !(origin.file === sourceEvent?.file && origin.at === sourceEvent.at)
      ? [{ file: origin.file, at: origin.at, message: `${name.replaceAll('_', ' ')}: ${text}` }]
      : [],
  );
}

function ruleOf({ kind, status }: Due): Rule | undefined {
  const rule = spoken[kind];
  if (!rule || status === 'not-due') return undefined;
  return status === 'soon' ? rule.soon : rule.now;
}

/** At the seam's own name in the record where it stands there. */
function placeOf({ sourceEvent, item }: Due, { view }: RigContext): Pick<Located, 'file' | 'at'> {
  const { file, at } = sourceEvent as NonNullable<Due['sourceEvent']>;
  const event = view.rig.events.find((one) => one.file === file && one.record.at === at);
  const places = [...(event?.findings.flatMap((finding) => finding.places) ?? []), ...(event?.places ?? [])];
  return { file, at: places.find((place) => place.item === item)?.at ?? at };
}

function sentence(due: Due, { view, dates }: RigContext): string {
  const { because, status, days, date, kind, word, moved, recurs } = due;
  if (kind === 'tape-second-half' || kind === 'tape-end') return because;
  const n = Math.abs(days);
  const when =
    status === 'overdue'
      ? `${n} ${n === 1 ? 'day' : 'days'} overdue on ${dates.asOf}`
      : days === 0
        ? 'due today'
        : `due by ${date}, in ${n} ${n === 1 ? 'day' : 'days'}`;
  const storage = moved ? ` That falls into storage, so that it counts from ${date}, ${moved.to}.` : '';
  const leave =
    kind === 'follow-up' && status === 'overdue' && (word === 'open' || word === 'lifting')
      ? ' Do not let the rig leave before it is mended.'
      : '';
  const { value: limit } = view.rig.policy.inspectLimit;
  const past = kind === 'inspect' && recurs && addPeriod(recurs.start, limit) < dates.asOf;
  const longest = past ? ` That is past the longest gap of the policy too, ${limit.text}.` : '';
  return `${because}${storage} It is ${when}.${leave}${longest}`;
}
