// Beads that crack, from the gravest to the slightest: what goes over them, or whether they come off.
import { atLeast, type Facts, hasDefect } from '../facts.ts';
import type { AdviceRow } from '../row.ts';
import { isRun, tapeChoice } from '../tape.ts';

const isSealed = ({ seam }: Facts) => seam.role === 'sealed';
const cracked = (facts: Facts) => isSealed(facts) && atLeast(facts, 'cracked');
const hairline = (facts: Facts) => isSealed(facts) && atLeast(facts, 'hairline');
/** Half of its length at most is worn: the rest is left as it is. */
const onPart = ({ worn }: Facts) => worn <= 0.5;

/** What goes on doing harm where it lies, however sound it looks. */
function isHarmful({ seam, ground, sides }: Facts): boolean {
  if (seam.role !== 'sealed') return false;
  const family = ground.layer?.family;
  if (family === 'asphalt') return sides.some((side) => side === 'epdm' || side === 'tpo' || side === 'pvc');
  return family === 'acetoxy-silicone' && sides.some((side) => side === 'aluminium' || side === 'painted-steel');
}

export const harmful: readonly AdviceRow[] = [
  {
    id: 'harmful-bead',
    when: 'bitumen lies on a rubber or thermoplastic sheet, or acid-cure silicone on metal',
    holds: isHarmful,
    action: 'strip and recoat',
    what: 'Take it off, and seal with what these surfaces take.',
    why: 'Bitumen and such sheets ruin each other, and acid-cure silicone eats metal: it does harm as long as it lies there.',
    source:
      'published: Veterans Affairs specification 07 53 23 (no bitumen on EPDM); MIL-A-46106B section 1.1.1 (acid-cure silicones)',
    urgency: 'within weeks',
    cites: ['underneath', 'surface', 'condition'],
    by: 'inspect',
  },
];

export const crackedBeads: readonly AdviceRow[] = [
  {
    id: 'tape-edge',
    when: 'tape was found wrinkled, blistered or with an edge up (hairline or cracked)',
    holds: (facts) => hairline(facts) && facts.ground.kind === 'tape' && !atLeast(facts, 'lifting'),
    action: 'touch up',
    what: 'Warm it and roll it down; cut a blister, press it flat, and lap a piece of tape over it on a wiped facing.',
    why: 'Small lifts are held by pressure and a patch while the butyl is clean; tape bonds to clean tape.',
    source: 'common practice',
    urgency: 'within weeks',
    cites: ['condition', 'work'],
    by: 'finding',
  },
  {
    id: 'screws',
    when: 'screws were found backed out',
    holds: (facts) => isSealed(facts) && hasDefect(facts, 'backed-out'),
    action: 'touch up',
    what: 'Renew the screws that have backed out, the next size where the wood no longer holds, each bedded in sealant, and cover their heads again.',
    why: 'A screw that works breaks any bead over it; sealing its head without driving it mends nothing.',
    source: 'common practice',
    urgency: 'within weeks',
    cites: ['condition', 'coats'],
    by: 'finding',
    changes: ['A line `tightened …` settles it where nothing else was found.'],
  },
  {
    id: 'coating-worn',
    when: 'the roof coating over the seam was found with hairlines or cracks',
    holds: (facts) => hairline(facts) && facts.ground.kind === 'coating',
    action: 'recoat',
    what: 'Clean it, and coat it again with a coating of the same kind.',
    why: 'What lies on a coating holds as well as the coating does; the same kind is the one that is known to.',
    source: 'common practice',
    urgency: 'by its date',
    cites: ['condition', 'silicone', 'work'],
    by: 'finding',
  },
  {
    id: 'cracked-silicone',
    when: 'a seam with silicone in it was found cracked',
    holds: (facts) => cracked(facts) && facts.silicone,
    action: 'strip and recoat',
    what: 'Cut and scrape it off, take off its film by digester or abrasion, and test with a piece of tape before anything but silicone goes on.',
    why: 'Nothing but silicone holds on silicone or on the film that it leaves.',
    source: 'common practice',
    urgency: 'within weeks',
    cites: ['condition', 'silicone'],
    by: 'finding',
    changes: ['If it is to stay silicone, a neutral-cure silicone may be laid on what is left after it is cut back.'],
  },
  {
    id: 'cracked-unknown',
    when: 'a seam was found cracked, and nobody knows what or how much lies on it',
    holds: (facts) => cracked(facts) && facts.coats.unknown,
    action: 'strip and recoat',
    what: 'Test it for silicone first; then take it all off, clean, and seal it anew.',
    why: 'What is not known counts as at the limit of coats. Test: water beads, a marker pen crawls, tape peels off clean.',
    source: 'common practice; the test is from memory',
    urgency: 'within weeks',
    cites: ['condition', 'underneath', 'coats'],
    by: 'strip',
  },
  {
    id: 'cracked-at-limit',
    when: 'a seam was found cracked, with all the coats that its sealant may have',
    holds: (facts) => cracked(facts) && facts.coats.atLimit,
    action: 'strip and recoat',
    what: 'Take it all off, clean, and seal it anew: no further coat goes on.',
    why: 'A thick bead hides its cracks and lifts as a whole. The factory bead counts as the first coat.',
    source: 'common practice',
    urgency: 'within weeks',
    cites: ['condition', 'coats'],
    by: 'strip',
  },
  {
    id: 'cracked-part',
    when: 'up to half of the length of a seam was found cracked (or with hairlines)',
    holds: (facts) => cracked(facts) && onPart(facts),
    action: 'touch up',
    what: 'Cut the cracks back to what holds, clean, and fill just this stretch; the rest is left as it is.',
    why: 'A crack through more than half the bead goes on moving under a new coat. The rest needs no coat and gets none.',
    source: 'common practice; the half is from memory',
    urgency: 'within weeks',
    cites: ['condition', 'coats', 'worn'],
    by: 'finding',
  },
  {
    id: 'cracked',
    when: 'a seam was found cracked over more than half of its length',
    holds: cracked,
    action: 'recoat',
    what: 'Cut the cracks back to what holds, clean, and put a new coat over the whole of it.',
    why: 'Coat upon coat holds over a clean bead of the same kind whose cracks were cut back.',
    source: 'common practice; building practice would take all of it off (Orange County NC section 07 92 00)',
    urgency: 'within weeks',
    cites: ['condition', 'coats', 'worn'],
    by: 'finding',
  },
];

