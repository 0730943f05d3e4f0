// What a look at the roof (`found`, `inspected`) says of its seams.
import type { Event, MaterialsOf, Place } from '../resolve/types.ts';
import type { Used } from '../statements/slots/amounts.ts';
import { type Condition, conditions, defects } from '../statements/words.ts';
import type { Percent } from '../values/numbers.ts';
import { layersOf } from './layers.ts';
import { damp } from './moisture.ts';
import type { Layer, SeamState, Stretch } from './state.ts';
import { changed } from './stretches.ts';

type Line = Event['findings'][number]['line'];
/** A line of findings about one item. */
interface Seen {
  readonly line: Line;
  readonly place: Place;
}

export const rank = (word: Condition): number => conditions.indexOf(word);

/** The level that a line names: its condition, or the worst of what its defects stand for. */
export function levelOf({ seen }: Line): Condition | undefined {
  if (seen.condition) return seen.condition;
  const levels = seen.defects.map((defect): Condition => defects[defect]);
  return levels.sort((a, b) => rank(b) - rank(a))[0];
}

/**
 * An item after a look. Of several lines about one place the worst holds, in whatever order they stand. A line about a
 * part of an item is a look at the whole of it, but gives only that part a condition; where it says `not-seen`, nobody
 * looked. `places` are those that the record itself names: looked at, and no condition is recorded by that.
 */
export function lookedAt(
  state: SeamState,
  event: Event,
  places: readonly Place[],
  lines: readonly Seen[],
  material: MaterialsOf,
): SeamState {
  let { stretches } = state;
  const [only] = lines;
  if (only && lines.length === 1 && places.length === 0 && isPlain(only)) {
    // By far the commonest look: one line about the whole of an item, with nothing but a condition.
    return { ...state, stretches: stretches.map((stretch) => judged(looked(stretch, event), only.line, event)) };
  }
  const unseen = lines.filter(({ line }) => line.seen.notSeen);
  const seen = lines.filter(({ line }) => !line.seen.notSeen);
  for (const { place } of unseen) stretches = changed(stretches, place, (stretch) => notSeen(stretch, event));
  const look = (stretch: Stretch) => (stretch.notSeen?.last === event ? stretch : looked(stretch, event));
  for (const place of places) stretches = changed(stretches, place, look);
  if (seen.length > 0) stretches = stretches.map(look);
  for (const { line, place } of seen) {
    if (line.seen.wet)
      stretches = changed(stretches, place, (s) => ({ ...s, wet: { since: s.wet?.since ?? event, last: event } }));
  }
  const worstFirst = [...seen].sort((a, b) => levelRank(b.line) - levelRank(a.line));
  for (const { line, place } of worstFirst) {
    stretches = changed(stretches, place, (stretch) => judged(looked(stretch, event), line, event));
  }
  for (const { line, place } of seen) {
    if (line.materials) stretches = changed(stretches, place, (s) => withFound(s, event, line.materials, material));
    const { moisture } = line;
    if (moisture) stretches = changed(stretches, place, (s) => withReading(s, event, moisture, line.inside));
  }
  return { ...state, stretches };
}

const isPlain = ({ line, place }: Seen) =>
  place.from === undefined && !line.seen.notSeen && !line.seen.wet && !line.materials && !line.moisture;

const levelRank = (line: Line) => {
  const level = levelOf(line);
  return level === undefined ? -1 : rank(level);
};

function notSeen(stretch: Stretch, event: Event): Stretch {
  return { ...stretch, notSeen: { since: stretch.notSeen?.since ?? event, last: event } };
}

function looked(stretch: Stretch, event: Event): Stretch {
  if (stretch.looked === event && !stretch.notSeen) return stretch;
  const lastOf = { ...stretch.lastOf, [event.record.word]: event };
  // Taking a field out costs more than all the rest, and few stretches have it.
  if (!stretch.notSeen) return { ...stretch, looked: event, lastOf };
  const { notSeen: _, ...rest } = stretch;
  return { ...rest, looked: event, lastOf };
}

function dry({ wet: _, ...rest }: Stretch): Stretch {
  return rest;
}

/** A stretch with what a line says of it. Lines of one record come worst first, so that a better one adds no condition. */
function judged(stretch: Stretch, line: Line, event: Event): Stretch {
  const { seen } = line;
  const again = stretch.condition?.event === event && stretch.condition.word !== 'renewed';
  const level = levelOf(line);
  const named = again ? [...new Set([...stretch.defects, ...seen.defects])].sort() : [...seen.defects].sort();
  if (level === undefined) return stretch;
  const { wet } = stretch;
  const stillWet = !wet || wet.last === event || damp(line.moisture);
  const kept = stillWet ? stretch : dry(stretch);
  if (again) return { ...kept, defects: named };
  const onset: Partial<Record<Condition, Event>> = {};
  for (const word of conditions.slice(1, rank(level) + 1)) onset[word] = stretch.onset[word] ?? event;
  return {
    ...kept,
    defects: named,
    onset,
    condition: { word: level, event },
    ...(level === 'sound' ? { sound: event } : {}),
  };
}

/** A stretch with a reading of the moisture meter. */
export function withReading(stretch: Stretch, event: Event, moisture: Percent, inside?: string): Stretch {
  const reading = {
    percent: moisture.percent,
    text: moisture.text,
    ...(inside === undefined ? {} : { inside }),
    event,
  };
  return { ...stretch, readings: [...stretch.readings, reading] };
}

/**
 * A stretch on which materials were found. What was found replaces what was assumed or recorded before, unless the same
 * material lies on top already. A sealant that was found and named is one coat; one found and not known counts as at
 * the limit.
 */
export function withFound(
  stretch: Stretch,
  event: Event,
  used: readonly Used[] | undefined,
  material: MaterialsOf,
): Stretch {
  if (!used || used.length === 0) return stretch;
  const layers = layersOf(event, used, 'sealant', 'found', material);
  const top = stretch.layers.at(-1);
  if (event.record.word === 'inspected' && top && layers.some((layer) => same(layer, top))) return stretch;
  const { bare: _, film: _f, ...rest } = stretch;
  return { ...rest, layers };
}

const same = (a: Layer, b: Layer) => a.kind === b.kind && a.material !== undefined && a.material === b.material;
