import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutRolls } from '../../language/cutting/index.ts';
import { tapeOf } from '../measure/items.ts';
import { dues, estimate, rigWith, viewOf } from './yard.ts';

// The ninth reason why such a tool is thrown away (trade notes, section 7): a proof that is none, and a tape life from a
// sales page. Random plans go through the real estimate; whatever it calls proven is held against a search that tries
// everything and shares nothing with it.

const END_LAP = 2;
/** Lost at the start of each roll, in inches. */
const LOST = 6;

interface Given {
  /** Lengths of seams, in inches. */
  readonly seams: readonly number[];
  /** Rolls in feet and whole dollars. */
  readonly rolls: readonly (readonly [feet: number, price: number])[];
}

const given: fc.Arbitrary<Given> = fc.record({
  seams: fc.array(fc.integer({ min: 20, max: 280 }), { minLength: 1, maxLength: 6 }),
  rolls: fc.uniqueArray(fc.tuple(fc.constantFrom(25, 33, 50, 75), fc.integer({ min: 10, max: 90 })), {
    minLength: 1,
    maxLength: 3,
    selector: ([feet]) => feet,
  }),
});

/** More pieces, about a third of one roll each, so that bounds by length seldom close the case. */
const many: fc.Arbitrary<Given> = fc.record({
  seams: fc.array(fc.integer({ min: 150, max: 290 }), { minLength: 9, maxLength: 10 }),
  rolls: fc.integer({ min: 58, max: 62 }).map(
    (price) =>
      [
        [50, price],
        [75, 85],
      ] as const,
  ),
});

const text = ({ seams, rolls }: Given) => `
tape Strip {
  width 4 in
  end-lap ${END_LAP} in
${rolls.map(([feet, price]) => `  roll ${feet} ft at ${price} USD\n`).join('')}}
policy Own {
  currency USD
  roll-waste ${LOST} in
}
rig Teal under Own {
  roof 28 ft by 8 ft epdm
${seams.map((length, i) => `  joint seam-${i + 1} ${length} in wide 1 in\n`).join('')}
  tape ${seams.map((_, i) => `seam-${i + 1}`).join(', ')} with Strip
}
`;

/** The least that rolls for these pieces cost, in dollars, by trying every placing of every piece. */
function leastCost(pieces: readonly number[], rolls: Given['rolls']): number {
  let best = Number.POSITIVE_INFINITY;
  const room: number[] = [];
  const place = (k: number, cost: number): void => {
    if (cost >= best) return;
    if (k === pieces.length) {
      best = cost;
      return;
    }
    for (const [i, free] of room.entries()) {
      if (free < pieces[k]!) continue;
      room[i] = free - pieces[k]!;
      place(k + 1, cost);
      room[i] = free;
    }
    for (const [feet, price] of rolls) {
      const usable = feet * 12 - LOST;
      if (usable < pieces[k]!) continue;
      room.push(usable - pieces[k]!);
      place(k + 1, cost + price);
      room.pop();
    }
  };
  place(0, 0);
  return best;
}

describe('9: a proof that is not one', () => {
  it('rolls called proven cheapest are the cheapest', () => {
    fc.assert(
      fc.property(given, (of) => {
        const [tape] = estimate(text(of)).purchases;
        const least = leastCost(
          of.seams.map((length) => length + 2 * END_LAP),
          of.rolls,
        );
        const cost = Number(tape!.cost!.money.amount);
        expect(cost).toBeGreaterThanOrEqual(least);
        expect(tape!.proof.includes('proven')).toBe(tape!.proven);
        if (tape!.proven) expect(cost).toBe(least);
        else expect(tape!.proof).toMatch(/within [\d.]+ % of the bound/);
      }),
      { numRuns: 150 },
    );
  });

  it('a search that is cut short claims no more than it knows', () => {
    fc.assert(
      fc.property(many, fc.integer({ min: 1, max: 20 }), ({ seams, rolls }, nodes) => {
        const result = cutRolls({
          pieces: seams.map((length, i) => ({ id: String(i), length })),
          rolls: rolls.map(([feet, price]) => ({ id: String(feet), length: feet * 12 - LOST, price })),
          offcuts: [],
          splice: { lap: END_LAP, leastPart: 48 },
          budget: { nodes },
        });
        if (!result.ok) throw new Error(result.reason);
        const { cost, lowerBound, proof } = result.plan;
        const least = leastCost(seams, rolls);
        expect(lowerBound).toBeLessThanOrEqual(least);
        expect(cost).toBeGreaterThanOrEqual(least);
        if (proof !== 'none') expect(cost).toBe(least);
      }),
      { numRuns: 150 },
    );
  });

  it('cartridges and cases called proven cheapest are the cheapest', () => {
    const prices = fc.integer({ min: 100, max: 2000 });
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        prices,
        prices,
        fc.integer({ min: 2, max: 24 }),
        (feet, one, dozen, size) => {
          const dollars = (cents: number) => (cents / 100).toFixed(2);
          const { purchases } = estimate(`
sealant Lap {
  family solvent-lap
  cartridge 10 fl-oz at ${dollars(one)} USD
  case ${size} cartridges at ${dollars(dozen * 6)} USD
  bead 1/2 in by 1/4 in
}
policy Own {
  currency USD
  spare 0 %
}
rig Teal under Own {
  roof 28 ft by 8 ft epdm
  joint seam ${feet} ft
  seal seam with Lap
}
`);
          const lap = purchases.find(({ kind }) => kind === 'sealant')!;
          // A foot of the bead is 1.5 cu in; a cartridge of 10 fl oz 18.046875.
          const needed = Math.ceil((feet * 1.5) / 18.046875 - 1e-9);
          let least = Number.POSITIVE_INFINITY;
          for (let cases = 0; cases <= Math.ceil(needed / size); cases++)
            least = Math.min(least, cases * dozen * 6 + Math.max(0, needed - cases * size) * one);
          expect(lap.proof).toContain('proven cheapest');
          expect(lap.cost!.money.amount).toBe(dollars(least));
        },
      ),
      { numRuns: 150 },
    );
  });
});

const roof = ['built 2020-03', 'roof 28 ft by 8 ft epdm', 'cap front'];

describe('9: a tape life that is plainly from a sales page (18 to 35 years)', () => {
  it('the shipped life is shorter on every surface, marked as from memory, and never longer than the membrane', () => {
    const tape = tapeOf('', 'GenericSeamTape');
    expect(tape.lives.length).toBeGreaterThan(0);
    for (const { value, origin } of tape.lives) {
      expect(value.likely.months).toBeLessThan(18 * 12);
      expect(value.most.months).toBeLessThanOrEqual(25 * 12);
      expect(origin.kind).toBe('from memory');
    }
    const taped = rigWith(...roof, 'stripped 2026-06-01 front', 'taped 2026-06-01 front with GenericSeamTape');
    const end = dues(taped).find(({ kind }) => kind === 'tape-end')!;
    // Fifteen years at the likely figure; the membrane of 2020 lasts 20 at the most.
    expect(end.date).toBe('2040-03-01');
    expect(end.because).toContain('membrane');
  });

  it('on thermoplastic sheet it is a few years, on PVC none is claimed', () => {
    const view = viewOf(rigWith(...roof));
    const lives = (surface: string) => {
      const tape = view.material('GenericSeamTape');
      return tape?.kind === 'tape' ? tape.lives.filter(({ on }) => on?.includes(surface)) : [];
    };
    expect(lives('tpo').map(({ value }) => value.likely.months)).toEqual([72]);
    expect(lives('pvc')).toEqual([]);
  });
});
