import { describe, expect, it } from 'vitest';
import type { Basis, Coated } from '../../language/lifecost/basis.ts';
import { choicesOf } from '../../language/lifecost/choices.ts';
import { certain } from '../../language/lifecost/threepoint.ts';

const cost = (material: number, setUp = 0) => ({ material, labour: setUp, setUp });
const days = Object.fromEntries(
  ['touch-up', 'recoat', 'strip', 'tape', 'shop', 'reroof'].map((what) => [what, certain(1)]),
) as unknown as Basis['days'];

/** Sealing everything costs 100, stripping and sealing it 200, so what touching up costs tells how much is stripped. */
function basis(more: Partial<Basis>): Basis {
  return {
    years: 12,
    rate: 0,
    dayRate: 0,
    days,
    touchUp: certain(0.15),
    recoatEvery: certain(3),
    coats: [{ share: 1, coats: 1, bad: false }],
    limit: 4,
    seams: 10,
    recoat: cost(100),
    strip: cost(200),
    quotes: [],
    missedLeak: {},
    ...more,
  };
}

const streamsOf = (key: string, of: Basis) => choicesOf(of).find((each) => each.key === key)!.streams;

/** The share of what is touched up that is stripped first, from the cost of the whole. */
function stripped(of: Basis, key = 'touch-up'): number {
  const stream = streamsOf(key, of).find(({ kind }) => kind === 'yearly')!;
  if (stream.kind !== 'yearly') throw new Error('a yearly stream is expected');
  return stream.work.material / 100 - 1;
}

const on = (coats: number, bad = false): readonly Coated[] => [{ share: 1, coats, bad }];

describe('what is stripped when it is touched up', () => {
  it('has its last coat on at that time, not only today', () => {
    // All touched up every year: stripped in the first, then coats 2, 3 and 4 go on, and it is stripped again.
    expect(stripped(basis({ touchUp: certain(1), coats: on(4), years: 5 }))).toBeCloseTo(1 / 4, 12);
    expect(stripped(basis({ touchUp: certain(1), coats: on(4), years: 6 }))).toBeCloseTo(2 / 5, 12);
    expect(stripped(basis({ touchUp: certain(1), coats: on(1), years: 4 }))).toBeCloseTo(0, 12);
    expect(stripped(basis({ touchUp: certain(1), coats: on(1), years: 5 }))).toBeCloseTo(1 / 4, 12);
  });

  it('by hand: half of it touched up each year, two coats at most', () => {
    // At the limit are all of it, then the half that was not touched, then again a half.
    expect(stripped(basis({ touchUp: certain(0.5), limit: 2, coats: on(2), years: 4 }))).toBeCloseTo(2 / 3, 12);
  });

  it('comes to one time in as many as coats are allowed, whatever lay there at first', () => {
    for (const coats of [on(0), on(1), on(4), on(4, true)])
      expect(stripped(basis({ coats, touchUp: certain(0.5), years: 4000 }))).toBeCloseTo(1 / 4, 3);
    expect(stripped(basis({ limit: 1, coats: on(1) }))).toBeCloseTo(1, 12);
  });

  it('begins at one coat after a shop has stripped everything', () => {
    const quotes = [{ from: 'A', job: 'strip', price: 500 }] as const;
    const of = basis({ coats: on(4), years: 3, touchUp: certain(1), quotes });
    expect(stripped(of)).toBeCloseTo(1 / 2, 12);
    expect(stripped(of, 'shop-1')).toBeCloseTo(0, 12);
  });
});

describe('sealing what the findings ask for on the visit that tapes the rest', () => {
  const tape = {
    first: cost(300, 15),
    renewal: cost(300, 15),
    lives: [{ share: 1, life: certain(20) }],
    now: cost(10, 15),
    rest: { share: 0.5, seams: 5, coats: on(1) },
  };
  const nowIn = (key: string, of: Basis) =>
    streamsOf(key, of).flatMap((stream) =>
      stream.kind === 'renewals' && stream.title === 'now' ? stream.lead.map(({ work }) => work) : [],
    );

  it('sets up once', () => {
    const of = basis({ now: cost(20, 15), tape });
    expect(nowIn('touch-up', of)).toMatchObject([{ material: 20, labour: 15, days: 1 }]);
    expect(nowIn('tape', of)).toMatchObject([{ material: 10, labour: 0, days: 0 }]);
  });

  it('takes the days of the longer of the two', () => {
    const of = basis({ now: cost(20, 15), tape, days: { ...days, 'touch-up': certain(3) } });
    expect(nowIn('tape', of)).toMatchObject([{ days: 2 }]);
  });

  it('is a visit of its own beside the tape of a shop', () => {
    const of = basis({ now: cost(20, 15), tape, quotes: [{ from: 'A', job: 'tape', price: 500 }] });
    expect(nowIn('shop-1', of)).toMatchObject([{ material: 10, labour: 15, days: 1 }]);
  });
});
