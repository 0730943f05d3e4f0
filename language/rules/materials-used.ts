// Rules of what was used: material past its best-before date on the day of the work.
import type { Located } from '../resolve/located.ts';
import type { RigView } from '../resolve/types.ts';
import type { StockStatement } from '../statements/rig.ts';
import { family } from './rule.ts';

const rules = {
  'used-past-best-before': {
    severity: 'warning',
    title: 'Material was used past its best-before date',
    why: 'The lot of the record was bought with a date that was over on the day of the work. Old sealant skins in the tube, cures badly and holds less. Look at the work early, and again at the next inspection.',
    fix: 'None: what was done stays as it is recorded. If the lot or the date is wrong, mend that line.',
    source: 'published: UFGS 07920, no sealant past its shelf life',
  },
} as const;

type Found = Located & { readonly rule: keyof typeof rules };

export const materialsUsed = family(rules, ({ view, dates }) => usedPastBestBefore(view, view.rig.stock, dates.asOf));

/**
 * Records up to the as-of date whose `lot` is that of a purchase of one of their materials with a best-before date that
 * was over by then. Of a rough day the earliest counts, of a month its last day. A lot that was bought more than once
 * holds as long as its latest date. The stock may be that of the rig or of its yard.
 */
export function* usedPastBestBefore(
  { rig }: RigView,
  stock: readonly (StockStatement & { readonly file: string })[],
  asOf: string,
): Iterable<Found> {
  const dated = stock.flatMap((line) =>
    line.word === 'bought' && line.lot !== undefined && line.bestBefore
      ? [{ ...line, lot: line.lot, bestBefore: line.bestBefore }]
      : [],
  );
  if (dated.length === 0) return;
  for (const { record, first, last, file, places } of rig.events) {
    if (last > asOf || !('materials' in record) || !('lot' in record) || record.lot === undefined) continue;
    for (const { name, at } of record.materials ?? []) {
      const [lot] = dated
        .filter((one) => one.lot === record.lot && one.material.name === name)
        .sort((a, b) => (a.bestBefore.last < b.bestBefore.last ? 1 : -1));
      if (!lot || first <= lot.bestBefore.last) continue;
      const [item] = new Set(places.map((place) => place.item));
      yield {
        rule: 'used-past-best-before',
        file,
        at,
        rig: rig.name,
        message: `\`${name}\` of lot ${record.lot} was best before ${lot.bestBefore.text}, and the work is of ${record.date.text}: look at it early.`,
        related: [{ file: lot.file, at: lot.at, message: 'The lot was bought here.' }],
        ...(item === undefined ? {} : { item }),
      };
    }
  }
}
