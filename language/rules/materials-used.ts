// Rules of what was used: material past its best-before date on the day of the work.
import type { Span } from '../grammar/problem.ts';
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

export const materialsUsed = family(rules, ({ view, dates }) =>
  usedPastBestBefore(lotsUsed(view, dates.asOf), view.rig.stock),
);

/** A material of a lot that a record used; plain data. Dates are ISO dates. */
export interface UsedLot {
  readonly rig: string;
  readonly material: string;
  readonly lot: string;
  /** The earliest day of the record. */
  readonly first: string;
  /** The date as written. */
  readonly date: string;
  readonly file: string;
  /** The name of the material. */
  readonly at: Span;
  readonly item?: string;
}

/** What the records up to the as-of date used of lots. */
export function lotsUsed({ rig }: RigView, asOf: string): UsedLot[] {
  return rig.events.flatMap(({ record, first, last, file, places }) => {
    if (last > asOf || !('materials' in record) || !('lot' in record) || record.lot === undefined) return [];
    const { lot, date } = record;
    const item = places[0]?.item;
    return (record.materials ?? []).map(({ name, at }) => ({
      rig: rig.name,
      material: name,
      lot,
      first,
      date: date.text,
      file,
      at,
      ...(item === undefined ? {} : { item }),
    }));
  });
}

/**
 * Records whose `lot` is that of a purchase of one of their materials with a best-before date that was over by then. Of a
 * rough day the earliest counts, of a month its last day. A lot that was bought more than once holds as long as its latest
 * date. The stock may be that of the rig or of its yard.
 */
export function* usedPastBestBefore(
  used: readonly UsedLot[],
  stock: readonly (StockStatement & { readonly file: string })[],
): Iterable<Found> {
  const dated = stock.flatMap((line) =>
    line.word === 'bought' && line.lot !== undefined && line.bestBefore
      ? [{ ...line, lot: line.lot, bestBefore: line.bestBefore }]
      : [],
  );
  if (dated.length === 0) return;
  for (const { rig, material, lot: number, first, date, file, at, item } of used) {
    const [lot] = dated
      .filter((one) => one.lot === number && one.material.name === material)
      .sort((a, b) => (a.bestBefore.last < b.bestBefore.last ? 1 : -1));
    if (!lot || first <= lot.bestBefore.last) continue;
    yield {
      rule: 'used-past-best-before',
      file,
      at,
      rig,
      message: `\`${material}\` of lot ${number} was best before ${lot.bestBefore.text}, and the work is of ${date}: look at it early.`,
      related: [{ file: lot.file, at: lot.at, message: 'The lot was bought here.' }],
      ...(item === undefined ? {} : { item }),
    };
  }
}
