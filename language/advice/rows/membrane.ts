// The membrane itself. It is patched, welded or renewed, never taped along a seam.
import { atLeast, type Facts } from '../facts.ts';
import type { AdviceRow } from '../row.ts';

const isField = ({ seam }: Facts) => seam.role === 'field';

export const membrane: readonly AdviceRow[] = [
  {
    id: 'field-thermoplastic',
    when: 'the membrane is a thermoplastic sheet and was found cracked, lifting or open',
    holds: (facts) => isField(facts) && facts.thermoplastic && atLeast(facts, 'cracked'),
    action: 'call a professional',
    what: 'Have it welded by a shop. A butyl patch bridges the time until then, no more.',
    why: 'On a thermoplastic sheet a butyl patch lets go in the end; the lasting repair is a weld.',
    source: 'published: TI 809-53 (US Army, 1999) p. 7-7',
    urgency: 'within days',
    cites: ['condition', 'surface'],
    by: 'repair',
  },
  {
    id: 'field-loose',
    when: 'the membrane was found lifting: loose, flapping or shrunk back',
    holds: (facts) => isField(facts) && facts.word === 'lifting',
    action: 'call a professional',
    what: 'Have a professional say whether it can be bonded again or has to be renewed; drive slowly until then, or not at all.',
    why: 'A loose sheet is torn off by the wind of the road, and what made it let go is under it.',
    source: 'common practice',
    urgency: 'within days',
    cites: ['condition'],
    by: 'finding',
  },
  {
    id: 'field-torn',
    when: 'the membrane was found cracked or open',
    holds: (facts) => isField(facts) && atLeast(facts, 'cracked'),
    action: 'touch up',
    what: 'Clean it well and put a patch on it that laps 2 in onto sound membrane on all sides, its corners rounded.',
    why: 'A cut lets water into the deck; a patch on clean rubber or gelcoat lasts.',
    source: 'common practice',
    urgency: 'within days',
    cites: ['condition', 'surface'],
    by: 'repair',
  },
];

export const membraneWorn: readonly AdviceRow[] = [
  {
    id: 'field-worn',
    when: 'the membrane was found crazed or scuffed (hairline)',
    holds: (facts) => isField(facts) && atLeast(facts, 'hairline'),
    action: 'look again',
    what: 'Look whether it has grown; nothing has to be put on it now.',
    why: 'Crazing of the surface lets no water through; a coating for the sake of the looks decides what holds on the roof ever after.',
    source: 'common practice',
    urgency: 'at the next look',
    cites: ['condition'],
    by: 'finding',
    asks: 'look',
  },
];
