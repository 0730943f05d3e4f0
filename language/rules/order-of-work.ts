// Rules of the order of work: nothing is left bare, laps shed water, clocks run out before the rig is washed or driven.
import type { Fix, Span } from '../grammar/problem.ts';
import { openPlans } from '../resolve/done.ts';
import type { Located } from '../resolve/located.ts';
import type { Item } from '../resolve/types.ts';
import { allowedAt, clockEnds, firstDay, type Layer, type SeamState } from '../seams/index.ts';
import { addDays } from '../values/calendar.ts';
import { followedUp } from './follow-up.ts';
import { family, type RigContext } from './rule.ts';
import { waitUntil } from './waiting.ts';
import { workedOut } from './worked-out.ts';

const rules = {
  'left-bare': {
    severity: 'warning',
    title: 'Something was stripped or replaced and not sealed again',
    why: 'A bare flange is open to the next rain. It counts from the day after.',
    fix: 'Plans to cover it within a week, unless it was sealed and not written down; what is planned already is named. The finding stays until it is done and recorded.',
    source: 'common practice',
  },
  'lay-order-broken': {
    severity: 'warning',
    title: 'Tape laid under what it should lie over',
    why: 'The wind of the road drives water into a lap that faces it: the rear is laid first, then the sides over it, the front last. Two cures are accepted: stop the later piece 1 in short and bridge each corner with a patch whose edges all get a bead; or leave it on top and give its forward edge a bead.',
    fix: 'None: which of the two cures is taken is a decision, and neither changes what is recorded.',
    source: 'common practice',
  },
  'washed-too-early': {
    severity: 'warning',
    title: 'Washed before the clock of fresh work runs out',
    why: 'Water and brush lift what has not set.',
    fix: 'Moves a planned wash to the first day that the clock allows. A record of what was done stays as it is.',
    source: "the material's `wash`, else from memory",
  },
  'driven-too-early': {
    severity: 'warning',
    title: 'Leaves before the drive clock of fresh work runs out',
    why: 'The wind of the road lifts what has not set.',
    fix: 'Moves the beginning of a coming trip to the first day that the clock allows, which is for a person to agree to. Bookings and what was done stay.',
    source: "the material's `drive`, else from memory",
  },
} as const;

type Found = Located & { readonly rule: keyof typeof rules };

export const orderOfWork = family(rules, function* (context) {
  yield* bare(context);
  yield* laps(context);
  yield* washes(context);
  yield* departures(context);
});

function* bare(context: RigContext): Iterable<Found> {
  const { state } = workedOut(context);
  for (const seam of state.seams.values()) {
    if (seam.role !== 'sealed' || seam.unread || seam.removed) continue;
    const stretch = seam.stretches.find((s) => s.bare !== undefined);
    const event = stretch?.bare;
    if (!event || event.last >= context.dates.asOf) continue;
    const covered = stretch?.temporary && (stretch.temporary.until?.last ?? '9999') >= context.dates.asOf;
    if (covered) continue;
    const target = event.places.find((place) => place.item === seam.item.name);
    const { said, related, ...plan } = followedUp(context, 'cover', [seam.item.name]);
    yield {
      rule: 'left-bare',
      file: event.file,
      at: target?.at ?? event.record.at,
      item: seam.item.name,
      message: `\`${seam.item.name}\` was ${event.record.word} on ${event.last} and nothing was laid on it since: it is open to the rain.${said}`,
      related,
      ...plan,
    };
  }
}

/** Whether the first of two taped seams should lie under the second where they meet: wind first, forward over rear. */
function liesUnder(a: Item, b: Item): boolean {
  const side = (item: Item) => (item.kind === 'cap' ? item.side : item.kind === 'edge' ? 'long' : undefined);
  return (side(a) === 'rear' && side(b) === 'long') || (side(a) === 'long' && side(b) === 'front');
}

const topTape = (seam: SeamState | undefined): Layer | undefined => {
  for (const stretch of seam?.stretches ?? []) {
    const top = stretch.layers.at(-1);
    if (top?.kind === 'tape' && top.by === 'work') return top;
  }
  return undefined;
};

/** A seam that is taped after one that should lie over it. */
function* laps(context: RigContext): Iterable<Found> {
  const { steps } = workedOut(context);
  const laid = new Map<string, { item: Item; file: string; at: readonly [number, number]; day: string }>();
  for (const { event, before, after } of steps) {
    if (event.record.word === 'taped') {
      const here = event.places.flatMap((place) => {
        const seam = before.get(place.item);
        return seam && !seam.unread ? [{ place, item: seam.item }] : [];
      });
      for (const { place, item } of here) {
        for (const over of laid.values()) {
          if (!liesUnder(item, over.item)) continue;
          yield {
            rule: 'lay-order-broken',
            file: event.file,
            at: place.at,
            item: item.name,
            message: `\`${item.name}\` is taped after \`${over.item.name}\`, which should lie over it. Stop it 1 in short and bridge the corners with patches, or give its forward edge a bead.`,
            related: [{ file: over.file, at: over.at, message: `\`${over.item.name}\` was taped here.` }],
          };
        }
      }
      for (const { item } of here)
        laid.set(item.name, { item, file: event.file, at: event.record.at, day: event.last });
    } else {
      for (const name of before.keys()) if (laid.has(name) && topTape(after(name)) === undefined) laid.delete(name);
    }
  }
}

