// What is on hand of a material. A count beats bought minus used.
import type { Material, OnSale, Origin, Rig, Tape } from '../resolve/types.ts';
import type { StockStatement } from '../statements/rig.ts';
import type { Amount } from '../statements/slots/amounts.ts';
import { type Length, lengthOf } from '../values/length.ts';
import type { Volume } from '../values/volume.ts';
import type { Question } from './schema.ts';

/** One length of tape on hand: a piece, or an unopened roll, which still loses its first turn. */
export interface TapeOnHand {
  readonly length: Length;
  readonly roll: boolean;
  /** Where it lies, in a fleet of several yards. */
  readonly at?: string;
  readonly origin: Origin;
}

/** Single lengths of a tape, or the volume of anything else, and what could not be counted. */
export interface OnHand {
  readonly lengths: readonly TapeOnHand[];
  readonly mL: number;
  readonly origin?: Origin;
  readonly questions: readonly Question[];
}

type Entry = { readonly amount: Amount; readonly origin: Origin; readonly past: boolean };

/** A shelf: what is counted and bought for it, and the records that take from it. */
export interface Shelf {
  readonly stock: Rig['stock'];
  readonly events: Rig['events'];
}

/** What is on hand of a material on a date, by the shelf's own `on-hand`, else by `bought` less what its records used. */
export function onHandOf({ stock, events }: Shelf, material: Material, asOf: string): OnHand {
  const counted = stock.flatMap((statement): Entry[] =>
    statement.word !== 'on-hand'
      ? []
      : statement.stock.flatMap(({ name, amount, bestBefore }) =>
          name === material.name ? [{ amount, origin: originOf(statement), past: isPast(bestBefore, asOf) }] : [],
        ),
  );
  const bought = stock.flatMap((statement): (Entry & { readonly on: string })[] =>
    statement.word !== 'bought' || statement.material.name !== material.name || statement.date.first > asOf
      ? []
      : [
          {
            amount: statement.amount,
            origin: originOf(statement),
            past: isPast(statement.bestBefore, asOf),
            on: statement.date.first,
          },
        ],
  );
  const entries = counted.length > 0 ? counted : bought;
  const since = bought.map(({ on }) => on).sort()[0];
  const used =
    counted.length > 0 || since === undefined
      ? []
      : events
          .filter(({ first, last }) => first >= since && last <= asOf)
          .flatMap(({ record }) => ('materials' in record ? (record.materials ?? []) : []))
          .flatMap((each) => (each.name === material.name ? (each.used ?? []) : []));
  return material.kind === 'tape' ? lengthsOf(material, entries, used) : volumeOf(material, entries, used);
}

function isPast(bestBefore: { readonly last: string } | undefined, asOf: string): boolean {
  return bestBefore !== undefined && bestBefore.last < asOf;
}

function originOf(statement: StockStatement & { readonly file: string }): Origin {
  return { file: statement.file, at: statement.at, kind: 'record' };
}

const outOfDate = (material: Material): Question => ({
  rule: 'past-best-before',
  about: material.name,
  text: `What is on hand of ${material.name} is past its best-before date and is not counted.`,
});
const uncounted = (material: Material, amount: string): Question => ({
  rule: 'unknown-stock',
  about: material.name,
  text: `How much \`${amount}\` of ${material.name} is, cannot be told: write its size, as in \`2 rolls of 50 ft\`.`,
});

function lengthsOf(tape: Tape, entries: readonly Entry[], used: readonly Amount[]): OnHand {
  const questions: Question[] = [];
  const lengths: TapeOnHand[] = [];
  for (const { amount, origin, past } of entries) {
    const one = tapeLength(tape, amount);
    if (past) questions.push(outOfDate(tape));
    else if (one === undefined) questions.push(uncounted(tape, textOf(amount)));
    else for (let i = 0; i < one.count; i++) lengths.push({ length: one.length, roll: one.roll, origin });
  }
  for (const amount of used) {
    const one = tapeLength(tape, amount);
    if (one === undefined) questions.push(uncounted(tape, textOf(amount)));
    else for (let i = 0; i < one.count; i++) takeFrom(lengths, one.length.nm);
  }
  return { lengths, mL: 0, questions };
}

/** Takes a length off the shortest one that holds it. */
function takeFrom(lengths: TapeOnHand[], nm: number): void {
  const [from] = lengths.filter(({ length }) => length.nm >= nm).sort((a, b) => a.length.nm - b.length.nm);
  if (from === undefined) return;
  const rest = from.length.nm - nm;
  const left = rest === 0 ? [] : [{ ...from, length: lengthOf(rest), roll: false }];
  lengths.splice(lengths.indexOf(from), 1, ...left);
}

function tapeLength(
  tape: Tape,
  amount: Amount,
): { readonly count: number; readonly length: Length; readonly roll: boolean } | undefined {
  if (amount.kind === 'length') return { count: 1, length: amount.length, roll: false };
  if (amount.kind !== 'counted') return undefined;
  const { count, noun } = amount.counted;
  const roll = noun === 'roll';
  const length = amount.length ?? (roll ? only(tape.rolls) : undefined);
  if (length === undefined || (noun !== 'roll' && noun !== 'piece')) return undefined;
  if (Number.isInteger(count)) return { count, length, roll };
  return { count: 1, length: lengthOf(Math.round(count * length.nm)), roll: false };
}

function volumeOf(material: Exclude<Material, Tape>, entries: readonly Entry[], used: readonly Amount[]): OnHand {
  const questions: Question[] = [];
  const sum = (amounts: readonly Amount[]): number =>
    amounts.reduce((total, amount) => {
      const mL = millilitres(material, amount);
      if (mL === undefined) questions.push(uncounted(material, textOf(amount)));
      return total + (mL ?? 0);
    }, 0);
  const fresh = entries.filter(({ past }) => !past);
  if (fresh.length < entries.length) questions.push(outOfDate(material));
  const mL = Math.max(0, sum(fresh.map(({ amount }) => amount)) - sum(used));
  const origin = fresh[0]?.origin;
  return { lengths: [], mL, questions, ...(origin === undefined ? {} : { origin }) };
}

/** The volume of an amount; undefined where its size is neither written nor the only one on sale. */
export function millilitres(material: Exclude<Material, Tape>, amount: Amount): number | undefined {
  if (amount.kind === 'volume') return amount.volume.mL;
  if (amount.kind === 'length') return undefined;
  const { count, noun } = amount.counted;
  if (amount.volume !== undefined) return count * amount.volume.mL;
  if (material.kind === 'sealant') {
    const cartridge = only(material.cartridges)?.mL;
    if (noun === 'cartridge' || noun === 'tube') return cartridge && count * cartridge;
    if (noun === 'case') {
      const holds = only(material.cases);
      return cartridge && holds && count * holds.count * cartridge;
    }
  }
  const container: Volume | undefined = only(material.containers);
  return container && count * container.mL;
}

function only<T>(onSale: readonly OnSale<T>[]): T | undefined {
  return onSale.length === 1 ? onSale[0]!.size : undefined;
}

function textOf(amount: Amount): string {
  return amount.kind === 'counted'
    ? amount.counted.text
    : amount.kind === 'length'
      ? amount.length.text
      : amount.volume.text;
}
