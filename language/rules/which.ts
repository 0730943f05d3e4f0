// Rules of what is meant: which tape a plan lays, which roll a record used.
import type { Fix, Span } from '../grammar/problem.ts';
import type { Located } from '../resolve/located.ts';
import type { Names } from '../resolve/names.ts';
import { isLibrary } from '../resolve/origin.ts';
import type { Material, MaterialsOf, Plan, Rig } from '../resolve/types.ts';
import type { MaterialKind } from '../statements/file.ts';
import type { StockStatement } from '../statements/rig.ts';
import type { Amount, Used } from '../statements/slots/amounts.ts';
import { listed } from './listed.ts';
import { family, type RigContext, type RuleEntry } from './rule.ts';

const rules = {
  'which-material': {
    severity: 'warning',
    title: 'A plan does not say with what',
    why: 'Lengths, amounts and waiting times follow from the material.',
    fix: 'Adds the material, where only one of the kind is declared.',
  },
  'two-tapes': {
    severity: 'warning',
    title: 'A plan lays two tapes on one seam',
    why: 'A seam gets one tape. Each tape has a line of its own that says where it goes.',
    fix: 'None: only the writer knows which seam gets which.',
  },
  'which-size': {
    severity: 'warning',
    title: 'A size is not said, and there is more than one',
    why: 'How much a roll or a cartridge is depends on its size. Where several are on sale, the record has to say which.',
    fix: 'None: only the writer knows which was used.',
  },
} as const satisfies Record<string, RuleEntry>;
export type WhichFound = Located & { readonly rule: keyof typeof rules };

function* check({ view, names }: RigContext): Iterable<WhichFound> {
  const { rig } = view;
  for (const plan of rig.plans) yield* planned(plan, rig, view.material, names);
  for (const { record, file, findings } of rig.events) {
    const lines = [record, ...findings.map(({ line }) => line)];
    for (const line of lines)
      if ('materials' in line) yield* sizesUsed(line.materials ?? [], file, rig.name, view.material);
  }
  for (const { statement, file } of rig.plans)
    yield* sizesUsed(statement.materials ?? [], file, rig.name, view.material);
  for (const found of sizesInStock(rig.stock, view.material)) yield { ...found, rig: rig.name };
}

export const which = family(rules, check);

/** What a plan cannot do without. */
const needs: Partial<Record<Plan['statement']['word'], MaterialKind>> = {
  tape: 'tape',
  seal: 'sealant',
  coat: 'coating',
};

function* planned(
  { statement, file }: Plan,
  rig: Rig,
  material: MaterialsOf,
  names: Names | undefined,
): Iterable<WhichFound> {
  const kind = needs[statement.word];
  if (!kind) return;
  const refs = statement.materials ?? [];
  const mine = refs.filter(({ name }) => material(name)?.kind === kind);
  const [, second] = mine;
  if (second && kind === 'tape')
    yield {
      rule: 'two-tapes',
      rig: rig.name,
      file,
      at: second.at,
      message: `${listed(mine.map(({ name }) => name))} are two tapes: write a line for each, with the seams that it goes on.`,
    };
  // A name that nothing has is reported by itself: it may be the one that is missed.
  if (mine.length > 0 || refs.some(({ name }) => !material(name))) return;
  const candidates = names ? declared(kind, names) : [];
  const [only] = candidates.length === 1 ? candidates : [];
  const at: Span = statement.spans.targets ?? statement.at;
  const fixes: Fix[] =
    only === undefined || refs.length > 0
      ? []
      : [{ label: `Add \`with ${only}\``, at: [at[1], at[1]], text: ` with ${only}` }];
  const such = candidates.length > 0 ? ` Declared here: ${listed(candidates)}.` : '';
  yield {
    rule: 'which-material',
    rig: rig.name,
    file,
    at: statement.at,
    message: `This does not say which ${kind} is used: write \`with ${only ?? candidates[0] ?? 'NAME'}\`.${such}`,
    fixes,
  };
}

/** The names of a kind that the user declared; the built-in ones are no products. */
function declared(kind: MaterialKind, names: Names): string[] {
  const out: string[] = [];
  for (const [name, { declaration, file }] of names.all('material'))
    if (declaration.kind === kind && !isLibrary(file)) out.push(name);
  return out.sort();
}

function* sizesUsed(refs: readonly Used[], file: string, rig: string, material: MaterialsOf): Iterable<WhichFound> {
  for (const { name, at, used } of refs)
    for (const amount of used ?? []) {
      const found = sizeMissing(name, amount, at, file, material);
      if (found) yield { ...found, rig };
    }
}

/** Amounts on a shelf; shared with fleets. */
export function* sizesInStock(
  stock: readonly (StockStatement & { readonly file: string })[],
  material: MaterialsOf,
): Iterable<WhichFound> {
  for (const statement of stock) {
    const lines =
      statement.word === 'on-hand' ? statement.stock : [{ ...statement.material, amount: statement.amount }];
    for (const { name, at, amount } of lines) {
      const found = sizeMissing(name, amount, at, statement.file, material);
      if (found) yield found;
    }
  }
}

function sizeMissing(
  name: string,
  amount: Amount,
  at: Span,
  file: string,
  materialOf: MaterialsOf,
): WhichFound | undefined {
  const material = materialOf(name);
  if (!material || amount.kind !== 'counted' || amount.length || amount.volume) return undefined;
  const { noun, text } = amount.counted;
  const sizes = sizesOf(material, noun);
  if (!sizes || sizes.length === 1) return undefined;
  const message =
    sizes.length === 0
      ? `How much \`${text}\` of \`${name}\` is cannot be told, since none is on sale: write the size, such as \`${text} of ${noun === 'roll' ? '50 ft' : '10.3 fl-oz'}\`.`
      : `Which ${noun} of \`${name}\` is meant? Write ${sizes.map((size) => `\`${text} of ${size}\``).join(' or ')}.`;
  const related = isLibrary(material.origin.file)
    ? []
    : [{ file: material.origin.file, at: material.origin.at, message: 'The sizes on sale.' }];
  return { rule: 'which-size', file, at, message, related };
}

/** The sizes in which a material is sold by that name; undefined for what is no package of it (`3 pieces`). */
function sizesOf(material: Material, noun: string): readonly string[] | undefined {
  const texts = (onSale: readonly { readonly size: { readonly text: string } }[]) =>
    onSale.map(({ size }) => size.text);
  if (material.kind === 'tape') return noun === 'roll' ? texts(material.rolls) : undefined;
  if (material.kind === 'sealant' && (noun === 'cartridge' || noun === 'tube')) return texts(material.cartridges);
  return undefined;
}
