// What must not be taped or sealed, and why.
import type { Item } from '../resolve/types.ts';

const NEVER: Partial<Record<Item['kind'], string>> = {
  gasket: 'it sits on a gasket, which its bolts press; its bolts are checked',
  drain: 'a drain is kept open',
  channel: 'a channel is kept open',
  insert: 'the insert of a moulding is renewed, for whatever covers it holds water',
};

/** Why an item gets no tape; undefined if it may get some. */
export function whyNoTape(item: Item): string | undefined {
  if (item.serviced) return 'its lid is opened for service: it is sealed';
  if (item.kind === 'field') return 'the membrane is patched, not taped along a seam';
  return NEVER[item.kind];
}

/** Why an item gets no sealant; undefined if it may get some. */
export function whyNoSealant(item: Item): string | undefined {
  if (item.kind === 'field') return 'the membrane is patched or coated, not sealed along a seam';
  return NEVER[item.kind];
}
