// One purchase for all rigs of a fleet: what one leaves of a roll or a case serves the next.
import { cutFleet, type LinearPrograms } from '../cutting/index.ts';
import type { Explained } from '../explain.ts';
import { figureInput, filling, lengthInput, long, sumOf, volumeInput } from '../measure/figure.ts';
import type { Fleet, Material, RigView, Tape } from '../resolve/types.ts';
import { rounded } from '../values/exact.ts';
import { moneyOf } from '../values/money.ts';
import { buyContainers } from './containers.ts';
import type { Needs } from './needs.ts';
import type { Estimate, Pooled, Purchase, Sent } from './schema.ts';
import { pouredSent, tapeSent } from './sent.ts';
import { placeOf, type Sharing, type Shelves, shelvesOf } from './shelves.ts';
import type { Poured } from './sizes.ts';
import type { OnHand } from './stock.ts';
import { buyTape, type Numbered, type TapePurchase } from './tape.ts';

/** A rig of the fleet with its own estimate. */
export interface RigNeeds {
  readonly view: RigView;
  readonly estimate: Estimate;
  readonly needs: Needs;
}

interface Part<T> {
  readonly rig: RigNeeds;
  readonly need: T;
  readonly own: Purchase;
}

/**
 * The purchase of each material for all rigs together, from the shelves of the rigs and of the fleet, and what that saves
 * against each rig buying for itself. Materials of one name are bought together if they are sold alike.
 */
export function pooledPurchases(
  fleet: Fleet,
  rigs: readonly RigNeeds[],
  asOf: string,
  currency: string | undefined,
  lp: LinearPrograms | undefined,
): readonly Pooled[] {
  const tapes = gathered(rigs, ({ tapes: all }) => all.map((each) => ({ material: each.tape, need: each.pieces })));
  const poured = gathered(rigs, ({ poured: all }) => all.map((each) => ({ material: each.material, need: each })));
  return [
    ...tapes.map(({ material, parts }, i) => {
      const shelves = shelvesOf(fleet, rigs, sharingOf(tapes, i), asOf);
      const one = pooled(material, parts, shelves, (onHand) =>
        tapeTogether(material, parts, onHand, fleet, currency, lp),
      );
      return withSent(
        one,
        fleet.yards.length > 0 && one.cutting ? tapeSent(fleet, one.cutting, homesOf(fleet, parts)) : [],
      );
    }),
    ...poured.map(({ material, parts }, i) => {
      const shelves = shelvesOf(fleet, rigs, sharingOf(poured, i), asOf);
      const one = pooled(material, parts, shelves, (onHand) =>
        pouredTogether(material, parts, onHand, fleet, currency),
      );
      return withSent(one, pouredSent(material, wantedAt(fleet, parts), shelves, fleet.policy.units.value));
    }),
  ];
}

/** What all rigs need of each material, in the order of the rigs. */
function gathered<M extends Material, T>(
  rigs: readonly RigNeeds[],
  of: (needs: Needs) => readonly { readonly material: M; readonly need: T }[],
): readonly { readonly material: M; readonly parts: readonly Part<T>[] }[] {
  const found = new Map<string, { material: M; parts: Part<T>[] }>();
  for (const rig of rigs) {
    for (const { material, need } of of(rig.needs)) {
      const own = rig.estimate.purchases.find((purchase) => purchase.material === material.name);
      if (!own) continue;
      const key = soldAs(material);
      const entry = found.get(key) ?? { material, parts: [] };
      entry.parts.push({ rig, need, own });
      found.set(key, entry);
    }
  }
  return [...found.values()];
}

/** Two materials are one to a purchase if they have one name and are sold alike. */
function soldAs(material: Material): string {
  const sales = (all: readonly { readonly size: unknown; readonly price?: unknown }[]) =>
    all.map(({ size, price }) => [size, price]);
  const own =
    material.kind === 'tape'
      ? [material.width?.value.nm, material.endLap.value.nm, sales(material.rolls)]
      : [
          sales(material.containers),
          ...(material.kind === 'sealant' ? [sales(material.cartridges), sales(material.cases)] : []),
        ];
  return JSON.stringify([material.kind, material.name, own]);
}

/** One of the groups that are bought together, among those of its name. */
function sharingOf(
  groups: readonly { readonly material: Material; readonly parts: readonly Part<unknown>[] }[],
  index: number,
): Sharing {
  const { material, parts } = groups[index]!;
  const alike = groups.filter((group) => group.material.name === material.name);
  const others = alike.filter((group) => group.parts !== parts);
  return {
    material,
    rigs: parts.map(({ rig }) => rig),
    elsewhere: new Set(others.flatMap((group) => group.parts.map(({ rig }) => rig))),
    isFirst: alike[0] === groups[index],
  };
}

