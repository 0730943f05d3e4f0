import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currencies, isCurrency, minorDigits } from '../../language/values/currency.ts';
import {
  compareMoney,
  fromMinor,
  MixedCurrencies,
  Money,
  minorUnits,
  minusMoney,
  moneyOf,
  printMoney,
  readMoney,
  sumMoney,
  timesMoney,
} from '../../language/values/money.ts';
import { certain } from '../../language/values/quantity.ts';
import { expectRoundTrip, quantity, refusal, value } from './reading.ts';

const read = (text: string) => value(readMoney, text);
const codes = fc.constantFrom('USD', 'EUR', 'GBP', 'JPY', 'KWD');
const cents = fc.integer({ min: 0, max: 10 ** 9 });

describe('reading money', () => {
  it('brings the amount to the decimals of the currency and keeps the text', () => {
    expect(read('61.00 USD')).toEqual({ amount: '61.00', currency: 'USD', text: '61.00 USD' });
    expect(read('9.5 USD')).toEqual({ amount: '9.50', currency: 'USD', text: '9.5 USD' });
    expect(read('1450 JPY').amount).toBe('1450');
    expect(read('1.234 KWD').amount).toBe('1.234');
  });

  it('reads what it prints', () => {
    const texts = fc.tuple(cents, codes, fc.boolean()).map(([n, code, trim]) => {
      const { amount } = fromMinor(n, code);
      return `${trim && amount.includes('.') ? amount.replace(/\.?0+$/, '') || '0' : amount} ${code}`;
    });
    expectRoundTrip(texts, readMoney, printMoney, Money);
  });

  it.each([
    ['9.755 USD', 'USD has 2 decimals; write `9.76 USD`', undefined],
    ['9.7500 USD', 'USD has 2 decimals; write `9.75 USD`', '9.75 USD'],
    ['3.5 JPY', 'JPY has no decimals; write `4 JPY`', undefined],
    ['1/2 USD', 'money is written as a decimal; write `0.50 USD`', '0.50 USD'],
    ['1/3 USD', 'money is written as a decimal; write `0.33 USD`', undefined],
    ['61', '`61` has no unit; write `61 USD`', undefined],
    ['61 usd', '`usd` is no unit here; write `USD`', '61 USD'],
    ['3 euros', '`euros` is no unit here; write `EUR`', '3 EUR'],
    ['61 $', '`$` is no currency code; money is expected here, such as `61.00 USD`', undefined],
    ['61 XQZ', '`XQZ` is no unit; money is expected here, such as `61.00 USD`', undefined],
    ['1 450 USD', 'a number has no blanks inside; write `1450 USD`', '1450 USD'],
    ['-5 USD', 'money cannot be negative; write `5 USD`', undefined],
    ['5 USD 3 USD', 'money has one number and one unit, as in `61.00 USD`; `5 USD 3 USD` has 2', undefined],
    ['14 in', 'money is expected here, such as `61.00 USD`; `14 in` is a length', undefined],
    ['48 USD per h', 'money is expected here, such as `61.00 USD`; `48 USD per h` is money per hour or day', undefined],
  ])('refuses %s', (text, message, fix) => {
    expect(refusal(readMoney(quantity(text)))).toEqual([message, fix]);
    if (fix !== undefined) expect(readMoney(quantity(fix)).ok).toBe(true);
  });
});

describe('reckoning with money', () => {
  it('adds exactly where doubles do not', () => {
    expect(certain(sumMoney([read('0.10 USD'), read('0.20 USD')], 'USD')).amount).toBe('0.30');
    expect(certain(sumMoney([], 'EUR'))).toEqual({ amount: '0.00', currency: 'EUR', text: '0.00 EUR' });
  });

  it('sums like whole minor units', () => {
    fc.assert(
      fc.property(fc.array(cents), codes, (list, code) => {
        const sum = certain(
          sumMoney(
            list.map((n) => fromMinor(n, code)),
            code,
          ),
        );
        expect(minorUnits(sum)).toBe(list.reduce((a, b) => a + b, 0));
      }),
    );
  });

  it('refuses to add two currencies', () => {
    expect(refusal(sumMoney([read('1 USD'), read('2 EUR')], 'USD'))[0]).toBe(
      '`2 EUR` cannot be added to USD: no rate of exchange is known',
    );
    expect(() => compareMoney(read('1 USD'), read('1 EUR'))).toThrow(MixedCurrencies);
    expect(() => minusMoney(read('1 USD'), read('1 EUR'))).toThrow(MixedCurrencies);
  });

  it('rounds half up at the minor unit, away from zero', () => {
    expect(moneyOf('0.125', 'USD').amount).toBe('0.13');
    expect(moneyOf('-0.125', 'USD').amount).toBe('-0.13');
    expect(moneyOf('1.005', 'USD').amount).toBe('1.01');
    expect(moneyOf('0.5', 'JPY').amount).toBe('1');
    expect(timesMoney(read('9.75 USD'), '0.065').amount).toBe('0.63');
    expect(timesMoney(read('61 USD'), 1.5).text).toBe('91.50 USD');
  });

  it('compares and subtracts by value', () => {
    expect(compareMoney(read('9 USD'), read('10 USD'))).toBeLessThan(0);
    expect(compareMoney(read('10 USD'), read('10.00 USD'))).toBe(0);
    expect(Money.parse(minusMoney(read('9 USD'), read('10.50 USD'))).amount).toBe('-1.50');
  });

  it('goes to minor units and back', () => {
    expect(minorUnits(read('61.00 USD'))).toBe(6100);
    expect(minorUnits(read('1.234 KWD'))).toBe(1234);
    expect(fromMinor(6100, 'USD').text).toBe('61.00 USD');
    fc.assert(
      fc.property(cents, codes, (n, code) => {
        expect(minorUnits(fromMinor(n, code))).toBe(n);
      }),
    );
  });
});

describe('currencies', () => {
  it('are codes in capitals with their minor digits', () => {
    expect(isCurrency('USD') && isCurrency('CAD') && currencies().size > 100).toBe(true);
    expect(isCurrency('usd') || isCurrency('US') || isCurrency('XQZ')).toBe(false);
    expect([minorDigits('USD'), minorDigits('JPY'), minorDigits('KWD')]).toEqual([2, 0, 3]);
  });

  it('are checked by the schema', () => {
    expect(Money.safeParse({ amount: '1.00', currency: 'XQZ', text: '1 XQZ' }).success).toBe(false);
    expect(Money.safeParse({ amount: '1e3', currency: 'USD', text: '1e3 USD' }).success).toBe(false);
    expect(Money.safeParse({ amount: '1', currency: 'USD', text: '1 USD', more: 1 }).success).toBe(false);
  });
});
