// Rules of money: prices that an estimate needs, currencies that cannot be added, quotes that run out.
import type { Span } from '../grammar/problem.ts';
import type { Declaration, PolicyDeclaration } from '../records/file.ts';
import { openPlans } from '../resolve/done.ts';
import type { Located } from '../resolve/located.ts';
import { isLibrary } from '../resolve/origin.ts';
import type { Material, OnSale, Origin, Policy, Rig } from '../resolve/types.ts';
import { addPeriod, daysBetween } from '../values/calendar.ts';
import type { Money } from '../values/money.ts';
import { family, type RigContext, type RuleEntry } from './rule.ts';

const rules = {
  'no-price': {
    severity: 'warning',
    title: 'A material has no price',
    why: 'A plan uses it, and an estimate of the plan can count it but not say what it costs. No prices are built in.',
    fix: 'None: only the writer knows the price.',
  },
  'currencies-mixed': {
    severity: 'error',
    title: 'Two currencies cannot be added',
    why: 'No rate of exchange is known, and none is guessed: what goes into one sum has one currency.',
    fix: 'None: only the writer knows the price in the other currency.',
  },
  'no-labour': {
    severity: 'information',
    title: 'Work is planned and no hour has a price',
    why: 'An estimate counts the hours all the same; without `labour` in the policy they cost nothing in it.',
    fix: 'None: only the writer knows the wage. Who works for themselves may write 0.',
  },
  'quote-expired': {
    severity: 'information',
    title: 'A quote has expired',
    why: 'Its date is past, so that the price no longer holds: it is compared, but marked.',
    fix: 'None: only the shop can renew it.',
  },
  'quote-expires-soon': {
    severity: 'information',
    title: 'A quote expires soon',
    why: 'It runs out within the time that the policy calls soon.',
    fix: 'None: to take it or leave it is a decision.',
  },
} as const satisfies Record<string, RuleEntry>;
type Found = Located & { readonly rule: keyof typeof rules };

function* check(context: RigContext): Iterable<Found> {
  const { rig } = context.view;
  yield* planned(context);
  yield* otherCurrencies(rig);
  yield* quotes(context);
}

export const money = family(rules, check);

interface Pack extends Omit<OnSale<unknown>, 'size'> {
  readonly noun: string;
  readonly text: string;
}

/** What a material is sold in. */
function packsOf(material: Material): readonly Pack[] {
  const pack = (noun: string, onSale: readonly OnSale<{ readonly text: string }>[]): Pack[] =>
    onSale.map(({ size, ...rest }) => ({ ...rest, noun, text: size.text }));
  const containers = pack('container', material.containers);
  if (material.kind === 'tape') return [...pack('roll', material.rolls), ...containers];
  if (material.kind === 'sealant')
    return [...pack('cartridge', material.cartridges), ...pack('case', material.cases), ...containers];
  return containers;
}

const examples: Readonly<Record<Material['kind'], string>> = {
  tape: 'roll 50 ft at 61.00 USD',
  sealant: 'cartridge 10.3 fl-oz at 9.75 USD',
  primer: 'container 1 qt at 24 USD',
  cleaner: 'container 1 gal at 14 USD',
  coating: 'container 5 gal at 210 USD',
};

/** The currency in which a rig is counted: the policy's, else that of its wage. */
const currencyOf = (policy: Policy) => policy.currency?.value ?? policy.labour?.value.currency;

function* planned({ view, dates, declaration }: RigContext): Iterable<Found> {
  const { rig } = view;
  // Where no policy says the currency, that of the first price has to do.
  let currency = currencyOf(rig.policy);
  const seen = new Set<string>();
  const plans = openPlans(rig, dates.asOf);
  for (const { statement, file } of plans) {
    for (const { name, at } of statement.materials ?? []) {
      const material = view.material(name);
      if (!material || seen.has(name)) continue;
      seen.add(name);
      const packs = packsOf(material);
      const priced = packs.filter(({ price }) => price !== undefined);
      const where = { rig: rig.name, file, at };
      if (priced.length === 0)
        yield { rule: 'no-price', ...where, message: unpriced(material, packs), ...declaredAt(material) };
      currency ??= priced[0]?.price?.currency;
      const wrong = priced.find(({ price }) => currency !== undefined && price?.currency !== currency);
      if (wrong?.price)
        yield {
          rule: 'currencies-mixed',
          ...where,
          message: `A ${wrong.noun} of ${name} is priced at ${wrong.price.text}, and ${rig.name} is counted in ${currency}: write its price in ${currency}.`,
          related: [{ file: wrong.origin.file, at: wrong.origin.at, message: 'The price.' }, ...policyAt(rig.policy)],
        };
    }
  }
  const work = plans.find(({ statement }) => statement.word !== 'inspect');
  // A policy that is named and not found may have said it.
  const named = declaration?.under || declaration?.statements.some(({ word }) => word === 'group');
  const lost = named && isLibrary(rig.policy.origin.file);
  if (work && !rig.policy.labour && !lost)
    yield {
      rule: 'no-labour',
      rig: rig.name,
      file: work.file,
      at: work.statement.at,
      message: `Work is planned and ${isLibrary(rig.policy.origin.file) ? 'no policy' : `the policy \`${rig.policy.name}\` does not`} ${isLibrary(rig.policy.origin.file) ? 'says' : 'say'} what an hour costs: write \`labour 48 USD per h\` in a policy of your own, or 0 if hours are not counted.`,
    };
}

