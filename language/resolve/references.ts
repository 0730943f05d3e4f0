// Names that stand for something declared elsewhere: is it there, and is it of the right kind?

import type { Declaration } from '../records/file.ts';
import type { Whole } from '../records/statement.ts';
import type { Ref } from '../statements/slot.ts';
import { unknownMaterial } from '../statements/slots/amounts.ts';
import { canonical } from '../statements/words.ts';
import { isCurrency } from '../values/currency.ts';
import { nearest } from '../values/nearest.ts';
import type { Located } from './located.ts';
import type { Names, Namespace } from './names.ts';
import type { Event } from './types.ts';

const label: Record<Namespace, string> = {
  material: 'material',
  surface: 'surface',
  policy: 'policy',
  group: 'group',
  model: 'model',
  rig: 'rig',
  fleet: 'fleet',
};
const ruleOf: Record<Namespace, string> = {
  material: 'unknown-material',
  surface: 'unknown-surface',
  policy: 'unknown-name',
  group: 'unknown-name',
  model: 'unknown-name',
  rig: 'unknown-name',
  fleet: 'unknown-name',
};

/** What a declaration may be like: namespaces in the order in which they are looked through. */
export function basesOf(declaration: Declaration): readonly Namespace[] {
  switch (declaration.kind) {
    case 'rig':
      return ['rig', 'model'];
    case 'model':
    case 'policy':
    case 'surface':
      return [declaration.kind];
    case 'history':
    case 'fleet':
    case 'group':
      return [];
    default:
      return ['material'];
  }
}

/** What is wrong with a reference that leads to nothing of some namespaces; undefined where it leads somewhere. */
export function unknownReference(
  file: string,
  ref: Ref,
  namespaces: readonly Namespace[],
  names: Names,
): Located | undefined {
  if (
    namespaces.some(
      (namespace) =>
        names.find(namespace, ref.name) ?? (namespace === 'surface' && names.find(namespace, canonical(ref.name))),
    )
  )
    return undefined;
  const known = namespaces.flatMap((namespace) => [...names.all(namespace)].map(([name]) => name));
  const close = nearest(ref.name, known);
  const kind = namespaces.map((namespace) => label[namespace]).join(' or ');
  const others = (['material', 'surface', 'policy', 'group', 'model', 'rig', 'fleet'] as const).filter(
    (n) => !namespaces.includes(n) && names.find(n, ref.name),
  );
  const message = others[0]
    ? `\`${ref.name}\` is a ${label[others[0]]}; a ${kind} is expected here.`
    : close === undefined
      ? `No ${kind} \`${ref.name}\` is visible here. Is its file used? \`use "…"\` at the top makes its names visible.`
      : `No ${kind} \`${ref.name}\` is visible here; did you mean \`${close}\`?`;
  return {
    file,
    rule: ruleOf[namespaces[0] as Namespace],
    message,
    at: ref.at,
    ...(close === undefined || others[0] ? {} : { fixes: [{ label: `Write \`${close}\``, at: ref.at, text: close }] }),
  };
}

/** References of a file's declarations that lead nowhere. Seams are not among them: they depend on the rig. */
export function unknownReferences(file: string, declarations: readonly Declaration[], names: Names): Located[] {
  const problems: Located[] = [];
  const look = (ref: Ref, namespaces: readonly Namespace[]) => {
    const unknown = unknownReference(file, ref, namespaces, names);
    if (unknown) problems.push(unknown);
  };

  for (const declaration of declarations) {
    if (declaration.like) {
      look(declaration.like, basesOf(declaration));
      const base = names.find('material', declaration.like.name);
      if (basesOf(declaration)[0] === 'material' && base && base.declaration.kind !== declaration.kind) {
        problems.push({
          file,
          rule: 'like-another-kind',
          message: `\`${base.declaration.name}\` is a ${base.declaration.kind}, this is a ${declaration.kind}: a material is like one of its own kind.`,
          at: declaration.like.at,
        });
      }
    }
    if (declaration.under) look(declaration.under, ['policy']);
    // A history's materials are looked up where its rig is written: see `unknownInHistories`.
    if (declaration.kind === 'history') continue;
    for (const statement of declaration.statements as readonly Whole[])
      for (const [ref, namespace] of refsOf(statement)) look(ref, [namespace]);
    for (const statement of declaration.statements) {
      if (statement.word === 'currency' && 'code' in statement && !isCurrency(statement.code.name)) {
        problems.push({
          file,
          rule: 'wrong-value',
          message: `\`${statement.code.name}\` is no currency code of ISO 4217, such as \`USD\` or \`EUR\`.`,
          at: statement.code.at,
        });
      }
    }
  }
  return problems;
}

/** References of the histories of a rig that lead nowhere where the rig is written; those of its own block are `own`. */
export function* unknownInHistories(
  events: readonly Event[],
  own: readonly unknown[],
  names: Names,
): Iterable<Located> {
  const written = new Set(own);
  for (const { record, file } of events) {
    if (written.has(record)) continue;
    for (const [ref, namespace] of refsOf(record)) {
      const unknown = unknownReference(file, ref, [namespace], names);
      if (unknown) yield unknown;
    }
  }
}

type Loose = Readonly<Record<string, unknown>>;

/** The references of one statement, by the names of its fields. */
export function* refsOf(statement: Whole): Iterable<readonly [Ref, Namespace]> {
  const s = statement as unknown as Loose & { word: string };
  for (const field of ['materials', 'stock'] as const) {
    for (const ref of (s[field] as readonly Ref[] | undefined) ?? [])
      if (ref.name !== unknownMaterial) yield [ref, 'material'];
  }
  for (const finding of (s.findings as readonly Whole[] | undefined) ?? []) yield* refsOf(finding);
  for (const line of (s.lines as readonly Whole[] | undefined) ?? []) yield* refsOf(line);
  const single = (value: unknown): value is Ref =>
    typeof value === 'object' && value !== null && 'name' in value && 'at' in value;
  if (single(s.material)) yield [s.material, 'material'];
  if (s.word === 'group' && single(s.group)) yield [s.group, 'group'];
  if (single(s.surface)) yield [s.surface, 'surface'];
  for (const field of ['surfaces', 'between', ...(s.word === 'life' ? ['on'] : [])]) {
    for (const ref of (s[field] as readonly Ref[] | undefined) ?? []) yield [ref, 'surface'];
  }
}
