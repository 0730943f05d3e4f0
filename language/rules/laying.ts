// Rules of laying tape: is a strip longer than every roll, and does it leave a hand any room?

import { tapePieces } from '../measure/pieces.ts';
import { SPLICE_CLEAR } from '../measure/splicing.ts';
import { type OpenPlan, openPlans } from '../resolve/done.ts';
import type { Located } from '../resolve/located.ts';
import type { Item, Rig, Tape } from '../resolve/types.ts';
import { lengthText } from '../values/display.ts';
import { listed } from './listed.ts';
import { family, type RigContext, type RuleEntry } from './rule.ts';
import { clearOf, splitOver } from './splicing.ts';

const rules = {
  'longer-than-rolls': {
    severity: 'information',
    title: 'A strip is longer than every roll on sale',
    why: 'It has to be spliced: as few times as possible, at least 12 in from corners and openings, the forward part over the rear part.',
    fix: 'Splits an edge that a plan names whole into stretches that one roll each makes, clear of corners and openings. Where the splice lies is for a person to confirm.',
    source: 'common practice',
  },
  'no-slack': {
    severity: 'information',
    title: 'A band leaves no room beside the strip',
    why: 'Tape that is laid by hand wanders. With less than 1/4 in to spare along a side edge, use a wider tape or one strip more.',
    fix: 'None: a wider tape or one strip more is a choice of the owner, and both cost.',
    source: 'from memory',
  },
} as const satisfies Record<string, RuleEntry>;
type Found = Located & { readonly rule: keyof typeof rules };

function* check({ view, dates }: RigContext): Iterable<Found> {
  const { rig } = view;
  const items = new Map(rig.items.map((item) => [item.name, item]));
  for (const plan of openPlans(rig, dates.asOf)) {
    if (plan.statement.word !== 'tape') continue;
    for (const { name } of plan.statement.materials ?? []) {
      const tape = view.material(name);
      if (tape?.kind === 'tape') yield* planned(plan, tape, rig, items);
    }
  }
}

export const laying = family(rules, check);

function* planned(plan: OpenPlan, tape: Tape, rig: Rig, items: ReadonlyMap<string, Item>): Iterable<Found> {
  const system = rig.policy.units.value;
  const text = (nm: number) => lengthText(nm, system);
  for (const place of plan.places) {
    const item = items.get(place.item);
    const got = item && tapePieces(item, rig, rig.policy, tape, place, system);
    if (!item || !got?.ok) continue;
    const where = { rig: rig.name, item: item.name, file: plan.file, at: place.at };
    const { strips, pieces } = got.value;
    if (strips?.noSlack)
      yield {
        rule: 'no-slack',
        ...where,
        message: `On \`${item.name}\`, ${strips.count === 1 ? `a strip of ${tape.width?.value.text} leaves` : `${strips.count} strips of ${tape.width?.value.text} leave`} ${strips.slack.nm === 0 ? 'nothing' : text(strips.slack.nm)} to spare beyond the band and ${rig.policy.margin.value.text} on each side: a wider tape is easier to lay.`,
      };
    const longest = Math.max(0, ...pieces.map(({ nm }) => nm));
    const roll = Math.max(0, ...tape.rolls.map(({ size }) => size.nm)) - rig.policy.rollWaste.value.nm;
    if (roll <= 0 || longest <= roll) continue;
    const lap = tape.endLap.value;
    // n parts of at most one roll each, lapped n - 1 times.
    const parts = roll > lap.nm ? Math.ceil((longest - lap.nm) / (roll - lap.nm)) : undefined;
    const most = `${text(roll)} of its longest roll can be used`;
    yield {
      rule: 'longer-than-rolls',
      ...where,
      message: `\`${item.name}\` takes a strip of ${text(longest)} and ${most}. ${parts === undefined ? `With an end lap of ${lap.text} no splice makes it.` : spliced(parts, longest, roll, item, rig, tape)}`,
      related: tape.rolls.map(({ origin, size }) => ({
        file: origin.file,
        at: origin.at,
        message: `A roll of ${size.text}.`,
      })),
      fixes: splitOver(plan, item, rig, roll - 2 * lap.nm),
    };
  }
}

/** How to splice; for one splice also where, as far as the places of openings are known. */
function spliced(parts: number, longest: number, roll: number, item: Item, rig: Rig, tape: Tape): string {
  const system = rig.policy.units.value;
  const text = (nm: number) => lengthText(nm, system);
  const how = `the forward part over the rear part by ${tape.endLap.value.text}, at least ${text(SPLICE_CLEAR)} from corners and openings`;
  if (parts > 2) return `Splice it ${parts - 1} times, ${how}.`;
  if (item.kind !== 'edge' || !rig.roof) return `Splice it once, ${how}.`;
  const { clear, near } = clearOf(item, rig, longest - roll, roll);
  const spans = clear.map(([from, to]) => `${text(from)} to ${text(to)}`).join(' or ');
  if (clear.length === 0) return `Splice it once, ${how}; no place is that far from ${listed(near)}.`;
  const why = near.length > 0 ? ` (clear of ${listed(near)})` : '';
  return `Splice it once, ${spans} from the front${why}: ${how}.`;
}
