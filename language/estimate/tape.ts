// Buying and cutting one tape: which rolls, and what is cut from each, in laying order.
import { type CutPlan, type CutResult, cutRolls } from '../cutting/index.ts';
import type { Explained } from '../explain.ts';
import { figureInput, type Long, lengthInput, long, sumOf } from '../measure/figure.ts';
import type { Policy, Tape } from '../resolve/types.ts';
import { lengthText, type System } from '../values/display.ts';
import type { Length } from '../values/length.ts';
import { fromMinor, minorUnits } from '../values/money.ts';
import { countedOf } from '../values/numbers.ts';
import { buyable, moneyInput, priced } from './priced.ts';
import type { CuttingList, PieceLine, Purchase, Question, StockLine } from './schema.ts';
import type { OnHand } from './stock.ts';

/** A piece with its number in laying order and its exact length. */
export interface Numbered {
  readonly line: PieceLine;
  readonly nm: number;
}

export interface TapePurchase {
  readonly purchase: Purchase;
  readonly cutting?: CuttingList;
  readonly questions: readonly Question[];
}

/** No part of a spliced piece is shorter, so that no splice comes nearer than this to a corner (common practice). */
const LEAST_PART = 12 * 25_400_000;
const NM_PER_MM = 1_000_000;

interface Stocked {
  readonly what: string;
  readonly length: Length;
  readonly usable: Long;
}

/** The cheapest rolls for the pieces of a tape that are given in laying order, and the cutting list. */
export function buyTape(
  tape: Tape,
  pieces: readonly Numbered[],
  onHand: OnHand,
  policy: Pick<Policy, 'rollWaste'>,
  currency: string | undefined,
  system: System,
): TapePurchase {
  const { from, currency: paid } = buyable(tape.rolls, currency);
  const rolls = from.map(({ size, origin }) => stocked(`roll of ${size.text}`, size, origin, policy, true, system));
  const shelf = onHand.lengths.map(({ length, roll, origin }) =>
    stocked(roll ? `unopened roll of ${length.text}` : `${length.text} on hand`, length, origin, policy, roll, system),
  );
  const result = cutRolls({
    pieces: pieces.map(({ line, nm }) => ({ id: String(line.number), length: nm })),
    rolls: rolls.map(({ usable }, i) => ({
      id: String(i),
      length: usable.nm,
      // Without prices the least length is bought.
      price: paid === undefined ? Math.max(0, Math.round(usable.nm / NM_PER_MM)) : minorUnits(from[i]!.price!),
    })),
    offcuts: shelf.map(({ usable }, i) => ({ id: String(i), length: usable.nm })),
    splice: { lap: tape.endLap.value.nm, leastPart: LEAST_PART },
  });
  const need = long(
    pieces.reduce((sum, { nm }) => sum + nm, 0),
    system,
    {
      rule: 'all pieces together',
      ...sumOf(
        pieces.map(({ line }) => line.length),
        'piece',
      ),
    },
  );
  const base = { material: tape.name, kind: 'tape' as const, need: need.figure, ...shelfFigure(shelf, system) };
  if (!result.ok) {
    const text = refusal(tape, result);
    const question: Question = { rule: 'no-roll', about: tape.name, text };
    return { purchase: { ...base, buy: [], proven: false, proof: text }, questions: [...onHand.questions, question] };
  }
  const { plan } = result;
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
  const cutting = cuttingList(tape, plan, rolls, shelf, pieces, system);
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

function cuttingList(
  tape: Tape,
  plan: CutPlan,
  rolls: readonly Stocked[],
  shelf: readonly Stocked[],
  pieces: readonly Numbered[],
  system: System,
): CuttingList {
  const byNumber = new Map(pieces.map((piece) => [String(piece.line.number), piece]));
  const stock = plan.cuts.map((cut): StockLine & { readonly leftNm: number } => {
    const { kind, id, number } = cut.stock;
    const from = (kind === 'roll' ? rolls : shelf)[Number(id)]!;
    const cuts = cut.parts.map(({ piece, length, part }) => {
      const { line } = byNumber.get(piece)!;
      const place = { piece: line.number, item: line.item, what: line.what };
      return part === undefined
        ? { ...place, length: line.length }
        : { ...place, part, length: partFigure(length, line.length, part, tape, system) };
    });
    const used = sumOf(
      cuts.map(({ length }) => length),
      'cut',
    );
    const left = long(cut.left, system, {
      rule: 'what is left',
      formula: `usable - (${used.formula})`,
      inputs: [figureInput('usable', from.usable.figure), ...used.inputs],
    });
    const what = kind === 'roll' ? `${from.what}, number ${number}` : from.what;
    return {
      kind: kind === 'roll' ? 'roll' : 'on-hand',
      what,
      usable: from.usable.figure,
      cuts,
      left: left.figure,
      leftNm: cut.left,
    };
  });
  const touched = new Set(plan.cuts.flatMap(({ stock: { kind, id } }) => (kind === 'offcut' ? [Number(id)] : [])));
  const lefts = [
    ...stock.map(({ leftNm, left }) => [leftNm, left] as const),
    ...shelf.flatMap(({ usable }, i) => (touched.has(i) ? [] : [[usable.nm, usable.figure] as const])),
  ];
  const longest = lefts.find(([nm]) => nm === plan.longestLeft)?.[1];
  return {
    tape: tape.name,
    stock: stock.map(({ leftNm: _, ...line }) => line),
    splices: plan.splices,
    ...(longest === undefined ? {} : { longestLeft: longest }),
  };
}

function partFigure(
  nm: number,
  whole: Explained,
  [k, n]: readonly [number, number],
  tape: Tape,
  system: System,
): Explained {
  return long(nm, system, {
    rule: `part ${k} of ${n} of ${whole.text}, the forward part over the rear one by an end lap`,
    formula: 'part',
    inputs: [
      lengthInput('part', { nm, text: lengthText(nm, system) }, system),
      figureInput('piece', whole),
      lengthInput('end_lap', tape.endLap.value, system, tape.endLap.origin),
    ],
  }).figure;
}

function proofOf(plan: CutPlan, cost: string | undefined): string {
  const count = plan.buy.reduce((sum, each) => sum + each.count, 0);
  if (count === 0) return 'nothing to buy: what is on hand is enough';
  const what = countedOf(count, 'roll').text;
  const splices = plan.splices === 0 ? '' : `, ${plan.splices === 1 ? '1 splice' : `${plan.splices} splices`}`;
  if (cost === undefined) return `${what}${splices}, the least length; no price is known`;
  if (plan.proof !== 'none') return `${what}${splices}, ${cost}, proven cheapest`;
  const gap = Math.ceil((plan.cost / plan.lowerBound - 1) * 1000) / 10;
  return `${what}${splices}, ${cost}, within ${gap} % of the bound`;
}

function refusal(tape: Tape, result: Extract<CutResult, { ok: false }>): string {
  const numbers = result.pieces.join(', ');
  return result.reason === 'no-rolls'
    ? `No roll of ${tape.name} is on sale in the records, and what is on hand does not hold all pieces.`
    : `No allowed splice makes piece ${numbers} from the rolls of ${tape.name} on sale.`;
}
