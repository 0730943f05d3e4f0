// Parts that are kept open: gaskets, drains, channels, inserts. They are never sealed or taped.
import { atLeast, type Facts, hasDefect, leaksNow } from '../facts.ts';
import type { AdviceRow } from '../row.ts';

const isGasket = ({ item }: Facts) => item.kind === 'gasket';
const isWay = ({ item }: Facts) => item.kind === 'drain' || item.kind === 'channel';

/** Tightened, and found no better since. */
const tightenedInVain = ({ stretch }: Facts) => {
  const { tightened } = stretch.lastOf;
  return tightened !== undefined && (stretch.condition?.event.last ?? '') > tightened.last;
};

export const openParts: readonly AdviceRow[] = [
  {
    id: 'gasket-leaks',
    when: 'a gasket shows a gap, lets water pass, or is suspected of a leak that nobody has mended',
    holds: (facts) =>
      isGasket(facts) && (atLeast(facts, 'lifting') || hasDefect(facts, 'torn', 'missing') || leaksNow(facts)),
    action: 'replace the part',
    what: 'Lift the unit, clean the bed, lay a new gasket, and tighten its bolts evenly. No sealant round it.',
    why: 'A gasket seals by being pressed; sealant round it holds water in and makes the next service a fight.',
    source: 'common practice',
    urgency: 'within days',
    cites: ['leak', 'condition', 'tightened'],
    by: 'finding',
    changes: [
      'If its bolts turn out loose and the gasket is still even, tightening them may be enough: look after the next rain.',
    ],
  },
  {
    id: 'gasket-again',
    when: 'a gasket was tightened before and was found no better since',
    holds: (facts) => isGasket(facts) && atLeast(facts, 'hairline') && tightenedInVain(facts),
    action: 'replace the part',
    what: 'Lay a new gasket: pressing this one harder flattens it for good. No sealant round it.',
    why: 'A gasket works at about half its free height; once it has taken a set, the bolts no longer help.',
    source: 'from memory',
    urgency: 'within weeks',
    cites: ['condition', 'tightened'],
    by: 'finding',
  },
  {
    id: 'gasket-loose',
    when: 'a gasket was found flattened, loose or split part-way (hairline or cracked)',
    holds: (facts) => isGasket(facts) && atLeast(facts, 'hairline'),
    action: 'touch up',
    what: "Tighten its bolts evenly, to the maker's figure, and look at the height of the gasket. No sealant round it.",
    why: 'Its bolts back out on the road; evenly pressed to about half its height it seals by itself.',
    source: 'from memory',
    urgency: 'within weeks',
    cites: ['condition'],
    by: 'finding',
    changes: ['If it is split through or flat, a new gasket is the repair.'],
  },
  {
    id: 'drain-broken',
    when: 'a drain or channel was found torn, missing or open',
    holds: (facts) =>
      isWay(facts) && (hasDefect(facts, 'torn', 'missing') || facts.word === 'open') && !hasDefect(facts, 'blocked'),
    action: 'replace the part',
    what: 'Fit a new one, so that the water leaves where it should. It stays open: never sealed, never taped.',
    why: 'Where a spout or a channel is gone, the water runs down the wall and into the next seam.',
    source: 'common practice',
    urgency: 'within weeks',
    cites: ['condition'],
    by: 'finding',
  },
  {
    id: 'drain-blocked',
    when: 'a drain or channel was found blocked, or worse than chalky',
    holds: (facts) => isWay(facts) && (atLeast(facts, 'hairline') || leaksNow(facts)),
    action: 'touch up',
    what: 'Clear it and run water through it. It stays open: never sealed, never taped.',
    why: 'Water that cannot leave stands at the seams and finds another way in.',
    source: 'common practice',
    urgency: 'within days',
    cites: ['condition', 'leak'],
    by: 'finding',
  },
  {
    id: 'insert-worn',
    when: 'the insert of a moulding was found shrunk, hard or worse (hairline and on), or is suspected of a leak',
    holds: (facts) => facts.item.kind === 'insert' && (atLeast(facts, 'hairline') || leaksNow(facts)),
    action: 'replace the part',
    what: 'Pull it out whole, look at every screw beneath, renew and bed the bad ones, and press in a new insert, 2 to 4 in longer for shrinkage. Nothing is sealed or taped over it.',
    why: 'It keeps the weather off the screws; whatever covers it holds water on them.',
    source: 'common practice; the allowance for shrinkage is from memory',
    urgency: 'within weeks',
    cites: ['condition', 'leak'],
    by: 'finding',
  },
];
