import { describe, expect, it } from 'vitest';
import { interimTable, table } from '../../language/advice/index.ts';
import { on } from './ask.ts';
import { type Case, cases } from './cases.ts';

const adviceFor = ({ row, item, lines, ...asked }: Case) => {
  const all = on(item, lines, asked);
  const found = all.find((one) => one.row === row);
  if (!found) throw new Error(`${item}: ${all.map((one) => `${one.row} ${one.where ?? ''}`).join(', ')}`);
  return found;
};

describe('each row of the table of advice', () => {
  it.each(cases.map((one) => [one.row, one] as const))('%s', (_, one) => {
    const found = adviceFor(one);
    expect(found.action).toBe(one.action);
    expect(found.reasons[0]?.text).toBe(one.because);
    expect(found.by?.date).toBe(one.by);
    expect(found.interim && [found.interim.row, found.interim.by?.date]).toEqual(one.interim);
  });

  it('has a case that it decides', () => {
    const hit = new Set<string>();
    for (const one of cases) {
      const { row, interim } = adviceFor(one);
      hit.add(row);
      if (interim) hit.add(interim.row);
    }
    expect([...table, ...interimTable].map(({ id }) => id).filter((id) => !hit.has(id))).toEqual([]);
  });

  it('stands once, and says when, what, why and from where', () => {
    const all = [...table, ...interimTable];
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    for (const { id, when, what, why, source, cites } of all) {
      expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(when, id).toMatch(/^[a-z].{10,}[^.]$/);
      expect(what, id).toMatch(/^[A-Z].*\.$/);
      expect(why, id).toMatch(/^[A-Z0-9].*\.$/);
      expect(source, id).toMatch(/^(published: |common practice|from memory)/);
      expect(cites.length, id).toBeGreaterThan(0);
    }
  });

  it('never says that something is dry or that a roof may be walked on', () => {
    const texts = [...table, ...interimTable].flatMap(({ what, why }) => [what, why]).join(' ');
    expect(texts).not.toMatch(/\bis dry\b|\bsafe to walk|\bwalk on\b|\bwatertight\b/i);
  });
});
