import { describe, expect, it } from 'vitest';
import {
  adjustedReturn,
  annualValue,
  type Choice,
  certain,
  type Frame,
  growingFactor,
  netSavings,
  once,
  presentValue,
  type Renewals,
  savingsToInvestment,
  seriesFactor,
  valued,
  type Work,
  type Yearly,
} from '../../language/lifecost/index.ts';

// The reports that NIST prints beside its own life-cycle cost program: repository usnistgov/blcc at 3cfbded1.
const work = (title: string, material: number): Work => ({ title, material, labour: 0, days: 0 });
const single = (title: string, amount: number, year: number) => once(title, work(title, amount), year);
const yearly = (title: string, amount: number): Yearly => ({
  kind: 'yearly',
  title,
  work: work(title, amount),
  share: certain(1),
  drawn: 'once',
});

// "FEMP energy" example: 15 years, 3 % real, end of year. Energy is taken as given, as a present value.
describe('the FEMP energy example, cheap first against dear first', () => {
  const frame: Frame = { years: 15, rate: 0.03, timing: 'end', dayRate: 0 };
  interface Case {
    readonly initial: Renewals;
    readonly energy: Renewals;
    readonly upkeep: Yearly;
    readonly oneTime: Renewals;
    readonly replacement: Renewals;
    readonly residual: Renewals;
  }
  const base: Case = {
    initial: single('initial', 1500, 0),
    energy: single('energy', 13_784, 0),
    upkeep: yearly('upkeep', 50),
    oneTime: single('one-time', 200, 10),
    replacement: single('replacement', 600, 10),
    residual: single('residual', -450, 15),
  };
  const alternative: Case = {
    initial: single('initial', 3000, 0),
    energy: single('energy', 9419, 0),
    upkeep: yearly('upkeep', 100),
    oneTime: single('one-time', 600, 8),
    replacement: single('replacement', 0, 10),
    residual: single('residual', -750, 15),
  };
  const costOf = (name: string, streams: Case) => {
    const choice: Choice = { name, streams: Object.values(streams) };
    return valued(choice, frame).mean;
  };
  const printed = (figure: number) => Math.round(figure);
  const value = (stream: Renewals | Yearly) => presentValue(stream, frame);

  it('the parts of the base case', () => {
    expect(printed(value(base.upkeep))).toBe(597);
    expect(printed(value(base.oneTime))).toBe(149);
    expect(printed(value(base.replacement))).toBe(446);
    expect(printed(value(base.residual))).toBe(-289);
  });

  it('the parts of the alternative', () => {
    expect(printed(value(alternative.upkeep))).toBe(1194);
    expect(printed(value(alternative.oneTime))).toBe(474);
    expect(printed(value(alternative.residual))).toBe(-481);
  });

  it('life-cycle costs 16,187 and 13,605, annual values 1,356 and 1,140', () => {
    const [first, second] = [costOf('base', base), costOf('alternative', alternative)];
    expect(printed(first)).toBe(16_187);
    expect(printed(second)).toBe(13_605);
    expect(printed(annualValue(first, 0.03, 15))).toBe(1356);
    expect(printed(annualValue(second, 0.03, 15))).toBe(1140);
  });

  it('net savings 2,582, SIR 4.00, AIRR 12.97 %', () => {
    expect(printed(netSavings(costOf('base', base), costOf('alternative', alternative)))).toBe(2582);
    const less = (of: (streams: Case) => Renewals | Yearly) => value(of(base)) - value(of(alternative));
    const savings = less(({ energy }) => energy) + less(({ upkeep }) => upkeep) + less(({ oneTime }) => oneTime);
    const extra = -(
      less(({ initial }) => initial) +
      less(({ replacement }) => replacement) +
      less(({ residual }) => residual)
    );
    const sir = savingsToInvestment(savings, extra);
    expect(sir).toBeCloseTo(4.0, 2);
    expect(adjustedReturn(sir, 0.03, 15) * 100).toBeCloseTo(12.97, 2);
  });
});

// Federal-financed example: nominal 1.03 x 1.001 - 1 = 3.103 %; its figures agree within 0.05 %.
describe('the federal-financed example', () => {
  const rate = 1.03 * 1.001 - 1;
  const within = (figure: number, printed: number) => expect(Math.abs(figure / printed - 1)).toBeLessThan(0.0005);

  it('67,000 a year for 10 years: 568,558', () => {
    within(67_000 * seriesFactor(rate, 10), 568_558);
  });

  it('5,600 a year growing by 0.1 % for 15 years: 66,856, or 5,643 a year', () => {
    const value = 5600 * growingFactor(rate, 0.001, 15);
    within(value, 66_856);
    within(annualValue(value, rate, 15), 5643);
    const stream: Yearly = { ...yearly('upkeep', 5600), growth: 0.001 };
    expect(presentValue(stream, { years: 15, rate, timing: 'end', dayRate: 0 })).toBeCloseTo(value, 8);
  });
});
