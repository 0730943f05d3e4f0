import { describe, expect, it } from 'vitest';
import {
  breakEven,
  breakEvenYear,
  type Choice,
  certain,
  chanceCheaper,
  type Frame,
  fixedLife,
  leastLasting,
  presentValue,
  renewed,
  type ThreePoint,
  threePoint,
  valued,
  type Work,
  type Yearly,
  type YearlyLife,
  yearlyLife,
} from '../../language/lifecost/index.ts';

// Common practice, no source: 200 to 250 USD of sealant every year or two, against 165 USD of tape once; over ten years
// and more tape is said to be the cheaper by far. Materials alone: no labour, no days off the road. All at 3 %.
const bought = (title: string, material: number): Work => ({ title, material, labour: 0, days: 0 });
const frame: Frame = { years: 10, rate: 0.03, timing: 'end', dayRate: 0 };
const again = (work: Work, life: YearlyLife) => renewed(work.title, { work, life }, { work, life });
const choice = (stream: Choice['streams'][number]): Choice => ({ name: stream.title, streams: [stream] });

const sealant = again(bought('sealant', 225), yearlyLife(threePoint(1, 1.5, 2)));
/** The statement at its weakest: the least sealant, as seldom as it says. */
const least = again(bought('sealant', 200), fixedLife(2));
const tapeLasting = (life: ThreePoint | number) =>
  again(bought('tape', 165), typeof life === 'number' ? fixedLife(life) : yearlyLife(life));
/** Tape that nobody praises: 8 to 25 years. */
const tape = tapeLasting(threePoint(8, 15, 25));

const yearly = (stream: Choice['streams'][number], within = frame) =>
  valued(choice(stream), within).years.map((year) => year.present);

describe('sealant by the calendar against tape once', () => {
  it('ten years of sealant cost 892 USD at least, 1,368 as a rule; tape 167', () => {
    expect(presentValue(least, frame)).toBeCloseTo(200 * (1 + 1.03 ** -2 + 1.03 ** -4 + 1.03 ** -6 + 1.03 ** -8), 9);
    expect(Math.round(presentValue(least, frame))).toBe(892);
    // Lives of one or two years: in each year half of the years before, 1, 0.5, 0.75, ...
    const numbers = [1, 0.5, 0.75, 0.625, 0.6875, 0.65625, 0.671875, 0.6640625, 0.66796875, 0.666015625];
    expect(presentValue(sealant, frame)).toBeCloseTo(
      numbers.reduce((sum, number, year) => sum + (225 * number) / 1.03 ** year, 0),
      9,
    );
    expect(Math.round(presentValue(sealant, frame))).toBe(1368);
    expect(Math.round(presentValue(tape, frame))).toBe(167);
  });

  it('is the cheaper in every course of the years, and from the first day', () => {
    expect(chanceCheaper(valued(choice(tape), frame), valued(choice(sealant), frame))).toBeCloseTo(1, 9);
    expect(breakEvenYear(yearly(tape), yearly(least))).toBe(0);
  });

  it('where the seams were sealed just now, from the second year', () => {
    const later = { ...least, wait: fixedLife(2) };
    expect(breakEvenYear(yearly(tape), yearly(later))).toBe(2);
  });

  it('tape pays if it lasts 2 years, the sealant being bought every second year', () => {
    const pays = (life: number) => presentValue(tapeLasting(life), frame) <= presentValue(least, frame);
    expect(leastLasting(pays, 1, 40)).toBe(2);
  });

  it('tape that lasts the ten years may cost 892 USD, more than five times as much', () => {
    const difference = (price: number) =>
      presentValue(again(bought('tape', price), fixedLife(10)), frame) - presentValue(least, frame);
    expect(breakEven(difference, 0, 5000)).toBeCloseTo(presentValue(least, frame), 6);
  });
});

// The fair rival is not sealing everything by the calendar, but touching up what an inspection finds: 10 to 20 % a year.
describe('touching up against tape', () => {
  const touchUp: Yearly = {
    kind: 'yearly',
    title: 'touch-up',
    work: bought('sealant', 225),
    share: threePoint(0.1, 0.15, 0.2),
    drawn: 'each year',
  };

  it('tape is ahead from the sixth year', () => {
    // 33.75 a year: 33.75 x UPV(5) = 154.56, 33.75 x UPV(6) = 182.83; tape 165.
    expect(breakEvenYear(yearly(tapeLasting(10)), yearly(touchUp))).toBe(6);
    expect(breakEvenYear(yearly(tape), yearly(touchUp))).toBe(6);
  });

  it('tape pays if it lasts ten years of ten, or seven of twenty', () => {
    // Touching up for ten years is 287.90; tape 165 at years 0 and 9 291.46: renewed for a single year, and 3.56 too dear.
    const pays = (within: Frame) => (life: number) =>
      presentValue(tapeLasting(life), within) <= presentValue(touchUp, within);
    expect(leastLasting(pays(frame), 1, 40)).toBe(10);
    expect(leastLasting(pays({ ...frame, years: 20 }), 1, 40)).toBe(7);
  });

  it('a certain share says the same as a mean one', () => {
    const steady = { ...touchUp, share: certain(0.15) };
    expect(presentValue(steady, frame)).toBeCloseTo(presentValue(touchUp, frame), 9);
  });
});
