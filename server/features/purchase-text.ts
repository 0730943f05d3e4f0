// What of a material is to be bought, in a few words.
import type { Purchase } from '../../language/estimate/index.ts';

/** `EdgeTape4 103 ft 2 in: 2 rolls of 50 ft + 1 roll of 25 ft, 156.50 USD`; what is on hand needs no buying. */
export function purchaseText({ material, need, withSpare, buy, cost }: Purchase): string {
  const amount = (withSpare ?? need).text;
  if (buy.length === 0) return `${material} ${amount}: on hand`;
  const bought = buy.map(({ count, what }) => `${count} ${plural(what, count)}`).join(' + ');
  return `${material} ${amount}: ${bought}${cost ? `, ${cost.money.text}` : ''}`;
}

/** `roll of 50 ft`, in the plural if there are several. */
const plural = (what: string, count: number) => (count === 1 ? what : what.replace(/^\S+/, (noun) => `${noun}s`));
