// Rules of dates: what falls due, said where the record stands from which it follows. Nothing here is ever an error.
import { type Due, duesOf } from '../due/index.ts';
import type { Located } from '../resolve/located.ts';
import { family, once, type RigContext } from './rule.ts';
import { workedOut } from './worked-out.ts';

const information = { severity: 'information' } as const;
const warning = { severity: 'warning' } as const;
const doIt = 'None: do it, and record it.';

const rules = {
  'inspection-due-soon': {
    ...information,
    title: 'The next inspection is due soon',
    why: 'Leaks are found inside and start at seams that nobody looked at. Every seam is looked at by the interval of the policy.',
    fix: doIt,
    source: 'common practice',
  },
  'inspection-overdue': {
    ...warning,
    title: 'An inspection is due or overdue',
    why: 'Every seam is looked at by the interval of the policy, after taping too. What was not seen is written `not-seen`.',
    fix: doIt,
    source: 'common practice',
  },
  'event-look-missing': {
    ...warning,
    title: 'Nobody looked after a blow, or before or after storage',
    why: 'Hail, branches, gales, low bridges and a winter under a cover leave marks that the next rain finds.',
    fix: doIt,
    source: 'common practice',
  },
  'look-hard-soon': {
    ...information,
    title: 'A seam is to be looked at hard soon',
    why: 'Sealant ages: it fades, chalks and cracks. A sound finding moves the date on; nothing is recoated by the calendar.',
    fix: doIt,
    source: 'common practice',
  },
  'look-hard-due': {
    ...warning,
    title: 'A seam is due to be looked at hard',
    why: 'Sealant ages: it fades, chalks and cracks. A sound finding moves the date on; nothing is recoated by the calendar.',
    fix: doIt,
    source: 'common practice',
  },
  'follow-up-due-soon': {
    ...information,
    title: 'A finding is to be followed up soon',
    why: 'A finding is acted on within the time of the policy: mended, or looked at again.',
    fix: doIt,
    source: 'common practice',
  },
  'follow-up-overdue': {
    ...warning,
    title: 'A finding was not followed up in time',
    why: 'What was found cracked, lifting, open or wet gets worse with each rain. A rig with an open or lifting seam had better not leave.',
    fix: doIt,
    source: 'common practice',
  },
  'not-seen-too-long': {
    ...warning,
    title: 'A place has not been seen for long',
    why: 'What cannot be seen (under snow, under a panel, under a tree) counts as not inspected.',
    fix: doIt,
    source: 'common practice',
  },
  'leak-not-looked-at': {
    ...warning,
    title: 'A leak was not followed up by a dry look',
    why: 'A repair closes no leak; only a later look or a water test that finds the place sound and dry does.',
    fix: doIt,
    source: 'common practice',
  },
  'strip-due': {
    ...warning,
    title: 'A seam is to be stripped',
    why: 'It is cracked or worse and has all the coats that it may have: no further one goes on.',
    fix: doIt,
    source: 'common practice',
  },
  'temporary-cover-expired': {
    ...warning,
    title: 'A temporary cover has expired',
    why: 'A patch or a tarp is no repair. Renew it or mend what is under it.',
    fix: doIt,
    source: 'common practice',
  },
  'tape-in-second-half': {
    ...information,
    title: 'Tape is in the second half of its life',
    why: 'Its edges are watched from now on, and its renewal is planned.',
    fix: 'None: nothing has to be changed.',
    source: 'the life of the material, else from memory; never longer than the membrane or the part',
  },
  'tape-past-life': {
    ...warning,
    title: 'Tape is past its likely life',
    why: 'It may hold longer; nobody should count on it.',
    fix: doIt,
    source: 'the life of the material, else from memory; never longer than the membrane or the part',
  },
  'best-before-soon': {
    ...information,
    title: 'Material on the shelf is soon past its best-before date',
    why: 'Published specifications use no sealant past its shelf life.',
    fix: 'None: use it or plan for new.',
    source: 'published: UFGS 07920',
  },
  'best-before-past': {
    ...warning,
    title: 'Material on the shelf is past its best-before date',
    why: 'Published specifications use no sealant past its shelf life.',
    fix: 'None: take it off the shelf, and off `on-hand`.',
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
  strip: { now: 'strip-due' },
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
  for (const due of duesFor(context)) {
    const rule = ruleOf(due);
    // A rig of which nothing at all is recorded is spoken of by another rule.
    if (rule === undefined || (due.kind === 'inspect' && rig.events.length === 0)) continue;
    const place = due.sourceEvent ? placeOf(due, context) : { file: rig.file, at: rig.nameAt };
    yield {
      ...place,
      rule,
      message: sentence(due, context),
      rig: rig.name,
      ...(due.item === undefined ? {} : { item: due.item }),
    };
  }
});

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

function sentence({ because, status, days, date, kind, word }: Due, { view, dates }: RigContext): string {
  const n = Math.abs(days);
  const when =
    status === 'overdue'
      ? `${n} ${n === 1 ? 'day' : 'days'} overdue on ${dates.asOf}`
      : days === 0
        ? 'due today'
        : `due by ${date}, in ${n} ${n === 1 ? 'day' : 'days'}`;
  const leave =
    kind === 'follow-up' && status === 'overdue' && (word === 'open' || word === 'lifting')
      ? ' Do not let the rig leave before it is mended.'
      : '';
  const limit = view.rig.policy.inspectLimit.value.text;
  const longest = kind === 'inspect' && status === 'overdue' ? ` The longest gap of the policy is ${limit}.` : '';
  const ends = kind === 'tape-second-half' || kind === 'tape-end' ? '' : ` It is ${when}.`;
  return `${because}${ends}${leave}${longest}`;
}
