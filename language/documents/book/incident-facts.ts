// What the records hold about one leak: what was done to protect, to dry, to mend, and what was seen before and after.
import type { Event } from '../../resolve/types.ts';
import { damp, type Leak, levelOf, rank } from '../../seams/index.ts';
import { type Account, evidenceOf, type ReadingTold, readingsOf, type Told } from './account.ts';
import { seenText } from './telling.ts';

export interface Photo {
  readonly path: string;
  readonly event: Event;
  readonly when: 'before' | 'during' | 'after';
  readonly shows: string;
}

export interface Incident {
  readonly leak: Leak;
  /** Items that were suspected or mended. */
  readonly items: ReadonlySet<string>;
  /** Records from the leak on that speak of these items, of the place inside, or of the roof as a whole. */
  readonly after: readonly Told[];
  /** Records before it that found these items worse than sound, or that mended them. */
  readonly before: readonly Told[];
  readonly protections: readonly Event[];
  readonly dryings: readonly Event[];
  readonly readings: readonly ReadingTold[];
  readonly lastRepair?: Event;
  readonly looks: readonly Told[];
  readonly photos: readonly Photo[];
  /** Earlier leaks at the same place inside or with a suspect in common. */
  readonly earlier: readonly { readonly leak: Leak; readonly index: number }[];
}

export function incidentOf(leak: Leak, account: Account): Incident {
  const { events, state } = account;
  const items = new Set([...leak.suspects, ...leak.repairs.flatMap(({ items: mended }) => mended)]);
  const begin = events.indexOf(leak.event);
  const next = state.leaks.find((one) => events.indexOf(one.event) > begin && related(one, leak));
  // What follows a later leak at the same place is told there, unless this one is still open then.
  const end =
    next && leak.closed ? Math.max(events.indexOf(next.event), events.indexOf(leak.closed) + 1) : events.length;
  const mine = events.slice(begin, end).flatMap((event) => toldHere(event, items, event === leak.event));
  const only = (...words: readonly string[]) =>
    mine.filter(({ event }) => words.includes(event.record.word)).map(({ event }) => event);
  const before = events.slice(0, begin).flatMap((event) => worse(event, items));
  const lastRepair = leak.repairs.at(-1)?.event;
  const told = new Set(mine.map(({ event }) => event));
  const place = leak.inside?.toLowerCase();
  const readings = readingsOf(events.slice(begin, end)).filter(
    ({ event, items: at, inside }) =>
      (told.has(event) && at.some((item) => items.has(item))) ||
      event === leak.event ||
      (place !== undefined && inside?.toLowerCase() === place),
  );
  const afterRepair = lastRepair ? events.indexOf(lastRepair) : -1;
  const earlierPhotos = events.slice(0, begin).flatMap((event) => toldHere(event, items, false));
  return {
    leak,
    items,
    after: mine,
    before,
    protections: only('covered'),
    dryings: only('dried'),
    readings,
    ...(lastRepair ? { lastRepair } : {}),
    looks: mine.filter(({ event }) => event.record.word === 'inspected'),
    photos: [
      ...earlierPhotos.flatMap((one) => photosOf(one, 'before')),
      ...mine.flatMap((one) =>
        photosOf(one, afterRepair >= 0 && events.indexOf(one.event) > afterRepair ? 'after' : 'during'),
      ),
    ],
    earlier: state.leaks.flatMap((one, index) =>
      events.indexOf(one.event) < begin && related(one, leak) ? [{ leak: one, index }] : [],
    ),
  };
}

/** The same words for the place, or a suspect in common: as the state of the seams counts them. */
const related = (a: Leak, b: Leak): boolean =>
  (a.inside !== undefined && a.inside.toLowerCase() === b.inside?.toLowerCase()) ||
  a.suspects.some((item) => b.suspects.includes(item));

/** With nobody suspected and nothing mended, all that protects, dries or looks may belong to it. */
function toldHere(event: Event, items: ReadonlySet<string>, itself: boolean): readonly Told[] {
  const any = items.size === 0 && ['covered', 'dried'].includes(event.record.word);
  const places = any || itself ? event.places : event.places.filter(({ item }) => items.has(item));
  const lines = event.findings
    .map(({ line, places: at }) => ({ line, places: at.filter(({ item }) => items.has(item)) }))
    .filter(({ places: at }) => at.length > 0);
  const whole = event.places.length === 0 && ['dried', 'covered'].includes(event.record.word);
  return itself || any || whole || places.length > 0 || lines.length > 0 ? [{ event, places, lines }] : [];
}

function worse(event: Event, items: ReadonlySet<string>): readonly Told[] {
  const lines = event.findings
    .map(({ line, places }) => ({ line, places: places.filter(({ item }) => items.has(item)) }))
    .filter(({ line, places }) => {
      const level = levelOf(line);
      return places.length > 0 && (line.seen.wet || damp(line.moisture) || (level !== undefined && rank(level) > 0));
    });
  const struck = event.record.word === 'struck' && event.places.some(({ item }) => items.has(item));
  return lines.length > 0 || struck ? [{ event, places: [], lines }] : [];
}

function photosOf({ event, lines }: Told, when: Photo['when']): readonly Photo[] {
  const whole = (evidenceOf(event)?.photos ?? []).map((path) => ({ path, event, when, shows: event.record.word }));
  const seen = lines.flatMap(({ line, places }) =>
    (line.photos ?? []).map((path) => {
      const names = [...new Set(places.map(({ item }) => item))].join(', ');
      return { path, event, when, shows: `${names}: ${seenText(line)}` };
    }),
  );
  return [...whole, ...seen];
}
