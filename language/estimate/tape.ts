// Buying and cutting one tape: which rolls, and what is cut from each, in laying order.
import { type CutPlan, type CutProblem, type CutResult, cutRolls } from '../cutting/index.ts';
import type { Explained } from '../explain.ts';
import { type Long, lengthInput, long, sumOf } from '../measure/figure.ts';
import { SPLICE_CLEAR, type Span } from '../measure/splicing.ts';
import type { Policy, Tape } from '../resolve/types.ts';
import type { System } from '../values/display.ts';
import type { Length } from '../values/length.ts';
import { fromMinor, minorUnits } from '../values/money.ts';
import { countedOf } from '../values/numbers.ts';
import { cutAtHome } from './at-home.ts';
import { cuttingList, pieceName } from './cutting-list.ts';
import { buyable, moneyInput, priced } from './priced.ts';
import type { CuttingList, PieceLine, Purchase, Question } from './schema.ts';
import type { OnHand } from './stock.ts';

/** A piece with its number in laying order and its exact length. */
export interface Numbered {
  readonly line: PieceLine;
  readonly nm: number;
  /** Stretches of it, from its front end, in which no splice should lie. */
  readonly keepOff?: readonly Span[];
  /** Whose piece it is, where pieces of several rigs are cut together. */
  readonly rig?: string;
}

/** How rolls are cut, and the lengths that the need is the sum of: of one rig, or of a whole fleet. */
export interface Together {
  readonly cut: (problem: CutProblem) => CutResult;
  readonly needs: readonly Explained[];
  /** In a fleet of several yards: the place of a rig. */
  readonly homeOf?: (rig: string) => string;
}

export interface TapePurchase {
  readonly purchase: Purchase;
  readonly cutting?: CuttingList;
  readonly questions: readonly Question[];
}

const NM_PER_MM = 1_000_000;

/** A length of tape to cut from. */
export interface Stocked {
  readonly what: string;
  readonly length: Length;
  readonly usable: Long;
  /** Where it lies, in a fleet of several yards. */
  readonly at?: string;
}

/** The cheapest rolls for the pieces of a tape that are given in laying order, and the cutting list. */
export function buyTape(
  tape: Tape,
  pieces: readonly Numbered[],
  onHand: OnHand,
  policy: Pick<Policy, 'rollWaste' | 'splices'>,
  currency: string | undefined,
  system: System,
  { cut, needs, homeOf }: Together = { cut: cutRolls, needs: pieces.map(({ line }) => line.length) },
): TapePurchase {
  const { from, currency: paid } = buyable(tape.rolls, currency);
  const rolls = from.map(({ size, origin }) => stocked(`roll of ${size.text}`, size, origin, policy, true, system));
  const shelf = onHand.lengths.map(({ length, roll, origin, at }) => ({
    ...stocked(
      roll ? `unopened roll of ${length.text}` : `${length.text} on hand`,
      length,
      origin,
      policy,
      roll,
      system,
    ),
    ...(at === undefined ? {} : { at }),
  }));
  const result = cut({
    pieces: pieces.map(({ nm, keepOff }, i) => ({ id: String(i), length: nm, ...(keepOff ? { keepOff } : {}) })),
    rolls: rolls.map(({ usable }, i) => ({
      id: String(i),
      length: usable.nm,
      // Without prices the least length is bought.
      price: paid === undefined ? Math.max(0, Math.round(usable.nm / NM_PER_MM)) : minorUnits(from[i]!.price!),
    })),
    offcuts: shelf.map(({ usable }, i) => ({ id: String(i), length: usable.nm })),
    splice: {
      lap: tape.endLap.value.nm,
      leastPart: SPLICE_CLEAR,
      ...(policy.splices.value === 'allowed' ? { voluntary: true as const } : {}),
    },
  });
  const need = long(
    pieces.reduce((sum, { nm }) => sum + nm, 0),
    system,
    {
      rule: 'all pieces together',
      ...sumOf(needs, 'piece'),
    },
  );
  const base = { material: tape.name, kind: 'tape' as const, need: need.figure, ...shelfFigure(shelf, system) };
  if (!result.ok) {
    const text = refusal(tape, result, pieces);
    const question: Question = { rule: 'no-roll', about: tape.name, text };
    return { purchase: { ...base, buy: [], proven: false, proof: text }, questions: [...onHand.questions, question] };
  }
  const plan = homeOf
    ? cutAtHome(result.plan, {
        ofPiece: (id) => homeOf(pieces[Number(id)]?.rig ?? ''),
        shelf: shelf.map(({ at = '', usable }) => ({ place: at, length: usable.nm })),
      })
    : result.plan;
  const buy = plan.buy.map(({ id, count }) => {
    const { price, origin } = from[Number(id)]!;
    const line = { what: rolls[Number(id)]!.what, count };
    if (price === undefined) return line;
    const inputs = [
      { name: 'rolls', value: count, text: countedOf(count, 'roll').text },
      moneyInput('price', price, origin),
    ];
    const cost = priced(
      fromMinor(minorUnits(price) * count, price.currency),
      'rolls times price',
      'rolls * price',
      inputs,
    );
    return { ...line, unitPrice: price, cost };
  });
  const costs = buy.flatMap((line) => ('cost' in line ? [line.cost] : []));
  const costSum = sumOf(
    costs.map(({ figure }) => figure),
    'rolls',
  );
  const cost =
    paid === undefined
      ? undefined
      : priced(fromMinor(plan.cost, paid), 'all rolls together', costSum.formula, costSum.inputs);
  const cutting = cuttingList(tape, plan, { rolls, shelf, pieces }, system);
  const question: Question[] =
    paid === undefined && plan.buy.length > 0
      ? [
          {
            rule: 'no-price',
            about: tape.name,
            text: `No roll of ${tape.name} has a price: the shortest purchase is listed.`,
          },
        ]
      : [];
  return {
    purchase: {
      ...base,
      buy,
      ...(cost === undefined ? {} : { cost }),
      proven: plan.proof !== 'none',
      proof: proofOf(plan, cost?.figure.text),
      ...hintOf(plan, paid),
      ...(cutting.longestLeft === undefined ? {} : { left: cutting.longestLeft }),
    },
    cutting,
    questions: [...onHand.questions, ...question],
  };
}