function* washes(context: RigContext): Iterable<Found> {
  const { steps, state } = workedOut(context);
  for (const { event, before } of steps) {
    if (event.record.word !== 'washed') continue;
    const met = soonest(before.values(), event.last, context);
    if (met) yield { ...washed(met), file: event.file, at: event.record.at };
  }
  const { asOf } = context.dates;
  for (const { statement, file } of openPlans(context.view.rig, asOf)) {
    if (statement.word !== 'wash') continue;
    const day = [asOf, statement.on?.first ?? '', statement.after?.first ?? ''].sort().at(-1) as string;
    const met = soonest(state.seams.values(), day, context);
    if (met) yield { ...washed(met), file, at: statement.at, fixes: waitUntil(statement, met.early.firstDay) };
  }
}

/** The seam whose fresh work may be washed last, where that is after a day. */
function soonest(seams: Iterable<SeamState>, day: string, context: RigContext) {
  const met = [...seams].flatMap((seam) => {
    const early = running(seam, 'wash', day, context);
    return early ? [{ seam, early }] : [];
  });
  return met.sort((a, b) => (a.early.firstDay < b.early.firstDay ? 1 : -1))[0];
}

const washed = ({ seam: { item }, early }: NonNullable<ReturnType<typeof soonest>>) => ({
  rule: 'washed-too-early' as const,
  item: item.name,
  message: `\`${item.name}\` was worked on with ${early.material} on ${early.laid}; it may be washed from ${early.from}.`,
  related: [{ file: early.event.file, at: early.event.record.at, message: 'Laid here.' }],
});

function running(seam: SeamState, clock: 'wash' | 'drive', day: string, { view }: RigContext) {
  for (const { layers } of seam.stretches) {
    for (const layer of layers) {
      const { event } = layer;
      if (!event || layer.by !== 'work' || layer.material === undefined || event.last > day) continue;
      const material = view.material(layer.material);
      const figure = material?.clocks[clock];
      if (!figure) continue;
      const ends = clockEnds(event, figure.value);
      const allowed = allowedAt(ends, { date: day });
      // A rig leaves at an hour that is not recorded: then only the safe figure will do.
      if (allowed === 'yes' || (allowed === 'not yet' && clock === 'wash')) continue;
      const earliest = clock === 'wash' ? ends.earliest : ends.safe;
      return {
        material: layer.material,
        laid: event.last,
        firstDay: firstDay(earliest),
        from: earliest.time === undefined ? earliest.date : `${earliest.date} ${earliest.time}`,
        event,
      };
    }
  }
  return undefined;
}

/** Trips and bookings that begin before what was laid may be driven. */
function* departures(context: RigContext): Iterable<Found> {
  const { view } = context;
  const { steps } = workedOut(context);
  const leaving = [...view.rig.trips, ...(view.booked ?? [])];
  for (const { event, after } of steps) {
    if (event.record.word !== 'sealed' && event.record.word !== 'taped') continue;
    // Whole days only: without a time of day a same-day departure cannot be judged to the hour.
    const next = leaving.find((span) => span.first >= event.last && span.first <= addDays(event.last, 3));
    if (!next) continue;
    for (const { item } of event.places) {
      const seam = after(item);
      const early = seam && running(seam, 'drive', next.first, context);
      if (!early || early.event !== event) continue;
      yield {
        rule: 'driven-too-early',
        file: next.origin.file,
        at: next.origin.at,
        item,
        message: `\`${item}\` was worked on with ${early.material} on ${early.laid}; the rig may be driven from ${early.from}, and it leaves on ${next.first}.`,
        related: [{ file: event.file, at: event.record.at, message: 'Laid here.' }],
        fixes: leaveLater(next.origin.at, early.firstDay, context),
      };
      break;
    }
  }
}

/** A trip of the rig's own block that has not begun may begin later. */
function leaveLater(at: Span, day: string, { declaration, dates }: RigContext): readonly Fix[] {
  const trip = declaration?.statements.find((one) => one.at === at);
  if (trip?.word !== 'trip' || !trip.spans.days || trip.days.low.first <= dates.asOf) return [];
  if (trip.days.high.last < day) return [];
  const text = `${day} to ${trip.days.high.text}`;
  return [{ label: `Wait until ${day}`, at: trip.spans.days, text, unsure: true }];
}
