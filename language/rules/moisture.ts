// Rules of readings, leaks that come back, and departures with an open seam.
import type { Located } from '../resolve/located.ts';
import type { RigView } from '../resolve/types.ts';
import { isThere, moistureLevels, moistureTrend, risePoints, type Stretch } from '../seams/index.ts';
import { addPeriod } from '../values/calendar.ts';
import { listed } from './listed.ts';
import { family, type RigContext } from './rule.ts';
import { workedOut } from './worked-out.ts';

const rules = {
  'moisture-rising': {
    severity: 'warning',
    title: 'A moisture reading rises',
    why: 'The trend says more than the figure: something lets water in. Find the source before anything is closed up.',
    fix: 'None: find the source, and record it.',
    source: 'a rise of 4 points: from memory',
  },
  'moisture-decay': {
    severity: 'warning',
    title: 'A moisture reading of 20 % or more',
    why: 'From about 20 % on fungi can decay wood. Find the source, dry it out, close nothing up.',
    fix: 'None: find the source, and record it.',
    source: 'published: decay fungi need at least 20 % (Smulski 1996, UMass)',
  },
  'moisture-open-up': {
    severity: 'warning',
    title: 'A moisture reading of 25 % or more',
    why: 'Open it up, or ask a professional: the wood behind may be soft.',
    fix: 'None: open it up, and record what was found.',
    source: 'from memory; fibre saturation is at about 30 % (USDA Wood Handbook 2010)',
  },
  'leak-again': {
    severity: 'warning',
    title: 'A leak came back',
    why: 'A place that leaks again after a repair was repaired at the wrong spot. Test with water from the bottom up.',
    fix: 'None: where the water comes in only a test can tell.',
    source: 'published: ASTM D7053 for the way of testing',
  },
  'leaves-open': {
    severity: 'warning',
    title: 'The rig leaves with an open or lifting seam',
    why: 'The wind of the road peels what lifts and drives rain into what is open. Mend or cover it first.',
    fix: 'None: either the work or the departure moves.',
    source: 'common practice',
  },
} as const;

type Found = Located & { readonly rule: keyof typeof rules };

export const moisture = family(rules, function* (context) {
  const { view } = context;
  if (view.rig.kind === 'model') return;
  yield* readings(context);
  yield* leaks(context);
  yield* leavesOpen(context, [...view.rig.trips, ...(view.booked ?? [])]);
});

/** What the last reading of a stretch says, the gravest first. */
function ruleOf(stretch: Stretch): 'moisture-open-up' | 'moisture-decay' | 'moisture-rising' | undefined {
  const last = stretch.readings.at(-1);
  if (!last) return undefined;
  if (last.percent >= moistureLevels.openUp) return 'moisture-open-up';
  if (last.percent >= moistureLevels.decay) return 'moisture-decay';
  return (moistureTrend(stretch) ?? 0) >= risePoints ? 'moisture-rising' : undefined;
}

/** One finding for an item: that of its dampest stretch. */
function* readings(context: RigContext): Iterable<Found> {
  const { asOf } = context.dates;
  for (const seam of workedOut(context).state.seams.values()) {
    if (seam.unread || !isThere(seam, asOf)) continue;
    const [worst] = seam.stretches
      .flatMap((stretch) => {
        const last = stretch.readings.at(-1);
        const rule = ruleOf(stretch);
        return last && rule ? [{ rule, last, before: stretch.readings.at(-2) }] : [];
      })
      .sort((a, b) => b.last.percent - a.last.percent);
    if (!worst) continue;
    const { rule, last, before } = worst;
    const { event } = last;
    const place = [...event.findings.flatMap((finding) => finding.places), ...event.places].find(
      (one) => one.item === seam.item.name,
    );
    const where = last.inside === undefined ? '' : ` (${last.inside})`;
    const trend = before && before.percent !== last.percent ? `, ${before.text} on ${before.event.last}` : '';
    yield {
      file: event.file,
      at: place?.at ?? event.record.at,
      item: seam.item.name,
      rule,
      message: `\`${seam.item.name}\`${where} reads ${last.text} on ${event.last}${trend}. ${rules[rule].why}`,
      ...(before
        ? { related: [{ file: before.event.file, at: before.event.record.at, message: `${before.text} here.` }] }
        : {}),
    };
  }
}

/** Leaks at a place that leaked before, until a look closes them. */
function* leaks(context: RigContext): Iterable<Found> {
  const { seams, leaks: all } = workedOut(context).state;
  if (context.view.rig.unread.all) return;
  for (const [i, leak] of all.entries()) {
    if (leak.earlier === 0 || leak.closed || leak.suspects.some((item) => seams.get(item)?.unread)) continue;
    const words = leak.inside?.toLowerCase();
    const before = all
      .slice(0, i)
      .filter(
        (one) =>
          (words !== undefined && one.inside?.toLowerCase() === words) ||
          one.suspects.some((item) => leak.suspects.includes(item)),
      );
    const where = leak.inside ?? listed(leak.suspects);
    yield {
      file: leak.event.file,
      at: leak.event.record.at,
      rule: 'leak-again',
      message: `Water came in where it did before (${where}): ${before.map((one) => one.event.last).join(', ')}. Test with water from the bottom up before anything is sealed again.`,
      related: before.flatMap(({ event, repairs }) => [
        { file: event.file, at: event.record.at, message: 'It leaked here.' },
        ...repairs.map((repair) => ({
          file: repair.event.file,
          at: repair.event.record.at,
          message: 'This did not end it.',
        })),
      ]),
      ...(leak.suspects[0] === undefined ? {} : { item: leak.suspects[0] }),
    };
  }
}

/**
 * Departures with a finding of open or lifting that still stands and is not covered then: the next one, once it is as near
 * as the policy calls soon, since there is time to mend it before; else the last one, which did happen.
 */
export function* leavesOpen(context: RigContext, leaving: RigView['rig']['trips']): Iterable<Found> {
  const { asOf } = context.dates;
  const soon = addPeriod(asOf, context.view.rig.policy.dueSoon.value);
  for (const seam of workedOut(context).state.seams.values()) {
    if (seam.unread || !isThere(seam, asOf)) continue;
    const found = seam.stretches.flatMap(({ condition, temporary }) => {
      if (condition?.word !== 'open' && condition?.word !== 'lifting') return [];
      const { event, word } = condition;
      const bare = leaving
        .filter(({ first }) => first >= event.last && first <= soon && !covers(temporary, first))
        .sort((a, b) => (a.first < b.first ? -1 : 1));
      const next = bare.find(({ first }) => first >= asOf) ?? bare.at(-1);
      return next ? [{ event, word, next }] : [];
    });
    const bad = found.find(({ word }) => word === 'open') ?? found[0];
    if (!bad) continue;
    const { event, word, next } = bad;
    yield {
      file: next.origin.file,
      at: next.origin.at,
      item: seam.item.name,
      rule: 'leaves-open',
      message: `\`${seam.item.name}\` was found ${word} on ${event.last} and is not mended; the rig ${next.first < asOf ? 'left' : 'leaves'} on ${next.first}. Mend or cover it before it goes.`,
      related: [{ file: event.file, at: event.record.at, message: `Found ${word} here.` }],
    };
  }
}

/** Whether a temporary cover is on that day; without an end it holds until it is mended. */
function covers(temporary: Stretch['temporary'], day: string): boolean {
  return temporary !== undefined && temporary.event.first <= day && (temporary.until?.last ?? day) >= day;
}
