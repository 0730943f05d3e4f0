// What things are called after a change, by what they were called before.
import type { RigView } from '../resolve/types.ts';

/** Names of one rig. A name that nothing says has changed stays. */
export interface NamesNow {
  readonly rig: string;
  readonly item: (name: string) => string;
}

/** The names after a change, of a rig as it is then and as it was called before. */
export function namesNow(before: string, after: RigView | undefined): NamesNow {
  const items = new Map(
    Object.entries(after?.rig.formerly ?? {}).flatMap(([now, former]) => former.map((name) => [name, now] as const)),
  );
  return { rig: after?.rig.name ?? before, item: (name) => items.get(name) ?? name };
}