export const hairlines: readonly AdviceRow[] = [
  {
    id: 'hairline-silicone',
    when: 'a seam with silicone in it was found with hairlines',
    holds: (facts) => hairline(facts) && facts.silicone,
    action: 'touch up',
    what: 'Clean it, and go over the hairlines with neutral-cure silicone; nothing else holds there.',
    why: 'Nothing but silicone holds on silicone. To get rid of it, it is stripped and its film tested.',
    source: 'common practice',
    urgency: 'by its date',
    cites: ['condition', 'silicone'],
    by: 'finding',
  },
  {
    id: 'hairline-unknown',
    when: 'a seam was found with hairlines, and nobody knows what or how much lies on it',
    holds: (facts) => hairline(facts) && facts.coats.unknown,
    action: 'look again',
    what: 'Test it for silicone, and see how thick it lies; nothing goes over it before.',
    why: 'What is not known counts as at the limit of coats. Test: water beads, a marker pen crawls, tape peels off clean.',
    source: 'common practice; the test is from memory',
    urgency: 'by its date',
    cites: ['condition', 'underneath', 'coats'],
    by: 'finding',
    asks: 'silicone',
    changes: ['Once it is cracked, it comes off: what is not known is stripped, not coated over.'],
  },
  {
    id: 'hairline-at-limit',
    when: 'a seam was found with hairlines, with all the coats that its sealant may have',
    holds: (facts) => hairline(facts) && facts.coats.atLimit,
    action: 'strip and recoat',
    what: 'Plan to take it all off in the season, clean, and seal it anew; no further coat goes on, nor tape over so thick a bead.',
    why: 'A thick bead hides its cracks and lifts as a whole; tape over it makes a tent, and water pumps in the hollow.',
    source: 'common practice',
    urgency: 'by its date',
    cites: ['condition', 'coats'],
    by: 'finding',
  },
  {
    id: 'hairline-part',
    when: 'up to half of the length of a seam was found with hairlines (or cracks)',
    holds: (facts) => hairline(facts) && onPart(facts),
    action: 'touch up',
    what: 'Clean just this stretch and go over it with the sealant that lies there; the rest is left as it is.',
    why: 'Hairlines are shallow. A touch-up counts as a coat here, not on the whole seam.',
    source: 'common practice; the half is from memory',
    urgency: 'by its date',
    cites: ['condition', 'coats', 'worn'],
    by: 'finding',
  },
  {
    id: 'hairline-again',
    when: 'an edge, cap, joint or slide was coated before and has hairlines again over more than half of its length, and tape may lie there',
    holds: (facts) => hairline(facts) && isRun(facts) && facts.coats.count >= 2 && tapeChoice(facts) !== undefined,
    action: 'tape',
    what: 'Clean it, and lay seam tape over the bead, an inch or more onto sound ground on both sides.',
    why: 'Long runs are where tape earns its money: each further coat brings the bead nearer to being stripped. Hairlines under wide tape are no harm once it is clean.',
    source: 'common practice',
    urgency: 'by its date',
    cites: ['condition', 'coats'],
    by: 'finding',
    changes: [
      'Another coat is allowed as well: which of the two is cheaper over the years depends on how long the rig is kept and on the days it stands still.',
    ],
  },
  {
    id: 'hairline',
    when: 'a seam was found with hairlines over more than half of its length',
    holds: hairline,
    action: 'recoat',
    what: 'Clean it, and put one more coat of the same kind over the whole of it.',
    why: 'A coat in time, over a clean bead that still holds, keeps the cracks shallow.',
    source: 'common practice; building practice would take all of it off (Orange County NC section 07 92 00)',
    urgency: 'by its date',
    cites: ['condition', 'coats', 'worn'],
    by: 'finding',
  },
];
