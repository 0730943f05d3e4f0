// How many coats of sealant lie one on another, and how many may.
import type { MaterialsOf, Stated } from '../resolve/types.ts';
import type { Stretch } from './state.ts';

/** How many coats lie on a stretch: its sealant layers, the factory's bead counted. `unknown`: count it as at the limit. */
export function coatsOf(stretch: Stretch): { readonly count: number; readonly unknown: boolean } {
  let count = 0;
  let unknown = false;
  for (const layer of stretch.layers) {
    if (layer.kind !== 'sealant') continue;
    count++;
    unknown ||= layer.known === 'unknown';
  }
  return { count, unknown };
}

/** The coats on a stretch against the limit of the sealant on top. */
export interface CoatCount {
  readonly count: number;
  /** Something below is not known: nothing says that another coat may go on. */
  readonly unknown: boolean;
  /** Missing where the sealant on top is not known; it counts as reached then only if it was said to be `unknown`. */
  readonly limit?: Stated<number>;
  readonly atLimit: boolean;
  readonly overLimit: boolean;
}

/** The coats on a stretch: another one is one too many when it is at the limit. */
export function coatCount(stretch: Stretch, material: MaterialsOf): CoatCount {
  const { count, unknown } = coatsOf(stretch);
  const top = stretch.layers.findLast((layer) => layer.kind === 'sealant' && layer.known === 'named');
  const found = top?.material === undefined ? undefined : material(top.material);
  const limit = found?.kind === 'sealant' ? found.coatsAtMost : undefined;
  const atLimit = count > 0 && (unknown || (limit !== undefined && count >= limit.value));
  return {
    count,
    unknown,
    ...(limit ? { limit } : {}),
    atLimit,
    overLimit: limit !== undefined && count > limit.value,
  };
}
