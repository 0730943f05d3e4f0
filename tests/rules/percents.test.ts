import { describe, expect, it } from 'vitest';
import { said, under } from './asked.ts';

describe('percentages', () => {
  it.each([
    ['policy P { touch-ups 100 %, 150 %, 200 % }', '100 %, 150 %, 200 %'],
    ['policy P { touch-ups -1 %, 5 %, 10 % }', '-1 %, 5 %, 10 %'],
    ['policy P { touch-ups 101 % }', '101 %'],
    ['policy P {\n  missed-leak recoat 150 % at 4000 USD\n}', '150 %'],
    ['policy P { real-interest -100 % }', '-100 %'],
  ])('that cannot be are named: %s', (text, wrong) => {
    const [finding] = said('percent-out-of-range', text);
    expect(finding).toMatchObject({ severity: 'error' });
    expect(under(text, finding!)).toBe(wrong);
  });

  it.each([
    'policy P { touch-ups 0 %, 50 %, 100 % }',
    'policy P {\n  missed-leak recoat 100 % at 4000 USD\n}',
    'policy P { real-interest -1 % }',
    'policy P { tax 120 % on materials }',
  ])('that can be are silent: %s', (text) => {
    expect(said('percent-out-of-range', text)).toEqual([]);
  });
});
