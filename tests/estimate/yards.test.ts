// One purchase for several yards: what lies in each is drawn first for its own rigs, and what goes to another is told.
import { describe, expect, it } from 'vitest';
import type { CutPlan, StockCut } from '../../language/cutting/index.ts';
import { cutAtHome } from '../../language/estimate/at-home.ts';
import { estimateWithNeeds, pooledPurchases } from '../../language/estimate/index.ts';
import { projectOf } from '../project/workspace.ts';
import { recompute } from './recompute.ts';

const materials = `
tape Strip { width 4 in  roll 50 ft at 60 USD  end-lap 2 in  side-lap 1 in }
sealant Lap {
  family solvent-lap
  cartridge 10 fl-oz at 10 USD
  bead 1 in by 1/4 in
}
policy Home { spare 0 % }
`;
const rig = (name: string, plan: string) => `rig ${name} under Home {
  roof 20 ft by 8 ft epdm
  cap front wide 2 in
  opening vent 16 in by 16 in at 6 ft, 4 ft
  found 2026-05-01 all with unknown
  ${plan}
}
`;

/** What is bought together for rigs at Harbour (Auk, Avocet) and Inland (Brant). */
function bought(yards: string, plan: string) {
  const text = `${materials}${rig('Auk', plan)}${rig('Avocet', plan)}${rig('Brant', plan)}fleet Yards under Home {\n  rigs "a.rig"\n${yards}\n}\n`;
  const [found] = projectOf({ 'a.rig': text }).fleets('a.rig');
  if (!found) throw new Error('no fleet');
  const dates = { asOf: '2027-01-10', today: '2027-01-10' };
  const rigs = found.views.map((view) => ({ view, ...estimateWithNeeds(view, dates) }));
  return pooledPurchases(found.fleet, rigs, dates.asOf, 'USD', undefined);
}
const two = (harbour: string, inland = '', own = '') =>
  `  ${own}\n  yard Harbour { ${harbour}\n serves Auk, Avocet }\n  yard Inland { ${inland}\n serves Brant }`;

const shown = (all: ReturnType<typeof bought>) =>
  all.flatMap(({ material, sent = [] }) => sent.map(({ from, to, what }) => `${material}: ${what}, ${from} to ${to}`));
const cartridges = (all: ReturnType<typeof bought>, material: string) =>
  all.find((one) => one.material === material)?.purchase.buy.map(({ count, what }) => `${count} ${what}`);

describe('sealant', () => {
  const seal = 'seal vent with Lap';
  it('that lies in a yard and serves its rigs goes nowhere', () => {
    // Each vent takes 9.4 fl-oz.
    const all = bought(two('on-hand Lap 2 cartridges', 'on-hand Lap 1 cartridge'), seal);
    expect(shown(all)).toEqual([]);
    expect(cartridges(all, 'Lap')).toEqual([]);
  });
  it('that is left goes where it is lacking, before any is bought', () => {
    const all = bought(two('on-hand Lap 5 cartridges'), seal);
    expect(shown(all)).toEqual(['Lap: 1 cartridge, Harbour to Inland']);
    expect(cartridges(all, 'Lap')).toEqual([]);
  });
  it('that does not do for its own yard is sent nowhere', () => {
    const all = bought(two('on-hand Lap 1 cartridge'), seal);
    expect(shown(all)).toEqual([]);
    expect(cartridges(all, 'Lap')).not.toEqual([]);
  });
  it('of the fleet itself is sent to the yards in their order', () => {
    const all = bought(two('', '', 'on-hand Lap 9 cartridges'), seal);
    expect(shown(all)).toEqual(['Lap: 2 cartridges, Yards to Harbour', 'Lap: 1 cartridge, Yards to Inland']);
  });
  it('is bought as if all of it lay in one place', () => {
    const yards = bought(two('on-hand Lap 1 cartridge', 'on-hand Lap 1 cartridge'), seal);
    const one = bought('  on-hand Lap 2 cartridges', seal);
    expect(cartridges(yards, 'Lap')).toEqual(cartridges(one, 'Lap'));
    expect(shown(one)).toEqual([]);
  });
  it('has its amounts worked out by their formulas', () => {
    for (const { sent = [] } of bought(two('on-hand Lap 5 cartridges'), seal))
      for (const { amount } of sent) expect(recompute(amount)).toBeCloseTo(amount.value, 6);
  });
});

describe('tape', () => {
  const tape = 'tape front with Strip';
  it('on hand is cut for the rigs of its yard, and what is sent is told', () => {
    const home = bought(two('', 'on-hand Strip 9 ft'), tape);
    expect(shown(home)).toEqual([]);
    expect(home[0]?.cutting?.stock[0]).toMatchObject({ kind: 'on-hand', at: 'Inland', cuts: [{ rig: 'Brant' }] });
    const away = bought(two('on-hand Strip 9 ft, Strip 9 ft, Strip 9 ft'), tape);
    expect(shown(away)).toEqual(['Strip: 9 ft on hand, Harbour to Inland']);
    expect(away[0]?.purchase.buy).toEqual([]);
  });
  it('that is long enough for two yards is cut, and only the other piece is sent', () => {
    const all = bought(two('on-hand Strip 27 ft'), tape);
    expect(shown(all)).toEqual(['Strip: piece 1 of Brant, cut from 27 ft on hand, Harbour to Inland']);
  });
});

describe('a plan that is cut at home', () => {
  const cut = (kind: 'roll' | 'offcut', id: string, ...parts: readonly [string, number][]): StockCut => ({
    stock: { kind, id, number: 1 },
    length: 100,
    parts: parts.map(([piece, length]) => ({ piece, length })),
    left: 100 - parts.reduce((sum, [, length]) => sum + length, 0),
  });
  const plan = (...cuts: readonly StockCut[]) => ({ cuts, cost: 7 }) as unknown as CutPlan;
  const homes = {
    ofPiece: (piece: string) => (Number(piece) % 2 === 0 ? 'A' : 'B'),
    shelf: [
      { place: 'A', length: 100 },
      { place: 'B', length: 100 },
      { place: 'B', length: 60 },
    ],
  };
  it('changes equal pieces for one another, and nothing else', () => {
    const before = plan(cut('offcut', '0', ['1', 30], ['2', 20]), cut('roll', '0', ['3', 40], ['4', 30]));
    const after = cutAtHome(before, homes);
    expect(after.cuts.map(({ parts }) => parts.map(({ piece }) => piece))).toEqual([
      ['2', '4'],
      ['1', '3'],
    ]);
    expect(after.cuts.map(({ left }) => left)).toEqual(before.cuts.map(({ left }) => left));
    expect(after.cost).toBe(7);
  });
  it('takes the length that lies where its pieces are laid, of equal ones', () => {
    const after = cutAtHome(plan(cut('offcut', '0', ['1', 30], ['3', 20])), homes);
    expect(after.cuts[0]?.stock.id).toBe('1');
  });
  it('leaves parts of spliced pieces where they are', () => {
    const spliced = { ...cut('offcut', '2'), parts: [{ piece: '0', length: 30, part: [1, 2] as const }] };
    const after = cutAtHome(plan(spliced, cut('roll', '0', ['1', 30])), homes);
    expect(after.cuts[0]?.parts).toEqual(spliced.parts);
  });
});
