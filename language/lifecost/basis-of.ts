// From a rig's records to the plain numbers of the comparison.

import { endOfMembrane } from '../due/index.ts';
import type { RigView, Sealant, Tape } from '../resolve/types.ts';
import type { RigState } from '../seams/index.ts';
import { periodBetween } from '../values/calendar.ts';
import type { Basis, Coated, Cost, Quoted, Taping } from './basis.ts';
import { materialFor } from './materials.ts';
import { type PricedWork, priceOf, type Task } from './pricing.ts';
import { type Kept, keptSeams, pointsOf, years } from './scope.ts';
import type { ThreePoint } from './threepoint.ts';

/** The basis with what is told of it in words. */
export interface Grounds {
  readonly basis: Basis;
  readonly currency: string;
  readonly kept: readonly Kept[];
  readonly sealant: { readonly material: Sealant; readonly because: string };
  readonly tape?: { readonly material: Tape; readonly because: string };
  /** Why a sum is not whole. */
  readonly missing: readonly string[];
  /** Ways that are not compared, each with the reason. */
  readonly left: readonly { readonly way: string; readonly reason: string }[];
  readonly inspection?: PricedWork;
}

/** Undefined, with the reason, where there is nothing to compare: no seams, no sealant with a price, no currency. */
export function groundsOf(view: RigView, state: RigState, horizon: number): Grounds | { readonly reason: string } {
  const { policy } = view.rig;
  const { asOf } = state;
  const rate = policy.realInterest.value.percent / 100;
  if (rate <= -1) return { reason: `real interest of ${policy.realInterest.value.text} leaves nothing of any money` };
  const sealant = materialFor(view, 'sealant', asOf);
  if (!sealant) return { reason: 'no sealant with a price is declared where the rig is written' };
  const tape = materialFor(view, 'tape', asOf);
  const kept = keptSeams(view, state, sealant.material, tape?.material);
  if (kept.length === 0) return { reason: 'no seam of the roof can be measured' };

  const missing = new Set<string>();
  const price = (tasks: readonly Task[]): PricedWork | undefined => {
    const priced = priceOf(view, asOf, tasks);
    for (const text of priced?.missing ?? []) missing.add(text);
    return priced;
  };
  const names = (which: readonly Kept[]) => which.map(({ item }) => item.name);
  const stripping = (which: readonly Kept[]): Task => ({ word: 'strip', items: names(which) });
  const sealing = (which: readonly Kept[]): Task => ({
    word: 'seal',
    items: names(which),
    materials: [sealant.material.name],
  });
  const recoat = price([sealing(kept)]);
  const strip = price([stripping(kept), sealing(kept)]);
  if (!recoat || !strip) return { reason: 'the policy names no currency and no price has one' };
  const { currency } = recoat;
  const sameMoney = (priced: PricedWork | undefined) => {
    if (priced === undefined || priced.currency === currency) return priced;
    missing.add(`Some prices are in ${priced.currency}: what is paid in it is not compared.`);
    return undefined;
  };

  /** What the findings ask for today on some of the seams. */
  const nowOf = (which: readonly Kept[]): Cost | undefined => {
    const seals = which.filter(({ now }) => now !== 'nothing');
    return seals.length === 0
      ? undefined
      : sameMoney(price([stripping(seals.filter(({ now }) => now === 'strip and seal')), sealing(seals)]));
  };
  const length = total(kept);
  const tapingOf = (which: readonly Kept[]): Taping | undefined => {
    if (!tape || which.length === 0) return undefined;
    const taping: Task = { word: 'tape', items: names(which), materials: [tape.material.name] };
    const first = sameMoney(price([stripping(which.filter((each) => each.tape.ok && each.tape.stripFirst)), taping]));
    const renewal = sameMoney(price([stripping(which), taping]));
    if (!first || !renewal) return undefined;
    const rest = kept.filter((each) => !which.includes(each));
    const now = nowOf(rest);
    return {
      first,
      renewal,
      lives: livesOf(which),
      ...(now ? { now } : {}),
      rest: {
        share: total(rest) / length,
        seams: rest.reduce((sum, { item }) => sum + item.count, 0),
        coats: coatedOn(rest),
      },
    };
  };
  const tapeable = kept.filter((each) => each.tape.ok);
  const edges = tapeable.filter(({ item }) => item.kind === 'edge');
  const all = tapingOf(tapeable);
  const some = edges.length > 0 && edges.length < tapeable.length ? tapingOf(edges) : undefined;
  const now = nowOf(kept);
  const inspection = sameMoney(price([{ word: 'inspect' }]));
  const { quotes, left } = quotesOf(view, asOf, currency, all !== undefined);
  const leaks = missedLeaks(view, currency);
  for (const text of leaks.missing) missing.add(text);
  const dayRate = view.rig.identity.dayRate?.value;
  if (dayRate && dayRate.currency !== currency)
    missing.add(`A day off the road is in ${dayRate.currency}: it is not counted.`);
  if (!dayRate) missing.add('What a day off the road costs is not written (`day-rate`): it is not counted.');
  return {
    currency,
    kept,
    sealant,
    ...(tape ? { tape } : {}),
    missing: [...missing],
    left: [
      ...(tape ? [] : [{ way: 'tape', reason: 'no tape with a price is declared where the rig is written' }]),
      ...(tape && tapeable.length === 0 ? [{ way: 'tape', reason: 'no seam takes it' }] : []),
      ...left,
    ],
    ...(inspection ? { inspection } : {}),
    basis: {
      years: horizon,
      rate,
      dayRate: dayRate?.currency === currency ? Number(dayRate.amount) : 0,
      days: daysOff(view),
      touchUp: shareOf(policy.touchUp.value),
      recoatEvery: pointsOf([
        years(policy.recoat.value.least),
        years(policy.recoat.value.likely),
        years(policy.recoat.value.most),
      ]),
      coats: coatedOn(kept),
      limit: Math.max(1, sealant.material.coatsAtMost.value),
      seams: kept.reduce((sum, { item }) => sum + item.count, 0),
      recoat,
      strip,
      ...(now ? { now } : {}),
      ...(all ? { tape: all } : {}),
      ...(some ? { tapeEdges: some } : {}),
      quotes,
      ...membraneOf(view, asOf, quotes),
      missedLeak: leaks.counted,
    },
  };
}

