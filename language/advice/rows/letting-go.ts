// Seams that are bare, open or letting go, and tape that is.
import { atLeast, type Facts, hasDefect } from '../facts.ts';
import type { AdviceRow } from '../row.ts';
import { whyNoTapeEver } from '../tape.ts';

const isSealed = ({ seam }: Facts) => seam.role === 'sealed';
const onTape = ({ ground }: Facts) => ground.kind === 'tape';

export const lettingGo: readonly AdviceRow[] = [
  {
    id: 'bare',
    when: 'stripped, replaced or bedded anew, and nothing was laid since',
    holds: (facts) => isSealed(facts) && facts.stretch.bare !== undefined,
    action: 'recoat',
    what: 'Clean it and seal it: it is bare.',
    why: 'A bare flange is open to the next rain.',
    source: 'common practice',
    urgency: 'at once',
    cites: ['bare', 'silicone', 'wet', 'reading'],
    by: 'bare',
    changes: ['If it was sealed and not written down, a line `sealed … with …` settles it.'],
  },
  {
    id: 'tape-thermoplastic',
    when: 'tape on a thermoplastic sheet was found cracked (its edge up 1/8 in), lifting or open',
    holds: (facts) => isSealed(facts) && onTape(facts) && facts.thermoplastic && atLeast(facts, 'cracked'),
    action: 'call a professional',
    what: 'Have the seam welded by a shop. New butyl tape would bridge the time until then, no more.',
    why: 'On a thermoplastic sheet butyl tape lets go in the end; the lasting repair is a weld.',
    source: 'published: TI 809-53 (US Army, 1999) p. 7-7',
    urgency: 'within days',
    cites: ['condition', 'surface'],
    by: 'repair',
  },
  {
    id: 'part-broken',
    when: 'the part itself is crazed or torn, and was found cracked or worse',
    holds: (facts) =>
      (facts.item.kind === 'opening' || facts.item.kind === 'mount') &&
      hasDefect(facts, 'crazed', 'torn') &&
      atLeast(facts, 'cracked'),
    action: 'replace the part',
    what: 'Fit a new part, bed it and seal it: no bead mends a cracked dome or flange.',
    why: 'Cracks in the plastic run on under any sealant, and water comes through the part, not through the seam.',
    source: 'common practice',
    urgency: 'within days',
    cites: ['condition', 'part'],
    by: 'repair',
    changes: ['If only the sealant is cracked, record it without `crazed` or `torn`.'],
  },
  {
    id: 'part-at-end',
    when: 'a part within two years of the end of its shorter life was found cracked or worse',
    holds: (facts) => isSealed(facts) && facts.part?.near === true && atLeast(facts, 'cracked'),
    action: 'replace the part',
    what: 'Price the part first: the sealant comes off anyway. Fit the new one, bed it and seal it.',
    why: 'Lids, skylights and their like are due at 8 to 12 years; new sealant on an old part is work done twice.',
    source: "common practice; the life is the record's own",
    urgency: 'within weeks',
    cites: ['condition', 'part'],
    by: 'repair',
    changes: ['If the part is newer than the record says, `replaced` or `since` with its day moves its end on.'],
  },
  {
    id: 'tape-letting-go',
    when: 'tape was found lifting or open, on a seam that takes tape',
    holds: (facts) =>
      isSealed(facts) && onTape(facts) && atLeast(facts, 'lifting') && whyNoTapeEver(facts).length === 0,
    action: 'tape',
    what: 'Take off the tape that has let go, clean to the surface, and lay new tape; roll it across first, then along.',
    why: 'A lifted edge is full of dirt and does not stick again; tape is pressed on clean ground.',
    source: 'common practice; the rolling is published (UFGS 07530)',
    urgency: 'within days',
    cites: ['condition', 'work'],
    by: 'repair',
  },
  {
    id: 'open',
    when: 'a seam was found open: daylight, a hole, a bead that is missing',
    holds: (facts) => isSealed(facts) && facts.word === 'open',
    action: 'strip and recoat',
    what: 'Take off what is left, down to the surface, clean it, and seal it anew.',
    why: 'New sealant holds no better than what it lies on; building practice takes all of the old off.',
    source: 'published: Orange County NC section 07 92 00 (remove all old sealant); the times are common practice',
    urgency: 'at once',
    cites: ['condition', 'coats', 'silicone', 'wet', 'reading'],
    by: 'repair',
  },
  {
    id: 'lifting',
    when: 'a seam was found lifting: an edge can be raised with a thumbnail',
    holds: (facts) => isSealed(facts) && facts.word === 'lifting',
    action: 'strip and recoat',
    what: 'Strip it to what holds, clean it, and seal it anew.',
    why: 'What lifts goes on lifting, and the wind of the road peels it; nothing laid over it holds.',
    source: 'common practice; building practice takes all old sealant off (Orange County NC section 07 92 00)',
    urgency: 'within days',
    cites: ['condition', 'coats', 'silicone', 'wet', 'reading'],
    by: 'repair',
  },
];
