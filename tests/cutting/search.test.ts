import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fillInTurn, fillWays } from '../../language/cutting/fill.ts';
import { packByPatterns } from '../../language/cutting/patterns.ts';
import { packExactly } from '../../language/cutting/search.ts';

/** Puts the pieces one by one into every bin that has room. */
function fits(pieces: readonly number[], rooms: number[]): boolean {
  const [piece, ...rest] = pieces;
  if (piece === undefined) return true;
  return [...rooms.keys()].some((bin) => {
    if (rooms[bin]! < piece || rooms.indexOf(rooms[bin]!) < bin) return false;
    rooms[bin]! -= piece;
    const found = fits(rest, rooms);
    rooms[bin]! += piece;
    return found;
  });
}

/** Nearly full bins: the pieces are cut out of the bins themselves, then one piece or bin is changed a little. */
const tight = fc
  .record({
    bins: fc.array(
      fc.record({
        cap: fc.integer({ min: 6, max: 40 }),
        cuts: fc.array(fc.integer({ min: 1, max: 999 }), { maxLength: 3 }),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    waste: fc.integer({ min: 0, max: 2 }),
    change: fc.integer({ min: -2, max: 1 }),
    changed: fc.nat(20),
  })
  .map(({ bins, waste, change, changed }) => {
    const pieces = bins.flatMap(({ cap, cuts }) => {
      const points = [
        0,
        ...cuts.map((cut) => Math.round((cut * (cap - waste)) / 1000)).sort((a, b) => a - b),
        cap - waste,
      ];
      return points.slice(1).map((point, i) => point - points[i]!);
    });
    const kept = pieces.filter((piece) => piece > 0).sort((a, b) => b - a);
    const caps = bins.map((bin, i) => bin.cap + (i === changed % bins.length ? change : 0));
    return { pieces: kept, caps };
  });

function grouped(all: readonly number[]): { values: number[]; counts: number[] } {
  const values = [...new Set(all)].sort((a, b) => b - a);
  return { values, counts: values.map((value) => all.filter((one) => one === value).length) };
}

it.each([
  ['packExactly', packExactly],
  ['packByPatterns', packByPatterns],
] as const)('%s answers as trying everything does, and its packing is one', (_, pack) => {
  const answers = { yes: 0, no: 0, unknown: 0 };
  fc.assert(
    fc.property(tight, ({ pieces, caps }) => {
      const kinds = grouped(pieces);
      const bins = grouped(caps);
      const outcome = pack(kinds.values, kinds.counts, bins.values, bins.counts, { nodes: 1e6 });
      answers[outcome.answer]++;
      expect(outcome.answer).toBe(fits(pieces, [...caps]) ? 'yes' : 'no');
      if (outcome.answer !== 'yes') return;
      const placed = kinds.values.map(() => 0);
      const used = bins.values.map(() => 0);
      for (const { bin, counts } of outcome.fillings) {
        used[bin]!++;
        const sum = counts.reduce((total, count, i) => total + count * kinds.values[i]!, 0);
        expect(sum).toBeLessThanOrEqual(bins.values[bin]!);
        expect(sum).toBeGreaterThan(0);
        counts.forEach((count, i) => {
          placed[i]! += count;
        });
      }
      expect(placed).toEqual(kinds.counts);
      used.forEach((count, b) => {
        expect(count).toBeLessThanOrEqual(bins.counts[b]!);
      });
    }),
    { numRuns: 4000, seed: 51 },
  );
  expect(Math.min(answers.yes, answers.no)).toBeGreaterThan(400);
  expect(answers.unknown).toBe(0);
});

it('both searches give no answer rather than a wrong one when its purse is empty', () => {
  expect(packExactly([5, 3], [2, 2], [8], [2], { nodes: 1 }).answer).toBe('unknown');
  expect(packByPatterns([5, 3], [2, 2], [8], [2], { nodes: 1 }).answer).toBe('unknown');
});

it('fillInTurn fills a bin as full as any choice of pieces does', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 8 }),
      fc.integer({ min: 1, max: 70 }),
      (pieces, cap) => {
        const { values, counts } = grouped(pieces);
        let most = 0;
        for (let chosen = 0; chosen < 1 << pieces.length; chosen++) {
          const sum = pieces.reduce((total, piece, i) => total + ((chosen >> i) & 1) * piece, 0);
          if (sum <= cap) most = Math.max(most, sum);
        }
        for (const way of fillWays(values.length, 8).filter(({ seeds }) => seeds === 0)) {
          const { fillings, left } = fillInTurn(values, counts, [cap], way, { nodes: 1e6 });
          expect(fillings[0]!.reduce((sum, count, i) => sum + count * values[i]!, 0)).toBe(most);
          expect(fillings[0]!.map((count, i) => count + left[i]!)).toEqual(counts);
        }
      },
    ),
    { numRuns: 500, seed: 52 },
  );
});
