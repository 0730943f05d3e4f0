// What of a shelf goes to another yard, since one purchase counts with all shelves of a fleet.
import { filling, long, sumOf, units, volumeInput, volumeWords } from '../measure/figure.ts';
import type { Fleet } from '../resolve/types.ts';
import type { System } from '../values/display.ts';
import { countedOf } from '../values/numbers.ts';
import type { CuttingList, Sent } from './schema.ts';
import type { Shelves } from './shelves.ts';
import type { Poured } from './sizes.ts';

/**
 * What is left at a yard when its own rigs have theirs goes where it is lacking, in the order of the yards. What is lacking then
 * is bought.
 */
export function pouredSent(
  material: Poured,
  /** What the rigs of each place need, with the spare, in millilitres. */
  wanted: ReadonlyMap<string, number>,
  { places }: Shelves,
  system: System,
): readonly Sent[] {
  const as = material.kind === 'sealant' ? 'volume' : 'liquid';
  const balance = places.map(({ place, onHand }) => ({ place, mL: onHand.mL - (wanted.get(place) ?? 0) }));
  const out: Sent[] = [];
  for (const to of balance) {
    for (const from of balance) {
      const mL = Math.min(from.mL, -to.mL);
      if (mL <= nothing) continue;
      const volume = (name: string, amount: number) =>
        volumeInput(name, { mL: amount, text: volumeWords(amount, system, as) }, system, as);
      const working = {
        rule: `what ${to.place} lacks, as far as ${from.place} has it to spare`,
        formula: 'min(spare, lacking)',
        inputs: [volume('spare', from.mL), volume('lacking', -to.mL)],
      };
      const { figure } = filling(mL, system, working, as);
      out.push({ from: from.place, to: to.place, what: countOf(material, mL) ?? figure.text, amount: figure });
      from.mL -= mL;
      to.mL += mL;
    }
  }
  return out;
}

/** Below a drop: noise of the arithmetic. */
const nothing = 1e-6;

/** A begun cartridge goes along whole. */
function countOf(material: Poured, mL: number): string | undefined {
  const [only, ...others] = material.kind === 'sealant' ? material.cartridges : [];
  if (!only || others.length > 0) return undefined;
  return countedOf(Math.ceil(Number((mL / only.size.mL).toFixed(6))), 'cartridge').text;
}

/** Pieces that are cut from a length on hand of one yard and laid in another. */
export function tapeSent(fleet: Fleet, { stock }: CuttingList, homes: ReadonlyMap<string, string>): readonly Sent[] {
  const system = fleet.policy.units.value;
  return stock.flatMap(({ at, what, cuts }) => {
    const away = new Map<string, (typeof cuts)[number][]>();
    for (const cut of at === undefined ? [] : cuts) {
      const home = homes.get(cut.rig ?? '');
      if (home === undefined || home === at) continue;
      const known = away.get(home);
      if (known) known.push(cut);
      else away.set(home, [cut]);
    }
    return [...away].map(([to, some]): Sent => {
      const whole = some.length === cuts.length;
      const pieces = some.map(({ piece, rig }) => `${piece} of ${rig}`).join(', ');
      const nm = some.reduce((sum, { length }) => sum + Math.round(length.value * units[system].length.nm), 0);
      const lengths = sumOf(
        some.map(({ length }) => length),
        'cut',
      );
      const { figure } = long(nm, system, { rule: 'what is cut from it for there', ...lengths });
      return {
        from: at as string,
        to,
        what: whole ? what : `piece${some.length === 1 ? '' : 's'} ${pieces}, cut from ${what}`,
        amount: figure,
      };
    });
  });
}
