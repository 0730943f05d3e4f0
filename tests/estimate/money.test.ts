import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { estimate } from './asked.ts';

// A second opinion on money: random estimates, every line, tax and sum worked out again with decimal.js, a general
// library of decimals, from the figures of the text.

Decimal.set({ precision: 60, rounding: Decimal.ROUND_HALF_UP });

/** ISO 4217: minor units of the yen, the dollar, the euro, the Kuwaiti dinar. */
const digits = { JPY: 0, USD: 2, EUR: 2, KWD: 3 } as const;
type Currency = keyof typeof digits;

interface Given {
  readonly currency: Currency;
  /** Prices and wages in minor units. */
  readonly roll: number;
  readonly halfRoll: number;
  readonly cartridge: number;
  readonly soap: number;
  readonly wage: number;
  readonly per: 'h' | 'day';
  readonly workday: number;
  /** Tax in thousandths of a per cent. */
  readonly tax: number;
  readonly on: 'materials' | 'all';
  /** Lengths in quarter inches. */
  readonly joint: number;
  readonly count: number;
  readonly along: number;
  readonly across: number;
  /** Rates in feet and square feet an hour, times in minutes. */
  readonly lay: number;
  readonly gun: number;
  readonly wash: number;
  readonly inspect: number;
  readonly setUp: number;
}

const given: fc.Arbitrary<Given> = fc.record({
  currency: fc.constantFrom(...(Object.keys(digits) as Currency[])),
  roll: fc.integer({ min: 1, max: 99_999 }),
  halfRoll: fc.integer({ min: 1, max: 99_999 }),
  cartridge: fc.integer({ min: 1, max: 9999 }),
  soap: fc.integer({ min: 1, max: 9999 }),
  wage: fc.integer({ min: 1, max: 99_999 }),
  per: fc.constantFrom('h' as const, 'day' as const),
  workday: fc.integer({ min: 1, max: 24 }),
  tax: fc.integer({ min: 0, max: 30_000 }),
  on: fc.constantFrom('materials' as const, 'all' as const),
  joint: fc.integer({ min: 48, max: 2300 }),
  count: fc.integer({ min: 1, max: 5 }),
  along: fc.integer({ min: 480, max: 2000 }),
  across: fc.integer({ min: 300, max: 420 }),
  lay: fc.integer({ min: 7, max: 90 }),
  gun: fc.integer({ min: 7, max: 90 }),
  wash: fc.integer({ min: 100, max: 500 }),
  inspect: fc.integer({ min: 100, max: 500 }),
  setUp: fc.integer({ min: 1, max: 90 }),
});

const halfYen: Given = {
  currency: 'JPY',
  roll: 1,
  halfRoll: 1,
  cartridge: 1,
  soap: 1,
  wage: 86_985,
  per: 'h',
  workday: 8,
  tax: 0,
  on: 'all',
  joint: 48,
  count: 1,
  along: 480,
  across: 300,
  lay: 7,
  gun: 90,
  wash: 100,
  inspect: 100,
  setUp: 1,
};

const money = (minor: number, currency: Currency) => new Decimal(minor).div(10 ** digits[currency]);
/** A third has no end in decimals: what is just below a half by the last of 60 digits is the half. */
const shown = (amount: Decimal, currency: Currency) =>
  amount.toDecimalPlaces(30).toFixed(digits[currency], Decimal.ROUND_HALF_UP);
const inches = (quarters: number) => `${quarters / 4} in`;
const percent = (thousandths: number) => new Decimal(thousandths).div(1000);

function text(of: Given): string {
  const price = (minor: number) => `${money(minor, of.currency).toFixed(digits[of.currency])} ${of.currency}`;
  return `
tape Strip {
  width 4 in
  end-lap 2 in
  roll 50 ft at ${price(of.roll)}
  roll 25 ft at ${price(of.halfRoll)}
}
sealant Lap {
  family solvent-lap
  cartridge 10.1 fl-oz at ${price(of.cartridge)}
  bead 1/2 in by 1/4 in
}
cleaner Soap { container 1 gal at ${price(of.soap)}  covers 400 sq-ft per gal }
policy Shop {
  currency ${of.currency}
  labour ${price(of.wage)} per ${of.per}
  workday ${of.workday} h
  tax ${percent(of.tax)} % on ${of.on}
  spare 0 %
  wash-with Soap
  wipe-with Soap
  rate set-up ${of.setUp} min
  rate wash ${of.wash} sq-ft per h
  rate inspect ${of.inspect} sq-ft per h
  rate inspect-inside 7 min
  rate lay ${of.lay} ft per h
  rate gun ${of.gun} ft per h
  rate press none
  rate wipe none
}
rig Heron under Shop {
  roof ${inches(of.along)} by ${inches(of.across)} epdm
  joint seam ${inches(of.joint)} count ${of.count}
  joint trim ${inches(of.joint)} count ${of.count}
  inspect
  tape seam with Soap, Strip
  seal trim with Lap
}
`;
}

