// A rig with everything that its model, its policy, its claimed histories and the built-in library add.
import type { Span } from '../grammar/problem.ts';
import type { HistoryDeclaration, PastRecord, RigDeclaration, RigStatement } from '../records/file.ts';
import type { Broken } from '../records/statement.ts';
import { pastRows } from '../statements/past.ts';
import { planRows } from '../statements/plans.ts';
import type { IdentityStatement } from '../statements/rig.ts';
import { itemWords, roofRows } from '../statements/roof.ts';
import { canonical } from '../statements/words.ts';
import type { Day } from '../values/day.ts';
import { resolveItems } from './items.ts';
import { chainOf, circleProblem, linesThatHold } from './like.ts';
import type { Located } from './located.ts';
import type { Entry } from './names.ts';
import { inOrder, type Ordered } from './order.ts';
import { originOf, stated } from './origin.ts';
import { nameNow, type PlaceContext, placesOf } from './places.ts';
import type { Event, Plan, Policy, Rig } from './types.ts';

/** The rows of a roof but `without`, which only drops; what the factory used; the group. */
const described: ReadonlySet<string> = new Set([
  ...roofRows.map((row) => row.word).filter((word) => word !== 'without'),
  'factory',
  'group',
]);
/** What `like` takes over: description, never identity, dates or records. */
export const isDescription = (statement: { readonly word: string }) => described.has(statement.word);

const pastWords: ReadonlySet<string> = new Set(pastRows.map((row) => row.word));
const planWords: ReadonlySet<string> = new Set(planRows.map((row) => row.word));
const lookWords = new Set(['found', 'inspected', 'leaked', 'struck', 'inspect']);

export interface RigParts {
  readonly entry: Entry<RigDeclaration>;
  readonly baseOf: (entry: Entry<RigDeclaration>) => Entry<RigDeclaration> | undefined;
  readonly policy: Policy;
  /** The claimed histories of this rig, in the order of their paths. */
  readonly histories: readonly Entry<HistoryDeclaration>[];
}

export function resolveRig({ entry, baseOf, policy, histories }: RigParts): {
  readonly rig: Rig;
  readonly problems: readonly Located[];
} {
  const { declaration, file } = entry;
  const problems: Located[] = [];
  const { chain, circle } = chainOf(entry, baseOf);
  const round = circle && circleProblem(entry, circle);
  if (round) problems.push(round);

  const held = linesThatHold<RigDeclaration, RigStatement>(chain, isDescription);
  problems.push(...held.problems.filter((p) => !isItemKey(p)));
  const items = resolveItems(chain, policy);
  problems.push(...items.problems);

  const find = <W extends RigStatement['word']>(word: W) =>
    held.lines.find((line) => line.statement.word === word) as
      | { statement: Extract<RigStatement, { word: W }>; file: string }
      | undefined;
  const own = declaration.statements;
  const formerly = new Map<string, string>();
  for (const s of own) if (s.word === 'formerly' && s.now) formerly.set(s.name.name, s.now.name);

  const contextOf = (where: string): PlaceContext => ({
    items,
    curb: policy.curb.value,
    formerly,
    file: where,
    rig: declaration.name,
    problems,
  });
  const unread = { all: false, items: new Set(items.broken) };
  const ordered: Ordered[] = [];
  const blocks: { file: string; statements: readonly (RigStatement | PastRecord)[]; broken: readonly Broken[] }[] = [
    { file, statements: own, broken: declaration.broken },
    ...histories.map((h) => ({ file: h.file, statements: h.declaration.statements, broken: h.declaration.broken })),
  ];
  for (const [block, { file: where, statements, broken }] of blocks.entries()) {
    const context = contextOf(where);
    for (const statement of statements) {
      if (!pastWords.has(statement.word)) continue;
      const record = statement as PastRecord;
      if (record.word === 'stored' || record.word === 'trip') continue;
      ordered.push({ ...eventOf(record, where, context), block });
      for (const b of record.brokenFindings ?? []) noteUnread(b, context, unread);
    }
    for (const b of broken) if (!described.has(b.word) || b.word === 'factory') noteUnread(b, context, unread);
  }
  const { events, guessed } = inOrder(ordered);
  for (const [a, b] of guessed) {
    problems.push({
      file: b.file,
      rule: 'same-day-order',
      rig: declaration.name,
      at: b.record.at,
      message: `This and the \`${a.record.word}\` of the same day touch the same seam and stand in different blocks: write the time of each, or their order is guessed.`,
      related: [{ file: a.file, at: a.record.at, message: 'The other record.' }],
    });
  }

  const roofLine = find('roof');
  const fallsLine = find('falls');
  const factoryLine = find('factory');
  const groupLine = find('group');
  const spans = (word: 'stored' | 'trip') =>
    blocks.flatMap(({ file: where, statements }) =>
      statements.flatMap((s) => (s.word === word ? [spanOf(s as Extract<PastRecord, { word: 'stored' }>, where)] : [])),
    );
  const fact = <W extends 'unit' | 'vin' | 'built' | 'in-service' | 'acquired' | 'kept-until' | 'day-rate', T>(
    word: W,
    value: (s: Extract<IdentityStatement, { word: W }>) => T,
  ) => {
    const s = own.find((one) => one.word === word) as Extract<IdentityStatement, { word: W }> | undefined;
    return s && stated(value(s), file, s as { at: Span });
  };
  const identity = defined({
    unit: fact('unit', (s) => s.text),
    vin: fact('vin', (s) => s.text),
    built: fact('built', (s) => s.date as Day),
    inService: fact('in-service', (s) => s.date as Day),
    acquired: fact('acquired', (s) => s.date as Day),
    keptUntil: fact('kept-until', (s) => s.date as Day),
    dayRate: fact('day-rate', (s) => s.price),
  });
  const rig: Rig = {
    kind: declaration.kind,
    name: declaration.name,
    file,
    at: declaration.at,
    nameAt: declaration.nameAt,
    ...(declaration.doc === undefined ? {} : { doc: declaration.doc }),
    bases: chain.slice(1).map((base) => base.declaration.name),
    ...(roofLine
      ? {
          roof: {
            along: roofLine.statement.size[0],
            across: roofLine.statement.size[1],
            ...(roofLine.statement.surface ? { surface: canonical(roofLine.statement.surface.name) } : {}),
            ...(roofLine.statement.since ? { since: roofLine.statement.since } : {}),
            origin: originOf(roofLine.file, roofLine.statement.at, roofLine.statement.source),
          },
        }
      : {}),
    ...(fallsLine ? { falls: stated(fallsLine.statement.to, fallsLine.file, fallsLine.statement) } : {}),
    items: items.items,
    ...(factoryLine
      ? { factory: stated(factoryLine.statement.material.name, factoryLine.file, factoryLine.statement) }
      : {}),
    identity,
    ...(groupLine ? { group: stated(groupLine.statement.group.name, groupLine.file, groupLine.statement) } : {}),
    policy,
    events,
    stored: spans('stored'),
    trips: spans('trip'),
    plans: own.flatMap((s): Plan[] =>
      planWords.has(s.word) && s.at ? [planOf(s as Plan['statement'], file, contextOf(file))] : [],
    ),
    quotes: own.flatMap((s) => (s.word === 'quote' ? [{ ...s, file }] : [])),
    accepts: own.flatMap((s) => (s.word === 'accept' ? [{ ...s, file }] : [])),
    stock: own.flatMap((s) => (s.word === 'on-hand' || s.word === 'bought' ? [{ ...s, file }] : [])),
    formerly: Object.fromEntries(
      [...new Set(formerly.values())].map((now) => [
        now,
        [...formerly].filter(([, n]) => n === now).map(([old]) => old),
      ]),
    ),
    unread,
  };
  return { rig, problems };
}

