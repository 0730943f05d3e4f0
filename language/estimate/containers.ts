// Buying sealant by the cartridge or the case, and liquids by the container.
import { type ContainerPurchase, cheapestContainers } from '../cutting/index.ts';
import type { Explained } from '../explain.ts';
import {
  type Filling,
  figureInput,
  filling,
  sumOf,
  volumeInput,
  volumeWords,
  type Working,
} from '../measure/figure.ts';
import type { OnSale, Policy } from '../resolve/types.ts';
import type { System } from '../values/display.ts';
import { fromMinor, minorUnits } from '../values/money.ts';
import { countedOf } from '../values/numbers.ts';
import { buyable, moneyInput, priced } from './priced.ts';
import type { Purchase, PurchaseLine, Question } from './schema.ts';
import { countText, type Poured, type Size, sizesOf } from './sizes.ts';
import type { OnHand } from './stock.ts';

/** The unit that the volumes of a material are worked in. */
interface Scale {
  readonly system: System;
  readonly as: 'volume' | 'liquid';
}

/** The cheapest cartridges, cases and containers for what the jobs need of a material, with the policy's spare. */
export function buyContainers(
  material: Poured,
  needs: readonly Filling[],
  onHand: OnHand,
  { spare }: Pick<Policy, 'spare'>,
  currency: string | undefined,
  system: System,
): { readonly purchase: Purchase; readonly questions: readonly Question[] } {
  const scale: Scale = { system, as: material.kind === 'sealant' ? 'volume' : 'liquid' };
  const need = volume(scale, sum(needs), {
    rule: 'all jobs together',
    ...sumOf(
      needs.map(({ figure }) => figure),
      'job',
    ),
  });
  const want = volume(scale, need.mL * (1 + spare.value.percent / 100), {
    rule: 'with the spare',
    formula: 'need * (1 + spare / 100)',
    inputs: [
      figureInput('need', need.figure),
      { name: 'spare', value: spare.value.percent, unit: '%', text: spare.value.text, origin: spare.origin },
    ],
  });
  const { from, currency: paid } = buyable(sizesOf(material), currency);
  const bought = cheapestContainers(
    want.mL,
    from.map(({ size: { mL }, price }, i) => ({
      id: String(i),
      volume: mL,
      // Without prices the least volume is bought.
      price: paid === undefined ? Math.max(1, Math.round(mL)) : minorUnits(price!),
    })),
    onHand.mL,
  );
  const buy = bought.buy.map(({ id, count }) => lineOf(from[Number(id)]!, count));
  const costs = sumOf(
    buy.flatMap(({ cost }) => (cost === undefined ? [] : [cost.figure])),
    'line',
  );
  const cost =
    paid === undefined || bought.short > 0
      ? undefined
      : priced(fromMinor(bought.cost, paid), 'all containers together', costs.formula, costs.inputs);
  const what = bought.buy.map(({ id, count }) => countText(count, from[Number(id)]!.size)).join(' and ');
  const unpriced = bought.short > 0 || (buy.length > 0 && paid === undefined);
  return {
    purchase: {
      material: material.name,
      kind: material.kind,
      need: need.figure,
      withSpare: want.figure,
      ...(onHand.mL > 0 ? { onHand: shelfOf(onHand, scale).figure } : {}),
      ...cartridgesOf(material, want, system),
      buy,
      ...(cost === undefined ? {} : { cost }),
      proven: bought.proven && bought.short === 0,
      proof: proofOf(what, bought, cost?.figure.text),
      ...(bought.short > 0 ? {} : { left: leftOf(need, onHand, bought, from, scale) }),
    },
    questions: unpriced ? [...onHand.questions, noPrice(material)] : onHand.questions,
  };
}

function volume({ system, as }: Scale, mL: number, working: Working): Filling {
  return filling(mL, system, working, as);
}

function sum(needs: readonly Filling[]): number {
  return needs.reduce((total, { mL }) => total + mL, 0);
}

function noPrice({ name }: Poured): Question {
  return { rule: 'no-price', about: name, text: `${name} has no price in the records.` };
}

function lineOf({ size, price, origin }: OnSale<Size>, count: number): PurchaseLine {
  if (price === undefined) return { what: size.what, count };
  const money = fromMinor(minorUnits(price) * count, price.currency);
  const inputs = [{ name: 'number', value: count, text: countText(count, size) }, moneyInput('price', price, origin)];
  return {
    what: size.what,
    count,
    unitPrice: price,
    cost: priced(money, 'number times price', 'number * price', inputs),
  };
}

function shelfOf({ mL, origin }: OnHand, scale: Scale): Filling {
  const { system, as } = scale;
  const inputs = [volumeInput('counted', { mL, text: volumeWords(mL, system, as) }, system, as, origin)];
  return volume(scale, mL, { rule: 'on hand', formula: 'counted', inputs });
}

/** How many cartridges the need takes, where there is one size. */
function cartridgesOf(material: Poured, want: Filling, system: System): Pick<Purchase, 'cartridges'> {
  if (material.kind !== 'sealant' || material.cartridges.length !== 1) return {};
  const { size, origin } = material.cartridges[0]!;
  const count = Math.ceil(Number((want.mL / size.mL).toFixed(6)));
  return {
    cartridges: {
      value: count,
      unit: 'cartridges',
      text: countedOf(count, 'cartridge').text,
      rule: 'whole cartridges for the purchase, not for each seam',
      formula: 'ceil(round(want / cartridge, 6))',
      inputs: [figureInput('want', want.figure), volumeInput('cartridge', size, system, 'volume', origin)],
    },
  };
}

function leftOf(
  need: Filling,
  onHand: OnHand,
  { buy }: ContainerPurchase,
  from: readonly OnSale<Size>[],
  scale: Scale,
): Explained {
  const { system, as } = scale;
  const shelf = onHand.mL > 0 ? [figureInput('on_hand', shelfOf(onHand, scale).figure)] : [];
  const bought = buy.map(({ id, count }, i) => {
    const { size, origin } = from[Number(id)]!;
    const number = { name: `number_${i + 1}`, value: count, text: countText(count, size) };
    return { mL: count * size.mL, number, size: volumeInput(`size_${i + 1}`, size, system, as, origin) };
  });
  const terms = [
    ...shelf.map(({ name }) => name),
    ...bought.map(({ number, size }) => `${number.name} * ${size.name}`),
  ];
  return volume(scale, onHand.mL + bought.reduce((total, { mL }) => total + mL, 0) - need.mL, {
    rule: 'on hand and bought, less what the jobs take',
    formula: [terms.join(' + ') || '0', 'need'].join(' - '),
    inputs: [...shelf, ...bought.flatMap(({ number, size }) => [number, size]), figureInput('need', need.figure)],
  }).figure;
}

function proofOf(what: string, { short, buy, proven }: ContainerPurchase, cost: string | undefined): string {
  if (short > 0) return 'none is on sale in the records';
  if (buy.length === 0) return 'nothing to buy: what is on hand is enough';
  if (cost === undefined)
    return `${what}, ${proven ? 'the least volume' : 'the least volume found'}; no price is known`;
  return `${what}, ${cost}, ${proven ? 'proven cheapest' : 'the best price by volume, not searched'}`;
}
