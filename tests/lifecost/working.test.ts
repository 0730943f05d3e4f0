import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  certain,
  costFormula,
  type Formula,
  type Frame,
  fixedLife,
  once,
  presentFormula,
  presentValue,
  renewed,
  threePoint,
  type Work,
  type Yearly,
} from '../../language/lifecost/index.ts';
import { anyCourse, anyFrame, anyWork, anyYearly } from './arbitraries.ts';

/** mathjs is a general expression evaluator: it works the formula out from its inputs. */
function workedOut({ formula, inputs }: Formula): number {
  const scope = Object.fromEntries(inputs.map(({ name, value }) => [name, value]));
  expect(Object.keys(scope)).toHaveLength(inputs.length);
  return Number(evaluate(formula, scope));
}

const frame: Frame = { years: 6, rate: 0.03, timing: 'end', dayRate: 120 };
const lay: Work = { title: 'lay', material: 230.5, labour: 320, days: 2 };
const renew: Work = { title: 'renew', material: 250, labour: 700, days: 3 };

describe('the formula of a present value', () => {
  it('gives the value, for every stream', () => {
    fc.assert(
      fc.property(fc.oneof(anyCourse, anyYearly), anyFrame(20), fc.constantFrom(0, 0.01), (stream, within, growth) => {
        const grown = { ...stream, growth };
        const formula = presentFormula(grown, within, 'USD');
        expect(formula.value).toBe(presentValue(grown, within));
        expect(Math.abs(workedOut(formula) - formula.value)).toBeLessThan(1e-9 * Math.max(1, formula.value));
      }),
    );
  });

  it('reads like the method: number of works, over discount, by year', () => {
    const tape = renewed('tape', { work: lay, life: [0, 0, 0.5, 0.5] }, { work: renew, life: fixedLife(9) });
    const { formula, inputs } = presentFormula(tape, frame, 'USD');
    expect(formula).toBe('cost_1 * (n_1_0) + cost_2 * (n_2_2 / (1 + rate)^2 + n_2_3 / (1 + rate)^3)');
    expect(inputs.map(({ name, text }) => `${name} = ${text}`)).toEqual([
      'rate = 3 %',
      'cost_1 = 790.50 USD',
      'n_1_0 = 1.0000',
      'cost_2 = 1310.00 USD',
      'n_2_2 = 0.5000',
      'n_2_3 = 0.5000',
    ]);
  });

  it('shows the share of a yearly work by its three points', () => {
    const touchUp: Yearly = {
      kind: 'yearly',
      title: 'touch-up',
      work: lay,
      share: threePoint(0.1, 0.15, 0.2),
      drawn: 'once',
      growth: 0.01,
      through: 2,
    };
    const { formula, inputs } = presentFormula(touchUp, { ...frame, timing: 'middle' }, 'USD');
    expect(formula).toBe(
      'cost_1 * (least + likely + most) / 3 * (1 * (1 + growth)^1 / (1 + rate)^0.5 + 1 * (1 + growth)^2 / (1 + rate)^1.5)',
    );
    expect(inputs.map(({ text }) => text)).toEqual(['3 %', '1 %', '790.50 USD', '10 %', '15 %', '20 %']);
  });

  it('of nothing is 0', () => {
    const never = once('never', lay, 9);
    expect(presentFormula(never, frame, 'USD')).toEqual({ value: 0, formula: '0', inputs: [] });
    const none: Yearly = { kind: 'yearly', title: 'none', work: lay, share: certain(0), drawn: 'once' };
    expect(workedOut(presentFormula(none, frame, 'USD'))).toBe(0);
  });
});

it('the cost of a work adds up', () => {
  fc.assert(
    fc.property(anyWork, anyFrame(3), (work, within) => {
      const formula = costFormula(work, within, 'USD');
      expect(workedOut(formula)).toBeCloseTo(formula.value, 9);
    }),
  );
  expect(costFormula(lay, frame, 'USD').value).toBe(230.5 + 320 + 240);
});
