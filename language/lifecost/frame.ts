import type { Basis } from './basis.ts';
import type { Frame } from './streams.ts';

/** What all ways share: costs fall at the ends of the years, at today's prices. */
export function frameOf({ years, rate, dayRate }: Basis): Frame {
  return { years, rate, dayRate, timing: 'end' };
}
