// Rules of coats: how many may lie one on another.
import type { Located } from '../resolve/located.ts';
import { coatCount } from '../seams/index.ts';
import { firstDo, jobsOf, laidBy } from './jobs.ts';
import { family } from './rule.ts';

const rules = {
  'one-coat-too-many': {
    severity: 'error',
    title: 'One coat of sealant too many',
    why: 'A thick or lumpy bead hides its cracks and lifts as a whole. At the limit it all comes off before the next coat. The factory bead counts as the first. Counted for each stretch of a seam.',
    fix: 'Adds a plan to strip the seam first.',
    source: 'common practice',
  },
  'coats-unknown': {
    severity: 'warning',
    title: 'Another coat over coats of which nobody knows',
    why: 'What is not known counts as at the limit: it had better come off before the next coat. Test it for silicone in any case.',
    fix: 'Adds a plan to strip the seam first.',
    source: 'common practice',
  },
} as const;

export const coats = family(rules, function* (context): Iterable<Located & { rule: keyof typeof rules }> {
  for (const job of jobsOf(context)) {
    if (job.verb !== 'seal' || job.seam.role !== 'sealed') continue;
    const limit = laidBy(job).flatMap(({ material }) => (material.kind === 'sealant' ? [material.coatsAtMost] : []))[0];
    for (const stretch of job.stretches) {
      const { count, unknown, limit: below } = coatCount(stretch, context.view.material);
      const most = limit?.value ?? below?.value;
      if (count === 0 || most === undefined || !(unknown || count >= most)) continue;
      yield {
        rule: count >= most ? 'one-coat-too-many' : 'coats-unknown',
        file: job.file,
        at: job.place.at,
        item: job.place.item,
        message:
          count < most
            ? `Nobody knows how many coats lie on \`${job.place.item}\`: that counts as the limit of ${most}. Strip it before another one goes on.`
            : `\`${job.place.item}\` has ${count} ${count === 1 ? 'coat' : 'coats'}, the factory's among them, and ${most} may lie one on another. Strip it before the ${ordinal(count + 1)} goes on.`,
        related: stretch.layers.flatMap((layer) =>
          layer.event
            ? [
                {
                  file: layer.event.file,
                  at: layer.event.record.at,
                  message: layer.by === 'found' ? 'Found here.' : 'A coat went on here.',
                },
              ]
            : [],
        ),
        fixes: firstDo('strip', job),
      };
      break;
    }
  }
});

function ordinal(n: number): string {
  return ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'][n - 1] ?? `${n}th`;
}
