import { describe, expect, it } from 'vitest';
import { onHandOf } from '../../language/estimate/stock.ts';
import { asOf, rigWith, viewOf } from './asked.ts';

function onHand(material: string, ...lines: readonly string[]) {
  const view = viewOf(rigWith('cap front', ...lines));
  const { lengths, mL, questions } = onHandOf(view.rig, view.material(material)!, asOf);
  return {
    lengths: lengths.map(({ length, roll }) => (roll ? `roll ${length.text}` : length.text)),
    ounces: Math.round((mL / 29.5735295625) * 1000) / 1000,
    asked: questions.map(({ rule }) => rule),
  };
}
const lengths = (...lines: readonly string[]) => onHand('Tape4', ...lines);
const ounces = (...lines: readonly string[]) => onHand('Lap', ...lines);

describe('tape on hand', () => {
  it('a length is one piece, pieces and rolls are counted', () => {
    expect(lengths('on-hand Tape4 18 ft, Tape4 3 pieces of 6 ft, Tape4 2 rolls of 50 ft').lengths).toEqual([
      '18 ft',
      '6 ft',
      '6 ft',
      '6 ft',
      'roll 50 ft',
      'roll 50 ft',
    ]);
    expect(lengths('on-hand Tape4 1/2 roll of 50 ft').lengths).toEqual(['25 ft']);
    expect(lengths('on-hand Lap 2 cartridges')).toEqual({ lengths: [], ounces: 0, asked: [] });
  });

  it('a roll of no size is asked about where two are on sale', () => {
    expect(lengths('on-hand Tape4 1 roll')).toEqual({ lengths: [], ounces: 0, asked: ['unknown-stock'] });
  });

  it('is what was bought less what was used since, off the shortest length that holds it', () => {
    const bought = 'bought 2026-03-01 Tape4 1 roll of 50 ft at 60 USD';
    const small = 'bought 2026-03-02 Tape4 1 roll of 25 ft';
    expect(lengths(bought, small).lengths).toEqual(['roll 50 ft', 'roll 25 ft']);
    expect(lengths(bought, small, 'taped 2026-07-05 front with Tape4 used 9 ft').lengths).toEqual([
      'roll 50 ft',
      '16 ft',
    ]);
    expect(lengths(bought, small, 'taped 2026-07-05 front with Tape4 used 1 roll of 50 ft').lengths).toEqual([
      'roll 25 ft',
    ]);
    expect(lengths(bought, 'taped 2026-02-05 front with Tape4 used 9 ft').lengths).toEqual(['roll 50 ft']);
    expect(lengths('bought 2026-11-01 Tape4 1 roll of 50 ft').lengths).toEqual([]);
  });

  it('is what was counted, whatever was bought and used', () => {
    expect(
      lengths(
        'bought 2026-03-01 Tape4 1 roll of 50 ft',
        'on-hand Tape4 7 ft',
        'taped 2026-07-05 front with Tape4 used 9 ft',
      ).lengths,
    ).toEqual(['7 ft']);
  });
});

describe('sealant on hand', () => {
  it('is counted in cartridges, cases and volumes', () => {
    expect(ounces('on-hand Lap 5 cartridges').ounces).toBe(50);
    expect(ounces('on-hand Lap 1 case, Lap 3 fl-oz').ounces).toBe(123);
    expect(ounces('on-hand Lap 2 cartridges of 5 fl-oz').ounces).toBe(10);
    expect(ounces('on-hand Lap 18 ft')).toMatchObject({ ounces: 0, asked: ['unknown-stock'] });
  });

  it('is what was bought less what was used, and never below 0', () => {
    const bought = 'bought 2026-03-01 Lap 4 cartridges';
    expect(ounces(bought, 'sealed 2026-04-20 front with Lap used 1 cartridge').ounces).toBe(30);
    expect(ounces(bought, 'sealed 2026-04-20 front with Lap used 6 cartridges').ounces).toBe(0);
  });

  it('past its best-before date it does not count', () => {
    expect(ounces('on-hand Lap 5 cartridges best-before 2026-09')).toEqual({
      lengths: [],
      ounces: 0,
      asked: ['past-best-before'],
    });
    expect(ounces('on-hand Lap 5 cartridges best-before 2026-10').ounces).toBe(50);
  });
});
