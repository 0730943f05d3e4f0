// The items of a roof, from the lines that hold.
import type { Span } from '../grammar/problem.ts';
import type { Declaration } from '../records/file.ts';
import type { Broken } from '../records/statement.ts';
import { type ItemStatement, itemWords, type RoofStatement } from '../statements/roof.ts';
import { canonical, type Side } from '../statements/words.ts';
import { lengthOf } from '../values/length.ts';
import type { Located } from './located.ts';
import type { Entry } from './names.ts';
import { originOf, stated } from './origin.ts';
import type { Item, Policy } from './types.ts';

/** A side by the kerb, whatever word was used: left and right are those of travel, nearside is the side of the kerb. */
export function sideOf(word: string, curb: 'left' | 'right'): Side | undefined {
  switch (word) {
    case 'curbside':
    case 'nearside':
      return 'curbside';
    case 'roadside':
    case 'offside':
      return 'roadside';
    case 'left':
    case 'right':
      return word === curb ? 'curbside' : 'roadside';
    case 'front':
    case 'rear':
      return word;
    default:
      return undefined;
  }
}

export const isItem = (statement: { readonly word: string }): statement is ItemStatement =>
  itemWords.has(statement.word);

/** The names that an item line gives: an edge line may name both sides. */
export function namesOf(statement: ItemStatement, curb: 'left' | 'right'): string[] {
  if (statement.word === 'edge') return statement.names.map((name) => sideOf(name, curb) ?? name);
  if (statement.word === 'cap') return [statement.name];
  return [statement.name.name];
}

function itemOf(statement: ItemStatement, name: string, file: string, policy: Policy): Item {
  const on = 'on' in statement ? statement.on : undefined;
  const side =
    statement.word === 'edge' || statement.word === 'cap'
      ? sideOf(name, policy.curb.value)
      : on && sideOf(on.side, policy.curb.value);
  const wide = statement.wide ?? ('wideBefore' in statement ? statement.wideBefore : undefined);
  const places = statement.places ?? [];
  return {
    kind: statement.word,
    name,
    origin: originOf(file, statement.at, statement.source),
    ...(statement.doc === undefined ? {} : { doc: statement.doc }),
    ...(side ? { side } : {}),
    wall: on?.wall ?? false,
    ...sizeOf(statement),
    ...(statement.word === 'opening' && statement.cutout ? { hole: statement.cutout } : {}),
    ...('run' in statement && statement.run ? { run: statement.run } : {}),
    ...(statement.length ? { length: statement.length } : {}),
    ...(wide ? { wide } : {}),
    ...(statement.bead ? { bead: { width: statement.bead[0], height: statement.bead[1] } } : {}),
    ...(statement.surface ? { surface: canonical(statement.surface.name) } : {}),
    ...(statement.between
      ? { between: [canonical(statement.between[0].name), canonical(statement.between[1].name)] as const }
      : {}),
    places,
    count: Math.max(1, statement.count?.count ?? places.length),
    ...(statement.since ? { since: statement.since } : {}),
    ...(statement.until ? { until: statement.until } : {}),
    comesOff: false,
    serviced: false,
  };
}

/** The outside of the flange: as written, or the cut-out with the flange around it. */
function sizeOf(statement: ItemStatement): Pick<Item, 'size'> {
  if ('size' in statement && statement.size) return { size: statement.size };
  if (statement.word !== 'opening' || !statement.cutout) return {};
  const twice = 2 * (statement.flange?.nm ?? 0);
  const { cutout } = statement;
  return cutout.shape === 'round'
    ? { size: { shape: 'round', diameter: lengthOf(cutout.diameter.nm + twice) } }
    : {
        size: {
          shape: 'rectangle',
          along: lengthOf(cutout.along.nm + twice),
          across: lengthOf(cutout.across.nm + twice),
        },
      };
}

export interface Items {
  readonly items: readonly Item[];
  /** Names of items whose line could not be read whole: known, but nothing is computed for them. */
  readonly broken: ReadonlySet<string>;
  /** Names dropped by `without`, with the place of that word. */
  readonly dropped: ReadonlyMap<string, { readonly file: string; readonly at: readonly [number, number] }>;
  readonly problems: readonly Located[];
}

