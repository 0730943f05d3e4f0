// What is no longer a matter of a bead: soft structure, water in it, leaks that come back.
import { hasDefect, leaksNow } from '../facts.ts';
import type { AdviceRow } from '../row.ts';

export const gravest: readonly AdviceRow[] = [
  {
    id: 'structure',
    when: 'found soft or delaminated',
    holds: (facts) => facts.seam.role !== 'open' && hasDefect(facts, 'soft', 'delaminated'),
    action: 'call a professional',
    what: 'Have it opened up and looked at by a professional; put no weight on it, and close nothing over it.',
    why: 'What is soft or has come apart behind the skin is not mended from outside: whatever goes over it shuts the water in.',
    source: 'common practice',
    urgency: 'at once',
    cites: ['condition', 'reading', 'wet'],
    by: 'finding',
    changes: ['Once it has been opened up and mended, record what was replaced and sealed.'],
  },
  {
    id: 'open-up',
    when: 'the last moisture reading is 25 % or more',
    holds: ({ call }) => call === 'open-up',
    action: 'call a professional',
    what: 'Open it up, or have a professional do it: the wood behind may be soft. Nothing is closed over it.',
    why: 'At 25 % wood is well above what decay needs; fibre saturation is at about 30 %.',
    source: 'from memory; fibre saturation is published (USDA Wood Handbook 2010)',
    urgency: 'at once',
    cites: ['reading', 'condition'],
    by: 'reading',
  },
  {
    id: 'leak-third',
    when: 'water came in at the same place for the third time or more, and no repair is recorded since',
    holds: (facts) => leaksNow(facts) && (facts.leak?.earlier ?? 0) >= 2,
    action: 'call a professional',
    what: 'Have a professional find where the water comes in, with a water test or with pressure.',
    why: 'Two repairs at the wrong spot are enough: water runs far behind a skin before it shows.',
    source: 'common practice',
    urgency: 'at once',
    cites: ['leak', 'condition'],
    by: 'leak',
  },
  {
    id: 'leak-second',
    when: 'water came in where it did before, and no repair is recorded since',
    holds: (facts) => leaksNow(facts) && facts.leak?.earlier === 1,
    action: 'look again',
    what: 'Test with water from the bottom up, one area at a time, before anything is sealed again.',
    why: 'A place that leaks again was repaired at the wrong spot. Start low, about 5 minutes of water on each area, then wait and look inside.',
    source: 'published: ASTM D7053 (isolated areas, bottom to top); TO 1-1-700 (5 minutes of water, 3 to 5 to drain)',
    urgency: 'at once',
    cites: ['leak', 'condition'],
    by: 'leak',
    asks: 'leak',
    changes: [
      'What the water test shows decides which seam is done; a place that stays dry under water is no longer suspected.',
    ],
  },
];