/** Items are told apart by name, not by line: `resolveItems` says it of them. */
function isItemKey({ rule, message }: Located): boolean {
  return rule === 'line-twice' && itemWords.has(message.slice(1, message.indexOf(' ')));
}

function eventOf(record: Exclude<PastRecord, { word: 'stored' | 'trip' }>, file: string, context: PlaceContext): Event {
  const looking = lookWords.has(record.word);
  // Where the water may come in is a place of the record like any other.
  const targets = [...(record.targets ?? []), ...(record.word === 'leaked' ? (record.suspects ?? []) : [])];
  const lines = record.findings ?? [];
  const written = [...lines.flatMap((line) => line.targets), ...targets];
  const named = new Set(written.map((target) => nameNow(target.name, context)));
  const findings = lines.map((line) => ({ line, places: placesOf(line.targets, true, context, named, line.stretch) }));
  return {
    record,
    file,
    first: record.date.first,
    last: record.date.last,
    ...(record.date.time === undefined ? {} : { time: record.date.time }),
    places: placesOf(targets, looking, context, named),
    findings,
  };
}

function planOf(statement: Plan['statement'], file: string, context: PlaceContext): Plan {
  const looking = lookWords.has(statement.word);
  const named = new Set((statement.targets ?? []).map((target) => nameNow(target.name, context)));
  return { statement, file, places: placesOf(statement.targets, looking, context, named) };
}

function spanOf(record: Extract<PastRecord, { word: 'stored' | 'trip' }>, file: string) {
  return { first: record.days.low.first, last: record.days.high.last, origin: originOf(file, record.at) };
}

/** A record that could not be read touches the items it names, or may touch anything. */
function noteUnread(broken: Broken, context: PlaceContext, unread: { all: boolean; items: Set<string> }): void {
  const targets = broken.fields.targets as readonly { name: string }[] | undefined;
  if (planWords.has(broken.word)) return;
  if (!targets || targets.some((t) => t.name === 'all' || t.name === 'rest')) unread.all = true;
  else for (const target of targets) unread.items.add(nameNow(target.name, context));
}

/** Without the fields that are undefined. */
function defined<T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as never;
}
