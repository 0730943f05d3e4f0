import type { RoofPlan } from '../../language/protocol/index.ts';

/**
 * Which plan to show when another comes, and what to say of it: the last good one stays while the text cannot be read whole,
 * so that seams do not come and go under a half-typed line.
 */
export function nextNote(
  good: RoofPlan | undefined,
  next: RoofPlan | null,
  name: string,
): { readonly plan?: RoofPlan; readonly note: string } {
  const before = good && !good.unread ? good : undefined;
  if (next === null) {
    const gone = `The file has no rig \`${name}\` now.`;
    return good ? { plan: good, note: `${gone} This is the plan from before.` } : { note: gone };
  }
  if (!next.unread) return { plan: next, note: '' };
  if (before) return { plan: before, note: 'Some lines cannot be read. This is the plan from before.' };
  return { plan: next, note: 'Some lines cannot be read. What they say is missing here.' };
}
