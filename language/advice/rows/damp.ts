// Damp without a seam that is plainly open: the source first, and nothing closed up.
import { leaksNow } from '../facts.ts';
import type { AdviceRow } from '../row.ts';

export const damp: readonly AdviceRow[] = [
  {
    id: 'wet',
    when: 'found wet, and neither dried since nor found dry by a later look',
    holds: ({ stretch }) => stretch.wet !== undefined,
    action: 'look again',
    what: 'Find where the water comes from, dry the place out, and take readings. Nothing is closed over it.',
    why: 'Closed up, wet wood stays wet and rots: decay fungi need about 20 % moisture.',
    source: 'published: Smulski 1996 (UMass), decay fungi need at least 20 %',
    urgency: 'within days',
    cites: ['wet', 'reading', 'condition', 'leak'],
    by: 'wet',
    asks: 'moisture',
    changes: ['A line `dried …` with a reading of 19 % or less lets it be closed up.'],
  },
  {
    id: 'find-source',
    when: 'the last moisture reading is 20 to 24 %, or 4 points above the one before',
    holds: ({ call }) => call === 'find-source',
    action: 'look again',
    what: 'Find where the water comes from; until then nothing is sealed or taped over it.',
    why: 'From about 20 % on fungi can decay wood, and the trend says more than the figure: something lets water in.',
    source: 'published: Smulski 1996 (UMass), decay fungi need at least 20 %; the rise of 4 points is from memory',
    urgency: 'within days',
    cites: ['reading', 'condition', 'leak'],
    by: 'reading',
    asks: 'moisture',
  },
];

export const watched: readonly AdviceRow[] = [
  {
    id: 'leak',
    when: 'water came in, the item is suspected, and no repair is recorded since',
    holds: leaksNow,
    action: 'look again',
    what: 'Test with water from the bottom up and find the place before anything is sealed.',
    why: 'Leaks are seen inside and lie somewhere outside: a bead on a guess hides the next look.',
    source: 'published: ASTM D7053 (isolated areas, bottom to top); TO 1-1-700 (5 minutes of water, 3 to 5 to drain)',
    urgency: 'within days',
    cites: ['leak', 'condition', 'looked'],
    by: 'leak',
    asks: 'leak',
    changes: ['If the water test shows another place, suspect that one in the record.'],
  },
  {
    id: 're-read',
    when: 'the last moisture reading is 16 to 19 %',
    holds: ({ call }) => call === 're-read',
    action: 'look again',
    what: 'Read it again at the same point, with the same meter.',
    why: 'One reading between 16 and 19 % may be the weather; two that rise are water coming in.',
    source: 'from memory',
    urgency: 'within weeks',
    cites: ['reading', 'condition'],
    by: 'reading',
    asks: 'moisture',
  },
];
