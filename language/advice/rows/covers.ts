// What is done until the lasting repair: a cover, today.
import { atLeast, type Facts, hasDefect, leaksNow } from '../facts.ts';
import type { InterimRow } from '../row.ts';

const letsWaterIn = (facts: Facts) =>
  facts.word === 'open' || facts.stretch.bare !== undefined || hasDefect(facts, 'soft', 'delaminated');
/** A spout stays open, cover or not; and no other roof part than a seam, the membrane or a gasket is covered. */
const canBeCovered = ({ item }: Facts) => !['drain', 'channel', 'insert'].includes(item.kind);
const needsCover = (facts: Facts) => canBeCovered(facts) && !facts.covered;

const how =
  'Cover it so that rain runs off and air gets at it from the sides; never over the vent of a furnace, heater, fridge or generator that may run.';

export const covers: readonly InterimRow[] = [
  {
    id: 'cover-expired',
    when: 'a temporary cover is past its day, and what is under it is not mended',
    holds: (facts) =>
      needsCover(facts) && facts.stretch.temporary !== undefined && (letsWaterIn(facts) || atLeast(facts, 'lifting')),
    action: 'cover until repaired',
    what: `Look at the cover and put on a new one. ${how}`,
    why: 'A temporary cover holds for its time, not longer.',
    source: 'common practice',
    cites: ['temporary'],
    by: 'temporary',
  },
  {
    id: 'cover-open',
    when: 'found open, soft or delaminated, and not covered',
    holds: (facts) => needsCover(facts) && letsWaterIn(facts) && facts.stretch.bare === undefined,
    action: 'cover until repaired',
    what: `Cover it today. ${how}`,
    why: 'The cover and the repair are two deadlines: the next rain does not wait for the repair.',
    source: 'common practice; what must stay free is from memory',
    cites: ['condition'],
    by: 'finding',
  },
  {
    id: 'cover-bare',
    when: 'bare, and not covered',
    holds: (facts) => needsCover(facts) && facts.stretch.bare !== undefined,
    action: 'cover until repaired',
    what: `Cover it until it is sealed. ${how}`,
    why: 'A bare flange is open to the next rain.',
    source: 'common practice; what must stay free is from memory',
    cites: ['bare'],
    by: 'bare',
  },
  {
    id: 'cover-leak',
    when: 'water came in here, nothing is mended since, and it is not covered',
    holds: (facts) => needsCover(facts) && leaksNow(facts),
    action: 'cover until repaired',
    what: `Cover it in rain until the place is found. ${how}`,
    why: 'Each rain wets the wood again and spoils the next reading.',
    source: 'common practice; what must stay free is from memory',
    cites: ['leak'],
    by: 'leak',
  },
];
