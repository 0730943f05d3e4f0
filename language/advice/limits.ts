// From when, and what not: clocks and dryness before work, and what is excluded.
import { whyNoSealant } from '../measure/treatable.ts';
import { coldNote } from '../seams/clocks.ts';
import { moistureLevels } from '../seams/moisture.ts';
import { type Facts, isWet } from './facts.ts';
import { harmfulAtHand, laying } from './preparation.ts';
import { placeIn } from './reasons.ts';
import type { Action, Excluded, From } from './schema.ts';
import { sentence, whyNoTapeEver, whyNoTapeNow } from './tape.ts';

/** What has to have happened before work here. */
export function allowedFrom(facts: Facts): readonly From[] {
  return [tapeFrom(facts), dryFrom(facts), coatFrom(facts)].filter((from) => from !== undefined);
}

/** Fresh sealant cures before tape goes over it: never before the low figure of its clock, safe from the high one on. */
export function tapeFrom(facts: Facts): From | undefined {
  const { cover, item, scene } = facts;
  const { from, figure, layer } = cover;
  if ((cover.level !== 'no' && cover.level !== 'not yet') || !from || !layer || !figure || figure.value === 'never')
    return undefined;
  if (whyNoTapeEver(facts).length > 0) return undefined;
  const { low, high } = figure.value;
  const same = from.notYet === from.yes;
  const days = same
    ? `not before ${from.yes} (${high.text})`
    : `not before ${from.notYet} (${low.text}), safe from ${from.yes} (${high.text})`;
  const material = layer.material === undefined ? undefined : scene.view.material(layer.material);
  const cold = layer.event && material ? coldNote(layer.event, material) : undefined;
  const { kind, source } = figure.origin;
  return {
    what: 'tape',
    earliest: from.notYet,
    safe: from.yes,
    text: `Tape over ${layer.material} of ${layer.last}: ${days}.${cold ? ` ${cold.text}` : ''}`,
    kind,
    ...(source === undefined ? {} : { source }),
    ...(layer.event ? { record: placeIn(layer.event, item.name) } : {}),
  };
}

function dryFrom(facts: Facts): From | undefined {
  if (!isWet(facts)) return undefined;
  const last = facts.stretch.readings.at(-1);
  const now = last ? `; the last one was ${last.text}` : '; none is recorded';
  return {
    what: 'closing it up',
    text: `Nothing is sealed or taped over it before a reading of ${moistureLevels.tooWet} % or less${now}.`,
    kind: 'published',
    source: 'published: Smulski 1996 (UMass), decay fungi need at least 20 %',
  };
}

function coatFrom({ coats, seam, stretch }: Facts): From | undefined {
  if (!coats.atLimit || seam.role !== 'sealed' || stretch.layers.at(-1)?.kind === 'tape') return undefined;
  const lies = coats.unknown
    ? 'what lies there is unknown'
    : `${coats.count} of at most ${coats.limit?.value} lie there`;
  const { kind, source } = coats.limit?.origin ?? { kind: 'common practice' as const };
  return {
    what: 'another coat',
    text: `No further coat before it is stripped: ${lies}.`,
    kind: kind === 'record' || !coats.unknown ? kind : 'common practice',
    ...(source === undefined ? {} : { source }),
  };
}

/**
 * What is not the choice here, and why: tape, sealant, and, where something is to be laid, materials at hand that these
 * surfaces do not take.
 */
export function excludedHere(action: Action, facts: Facts): readonly Excluded[] {
  const { item, seam } = facts;
  const sealant = whyNoSealant(item);
  if (seam.role === 'open')
    return sealant === undefined ? [] : [{ what: 'sealant and tape', why: sentence(sealant), kind: 'common practice' }];
  return [
    ...whyNoTapeEver(facts),
    ...(seam.role === 'sealed' ? whyNoTapeNow(facts) : []),
    ...(sealant === undefined ? [] : [{ what: 'sealant', why: sentence(sealant), kind: 'common practice' as const }]),
    ...(laying.has(action) ? harmfulAtHand(facts) : []),
  ];
}