/** How many years the membrane has left, and the least that a new one is quoted at. */
function membraneOf(view: RigView, asOf: string, quotes: readonly Quoted[]): Pick<Basis, 'membrane'> {
  const { roof } = view.rig;
  const life = roof?.surface === undefined ? undefined : view.surface(roof.surface)?.life?.value;
  const laid = endOfMembrane(view)[0]?.inputs.find(({ name }) => name === 'membrane_laid')?.value;
  const prices = quotes.flatMap(({ job, price }) => (job === 'reroof' ? [price] : []));
  if (!life || typeof laid !== 'string' || prices.length === 0) return {};
  const age = years(periodBetween(laid, asOf));
  const left = (period: Parameters<typeof years>[0]) => Math.max(0, years(period) - age);
  return {
    membrane: { left: pointsOf([left(life.least), left(life.likely), left(life.most)]), price: Math.min(...prices) },
  };
}

function coatedOn(which: readonly Kept[]): readonly Coated[] {
  const whole = total(which);
  return which.map(({ nm, coats, now }) => ({ share: nm / whole, coats, bad: now === 'strip and seal' }));
}

const total = (which: readonly Kept[]) => which.reduce((sum, { nm }) => sum + nm, 0);

function livesOf(which: readonly Kept[]): Taping['lives'] {
  const whole = total(which);
  const groups = new Map<string, { share: number; life: ThreePoint }>();
  for (const { nm, tape } of which) {
    if (!tape.ok) continue;
    const key = JSON.stringify(tape.life);
    groups.set(key, { life: tape.life, share: (groups.get(key)?.share ?? 0) + nm / whole });
  }
  return [...groups.values()];
}

function daysOff({ rig }: RigView): Basis['days'] {
  const entries = Object.entries(rig.policy.daysOff).map(([what, { value }]) => {
    const days = ({ months, days: d }: typeof value.least) => d + Math.round((months * 365.2425) / 12);
    return [what, pointsOf([days(value.least), days(value.likely), days(value.most)])];
  });
  return Object.fromEntries(entries) as Basis['days'];
}

function shareOf({ least, likely, most }: RigView['rig']['policy']['touchUp']['value']): ThreePoint {
  return pointsOf([shareIn(least), shareIn(likely), shareIn(most)]);
}

/** From 0 to 1: what lies outside is a finding of its own. */
function shareIn({ percent }: { readonly percent: number }): number {
  return Math.min(1, Math.max(0, percent / 100));
}

/** Jobs of a quote that keep all seams for years; the first that is named counts. */
const lasting = new Set<string>(['recoat', 'tape', 'strip', 'reseal', 'reroof']);

function quotesOf(
  view: RigView,
  asOf: string,
  currency: string,
  tapes: boolean,
): Pick<Grounds, 'left'> & { readonly quotes: Quoted[] } {
  const quotes: Quoted[] = [];
  const left: { way: string; reason: string }[] = [];
  for (const { from, price, job, until } of view.rig.quotes) {
    const kept = job?.find((each) => lasting.has(each)) as Quoted['job'] | undefined;
    const way = `the quote of ${from}`;
    if (until && until.last < asOf) left.push({ way, reason: `it held until ${until.text}` });
    else if (kept === undefined)
      left.push({
        way,
        reason: 'it is not for a job that keeps all seams for years (recoat, strip, reseal, tape, reroof)',
      });
    else if (kept === 'tape' && !tapes)
      left.push({ way, reason: 'what its tape lasts is not known: no tape of our own is counted' });
    else if (price.currency !== currency) left.push({ way, reason: `it is in ${price.currency}` });
    else quotes.push({ from, job: kept, price: Number(price.amount) });
  }
  return { quotes, left };
}

function missedLeaks(
  { rig }: RigView,
  currency: string,
): { readonly counted: Basis['missedLeak']; readonly missing: readonly string[] } {
  const all = Object.entries(rig.policy.missedLeak);
  const counted = all.flatMap(([way, { value }]) =>
    value.cost.currency === currency
      ? [[way, { chance: shareIn(value.chance), cost: Number(value.cost.amount) }] as const]
      : [],
  );
  const missing = all.flatMap(([way, { value }]) =>
    value.cost.currency === currency
      ? []
      : [`What a missed leak costs (\`missed-leak ${way}\`) is in ${value.cost.currency}: it is not counted.`],
  );
  return { counted: Object.fromEntries(counted), missing };
}
