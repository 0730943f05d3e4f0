// What a comparison says of itself: how it was counted, and what it leaves out.
import { endOfMembrane } from '../due/index.ts';
import type { Explained } from '../explain.ts';
import type { RigView } from '../resolve/types.ts';
import type { Basis } from './basis.ts';
import type { Grounds } from './basis-of.ts';

/** In whole sentences; each is true of this comparison. */
export function notesOf(grounds: Grounds, horizon: Explained, view: RigView, asOf: string): readonly string[] {
  const { basis, sealant, kept } = grounds;
  const bad = kept.filter(({ now }) => now !== 'nothing');
  const refusing = kept.filter(({ refuses }) => refuses);
  const names = (which: typeof kept) => which.map(({ item }) => item.name).join(', ');
  return [
    `Over ${horizon.text} (${horizon.rule}), at today's prices, each year's costs at its end, discounted with real interest.`,
    ...pastEnds(view, asOf),
    'All material is counted as bought new, whatever lies on the shelf; where only a share of the work is done, that share of its cost is counted.',
    `At ${basis.limit} coats of ${sealant.material.name} a seam is stripped before the next; what is not known counts as at the limit.`,
    ...(refusing.length > 0
      ? [
          `What lies on ${names(refusing)} takes no ${sealant.material.name}: stripping it is counted, what it costs to get its film off is not.`,
        ]
      : []),
    'A share of the work is reckoned at the cost of the whole by length: a short touch-up of a mount may cost more.',
    ...(bad.length > 0 ? [`What the findings ask for now on ${names(bad)} is in every way.`] : []),
    ...(isShort(basis)
      ? ['What lasts less than a year is counted as lasting a year: nothing is done twice in one.']
      : []),
    'How long things last is reckoned for each way by itself; prices, wages and the day rate are the same for all.',
    ...quoted(grounds),
    ...leaks(basis),
    ...(basis.years === 1
      ? ['Nothing is renewed on the day of parting: within one year only the work of today counts.']
      : []),
    'What a roof is worth at the end is not counted.',
  ];
}

/** Ends that the records give and that are over: they do not shorten the comparison. */
function pastEnds(view: RigView, asOf: string): readonly string[] {
  const { keptUntil } = view.rig.identity;
  const [membrane] = endOfMembrane(view);
  return [
    ...(keptUntil && keptUntil.value.last <= asOf
      ? [`The rig was to be kept until ${keptUntil.value.text}; that is past and ends nothing here.`]
      : []),
    ...(membrane && membrane.date <= asOf
      ? [`The life of the membrane was over by ${membrane.date}: these ways keep its seams, they do not renew it.`]
      : []),
  ];
}

function isShort({ recoatEvery, tape, tapeEdges }: Basis): boolean {
  const lives = [...(tape?.lives ?? []), ...(tapeEdges?.lives ?? [])].map(({ life }) => life);
  return [recoatEvery, ...lives].some(({ least }) => least < 1);
}

function quoted({ basis: { quotes }, tape }: Grounds): readonly string[] {
  const jobs = new Set(quotes.map(({ job }) => job));
  return [
    ...(quotes.length > 0 ? ["A shop's price is taken as it is quoted, with whatever is in it."] : []),
    ...(jobs.has('tape') && tape ? [`The tape that a shop lays is counted to last like ${tape.material.name}.`] : []),
    ...(jobs.has('reroof')
      ? [
          'A new roof comes due in every way when the membrane ends, and the work on the seams goes on after it as before; laid now, it outlasts these years, and what it saves after them is not counted.',
        ]
      : []),
  ];
}

function leaks({ missedLeak }: Basis): readonly string[] {
  const ways = Object.keys(missedLeak);
  return ways.length === 0
    ? ['What a missed leak may cost is not counted: the policy does not say it (`missed-leak`).']
    : [
        `What a missed leak may cost is counted for ${ways.join(', ')}, as the policy says; for any other way it is not.`,
      ];
}
