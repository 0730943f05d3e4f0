// The budget as Markdown and as CSV.
import { csvOf } from '../csv.ts';
import { bullets, left, paragraphs, plain, right, section, table } from '../markdown.ts';
import { type Budget, type BudgetEntry, decimal, entriesBy, sumOf, totalOf } from './budget.ts';
import type { FleetScene } from './scene.ts';

/** The rigs that a page shows one by one; of more, the CSV has all. */
const mostRigs = 60;

export function budgetMarkdown(scene: FleetScene, budget: Budget): string {
  const { name, asOf, papers } = scene;
  const { cautions, note, library } = papers.estimate;
  return paragraphs(
    `# Budget: ${plain(name)}`,
    `As of ${asOf}, at today's prices, computed from what was recorded and planned. Built-in figures: library ${library}.`,
    `**Planned** is what the open plans cost by the estimates of the rigs. **Expected** is marked with ~: nobody planned it yet. It is counted up to ${budget.until}: what falls due and no plan settles, the looks that follow as often as the policy asks, and what touching up is expected to take in the years after this one.`,
    `Each amount, with its rig, its month and the reason for it, stands in \`${name}.budget.csv\`; ids are those of \`${name}.schedule.json\`.`,
    budget.entries.length === 0
      ? 'There is nothing to count: no plan has a price, and nothing that falls due has one.'
      : undefined,
    ...budget.currencies.map((currency) => ofCurrency(scene, budget, currency)),
    section('Not in it', bullets(budget.missing.map(plain))),
    section(
      'How it is counted',
      bullets([
        'Material is spent in the month in which its order must go out: the first visit that uses it less the time to come that the policy gives (`lead`), not before the as-of date. Without one it is the month of that visit.',
        'Labour is spent when the visit begins that does the work; tax goes with what it is put on.',
        'Each rig buys for itself here, as in its estimate. What buying together saves is told apart, for no rig has a share of it.',
        'What no plan settles is counted on the day on which it falls due, what is over today on the as-of date. Looks that recur do not know of storage in later years.',
        'Touching up is an average over the years: one year has more of it and another less.',
        'Two currencies are never added up: no rate of exchange is known.',
      ]),
    ),
    section('Cautions', bullets(cautions.map(({ text }) => text))),
    note,
  );
}

function ofCurrency({ name, papers }: FleetScene, budget: Budget, currency: string): string {
  const entries = budget.entries.filter((entry) => entry.currency === currency);
  const sum = papers.estimate.sums.find((one) => one.currency === currency);
  const saved = papers.estimate.together.flatMap(({ pooling, shelf }) =>
    [pooling, shelf].flatMap((figure) => (figure?.unit === currency ? [figure.value] : [])),
  );
  const together = saved.reduce((all, one) => all + one, 0);
  const rigs = entriesBy(entries, ({ rig }) => rig);
  return section(
    currency,
    paragraphs(
      sum
        ? `What is planned adds up to ${sum.total.text}, the total of \`${name}.estimate.md\`.${
            together > 0
              ? ` Bought for all rigs together and with the fleet's own shelf, ${together.toFixed(2)} ${currency} of the material is saved before tax.`
              : ''
          }`
        : undefined,
      part(
        'By year',
        'year',
        entriesBy(entries, ({ month }) => month?.slice(0, 4)),
        currency,
      ),
      part(
        'By month',
        'month',
        entriesBy(entries, ({ month }) => month),
        currency,
      ),
      part('By yard', 'yard', placesBy(entries, 'yard'), currency),
      part('By group', 'group', placesBy(entries, 'group'), currency),
      rigs.length > mostRigs
        ? `### By rig\n\nThere are ${rigs.length} rigs: \`${name}.budget.csv\` has the amounts of each.`
        : part('By rig', 'rig', rigs, currency),
    ).trimEnd(),
  );
}

type Parts = readonly (readonly [string, readonly BudgetEntry[]])[];

/** Nothing where no rig belongs to any. */
function placesBy(entries: readonly BudgetEntry[], key: 'yard' | 'group'): Parts {
  return entries.some((entry) => entry[key] !== undefined) ? entriesBy(entries, (entry) => entry[key]) : [];
}

function part(title: string, of: string, parts: Parts, currency: string): string {
  if (parts.length === 0) return '';
  const none = of === 'rig' || of === 'yard' || of === 'group' ? `no ${of}` : 'no day yet';
  const row = (name: string, entries: readonly BudgetEntry[]): string[] => {
    const { planned, expected } = sumOf(entries);
    const money = (minor: number) => decimal(minor, currency);
    const maybe = (minor: number) => (minor === 0 ? '' : `~ ${money(minor)}`);
    const [sure, open] = [totalOf(planned), totalOf(expected)];
    return [
      name,
      money(planned.material),
      money(planned.labour),
      money(planned.tax),
      money(sure),
      maybe(expected.material),
      maybe(expected.labour),
      maybe(expected.tax),
      maybe(open),
      `${open === 0 ? '' : '~ '}${money(sure + open)}`,
    ];
  };
  const head = ['material', 'labour', 'tax', 'planned', '~ material', '~ labour', '~ tax', '~ expected', 'in all'];
  const all = parts.flatMap(([, entries]) => entries);
  const rows = parts.map(([name, entries]) => row(plain(name === '' ? none : name), entries));
  return `### ${title}\n\n${table([left(of), ...head.map(right)], [...rows, row('all', all)])}`;
}

const columns = [
  'rig',
  'yard',
  'group',
  'month',
  'certainty',
  'class',
  'amount',
  'currency',
  'what',
  'why',
  'of',
] as const;

/** Amounts in the decimals of their currency; an empty month is one that has no day yet. */
export function budgetCsv({ entries }: Budget): string {
  return csvOf(
    columns,
    entries.map(
      ({ rig, yard = '', group = '', month = '', certainty, class: kind, minor, currency, what, why, of = '' }) => ({
        rig,
        yard,
        group,
        month,
        certainty,
        class: kind,
        amount: decimal(minor, currency),
        currency,
        what,
        why,
        of,
      }),
    ),
  );
}
