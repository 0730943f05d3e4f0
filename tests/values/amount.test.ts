import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { commonDivisor, mixed, readAmount } from '../../language/values/amount.ts';
import { certain } from '../../language/values/quantity.ts';
import { refusal } from './reading.ts';

describe('reading an amount', () => {
  it.each([
    ['14', 14, 1, 'whole'],
    ['-5', -5, 1, 'whole'],
    ['007', 7, 1, 'whole'],
    ['6.5', 65, 10, 'decimal'],
    ['-.25', -25, 100, 'decimal'],
    ['.5', 5, 10, 'decimal'],
    ['1/4', 1, 4, 'fraction'],
    ['2 1/2', 5, 2, 'fraction'],
    ['-2 1/2', -5, 2, 'fraction'],
    ['5/4', 5, 4, 'fraction'],
  ])('%s', (text, n, d, form) => {
    expect(certain(readAmount(text))).toEqual({ n, d, form });
  });

  it('has no negative zero', () => {
    for (const text of ['-0', '-0.0', '-0/4']) expect(Object.is(certain(readAmount(text)).n, 0)).toBe(true);
  });

  it.each([
    ['1/', '`1/` is half a fraction; write it as in `1/2`', undefined],
    ['2 1/', '`2 1/` is half a fraction; write it as in `2 1/2`', undefined],
    ['6.', '`6.` ends with its decimal point; write `6` or `6.5`', '6'],
    ['1/0', '`1/0` divides by 0; write the fraction as in `1/4`', undefined],
    ['2 5/4', 'the fraction of `2 5/4` is one or more; write `3 1/4`', '3 1/4'],
    ['-2 8/4', 'the fraction of `-2 8/4` is one or more; write `-4`', '-4'],
    ['1,450', '`1,450` is no number; write it as in `14`, `6.5` or `2 1/2`', undefined],
    ['', '`` is no number; write it as in `14`, `6.5` or `2 1/2`', undefined],
    ['1234567890123456', '`1234567890123456` has too many digits; 15 are kept exactly', undefined],
    ['0.1234567890123456', '`0.1234567890123456` has too many digits; 15 are kept exactly', undefined],
    ['123456789/98765432', '`123456789/98765432` has too many digits; 15 are kept exactly', undefined],
  ])('refuses %s', (text, message, fix) => {
    expect(refusal(readAmount(text))).toEqual([message, fix]);
  });
});

describe('fractions', () => {
  it('are written as mixed numbers in lowest terms that read back', () => {
    fc.assert(
      fc.property(fc.nat(5000), fc.integer({ min: 1, max: 64 }), (n, d) => {
        const back = certain(readAmount(mixed(n, d)));
        expect(back.n * d).toBe(n * back.d);
        if (back.form === 'fraction') expect(commonDivisor(back.n, back.d)).toBe(1);
      }),
    );
  });
});
