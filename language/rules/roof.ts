// Rules of the roof as it is described: do its items lie on it, apart from one another, with a size and a side?
import type { Span } from '../grammar/problem.ts';
import {
  beyondRoof,
  centresOffRoof,
  closePairs,
  gapBetween,
  leastGap,
  type Placed,
  placedItems,
} from '../measure/fit.ts';
import { seamLength } from '../measure/length.ts';
import { whyNoTape } from '../measure/treatable.ts';
import { openPlans } from '../resolve/done.ts';
import type { Located } from '../resolve/located.ts';
import { isSeam } from '../resolve/places.ts';
import type { Item, Rig, Roof } from '../resolve/types.ts';
import { lengthText } from '../values/display.ts';
import { listed } from './listed.ts';
import { family, type RigContext, type RuleEntry } from './rule.ts';

/** The widest band of usual work: three strips of 6 in tape with side laps reach 16 in; a foot is already rare. */
const WIDEST_BAND = 12 * 25_400_000;

const rules = {
  'no-roof': {
    severity: 'warning',
    title: 'A roof has no size',
    why: 'Edges and caps are as long as the roof, and places are measured on it: without a `roof` line nothing of that can be told.',
    fix: 'None: only the writer knows the size.',
  },
  'no-size': {
    severity: 'warning',
    title: 'A seam cannot be measured',
    why: 'How long the seam is follows from a size or a length. Without one it is left out of every quantity.',
    fix: 'None: only the writer knows the size.',
  },
  'off-the-roof': {
    severity: 'error',
    title: 'An item lies outside the roof',
    why: 'Its place is the centre: the first measure runs from the front, the second from the curb side. With its size it has to lie on the roof.',
    fix: 'Swaps the two measures, where it lies on the roof that way.',
  },
  overlap: {
    severity: 'warning',
    title: 'Two items overlap',
    why: 'Two flanges cannot lie in one place: a size or a place is wrong. The size is the outside of the flange.',
    fix: 'None: only the writer knows which measure is wrong.',
  },
  'too-close': {
    severity: 'information',
    title: 'Two items lie too close to be treated one by one',
    why: 'Tape and sealant need sound roof on each side. Where two flanges leave less, treat them as one, or seal what cannot be taped.',
    fix: 'None: the roof is as it is, and its items are where they are.',
    source: 'common practice: 1 in of margin on each side; from memory: the bite of a frame',
  },
  'no-such-side': {
    severity: 'warning',
    title: 'Something is on a side that the roof does not have',
    why: 'A part is said to be on a side whose edge or cap is not described: the side is wrong, or the edge was forgotten.',
    fix: 'None: only the writer knows which is meant.',
  },
  'wide-band': {
    severity: 'warning',
    title: 'A band is unusually wide',
    why: 'Bands to be covered are a few inches wide. A band of a foot and more is most often a wrong unit.',
    fix: 'None: the unit that was meant is a guess.',
    source: 'from memory: even a wide cap joint is covered by two strips',
  },
  'until-before-since': {
    severity: 'error',
    title: 'A part was taken away before it was fitted',
    why: 'The date after `until` is when the part went, the one after `since` when it came.',
    fix: 'None: only the writer knows the dates.',
  },
} as const satisfies Record<string, RuleEntry>;
type Found = Located & { readonly rule: keyof typeof rules };

/**
 * What is described in another file is reported there: a model says it once, not each of a thousand rigs that are like
 * it. A rig speaks of its own lines, and of how they go with the inherited ones.
 */
function* check(context: RigContext): Iterable<Found> {
  const { rig } = context.view;
  const own = (item: Item) => item.origin.file === rig.file;
  const { asOf } = context.dates;
  const items = rig.items.filter((item) => !isGone(item, rig, asOf));
  yield* unmeasured(rig, context, own);
  for (const item of rig.items) {
    if (!own(item)) continue;
    if (rig.roof) yield* offRoof(item, rig.roof, context);
    yield* ofItem(item, rig);
  }
  yield* apart(items, rig, own);
  yield* framesPlanned(items, context);
}

export const roofs = family(rules, check);

const about = (rig: Rig, item: Item) => ({
  rig: rig.name,
  item: item.name,
  file: item.origin.file,
  at: item.origin.at,
});

/** Taken away by that day, by its line or by a record. */
function isGone(item: Item, rig: Rig, asOf: string): boolean {
  if (item.until && item.until.last <= asOf) return true;
  return rig.events.some(
    ({ record, last, places }) =>
      record.word === 'removed' && last <= asOf && places.some((place) => place.item === item.name),
  );
}

