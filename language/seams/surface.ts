// What the next layer would lie on.
import { surfaceLeftBy } from '../library/left-behind.ts';
import type { Item, Roof } from '../resolve/types.ts';
import type { Layer, Stretch } from './state.ts';

/** What is on top of a stretch. */
export interface Ground {
  readonly kind: 'sealant' | 'tape' | 'coating' | 'patch' | 'surface';
  /**
   * Names of surfaces as materials speak of them in `bonds-to` and its like: one for a layer; for a bare seam those of
   * both sides, as far as they are known. Empty: nothing is known, so that nothing may be concluded.
   */
  readonly surfaces: readonly string[];
  /** The layer on top, primer apart. */
  readonly layer?: Layer;
  /** Primer that lies on top of it, with nothing over it yet. */
  readonly primer?: Layer;
  /** Beside a bare seam the roof's coating is left. */
  readonly coating?: Layer;
}

/** The surfaces that meet in a seam: `between` as written, else the membrane and the part's own; on a wall not the membrane. */
export function surfacesOf(item: Item, roof: Roof | undefined): readonly string[] {
  if (item.between) return [...new Set(item.between)];
  const membrane = item.wall ? undefined : roof?.surface;
  return [...new Set([membrane, item.surface].filter((name) => name !== undefined))];
}

/** What the next thing on a stretch would lie on. */
export function groundOf(stretch: Stretch, item: Item, roof: Roof | undefined): Ground {
  const top = stretch.layers.findLast((layer) => layer.kind !== 'primer');
  const last = stretch.layers.at(-1);
  const primer = last?.kind === 'primer' ? { primer: last } : {};
  if (top && top.kind !== 'primer') return { kind: top.kind, surfaces: leftBy(top), layer: top, ...primer };
  const { coating } = stretch;
  // A coating hides the membrane beside the seam, the part's own flange comes off bare.
  const sides = surfacesOf(item, roof).map((name) => (coating && name === roof?.surface ? leftBy(coating) : [name]));
  return { kind: 'surface', surfaces: [...new Set(sides.flat())], ...primer, ...(coating ? { coating } : {}) };
}

function leftBy(layer: Layer): readonly string[] {
  if (layer.kind === 'patch' || layer.kind === 'primer' || layer.known === 'undeclared') return [];
  const name = surfaceLeftBy(layer.kind, layer.family);
  return name === undefined ? [] : [name];
}