/** The likely hours of each task, from the text alone. */
function hoursOf(of: Given): Readonly<Record<string, Decimal>> {
  const feet = (quarters: Decimal) => quarters.div(4 * 12);
  const area = feet(new Decimal(of.along)).times(feet(new Decimal(of.across)));
  // 2 in of end lap at both ends are 16 quarter inches.
  return {
    'set-up': new Decimal(of.setUp).div(60),
    inspect: area.div(of.inspect),
    'inspect-inside': new Decimal(7).div(60),
    wash: area.div(of.wash),
    lay: feet(new Decimal(of.joint + 16).times(of.count)).div(of.lay),
    gun: feet(new Decimal(of.joint).times(of.count)).div(of.gun),
  };
}

const sum = (amounts: readonly string[]) => amounts.reduce((total, amount) => total.plus(amount), new Decimal(0));

describe('the money of an estimate', () => {
  it('is that of decimal.js to the last minor unit, in yen, dollars, euros and dinars', () => {
    fc.assert(
      fc.property(given, (of) => {
        const { currency } = of;
        const { labour, purchases, totals, questions } = estimate(text(of));
        expect(questions).toEqual([]);

        const wage = money(of.wage, currency).div(of.per === 'day' ? of.workday : 1);
        const worked = Object.entries(hoursOf(of)).map(
          ([task, hours]) => [task, shown(hours.times(wage), currency)] as const,
        );
        expect(Object.fromEntries(labour.map(({ task, cost }) => [task, cost!.money.amount]))).toEqual(
          Object.fromEntries(worked),
        );

        const prices: Readonly<Record<string, number>> = {
          'roll of 50 ft': of.roll,
          'roll of 25 ft': of.halfRoll,
          'cartridge of 10.1 fl-oz': of.cartridge,
          'container of 1 gal': of.soap,
        };
        const bought = purchases.flatMap(({ buy }) =>
          buy.map(({ what, count, cost }) => {
            const amount = shown(money(prices[what]!, currency).times(count), currency);
            expect(cost!.money).toMatchObject({ amount, currency });
            return amount;
          }),
        );

        const materials = sum(bought);
        const work = sum(worked.map(([, amount]) => amount));
        const taxed = of.on === 'all' ? materials.plus(work) : materials;
        const tax = new Decimal(shown(taxed.times(percent(of.tax)).div(100), currency));
        const amounts = [totals.materials, totals.labour, totals.tax, totals.total].map((each) => each!.money.amount);
        expect(amounts).toEqual(
          [materials, work, tax, materials.plus(work).plus(tax)].map((each) => shown(each, currency)),
        );
      }),
      // One of them ends at half a yen after a division by three: 48 / 4320 h at 86,985 JPY.
      { numRuns: 300, examples: [[halfYen]] },
    );
  });

  it('buys as many cartridges as a bead of 1/8 sq in takes', () => {
    fc.assert(
      fc.property(given, (of) => {
        const lap = estimate(text(of)).purchases.find(({ material }) => material === 'Lap')!;
        // 10.1 fl oz of 231 / 128 cubic inches.
        const volume = new Decimal(of.joint).div(4).times(of.count).times('0.125');
        const cartridges = volume.div(new Decimal('10.1').times(231).div(128)).ceil();
        expect(lap.buy).toMatchObject([{ what: 'cartridge of 10.1 fl-oz', count: cartridges.toNumber() }]);
      }),
      { numRuns: 100 },
    );
  });
});

describe('half a minor unit', () => {
  const line = (wage: string, rate: string, currency: string) =>
    estimate(`
policy Shop {
  currency ${currency}
  labour ${wage} ${currency} per h
  rate set-up ${rate}
  rate inspect-inside none
  rate inspect none
}
rig Heron under Shop { roof 20 ft by 8 ft epdm  inspect }
`).totals.labour!.money.amount;

  // Worked by hand: a half is rounded up, less than a half down.
  it.each([
    ['50.10', '1 min', 'USD', '0.84'],
    ['0.30', '1 min', 'USD', '0.01'],
    ['0.29', '1 min', 'USD', '0.00'],
    ['30', '1 min', 'JPY', '1'],
    ['29', '1 min', 'JPY', '0'],
    ['0.030', '1 min', 'KWD', '0.001'],
    ['0.029', '1 min', 'KWD', '0.000'],
    ['8.175', '1 h', 'KWD', '8.175'],
    ['64.35', '50 min', 'USD', '53.63'],
  ])('%s an hour for %s in %s is %s', (wage, rate, currency, expected) => {
    expect(line(wage, rate, currency)).toBe(expected);
  });
});