/** Silent while the `roof` line or a base is half typed: that is reported by itself. */
function* unmeasured(rig: Rig, { declaration }: RigContext, own: (item: Item) => boolean): Iterable<Found> {
  const roofless = rig.items.filter((item) => item.kind === 'edge' || item.kind === 'cap' || item.places.length > 0);
  const unread = declaration?.like !== undefined || declaration?.broken.some(({ word }) => word === 'roof');
  if (!rig.roof && rig.bases.length === 0 && !unread && roofless.length > 0)
    yield {
      rule: 'no-roof',
      rig: rig.name,
      file: rig.file,
      at: rig.nameAt,
      message: `${listed(roofless.map(({ name }) => name))} cannot be measured: say how large the roof is, such as \`roof 28 ft by 8 ft epdm\`.`,
    };
  for (const item of rig.items) {
    if (!own(item) || !isSeam(item.kind) || item.kind === 'edge' || item.kind === 'cap') continue;
    const seam = seamLength(item, rig.roof, rig.policy.units.value);
    if (seam.ok) continue;
    yield {
      rule: 'no-size',
      ...about(rig, item),
      message: `The seam of \`${item.name}\` cannot be measured, ${seam.message}. Write its size, such as \`16 in by 16 in\` (the outside of the flange), or its \`length\`.`,
    };
  }
}

function* offRoof(item: Item, roof: Roof, context: RigContext): Iterable<Found> {
  const { rig } = context.view;
  const text = (nm: number) => lengthText(nm, rig.policy.units.value);
  const size = `${text(roof.along.nm)} by ${text(roof.across.nm)}`;
  const related = [{ file: roof.origin.file, at: roof.origin.at, message: 'The roof.' }];
  const far = centresOffRoof(item, roof);
  if (far.length > 0) {
    const fix = swapped(item, roof, context);
    const copy = item.places.length > 1 ? ` (place ${far.join(', ')})` : '';
    yield {
      rule: 'off-the-roof',
      ...about(rig, item),
      message: `The centre of \`${item.name}\`${copy} lies outside the roof of ${size}. The first measure runs from the front, the second from the curb side${fix ? ': they look swapped' : ''}.`,
      ...(fix ? { fixes: [fix] } : {}),
      related,
    };
    return;
  }
  if (item.kind === 'slide') {
    yield* slideOff(item, roof, rig, text);
    return;
  }
  const over = placedItems([item])
    .map((placed) => ({ placed, by: beyondRoof(placed, roof) }))
    .filter(({ by }) => by > 0)
    .sort((a, b) => b.by - a.by)[0];
  if (over)
    yield {
      rule: 'off-the-roof',
      ...about(rig, item),
      message: `\`${item.name}\`${item.places.length > 1 ? ` (place ${over.placed.copy})` : ''} reaches ${text(over.by)} over the edge of the roof of ${size}: its place is its centre, its size the outside of its flange.`,
      related,
    };
}

/** A slide has to lie within the length of its side. */
function* slideOff(item: Item, roof: Roof, rig: Rig, text: (nm: number) => string): Iterable<Found> {
  const side = item.side === 'front' || item.side === 'rear' ? roof.across : roof.along;
  if (item.size?.shape !== 'rectangle') return;
  const along = side === roof.along ? item.size.along.nm : item.size.across.nm;
  const centre = item.places[0]?.along.nm;
  const over =
    centre === undefined || side !== roof.along
      ? along - side.nm
      : Math.max(along / 2 - centre, centre + along / 2 - side.nm);
  if (over > 0)
    yield {
      rule: 'off-the-roof',
      ...about(rig, item),
      message: `\`${item.name}\` reaches ${text(over)} past the end of its side, which is ${text(side.nm)} long${centre === undefined ? '' : ': its place is its middle, measured from the front'}.`,
      related: [{ file: roof.origin.file, at: roof.origin.at, message: 'The roof.' }],
    };
}

function swapped(item: Item, roof: Roof, { declaration }: RigContext) {
  const [place, ...more] = item.places;
  if (!place?.across || more.length > 0) return undefined;
  if (place.across.nm > roof.along.nm || place.along.nm > roof.across.nm) return undefined;
  const line = declaration?.statements.find(({ at }) => at === item.origin.at);
  const at: Span | undefined = line?.spans.places;
  const text = `at ${place.across.text}, ${place.along.text}`;
  return at && { label: `Write \`${text}\``, at, text };
}

