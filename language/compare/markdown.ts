// What a change costs, as Markdown for a comment on a change that is proposed. What people typed never becomes markup.
import { bullets, left, paragraphs, plain, right, section, table } from '../documents/markdown.ts';
import { moneyText } from '../values/display.ts';
import type { Money } from '../values/money.ts';
import type {
  BuyChange,
  Comparison,
  DueChange,
  FleetChange,
  RecordChange,
  RigChange,
  SeamChange,
  SharedChange,
  VisitChange,
} from './schema.ts';

/** Rigs told in full, and lines of one list: comments have a limit, and readers too. The JSON has everything. */
const mostRigs = 25;
const mostLines = 30;

export function compareMarkdown(comparison: Comparison): string {
  const { from, to, asOf, shared, rigs, fleets, money, note } = comparison;
  const head = `# What changes\n\nFrom ${plain(from)} to ${plain(to)}, as of ${asOf}: ${summary(comparison)}`;
  if (shared.length + rigs.length + fleets.length === 0) return paragraphs(head);
  return paragraphs(
    head,
    section('Money', moneyPart(money, rigs)),
    section('What rigs share', shared.map(sharedPart).join('\n\n')),
    section('Rigs', rigsPart(rigs)),
    section('Fleets', fleets.map(fleetPart).join('\n\n')),
    note,
  );
}

function summary({ shared, rigs, fleets }: Comparison): string {
  const counted = (changes: readonly { readonly change: string }[], one: string, many: string) =>
    (['added', 'removed', 'changed'] as const).flatMap((change) => {
      const count = changes.filter((each) => each.change === change).length;
      return count === 0 ? [] : [`${count} ${count === 1 ? one : many} ${change}`];
    });
  const said = [
    ...counted(rigs, 'rig', 'rigs'),
    ...counted(fleets, 'fleet', 'fleets'),
    ...counted(shared, 'shared declaration', 'shared declarations'),
  ];
  return said.length === 0 ? 'no record differs.' : `${said.join(', ')}.`;
}

const none = '–';
const amount = (money: Money | undefined) => (money ? moneyText(money) : none);