/** The items along a chain (nearest first): a nearer line replaces an inherited one of the same name, `without` drops it. */
export function resolveItems<D extends Declaration>(chain: readonly Entry<D>[], policy: Policy): Items {
  const items = new Map<string, Item>();
  const broken = new Set<string>();
  const dropped = new Map<string, { file: string; at: readonly [number, number] }>();
  const problems: Located[] = [];
  const curb = policy.curb.value;
  const marks = new Map<string, Partial<Pick<Item, 'comesOff' | 'serviced' | 'partLife'>>>();

  for (let i = chain.length - 1; i >= 0; i--) {
    const { declaration, file } = chain[i] as Entry<D>;
    const mine = i === 0;
    const here = new Map<string, ItemStatement>();
    const statements = declaration.statements as unknown as readonly RoofStatement[];
    for (const statement of statements) {
      if (statement.word !== 'without') continue;
      for (const { name, at } of statement.names) {
        const known = sideOf(name, curb) ?? name;
        const had = items.delete(known) || broken.delete(known);
        if (!had && mine)
          problems.push({
            file,
            rule: 'unknown-seam',
            message: `Nothing called \`${name}\` is inherited here, so it cannot be dropped.`,
            at,
          });
        dropped.set(known, { file, at });
      }
    }
    for (const statement of statements) {
      if (!isItem(statement)) continue;
      for (const name of namesOf(statement, curb)) {
        const first = here.get(name);
        if (first) {
          if (mine)
            problems.push({
              file,
              rule: 'name-twice',
              message: `\`${name}\` is described twice; the first line holds.`,
              at: statement.at,
              related: [{ file, at: first.at, message: 'The first one.' }],
            });
          continue;
        }
        const drop = dropped.get(name);
        const without =
          drop?.file === file && mine
            ? (declaration.statements as unknown as readonly RoofStatement[]).find(
                (s) => s.word === 'without' && s.names.some((n) => n.at === drop.at),
              )
            : undefined;
        if (drop && without?.word === 'without') {
          problems.push({
            file,
            rule: 'dropped-and-written',
            message: `\`${name}\` is dropped by \`without\` and written again in one block: a line here replaces the inherited one by itself.`,
            at: statement.at,
            fixes: [
              {
                label: `Take \`${name}\` out of \`without\``,
                at: withComma(without.names, drop.at) ?? without.at,
                text: '',
              },
            ],
          });
        }
        here.set(name, statement);
        items.delete(name);
        items.set(name, itemOf(statement, name, file, policy));
        dropped.delete(name);
      }
    }
    for (const name of brokenItemNames(declaration.broken, curb)) {
      items.delete(name);
      broken.add(name);
    }
    for (const { fields } of declaration.broken)
      for (const name of (fields.perhaps as readonly string[] | undefined) ?? [])
        if (!items.has(sideOf(name, curb) ?? name)) broken.add(sideOf(name, curb) ?? name);
    for (const statement of statements) mark(statement, file);
  }

  function mark(statement: RoofStatement, file: string): void {
    if (statement.word === 'part-life') {
      marks.set(statement.name.name, {
        ...marks.get(statement.name.name),
        partLife: stated(statement.life, file, statement),
      });
    } else if (statement.word === 'comes-off' || statement.word === 'serviced') {
      const flag = statement.word === 'serviced' ? { serviced: true } : { comesOff: true };
      for (const { name } of statement.names) marks.set(name, { ...marks.get(name), ...flag });
    }
  }

  const { declaration, file } = chain[0] as Entry<D>;
  for (const statement of declaration.statements as unknown as readonly RoofStatement[]) {
    const named =
      statement.word === 'comes-off' || statement.word === 'serviced'
        ? statement.names
        : statement.word === 'part-life'
          ? [statement.name]
          : [];
    for (const { name, at } of named)
      if (!items.has(name) && !broken.has(name))
        problems.push({ file, rule: 'unknown-seam', message: `There is no item \`${name}\` on this roof.`, at });
  }
  const list = [...items.values()].map((item) => (marks.has(item.name) ? { ...item, ...marks.get(item.name) } : item));
  return { items: list, broken, dropped, problems };
}

function brokenItemNames(broken: readonly Broken[], curb: 'left' | 'right'): string[] {
  return broken.flatMap(({ word, fields }) => {
    if (!itemWords.has(word)) return [];
    const { name, names } = fields as { name?: string | { name: string }; names?: readonly string[] };
    if (names) return names.map((n) => sideOf(n, curb) ?? n);
    return name === undefined ? [] : [typeof name === 'string' ? name : name.name];
  });
}

/** A name of a list with the comma that goes with it; undefined for the only one. */
function withComma(names: readonly { readonly at: Span }[], at: Span): Span | undefined {
  const i = names.findIndex((one) => one.at === at);
  const [before, after] = [names[i - 1], names[i + 1]];
  return before ? [before.at[1], at[1]] : after && [at[0], after.at[0]];
}
