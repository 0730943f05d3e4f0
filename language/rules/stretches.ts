// Rules of stretches: `from 6 ft to 9 ft` of a seam has to lie on it.
import type { Fix, Span } from '../grammar/problem.ts';
import { seamLength } from '../measure/length.ts';
import type { Located } from '../resolve/located.ts';
import type { Place, Rig } from '../resolve/types.ts';
import type { Stretch } from '../statements/slots/shapes.ts';
import type { Target } from '../statements/slots/targets.ts';
import { lengthText } from '../values/display.ts';
import { family, type RigContext, type RuleEntry } from './rule.ts';

const rules = {
  'stretch-reversed': {
    severity: 'warning',
    title: 'A stretch runs backwards',
    why: 'A stretch is written from its beginning: from the front along a side, from the curb side along a cap.',
    fix: 'Writes the two measures the other way round.',
  },
  'stretch-past-end': {
    severity: 'warning',
    title: 'A stretch reaches past the end of its seam',
    why: 'What lies beyond the end is not counted. The stretch, the roof or the item has a wrong measure.',
    fix: 'None: only the writer knows which measure is wrong.',
  },
} as const satisfies Record<string, RuleEntry>;
type Found = Located & { readonly rule: keyof typeof rules };

/** A stretch as it was written, with its place and the places it became. */
interface Written {
  readonly file: string;
  readonly stretch: Stretch;
  readonly at: Span;
  /** Where `from … to …` stands alone, so that it can be replaced. */
  readonly alone: boolean;
  readonly places: readonly Place[];
}

function* check({ view }: RigContext): Iterable<Found> {
  for (const written of stretchesOf(view.rig)) {
    yield* reversed(written, view.rig);
    yield* pastEnd(written, view.rig);
  }
}

export const stretches = family(rules, check);

function* stretchesOf(rig: Rig): Iterable<Written> {
  for (const { record, file, places, findings } of rig.events) {
    if (record.word === 'stored' || record.word === 'trip') continue;
    yield* ofTargets(record.targets, record.spans.targets, file, places);
    for (const { line, places: seen } of findings) {
      yield* ofTargets(line.targets, line.spans.targets, file, seen);
      const at = line.spans.stretch;
      if (line.stretch && at) yield { file, stretch: line.stretch, at, alone: true, places: seen };
    }
  }
  for (const { statement, file, places } of rig.plans)
    yield* ofTargets(statement.targets, statement.spans.targets, file, places);
}

/** A stretch behind a target has no place of its own: it is what stands between that name and the next one. */
function* ofTargets(
  targets: readonly Target[] | undefined,
  whole: Span | undefined,
  file: string,
  places: readonly Place[],
): Iterable<Written> {
  for (const [i, target] of (targets ?? []).entries()) {
    if (!target.stretch) continue;
    const last = i === (targets ?? []).length - 1;
    const at: Span = last && whole ? [target.at[1] + 1, whole[1]] : target.at;
    yield {
      file,
      stretch: target.stretch,
      at,
      alone: last && whole !== undefined,
      places: target.name === 'all' || target.name === 'rest' ? [] : places.filter((place) => place.at === target.at),
    };
  }
}

function* reversed({ stretch, at, alone, file, places }: Written, rig: Rig): Iterable<Found> {
  const { low, high } = stretch;
  if (low.nm <= high.nm) return;
  const better = `from ${high.text} to ${low.text}`;
  const fixes: Fix[] = alone ? [{ label: `Write \`${better}\``, at, text: better }] : [];
  yield {
    rule: 'stretch-reversed',
    rig: rig.name,
    ...(places[0] ? { item: places[0].item } : {}),
    file,
    at,
    message: `This stretch runs backwards: write \`${better}\`.`,
    fixes,
  };
}

/** Said of the first seam that is too short. */
function* pastEnd({ stretch, at, file, places }: Written, rig: Rig): Iterable<Found> {
  const end = stretch.low.nm > stretch.high.nm ? stretch.low : stretch.high;
  const system = rig.policy.units.value;
  for (const { item: name } of places) {
    const item = rig.items.find((one) => one.name === name);
    const seam = item && seamLength(item, rig.roof, system);
    if (!item || !seam?.ok || end.nm <= seam.value.each.nm) continue;
    const length = lengthText(seam.value.each.nm, system);
    yield {
      rule: 'stretch-past-end',
      rig: rig.name,
      item: name,
      file,
      at,
      message: `\`${name}\` is ${length} long; this stretch ends at ${end.text}. Write at most \`to ${length}\`, or mend the measure of the roof or the item.`,
      related: [{ file: item.origin.file, at: item.origin.at, message: 'The seam.' }],
    };
    return;
  }
}