function moneyPart(money: Comparison['money'], rigs: readonly RigChange[]): string {
  const sums = table(
    [left('currency'), right('before'), right('after'), right('difference')],
    money.map(({ currency, before, after, difference }) => [
      currency,
      amount(before),
      amount(after),
      `${difference.amount.startsWith('-') ? '' : '+'}${amount(difference)}`,
    ]),
  );
  const incomplete = [...new Set(money.flatMap((each) => each.incomplete))];
  return [
    sums,
    money.length === 0
      ? ''
      : `Estimates of the ${rigs.length === 1 ? 'rig' : `${rigs.length} rigs`} that changed, each buying for itself.`,
    incomplete.length === 0 ? '' : `Not everything has a price: ${plain(shortened(incomplete).join(', '))}.`,
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

interface Head {
  readonly name: string;
  readonly was?: string;
  readonly change: string;
}

const titled = ({ name, was, change }: Head, kind = '') => {
  const formerly = was === undefined ? '' : `, before: ${plain(was)}`;
  return `### ${kind}${plain(name)}${formerly}${change === 'changed' ? '' : ` (${change})`}`;
};

function sharedPart(shared: SharedChange): string {
  return block(titled(shared, `${shared.kind} `), shared.change === 'changed' ? recordLines(shared.records) : []);
}

function rigsPart(rigs: readonly RigChange[]): string {
  const told = rigs.slice(0, mostRigs).map(rigPart);
  const rest = rigs.slice(mostRigs);
  if (rest.length > 0) {
    const named = rest.map(({ name, totalBefore, totalAfter }) => {
      const [before, after] = [amount(totalBefore?.money), amount(totalAfter?.money)];
      return before === after ? plain(name) : `${plain(name)} ${before} → ${after}`;
    });
    told.push(`${rest.length} more ${rest.length === 1 ? 'rig' : 'rigs'}: ${shortened(named).join(', ')}.`);
  }
  return told.join('\n\n');
}

function rigPart(rig: RigChange): string {
  const { totalBefore, totalAfter, dues, buy, visits } = rig;
  const [before, after] = [amount(totalBefore?.money), amount(totalAfter?.money)];
  const consequences = [
    ...dueLines(dues),
    ...buyLines(buy),
    ...visitLines(visits, false),
    ...(before === after ? [] : [`total: ${before} → ${after}`]),
  ];
  if (rig.change === 'removed') return block(titled(rig), before === after ? [] : consequences.slice(-1));
  if (rig.change === 'added') {
    const count = (many: number, one: string) => `${many} ${one}${many === 1 ? '' : 's'}`;
    return block(titled(rig), [
      `${count(rig.seams.length, 'seam')} and ${count(rig.records.length, 'record')}`,
      ...consequences,
    ]);
  }
  return block(titled(rig), [...seamLines(rig.seams), ...recordLines(rig.records), ...consequences]);
}

function fleetPart(fleet: FleetChange): string {
  const { joined, left: gone, records, buy, visits } = fleet;
  return block(titled(fleet), [
    ...(joined.length > 0 ? [`has now: ${plain(shortened(joined).join(', '))}`] : []),
    ...(gone.length > 0 ? [`has no more: ${plain(shortened(gone).join(', '))}`] : []),
    ...(fleet.change === 'changed' ? recordLines(records) : []),
    ...buyLines(buy),
    ...visitLines(visits, true),
  ]);
}

const block = (head: string, lines: readonly string[]) =>
  lines.length === 0 ? head : `${head}\n\n${bullets(shortened(lines))}`;

function shortened(lines: readonly string[]): readonly string[] {
  if (lines.length <= mostLines) return lines;
  return [...lines.slice(0, mostLines), `and ${lines.length - mostLines} more`];
}

/** `before → after`, or which of the two it is. */
function pairText(before: string | undefined, after: string | undefined): string {
  if (before === undefined) return `added: ${plain(after ?? '')}`;
  return after === undefined ? `removed: ${plain(before)}` : `${plain(before)} → ${plain(after)}`;
}

const seamLines = (seams: readonly SeamChange[]) =>
  seams.map(({ name, was, before, after }) => {
    const renamed = was === undefined ? '' : `, before: ${plain(was)}`;
    const same = before === undefined && after === undefined;
    return `seam ${plain(name)}${renamed}${same ? '' : `: ${pairText(before, after)}`}`;
  });

const recordLines = (records: readonly RecordChange[]) =>
  records.map(({ kind, before, after }) => `${kind}: ${pairText(before, after)}`);

const dueLines = (dues: readonly DueChange[]) =>
  dues.map(({ title, before, after }) => `due: ${plain(title)} ${moved(before, after)}`);

const buyLines = (buy: readonly BuyChange[]) =>
  buy.map(({ material, before, after, costBefore, costAfter }) => {
    const side = (text: string | undefined, cost: Money | undefined) =>
      text === undefined ? 'nothing' : `${plain(text)}${cost ? ` for ${amount(cost)}` : ''}`;
    return `buy ${plain(material)}: ${side(before, costBefore)} → ${side(after, costAfter)}`;
  });

const visitLines = (visits: readonly VisitChange[], withRig: boolean) =>
  visits.map(({ rig, title, before, after }) => {
    const days = (pair: readonly [string, string] | undefined) => pair && [...new Set(pair)].join(' to ');
    return `visit: ${withRig ? `${plain(rig)}, ` : ''}${plain(title)} ${moved(days(before), days(after))}`;
  });

const moved = (before: string | undefined, after: string | undefined) =>
  before === undefined ? `on ${after} (new)` : after === undefined ? `on ${before} falls away` : `${before} → ${after}`;
