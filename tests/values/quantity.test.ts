import { describe, expect, it } from 'vitest';
import { certain, quantityFrom, quantityText, refused } from '../../language/values/quantity.ts';

describe('splitting a text into a quantity', () => {
  it.each([
    ['14 in', { terms: [{ amount: '14', unit: 'in' }] }],
    ['14in', { terms: [{ amount: '14', unit: 'in' }] }],
    ['6.5%', { terms: [{ amount: '6.5', unit: '%' }] }],
    ['4', { terms: [{ amount: '4' }] }],
    [
      '8 ft 2 1/2 in',
      {
        terms: [
          { amount: '8', unit: 'ft' },
          { amount: '2 1/2', unit: 'in' },
        ],
      },
    ],
    ['48 USD per h', { terms: [{ amount: '48', unit: 'USD' }], per: 'h' }],
    ['5 per h', { terms: [{ amount: '5' }], per: 'h' }],
    ['5 percent', { terms: [{ amount: '5', unit: 'percent' }] }],
    ['-5 C', { terms: [{ amount: '-5', unit: 'C' }] }],
    ['.5 in', { terms: [{ amount: '.5', unit: 'in' }] }],
    ['1/', { terms: [{ amount: '1/' }] }],
    ['6. in', { terms: [{ amount: '6.', unit: 'in' }] }],
    [
      '1 450 USD',
      {
        terms: [{ amount: '1' }, { amount: '450', unit: 'USD' }],
      },
    ],
  ])('%s', (text, expected) => {
    expect(quantityFrom(text)).toEqual(expected);
  });

  it.each(['', '  ', 'in', '4 in by 2 in', '4 in per', '4 in, 2 in'])('is undefined for "%s"', (text) => {
    expect(quantityFrom(text)).toBeUndefined();
  });
});

describe('the text of a quantity', () => {
  it('has single blanks', () => {
    const terms = [{ amount: '8', unit: 'ft' }, { amount: '2  1/2', unit: 'in' }, { amount: '3' }];
    expect(quantityText({ terms })).toBe('8 ft 2 1/2 in 3');
    expect(quantityText({ terms: terms.slice(0, 1), per: 'h' })).toBe('8 ft per h');
  });
});

it('a reading that must succeed throws its message', () => {
  expect(() => certain(refused('half a date'))).toThrow('half a date');
});
