// The budget: every cent of the estimates in some month, nothing twice.
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { decimal, entriesBy, sumOf, totalOf } from '../../language/documents/fleet/budget.ts';
import { shared } from '../../language/documents/fleet/shares.ts';
import { minorUnits } from '../../language/values/money.ts';
import { readFolder } from '../project/workspace.ts';
import { fleetPapers, twoYards } from './fleets.ts';

const example = readFolder(fileURLToPath(new URL('../../examples/fleet', import.meta.url)));
const fleets = {
  'two yards and two currencies': fleetPapers({ 'a.rig': twoYards }, '2027-04-05', 'a.rig'),
  'the example in autumn': fleetPapers(example, '2026-11-25', 'yard/fleet.rig'),
  'the example in summer': fleetPapers(example, '2026-08-02', 'yard/fleet.rig'),
};
const planned = { certainty: 'planned' } as const;

describe.each(Object.entries(fleets))('the budget of %s', (_, { scene, budget, texts }) => {
  it('plans for each rig just what its estimate says, by class', () => {
    let counted = 0;
    for (const { name, estimate } of scene.rigs) {
      const mine = budget.entries.filter(({ rig, certainty }) => rig === name && certainty === planned.certainty);
      const { totals } = estimate;
      if (!totals.total) {
        expect(mine).toEqual([]);
        continue;
      }
      const sums = sumOf(mine).planned;
      expect(new Set(mine.map(({ currency }) => currency)).size).toBeLessThanOrEqual(1);
      expect(sums.material, name).toBe(minorUnits(totals.materials!.money));
      expect(sums.labour, name).toBe(minorUnits(totals.labour!.money));
      expect(sums.tax, name).toBe(totals.tax ? minorUnits(totals.tax.money) : 0);
      expect(totalOf(sums)).toBe(minorUnits(totals.total.money));
      counted += mine.length;
    }
    expect(counted).toBeGreaterThan(5);
  });

  it('has months that add up to its years, and both to the sums of the estimate of the fleet', () => {
    for (const currency of budget.currencies) {
      const entries = budget.entries.filter((entry) => entry.currency === currency);
      const add = (parts: ReturnType<typeof entriesBy>) =>
        parts.reduce((sum, [, some]) => sum + totalOf(sumOf(some).planned), 0);
      const [months, years] = [
        entriesBy(entries, ({ month }) => month),
        entriesBy(entries, ({ month }) => month?.slice(0, 4)),
      ];
      for (const [year, some] of years) {
        const within = months.filter(([month]) => month.slice(0, 4) === year);
        expect(within.flatMap(([, each]) => each).length).toBe(some.length);
        expect(add(within)).toBe(totalOf(sumOf(some).planned));
      }
      const fleet = scene.papers.estimate.sums.find((sum) => sum.currency === currency);
      expect(decimal(add(months), currency)).toBe(fleet?.total.text.replace(` ${currency}`, ''));
      expect(texts.get(`${scene.name}.budget.md`)).toContain(`What is planned adds up to ${fleet?.total.text}`);
    }
  });

  it('names a visit or a due of the schedule wherever it names one, and its month is that of the visit', () => {
    const visits = new Map(scene.schedule.visits.map((visit) => [visit.id, visit]));
    const dues = new Map(scene.schedule.dues.map((due) => [due.id, due]));
    for (const { certainty, class: kind, of, month } of budget.entries) {
      if (of === undefined) continue;
      if (certainty === 'expected') expect(dues.has(of)).toBe(true);
      else expect(visits.has(of)).toBe(true);
      if (certainty === 'planned' && kind === 'labour') expect(month).toBe(visits.get(of)?.days[0]?.slice(0, 7));
    }
  });

  it('has in its CSV what it has as data, every expected amount after the as-of date and none after its end', () => {
    const { data } = Papa.parse<Record<string, string>>(texts.get(`${scene.name}.budget.csv`) as string, {
      header: true,
      skipEmptyLines: true,
    });
    expect(data.map(({ amount }) => amount)).toEqual(
      budget.entries.map(({ minor, currency }) => decimal(minor, currency)),
    );
    const expected = budget.entries.filter(({ certainty }) => certainty === 'expected');
    expect(expected.length).toBeGreaterThan(10);
    for (const { month = '' } of expected) {
      expect(month >= scene.asOf.slice(0, 7)).toBe(true);
      expect(month <= budget.until).toBe(true);
    }
  });
});

describe('in which month an amount is spent', () => {
  const { budget, scene, texts } = fleets['two yards and two currencies'];
  const planned = budget.entries.filter(({ certainty }) => certainty === 'planned');

  it('is that of the order for material that takes time to come, never before the as-of date', () => {
    // It is planned from Saturday 2027-05-01 on, and the crew works from Monday: three weeks before that.
    const strip = planned.find(({ rig, what }) => rig === 'Auk' && what.startsWith('Strip'));
    expect(strip).toMatchObject({ month: '2027-04', class: 'material' });
    expect(strip?.why).toBe('ordered by 2027-04-12, 3 weeks before the visit of 2027-05-03');
  });

  it('is none for a plan without a day, which stands in a row of its own', () => {
    const brant = planned.filter(({ rig }) => rig === 'Brant');
    expect(brant.length).toBeGreaterThan(2);
    expect(brant.every(({ month }) => month === undefined)).toBe(true);
    expect(texts.get('Yard.budget.md')).toMatch(/\| no day yet \| 60.00 \| /);
  });

  it('never mixes currencies, and marks what is only expected', () => {
    expect(budget.currencies).toEqual(['EUR', 'USD']);
    const text = texts.get('Yard.budget.md') as string;
    const [eur = '', usd = ''] = text.split('## USD');
    expect(eur).toContain('| Coot |');
    expect(usd).not.toContain('| Coot |');
    for (const [row] of text.matchAll(/^\| 20(28|29)[^\n]*$/gm)) expect(row).toMatch(/~ \d+\.\d\d \|$/);
    expect(scene.papers.estimate.sums).toHaveLength(2);
  });
});

describe('parts of an amount', () => {
  it('add up to it, each within one of its share', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: 10_000_000 }),
        fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 20 }),
        (amount, weights) => {
          const parts = shared(amount, weights);
          expect(parts.reduce((sum, one) => sum + one, 0)).toBe(amount);
          const all = weights.reduce((sum, one) => sum + one, 0);
          for (const [i, part] of parts.entries()) {
            const share = all === 0 ? amount / weights.length : (amount * weights[i]!) / all;
            expect(Math.abs(part - share)).toBeLessThanOrEqual(1 + 1e-6);
          }
        },
      ),
    );
  });
});
