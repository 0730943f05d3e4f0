// Departures with an open or lifting seam. Whether a seam is open, the rig says; when it leaves, its trips and a fleet's bookings.
import type { Span } from '../grammar/problem.ts';
import type { Located } from '../resolve/located.ts';
import type { Origin } from '../resolve/types.ts';
import { isThere, type Stretch } from '../seams/index.ts';
import { addPeriod } from '../values/calendar.ts';
import { family, type RigContext, type RuleEntry } from './rule.ts';
import { workedOut } from './worked-out.ts';

const rules = {
  'leaves-open': {
    severity: 'warning',
    title: 'The rig leaves with an open or lifting seam',
    why: 'The wind of the road peels what lifts and drives rain into what is open. Mend or cover it first.',
    fix: 'None: either the work or the departure moves.',
    source: 'common practice',
  },
} as const satisfies Record<string, RuleEntry>;

export const departures = family(rules, function* (context) {
  const { rig, booked = [] } = context.view;
  if (rig.kind === 'model') return;
  const { asOf } = context.dates;
  yield* leavesOpen(openSeams(context), [...rig.trips, ...booked], asOf, addPeriod(asOf, rig.policy.dueSoon.value));
});

/** A seam with a finding of open or lifting that still stands on the as-of date; plain data. Dates are ISO dates. */
export interface OpenSeam {
  readonly item: string;
  readonly parts: readonly {
    readonly word: 'open' | 'lifting';
    readonly found: { readonly on: string; readonly file: string; readonly at: Span };
    /** A temporary cover over it; without an end it holds until it is mended. */
    readonly cover?: { readonly from: string; readonly until?: string };
  }[];
}

export function openSeams(context: RigContext): OpenSeam[] {
  const { asOf } = context.dates;
  return [...workedOut(context).state.seams.values()].flatMap((seam) => {
    if (seam.unread || !isThere(seam, asOf)) return [];
    const parts = seam.stretches.flatMap(partsOf);
    return parts.length === 0 ? [] : [{ item: seam.item.name, parts }];
  });
}

function partsOf({ condition, temporary }: Stretch): OpenSeam['parts'] {
  if (condition?.word !== 'open' && condition?.word !== 'lifting') return [];
  const { word, event } = condition;
  const until = temporary?.until?.last;
  return [
    {
      word,
      found: { on: event.last, file: event.file, at: event.record.at },
      ...(temporary && { cover: { from: temporary.event.first, ...(until === undefined ? {} : { until }) } }),
    },
  ];
}

/**
 * Departures with a seam that is open and not covered then: the next one, once it is not after `soon`, since there is time to
 * mend it before; else the last one, which did happen.
 */
export function* leavesOpen(
  seams: readonly OpenSeam[],
  leaving: readonly { readonly first: string; readonly origin: Origin }[],
  asOf: string,
  soon: string,
): Iterable<Located & { readonly rule: 'leaves-open' }> {
  for (const { item, parts } of seams) {
    const met = parts.flatMap(({ word, found, cover }) => {
      const bare = leaving
        .filter(({ first }) => first >= found.on && first <= soon && !covers(cover, first))
        .sort((a, b) => (a.first < b.first ? -1 : 1));
      const next = bare.find(({ first }) => first >= asOf) ?? bare.at(-1);
      return next ? [{ found, word, next }] : [];
    });
    const bad = met.find(({ word }) => word === 'open') ?? met[0];
    if (!bad) continue;
    const { found, word, next } = bad;
    yield {
      file: next.origin.file,
      at: next.origin.at,
      item,
      rule: 'leaves-open',
      message: `\`${item}\` was found ${word} on ${found.on} and is not mended; the rig ${next.first < asOf ? 'left' : 'leaves'} on ${next.first}. Mend or cover it before it goes.`,
      related: [{ file: found.file, at: found.at, message: `Found ${word} here.` }],
    };
  }
}

function covers(cover: OpenSeam['parts'][number]['cover'], day: string): boolean {
  return cover !== undefined && cover.from <= day && (cover.until ?? day) >= day;
}