function unpriced(material: Material, packs: readonly Pack[]): string {
  const { kind, name } = material;
  if (isLibrary(material.origin.file))
    return `\`${name}\` is built in and has no price: declare the ${kind} that you buy, such as \`${kind} Mine like ${name} { ${examples[kind]} }\`.`;
  return packs.length === 0
    ? `Nothing of \`${name}\` is on sale: write what it is sold in and its price, such as \`${examples[kind]}\`.`
    : `No ${packs[0]?.noun} of \`${name}\` has a price: write it behind \`at\`, such as \`${examples[kind]}\`.`;
}

const declaredAt = ({ origin }: Material) =>
  isLibrary(origin.file) ? {} : { related: [{ file: origin.file, at: origin.at, message: 'The material.' }] };
const policyAt = (policy: Policy) => {
  const origin = policy.currency?.origin ?? policy.labour?.origin;
  return origin ? [{ file: origin.file, at: origin.at, message: 'The currency.' }] : [];
};

/** Day rates and quotes are set against what is counted in the currency of the policy. */
function* otherCurrencies(rig: Rig): Iterable<Found> {
  const currency = currencyOf(rig.policy);
  if (currency === undefined) return;
  const { dayRate } = rig.identity;
  const amounts: readonly { price: Money; file: string; at: Span; what: string }[] = [
    ...(dayRate ? [{ price: dayRate.value, file: dayRate.origin.file, at: dayRate.origin.at, what: 'day rate' }] : []),
    ...rig.quotes.map(({ price, file, at, spans }) => ({ price, file, at: spans.price ?? at, what: 'quote' })),
  ];
  for (const { price, file, at, what } of amounts)
    if (price.currency !== currency)
      yield {
        rule: 'currencies-mixed',
        rig: rig.name,
        file,
        at,
        message: `This ${what} of ${price.text} cannot be set against costs in ${currency}: write it in ${currency}.`,
        related: policyAt(rig.policy),
      };
}

function* quotes({ view, dates }: RigContext): Iterable<Found> {
  const { rig } = view;
  for (const { from, until, file, at } of rig.quotes) {
    if (!until) continue;
    const where = { rig: rig.name, file, at };
    if (dates.asOf > until.last)
      yield {
        rule: 'quote-expired',
        ...where,
        message: `The quote of ${from} expired on ${until.last}, ${days(daysBetween(until.last, dates.asOf))} ago: ask again, or remove the line.`,
      };
    else if (addPeriod(until.last, rig.policy.dueSoon.value, -1) <= dates.asOf)
      yield {
        rule: 'quote-expires-soon',
        ...where,
        message: `The quote of ${from} holds until ${until.last}, ${days(daysBetween(dates.asOf, until.last))} more.`,
      };
  }
}

const days = (count: number) => (count === 1 ? '1 day' : `${count} days`);

/** Currencies that meet inside one material or one policy of a file, whoever uses them. */
export function* mixedInside(
  file: string,
  declarations: readonly Declaration[],
  of: { material(name: string): Material | undefined; policy(name: string): Policy },
): Iterable<Found> {
  for (const { kind, name, nameAt } of declarations) {
    if (kind === 'policy') yield* mixedInPolicy(file, { name, nameAt }, of.policy(name));
    if (kind !== 'tape' && kind !== 'sealant' && kind !== 'primer' && kind !== 'cleaner' && kind !== 'coating')
      continue;
    const material = of.material(name);
    const priced = material ? packsOf(material).filter(({ price }) => price !== undefined) : [];
    const other = priced.find(({ price }) => price?.currency !== priced[0]?.price?.currency);
    if (!other || !priced[0]) continue;
    yield {
      rule: 'currencies-mixed',
      ...within(file, nameAt, other.origin),
      message: `\`${name}\` is priced in ${priced[0].price?.currency} and in ${other.price?.currency}, so that its prices cannot be compared: use one currency, or declare it once for each.`,
      related: [{ file: priced[0].origin.file, at: priced[0].origin.at, message: 'The other price.' }],
    };
  }
}

function* mixedInPolicy(
  file: string,
  { name, nameAt }: Pick<PolicyDeclaration, 'name' | 'nameAt'>,
  { currency, labour }: Policy,
): Iterable<Found> {
  if (!currency || !labour || labour.value.currency === currency.value) return;
  yield {
    rule: 'currencies-mixed',
    ...within(file, nameAt, labour.origin),
    message: `The policy \`${name}\` counts in ${currency.value}, and its labour is ${labour.value.text}: write it in ${currency.value}.`,
    related: [{ file: currency.origin.file, at: currency.origin.at, message: 'The currency.' }],
  };
}

/** The line itself, or the name of the declaration where the line is inherited from another file. */
const within = (file: string, nameAt: Span, origin: Origin) => ({
  file,
  at: origin.file === file ? origin.at : nameAt,
});
