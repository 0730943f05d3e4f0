// What kind of work each planned word is, as far as it decides on when and in what order it is done.
import type { Plan } from '../resolve/types.ts';

export type PlanWord = Plan['statement']['word'];

/** Work that needs a dry, mild roof. Looking, tightening, drying out and a temporary cover do not wait for the season. */
export const seasonal: ReadonlySet<PlanWord> = new Set([
  'wash',
  'strip',
  'seal',
  'tape',
  'replace',
  'rebed',
  'coat',
  'patch',
]);

/** Work that leaves a seam bare. */
export const openers: ReadonlySet<PlanWord> = new Set(['strip', 'replace', 'rebed']);

/** Work that closes a seam. */
export const closers: ReadonlySet<PlanWord> = new Set(['seal', 'tape', 'patch', 'coat']);

/** The order of work on one roof in one visit; tape before sealant, since a bead under tape has to cure first. */
const order: readonly PlanWord[] = [
  'inspect',
  'wash',
  'strip',
  'replace',
  'rebed',
  'tighten',
  'dry',
  'patch',
  'tape',
  'seal',
  'coat',
  'cover',
];

export function rankOf(word: PlanWord): number {
  return order.indexOf(word);
}

/** The word as a noun, for titles: `taping`, `inspection`. */
export const nouns: Readonly<Record<PlanWord, string>> = {
  inspect: 'inspection',
  wash: 'wash',
  dry: 'drying out',
  cover: 'temporary cover',
  strip: 'stripping',
  seal: 'sealing',
  tape: 'taping',
  replace: 'replacement',
  rebed: 'bedding anew',
  coat: 'coating',
  patch: 'patching',
  tighten: 'tightening',
};

/** Names for a sentence: all of a few, else the first with the number of the others. */
export function namesOf(names: readonly string[]): string {
  if (names.length <= 1) return names[0] ?? '';
  if (names.length <= 3) return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  return `${names.slice(0, 2).join(', ')} and ${names.length - 2} more`;
}
