// What has to come off when a seam is stripped, by what its records say lies there.
import type { Place } from '../resolve/types.ts';
import type { SeamState } from '../seams/index.ts';
import type { Family } from '../statements/words.ts';

/** Families that do not soften with warmth: they are cut and scraped, which takes longer. */
const HARD: ReadonlySet<Family> = new Set(['silicone', 'acetoxy-silicone', 'urethane', 'hybrid', 'hybrid-lap']);

/** Whether anything in a stretch is hard to strip; `unknown` if nothing is recorded there or a layer's family is not known. */
export function hardnessOf(state: SeamState | undefined, { from = 0, to }: Place): 'soft' | 'hard' | 'unknown' {
  const end = to ?? Number.POSITIVE_INFINITY;
  const layers = (state?.stretches ?? [])
    .filter((stretch) => stretch.from < end && (stretch.to ?? Number.POSITIVE_INFINITY) > from)
    .flatMap((stretch) => stretch.layers)
    .filter(({ kind }) => kind === 'sealant' || kind === 'tape');
  if (layers.some(({ family }) => family !== undefined && HARD.has(family))) return 'hard';
  const known = layers.length > 0 && layers.every(({ family }) => family !== undefined);
  return known ? 'soft' : 'unknown';
}