function stocked(
  what: string,
  length: Length,
  origin: Tape['origin'],
  { rollWaste }: Pick<Policy, 'rollWaste'>,
  roll: boolean,
  system: System,
): Stocked {
  const whole = lengthInput('length', length, system, origin);
  const usable = roll
    ? long(length.nm - rollWaste.value.nm, system, {
        rule: 'a roll without what is lost at its start',
        formula: 'length - roll_waste',
        inputs: [whole, lengthInput('roll_waste', rollWaste.value, system, rollWaste.origin)],
      })
    : long(length.nm, system, { rule: 'as it lies there', formula: 'length', inputs: [whole] });
  return { what, length, usable };
}

function shelfFigure(shelf: readonly Stocked[], system: System): Pick<Purchase, 'onHand'> {
  if (shelf.length === 0) return {};
  const nm = shelf.reduce((sum, { usable }) => sum + usable.nm, 0);
  const figures = shelf.map(({ usable }) => usable.figure);
  return { onHand: long(nm, system, { rule: 'single lengths on hand', ...sumOf(figures, 'on_hand') }).figure };
}

/** What a splice that nobody needs would save, where the policy does not allow one. */
function hintOf(plan: CutPlan, paid: string | undefined): Pick<Purchase, 'hint'> {
  if (plan.oneSpliceSaves === undefined || paid === undefined) return {};
  const saves = fromMinor(plan.oneSpliceSaves, paid).text;
  return { hint: `One splice more would save ${saves}; the policy allows it with \`splices allowed\`.` };
}

function proofOf(plan: CutPlan, cost: string | undefined): string {
  const count = plan.buy.reduce((sum, each) => sum + each.count, 0);
  if (count === 0) return 'nothing to buy: what is on hand is enough';
  const what = countedOf(count, 'roll').text;
  const splices = plan.splices === 0 ? '' : `, ${plan.splices === 1 ? '1 splice' : `${plan.splices} splices`}`;
  const proven = plan.proof !== 'none';
  if (cost === undefined)
    return `${what}${splices}, ${proven ? 'the least length' : 'the least length found'}; no price is known`;
  if (proven) return `${what}${splices}, ${cost}, proven cheapest`;
  if (plan.lowerBound <= 0) return `${what}${splices}, ${cost}, the best price found`;
  const gap = Math.ceil((plan.cost / plan.lowerBound - 1) * 1000) / 10;
  return `${what}${splices}, ${cost}, within ${gap} % of the bound`;
}

function refusal(tape: Tape, result: Extract<CutResult, { ok: false }>, pieces: readonly Numbered[]): string {
  const numbers = result.pieces.map((id) => pieceName(pieces[Number(id)] as Numbered)).join(', ');
  return result.reason === 'no-rolls'
    ? `No roll of ${tape.name} is on sale in the records, and what is on hand does not hold all pieces.`
    : `No allowed splice makes piece ${numbers} from the rolls of ${tape.name} on sale.`;
}
