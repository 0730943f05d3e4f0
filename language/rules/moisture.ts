// Rules of readings, leaks that come back, and departures with an open seam.
import type { Located } from '../resolve/located.ts';
import { moistureLevels, moistureTrend, risePoints } from '../seams/index.ts';
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
  if (context.view.rig.kind === 'model') return;
  yield* readings(context);
  yield* leaks(context);
  yield* departures(context);
});

function* readings(context: RigContext): Iterable<Found> {
  for (const seam of workedOut(context).state.seams.values()) {
    for (const stretch of seam.stretches) {
      const last = stretch.readings.at(-1);
      if (!last) continue;
      const rise = moistureTrend(stretch) ?? 0;
      const rule =
        last.percent >= moistureLevels.openUp
          ? 'moisture-open-up'
          : last.percent >= moistureLevels.decay
            ? 'moisture-decay'
            : rise >= risePoints
              ? 'moisture-rising'
              : undefined;
      if (!rule) continue;
      const { event } = last;
      const place = [...event.findings.flatMap((finding) => finding.places), ...event.places].find(
        (one) => one.item === seam.item.name,
      );
      const before = stretch.readings.at(-2);
      yield {
        file: event.file,
        at: place?.at ?? event.record.at,
        item: seam.item.name,
        rule,
        message: `\`${seam.item.name}\` reads ${last.text} on ${event.last}${before && rise !== 0 ? `, ${before.text} before` : ''}. ${rules[rule].why}`,
        ...(before
          ? { related: [{ file: before.event.file, at: before.event.record.at, message: `${before.text} here.` }] }
          : {}),
      };
      break;
    }
  }
}

function* leaks(context: RigContext): Iterable<Found> {
  for (const leak of workedOut(context).state.leaks) {
    if (leak.earlier === 0 || leak.closed) continue;
    yield {
      file: leak.event.file,
      at: leak.event.record.at,
      rule: 'leak-again',
      message: `${leak.inside ?? 'It'} leaked ${leak.earlier} ${leak.earlier === 1 ? 'time' : 'times'} before. Test with water from the bottom up before anything is sealed again.`,
      ...(leak.suspects[0] === undefined ? {} : { item: leak.suspects[0] }),
    };
  }
}

/** Departures after a finding that still stands: those that are past too, for then it did happen. */
function* departures(context: RigContext): Iterable<Found> {
  const { view } = context;
  const leaving = [...view.rig.trips, ...(view.booked ?? [])];
  for (const seam of workedOut(context).state.seams.values()) {
    if (seam.unread || seam.removed) continue;
    const bad = seam.stretches.find(
      ({ condition, temporary }) => (condition?.word === 'open' || condition?.word === 'lifting') && !temporary,
    );
    if (!bad?.condition) continue;
    const { event, word } = bad.condition;
    const next = leaving.find((span) => span.first > event.last);
    if (!next) continue;
    yield {
      file: next.origin.file,
      at: next.origin.at,
      item: seam.item.name,
      rule: 'leaves-open',
      message: `\`${seam.item.name}\` was found ${word} on ${event.last} and is not mended; the rig leaves on ${next.first}.`,
      related: [{ file: event.file, at: event.record.at, message: `Found ${word} here.` }],
    };
  }
}