function tapeTogether(
  tape: Tape,
  parts: readonly Part<readonly Numbered[]>[],
  onHand: OnHand,
  fleet: Fleet,
  currency: string | undefined,
  lp: LinearPrograms | undefined,
): TapePurchase {
  const { policy } = fleet;
  const system = policy.units.value;
  const pieces = parts.flatMap(({ rig, need }) => need.map((piece) => ({ ...piece, rig: rig.view.rig.name })));
  const needs = parts.map(({ need, own, rig }) => {
    const nm = need.reduce((sum, piece) => sum + piece.nm, 0);
    const inputs = [lengthInput('need', { nm, text: own.need.text }, system)];
    return long(nm, system, { rule: `what ${rig.view.rig.name} needs`, formula: 'need', inputs }).figure;
  });
  const homes = fleet.yards.length > 0 ? homesOf(fleet, parts) : undefined;
  return buyTape(tape, pieces, onHand, policy, currency, system, {
    cut: (problem) => cutFleet(problem, lp),
    needs,
    ...(homes ? { homeOf: (rig: string) => homes.get(rig) ?? fleet.name } : {}),
  });
}

/** The place of each rig. */
function homesOf(fleet: Fleet, parts: readonly Part<unknown>[]): ReadonlyMap<string, string> {
  return new Map(parts.map(({ rig }) => [rig.view.rig.name, placeOf(fleet, rig)]));
}

/** What the rigs of each place need, with the spare, in millilitres. */
function wantedAt(fleet: Fleet, parts: readonly Part<Needs['poured'][number]>[]): ReadonlyMap<string, number> {
  const out = new Map<string, number>();
  const spare = 1 + fleet.policy.spare.value.percent / 100;
  for (const { rig, need } of parts) {
    const place = placeOf(fleet, rig);
    const mL = need.fillings.reduce((sum, each) => sum + each.mL, 0);
    out.set(place, (out.get(place) ?? 0) + mL * spare);
  }
  return out;
}

const withSent = (one: Pooled, sent: readonly Sent[]): Pooled => (sent.length === 0 ? one : { ...one, sent });

function pouredTogether(
  material: Poured,
  parts: readonly Part<Needs['poured'][number]>[],
  onHand: OnHand,
  { policy }: Fleet,
  currency: string | undefined,
): Pick<TapePurchase, 'purchase' | 'cutting'> {
  const system = policy.units.value;
  const as = material.kind === 'sealant' ? 'volume' : 'liquid';
  // A rig may count in other units than the fleet: its need is put into the fleet's.
  const needs = parts.map(({ need, own, rig }) => {
    const mL = need.fillings.reduce((sum, each) => sum + each.mL, 0);
    const inputs = [volumeInput('need', { mL, text: own.need.text }, system, as)];
    return filling(mL, system, { rule: `what ${rig.view.rig.name} needs`, formula: 'need', inputs }, as);
  });
  return buyContainers(material, needs, onHand, policy, currency, system);
}

function pooled(
  material: Material,
  parts: readonly Part<unknown>[],
  { own, all }: Pick<Shelves, 'own' | 'all'>,
  buy: (onHand: OnHand) => Pick<TapePurchase, 'purchase' | 'cutting'>,
): Pooled {
  const { purchase, cutting } = buy(all);
  const shelved = all.lengths.length > own.lengths.length || all.mL > own.mL;
  const alone = shelved ? buy(own).purchase : purchase;
  return {
    material: material.name,
    rigs: parts.map(({ rig }) => rig.view.rig.name),
    purchase,
    ...(cutting ? { cutting } : {}),
    ...savings(parts, purchase, alone),
  };
}

function savings(
  parts: readonly Part<unknown>[],
  together: Purchase,
  alone: Purchase,
): Pick<Pooled, 'apart' | 'pooling' | 'shelf'> {
  const unit = alone.cost?.money.currency;
  const costs = parts.flatMap(({ own }) => (own.cost?.money.currency === unit && own.cost ? [own.cost.figure] : []));
  if (unit === undefined || costs.length < parts.length || !alone.cost || !together.cost) return {};
  const money = (value: number, rule: string, working: Pick<Explained, 'formula' | 'inputs'>): Explained => ({
    value: Number(moneyOf(rounded(value, 9), unit).amount),
    unit,
    text: moneyOf(rounded(value, 9), unit).text,
    rule,
    ...working,
  });
  const apart = money(
    costs.reduce((sum, { value }) => sum + value, 0),
    'each rig buying for itself',
    sumOf(costs, 'rig'),
  );
  const share =
    apart.value === 0 ? '' : ` (${rounded((100 * (apart.value - alone.cost.figure.value)) / apart.value, 1)} %)`;
  const pooling = money(apart.value - alone.cost.figure.value, `saved by buying together${share}`, {
    formula: 'apart - together',
    inputs: [figureInput('apart', apart), figureInput('together', alone.cost.figure)],
  });
  if (alone === together) return { apart, pooling };
  const shelf = money(alone.cost.figure.value - together.cost.figure.value, "saved by the fleet's own shelf", {
    formula: 'without - with_shelf',
    inputs: [figureInput('without', alone.cost.figure), figureInput('with_shelf', together.cost.figure)],
  });
  return { apart, pooling, shelf };
}