function* ofItem(item: Item, rig: Rig): Iterable<Found> {
  const text = (nm: number) => lengthText(nm, rig.policy.units.value);
  if (item.since && item.until && item.until.last < item.since.first)
    yield {
      rule: 'until-before-since',
      ...about(rig, item),
      message: `\`${item.name}\` went ${item.until.text}, before it came ${item.since.text}.`,
    };
  if (item.wide && item.wide.nm > WIDEST_BAND)
    yield {
      rule: 'wide-band',
      ...about(rig, item),
      message: `The band of \`${item.name}\` is ${text(item.wide.nm)} wide. Bands are a few inches wide, such as \`wide 5 in\`: is the unit right?`,
    };
  const long = item.side === 'curbside' || item.side === 'roadside';
  const kind = long ? 'edge' : 'cap';
  if (item.side === undefined || item.wall || item.kind === 'edge' || item.kind === 'cap') return;
  const sides = rig.items.filter((other) => other.kind === kind);
  if (sides.length > 0 && !sides.some((other) => other.side === item.side))
    yield {
      rule: 'no-such-side',
      ...about(rig, item),
      message: `\`${item.name}\` is on the ${item.side}, where this roof has no ${kind}; it has ${listed(sides.map(({ name }) => name))}. Write \`${kind} ${item.side}\`, or the other side.`,
    };
}

/** Silent about two items that were never there together. */
function* apart(items: readonly Item[], rig: Rig, own: (item: Item) => boolean): Iterable<Found> {
  const text = (nm: number) => lengthText(nm, rig.policy.units.value);
  const needed = leastGap(rig.policy);
  for (const { a, b, gap } of closePairs(placedItems(items), needed)) {
    if (!own(a.item) && !own(b.item)) continue;
    if (after(a.item, b.item) || after(b.item, a.item)) continue;
    const [earlier, later] = inText(a, b);
    const overlaps = gap < 0;
    if (!overlaps && !isSeam(a.item.kind) && !isSeam(b.item.kind)) continue;
    const names = a.item === b.item ? `Two of \`${a.item.name}\`` : `${nameOf(earlier)} and ${nameOf(later)}`;
    yield {
      rule: overlaps ? 'overlap' : 'too-close',
      ...about(rig, later.item),
      message: overlaps
        ? `${names} overlap by ${text(-gap)}: a size or a place is wrong. Sizes are those of the flange, places those of the centre.`
        : `${names} lie ${text(gap)} apart; a margin of ${rig.policy.margin.value.text} around each needs ${text(needed)}. If the measures are right, treat the two as one.`,
      related: [{ file: earlier.item.origin.file, at: earlier.item.origin.at, message: 'The other one.' }],
    };
  }
}

const after = (a: Item, b: Item) => a.since !== undefined && b.until !== undefined && b.until.last <= a.since.first;
const nameOf = ({ item, copy }: Placed) => (item.places.length > 1 ? `\`${item.name}\` ${copy}` : `\`${item.name}\``);

/** The one written earlier first; a line of a rig comes after those of its model. */
function inText(a: Placed, b: Placed): readonly [Placed, Placed] {
  const [x, y] = [a.item.origin, b.item.origin];
  return x.file === y.file && x.at[0] > y.at[0] ? [b, a] : [a, b];
}

/** A planned frame of tape needs more room than sealant. Said at the plan, once for each item that it frames. */
function* framesPlanned(items: readonly Item[], { view, dates }: RigContext): Iterable<Found> {
  const { rig } = view;
  const plans = openPlans(rig, dates.asOf).filter(({ statement }) => statement.word === 'tape');
  if (plans.length === 0) return;
  const text = (nm: number) => lengthText(nm, rig.policy.units.value);
  const placed = placedItems(items);
  const room = leastGap(rig.policy);
  for (const { statement, file, places } of plans) {
    for (const { name } of statement.materials ?? []) {
      const tape = view.material(name);
      if (tape?.kind !== 'tape' || !tape.width) continue;
      const needed = leastGap(rig.policy, tape.width.value.nm);
      for (const place of places) {
        const mine = placed.filter(({ item }) => item.name === place.item && whyNoTape(item) === undefined);
        const gaps = mine.flatMap((one) =>
          placed.filter((other) => other !== one).map((other) => ({ other, gap: gapBetween(one, other) })),
        );
        const nearest = gaps.sort((a, b) => a.gap - b.gap)[0];
        if (!nearest || nearest.gap >= needed || nearest.gap < room) continue;
        yield {
          rule: 'too-close',
          rig: rig.name,
          item: place.item,
          file,
          at: place.at,
          message: `A frame of ${tape.width.value.text} tape around \`${place.item}\` needs ${text(needed)} to the next flange, but ${nameOf(nearest.other)} is ${text(nearest.gap)} away: seal it, or use a narrower tape.`,
          related: [
            { file: nearest.other.item.origin.file, at: nearest.other.item.origin.at, message: 'The next flange.' },
          ],
        };
      }
    }
  }
}
