// Whether seam tape is a choice here, and if not, why.
import { whyNoTape } from '../measure/treatable.ts';
import type { Tape } from '../resolve/types.ts';
import { atLeast, type Facts, hasDefect, isWet } from './facts.ts';
import { type Choice, choose } from './materials.ts';
import type { Excluded } from './schema.ts';

const never = (why: string, kind: Excluded['kind'], source?: string): Excluded => ({
  what: 'tape',
  why,
  kind,
  ...(source === undefined ? {} : { source }),
});

/** Why no tape goes here whatever the condition of the seam: the item, its surfaces, what lies there, the age of the part. */
export function whyNoTapeEver(facts: Facts): readonly Excluded[] {
  const { item, thermoplastic, silicone, part, cover } = facts;
  const out: Excluded[] = [];
  const own = whyNoTape(item);
  if (own !== undefined) out.push(never(sentence(own), 'common practice'));
  if (thermoplastic) {
    const why = 'On a thermoplastic sheet butyl tape lets go in the end: the lasting repair is a weld.';
    out.push(never(why, 'published', 'published: TI 809-53 (US Army, 1999) p. 7-7'));
  }
  if (silicone) out.push(never('Nothing but silicone holds on silicone or its film.', 'common practice'));
  else if (cover.level === 'never') {
    const what = cover.layer?.material ?? 'What lies there';
    out.push(
      never(`${what} takes no tape at any time: it comes off first.`, cover.figure?.origin.kind ?? 'from memory'),
    );
  }
  if (part?.near) {
    const { low, high } = part.life.value;
    const ends = `The part was fitted on ${part.fitted} and lasts ${low.text} to ${high.text}: it goes before the tape does.`;
    out.push(never(ends, 'common practice'));
  }
  return out;
}

/** Why no tape goes here as it is now. */
export function whyNoTapeNow(facts: Facts): readonly Excluded[] {
  const { word, ground } = facts;
  const out: Excluded[] = [];
  if (atLeast(facts, 'lifting') && ground.kind !== 'tape')
    out.push(never(`What is ${word} takes the tape with it: it is stripped first.`, 'common practice'));
  else if (word === 'cracked' && ground.kind !== 'tape')
    out.push(
      never('Cracks through more than half the bead move under the tape: they are cut back first.', 'common practice'),
    );
  if (isWet(facts))
    out.push(
      never('Tape shuts the water in.', 'published', 'published: Smulski 1996 (UMass), decay fungi need at least 20 %'),
    );
  if (hasDefect(facts, 'soft', 'delaminated')) out.push(never('It would go over a soft place.', 'common practice'));
  if (hasDefect(facts, 'backed-out', 'rusted'))
    out.push(never('Screws that work or rust beneath it lift it again: they are renewed first.', 'common practice'));
  if (facts.coats.atLimit && ground.kind === 'sealant') {
    const why = facts.coats.unknown
      ? 'Nobody knows what lies there nor how thick.'
      : 'So thick a bead makes a tent of the tape, and water pumps in the hollow.';
    out.push(never(why, 'common practice'));
  }
  return out;
}

/** Edges, cap joints, joints and slides of the roof: long runs, where tape earns its money (common practice). */
export const isRun = ({ item }: Facts): boolean =>
  !item.wall && (item.kind === 'edge' || item.kind === 'cap' || item.kind === 'joint' || item.kind === 'slide');

/** The tape that may be laid over the stretch as it lies there; undefined where none is a choice. */
export function tapeChoice(facts: Facts): Choice<Tape> | undefined {
  if (whyNoTapeEver(facts).length > 0 || whyNoTapeNow(facts).length > 0) return undefined;
  return choose('tape', facts.ground.surfaces, facts.scene);
}

/** A clause as a sentence. */
export const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
