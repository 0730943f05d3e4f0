// The seams and items that a record is about: names, sets and stretches worked out.

import type { ItemKind } from '../statements/roof.ts';
import type { Stretch } from '../statements/slots/shapes.ts';
import type { Target } from '../statements/slots/targets.ts';
import { sets } from '../statements/words.ts';
import { nearest } from '../values/nearest.ts';
import type { Items } from './items.ts';
import { sideOf } from './items.ts';
import type { Located } from './located.ts';
import type { Place } from './types.ts';

/** Kinds that are sealed and taped; the others are looked at only. */
const seamKinds: ReadonlySet<ItemKind> = new Set(['edge', 'cap', 'slide', 'opening', 'mount', 'joint']);
export const isSeam = (kind: ItemKind) => seamKinds.has(kind);

export interface PlaceContext {
  readonly items: Items;
  readonly curb: 'left' | 'right';
  /** Former names, to the name now. */
  readonly formerly: ReadonlyMap<string, string>;
  readonly file: string;
  readonly rig: string;
  readonly problems: Located[];
}

/**
 * The places of a list of targets. `all` and the plural kinds stand for every item of the kind; in a record of work `all`
 * means the seams, in a look every item. `rest` is what `named` does not hold yet.
 */
export function placesOf(
  targets: readonly Target[] | undefined,
  looking: boolean,
  context: PlaceContext,
  named: ReadonlySet<string> = new Set(),
  stretch?: Stretch,
): Place[] {
  const out: Place[] = [];
  const { items } = context.items;
  for (const target of targets ?? []) {
    const kind = Object.hasOwn(sets, target.name) ? sets[target.name as keyof typeof sets] : undefined;
    const part = target.stretch ?? stretch;
    const from =
      part === undefined ? {} : { from: Math.min(part.low.nm, part.high.nm), to: Math.max(part.low.nm, part.high.nm) };
    if (target.name === 'all' || target.name === 'rest' || kind !== undefined) {
      const already = target.name === 'rest' ? new Set([...named, ...out.map((place) => place.item)]) : undefined;
      for (const item of items) {
        if (kind !== undefined ? item.kind !== kind : !looking && !isSeam(item.kind)) continue;
        if (already?.has(item.name)) continue;
        out.push({ item: item.name, at: target.at, ...from });
      }
      continue;
    }
    const name = nameNow(target.name, context);
    if (items.some((item) => item.name === name)) out.push({ item: name, at: target.at, ...from });
    else if (!context.items.broken.has(name)) unknown(target, context);
  }
  return out;
}

/** The canonical name of a seam as it is now. */
export function nameNow(written: string, context: Pick<PlaceContext, 'curb' | 'formerly' | 'items'>): string {
  if (context.items.items.some((item) => item.name === written)) return written;
  const side = sideOf(written, context.curb);
  return context.formerly.get(written) ?? side ?? written;
}

function unknown(target: Target, context: PlaceContext): void {
  const { items, dropped } = context.items;
  const drop = dropped.get(target.name);
  const close = nearest(
    target.name,
    items.map((item) => item.name),
  );
  context.problems.push({
    file: context.file,
    rule: 'unknown-seam',
    rig: context.rig,
    at: target.at,
    message: drop
      ? `\`${target.name}\` was dropped from this rig by \`without\`.`
      : close === undefined
        ? `${context.rig} has no seam or item \`${target.name}\`. It has ${listed(items.map((item) => item.name))}.`
        : `${context.rig} has no seam or item \`${target.name}\`; did you mean \`${close}\`?`,
    ...(drop ? { related: [{ ...drop, message: 'Dropped here.' }] } : {}),
    ...(close === undefined || drop ? {} : { fixes: [{ label: `Write \`${close}\``, at: target.at, text: close }] }),
  });
}

function listed(names: readonly string[]): string {
  if (names.length === 0) return 'none yet';
  const shown = names
    .slice(0, 8)
    .map((name) => `\`${name}\``)
    .join(', ');
  return names.length > 8 ? `${shown} and ${names.length - 8} more` : shown;
}
