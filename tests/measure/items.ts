// Items and policies from lines of text.
import type { Item, Material, Policy, Rig, Sealant, Tape } from '../../language/resolve/types.ts';
import { viewOf } from '../estimate/asked.ts';

interface Given {
  readonly along?: string;
  readonly across?: string;
  readonly policy?: string;
  readonly material?: string;
}

export const tapeText = 'tape T { width 4 in }';
export const sealantText = 'sealant S { bead 1 in by 1/4 in }';

function texts({ along = '28 ft', across = '8 ft', policy = '', material = '' }: Given, lines: string): string {
  return `${material}\npolicy P { ${policy} }\nrig R under P {\n  roof ${along} by ${across} epdm\n${lines}\n}\n`;
}

/** A rig with these lines, under a policy with these. */
export function rigOf(lines: string, given: Given = {}): Rig {
  return viewOf(texts(given, lines)).rig;
}

/** The one item of a line, on its rig. */
export function itemOf(line: string, given: Given = {}): { readonly item: Item; readonly rig: Rig } {
  const rig = rigOf(`  ${line}`, given);
  return { item: rig.items[0]!, rig };
}

export function policyOf(policy: string): Policy {
  return rigOf('', { policy }).policy;
}

function materialOf(text: string, name: string): Material | undefined {
  return viewOf(texts({ material: text }, '')).material(name);
}

/** A tape `T`, or another one of the text. */
export function tapeOf(text = tapeText, name = 'T'): Tape {
  const found = materialOf(text, name);
  if (found?.kind !== 'tape') throw new Error(`no tape ${name}`);
  return found;
}

/** A sealant `S`, or another one of the text. */
export function sealantOf(text = sealantText, name = 'S'): Sealant {
  const found = materialOf(text, name);
  if (found?.kind !== 'sealant') throw new Error(`no sealant ${name}`);
  return found;
}

export const nm = (inch: number): number => inch * 25_400_000;
export const inches = ({ nm }: { readonly nm: number }): number => nm / 25_400_000;
