// Rules of readings and of leaks that come back.
import type { Located } from '../resolve/located.ts';
import { isThere, moistureLevels, moistureTrend, risePoints, type Stretch } from '../seams/index.ts';
import { followedUp } from './follow-up.ts';
import { listed } from './listed.ts';
import { family, type RigContext } from './rule.ts';
import { workedOut } from './worked-out.ts';

const rules = {
  'moisture-rising': {
    severity: 'warning',
    title: 'A moisture reading rises',
    why: 'The trend says more than the figure: something lets water in. Find the source before anything is closed up.',
    fix: 'Plans a look at the place within a week; what is planned already is named. The finding stays until it is done and recorded.',
    source: 'a rise of 4 points: from memory',
  },
  'moisture-decay': {
    severity: 'warning',
    title: 'A moisture reading of 20 % or more',
    why: 'From about 20 % on fungi can decay wood. Find the source, dry it out, close nothing up.',
    fix: 'Plans a look at the place within a week; what is planned already is named. The finding stays until it is done and recorded.',
    source: 'published: decay fungi need at least 20 % (Smulski 1996, UMass)',
  },
  'moisture-open-up': {
    severity: 'warning',
    title: 'A moisture reading of 25 % or more',
    why: 'Open it up, or ask a professional: the wood behind may be soft.',
    fix: 'Plans a look at the place within a week; what is planned already is named. The finding stays until it is done and recorded.',
    source: 'from memory; fibre saturation is at about 30 % (USDA Wood Handbook 2010)',
  },
  'leak-again': {
    severity: 'warning',
    title: 'A leak came back',
    why: 'A place that leaks again after a repair was repaired at the wrong spot. Test with water from the bottom up.',
    fix: 'Plans a look at the place within a week; what is planned already is named. The finding stays until it is done and recorded.',
    source: 'published: ASTM D7053 for the way of testing',
  },
} as const;

type Found = Located & { readonly rule: keyof typeof rules };

export const moisture = family(rules, function* (context) {
  const { view } = context;
  if (view.rig.kind === 'model') return;
  yield* readings(context);
  yield* leaks(context);
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
    const { said, related, ...plan } = followedUp(context, 'inspect', [seam.item.name]);
    const where = last.inside === undefined ? '' : ` (${last.inside})`;
    const trend = before && before.percent !== last.percent ? `, ${before.text} on ${before.event.last}` : '';
    yield {
      file: event.file,
      at: place?.at ?? event.record.at,
      item: seam.item.name,
      rule,
      message: `\`${seam.item.name}\`${where} reads ${last.text} on ${event.last}${trend}. ${rules[rule].why}${said}`,
      related: [
        ...(before ? [{ file: before.event.file, at: before.event.record.at, message: `${before.text} here.` }] : []),
        ...related,
      ],
      ...plan,
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
    const { said, related, ...plan } = followedUp(context, 'inspect', leak.suspects);
    const where = leak.inside ?? listed(leak.suspects);
    yield {
      file: leak.event.file,
      at: leak.event.record.at,
      rule: 'leak-again',
      message: `Water came in where it did before (${where}): ${before.map((one) => one.event.last).join(', ')}. Test with water from the bottom up before anything is sealed again.${said}`,
      related: [
        ...before.flatMap(({ event, repairs }) => [
          { file: event.file, at: event.record.at, message: 'It leaked here.' },
          ...repairs.map((repair) => ({
            file: repair.event.file,
            at: repair.event.record.at,
            message: 'This did not end it.',
          })),
        ]),
        ...related,
      ],
      ...plan,
      ...(leak.suspects[0] === undefined ? {} : { item: leak.suspects[0] }),
    };
  }
}
