// What a sealant or a liquid is sold in: cartridges, cases of them, containers.
import type { Material, OnSale, Tape } from '../resolve/types.ts';
import { countedOf } from '../values/numbers.ts';

export type Poured = Exclude<Material, Tape>;

/** A size on sale, in the words of a purchase list. */
export interface Size {
  readonly what: string;
  readonly noun: 'cartridge' | 'case' | 'container';
  readonly mL: number;
  readonly text: string;
}

/** Cartridges, cases as so many cartridges, and containers. A case counts where there is one size of cartridge. */
export function sizesOf(material: Poured): readonly OnSale<Size>[] {
  const containers = material.containers.map((sale): OnSale<Size> => {
    const { mL, text } = sale.size;
    return { ...sale, size: { what: `container of ${text}`, noun: 'container', mL, text } };
  });
  if (material.kind !== 'sealant') return containers;
  const cartridges = material.cartridges.map((sale): OnSale<Size> => {
    const { mL, text } = sale.size;
    return { ...sale, size: { what: `cartridge of ${text}`, noun: 'cartridge', mL, text } };
  });
  const one = material.cartridges.length === 1 ? material.cartridges[0]!.size : undefined;
  const cases = material.cases.flatMap((sale): OnSale<Size>[] => {
    if (one === undefined) return [];
    const mL = sale.size.count * one.mL;
    const text = `${sale.size.text} of ${one.text}`;
    return [{ ...sale, size: { what: `case of ${sale.size.text}`, noun: 'case', mL, text } }];
  });
  return [...cartridges, ...cases, ...containers];
}

/** `4 cartridges`, `2 x 1 qt`. */
export function countText(count: number, { noun, text }: Size): string {
  return noun === 'container' ? `${count} x ${text}` : countedOf(count, noun).text;
}
