// Readings of the moisture meter: what they ask for. Nothing here says that a place is dry.
import type { Percent } from '../values/numbers.ts';
import type { Stretch } from './state.ts';
import { moistureTrend } from './state.ts';

/**
 * Levels of wood moisture in percent. Decay fungi need at least 20 % (Smulski 1996, UMass: published); nothing is closed
 * up above 19 %, re-read from 16 %, opened up from 25 % (from memory).
 */
export const moistureLevels = { reread: 16, tooWet: 19, decay: 20, openUp: 25 } as const;

/** A rise of so many points from one reading to the next asks for the source (from memory). */
export const risePoints = 4;

/** Above what may be closed up. */
export const damp = (moisture: Pick<Percent, 'percent'> | undefined): boolean =>
  moisture !== undefined && moisture.percent > moistureLevels.tooWet;

/** What the last reading asks for, the gravest first: open up, find the source, read again. */
export function moistureCall(stretch: Stretch): 'open-up' | 'find-source' | 're-read' | undefined {
  const last = stretch.readings.at(-1);
  if (!last) return undefined;
  if (last.percent >= moistureLevels.openUp) return 'open-up';
  if (last.percent >= moistureLevels.decay || (moistureTrend(stretch) ?? 0) >= risePoints) return 'find-source';
  return last.percent >= moistureLevels.reread ? 're-read' : undefined;
}
