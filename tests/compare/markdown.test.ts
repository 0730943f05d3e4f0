// What a change costs, as a comment: nothing that people typed becomes markup, and it has an end.
import { expect, it } from 'vitest';
import { compareMarkdown } from '../../language/compare/index.ts';
import type { Comparison, RigChange } from '../../language/compare/schema.ts';

const rig = (name: string, more: Partial<RigChange> = {}): RigChange => ({
  name,
  change: 'changed',
  file: `${name}.rig`,
  seams: [],
  records: [],
  dues: [],
  buy: [],
  visits: [],
  ...more,
});
const comparison = (rigs: readonly RigChange[]): Comparison => ({
  document: 'rigseam/compare/1',
  from: 'main',
  to: 'topic',
  asOf: '2026-11-25',
  library: '1',
  shared: [],
  rigs,
  fleets: [],
  money: [],
  note: 'A note.',
});

it('escapes what people typed', () => {
  const text = compareMarkdown(
    comparison([rig('Wren', { records: [{ kind: 'record', after: 'washed 2026-04-01 note "<b>*x*</b> | `y`"' }] })]),
  );
  expect(text).toContain('note "\\<b\\>\\*x\\*\\</b\\> \\| \\`y\\`"');
  expect(text).not.toContain('<b>');
});

it('names rigs beyond the first ones in one line, with what they cost', () => {
  const money = (amount: string) => ({
    money: { amount, currency: 'USD', text: `${amount} USD` },
    complete: true,
  });
  const rigs = Array.from({ length: 2000 }, (_, i) =>
    rig(`Rig${i}`, { totalBefore: money('10.00'), totalAfter: money('12.00') }),
  );
  const text = compareMarkdown(comparison(rigs));
  expect(text.length).toBeLessThan(20_000);
  expect(text).toContain('### Rig0\n');
  expect(text).toContain('1975 more rigs: Rig25 10.00 USD → 12.00 USD, ');
  expect(text).toContain('2000 rigs changed');
});

it('ends long lists with how many more there are', () => {
  const records = Array.from({ length: 100 }, (_, i) => ({ kind: 'record' as const, after: `washed ${i}` }));
  const text = compareMarkdown(comparison([rig('Wren', { records })]));
  expect(text).toContain('- and 70 more');
  expect(text).toContain('added: washed 29');
  expect(text).not.toContain('added: washed 30');
});
