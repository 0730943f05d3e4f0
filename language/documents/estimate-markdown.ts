// The estimate as Markdown.
import type { SeamAdvice } from '../advice/index.ts';
import type { Estimate, LabourLine, Priced } from '../estimate/index.ts';
import type { CompareResult } from '../lifecost/schema.ts';
import { adviceMarkdown } from './advice-markdown.ts';
import { comparisonMarkdown } from './comparison-markdown.ts';
import { bullets, left, paragraphs, plain, right, section, table } from './markdown.ts';
import type { EstimatePaper } from './papers.ts';
import { cuttingText, purchaseTable, takeOffTable } from './purchase-markdown.ts';

export function estimateMarkdown(paper: EstimatePaper): string {
  const fleet = paper.kind === 'fleet';
  // What speaks of all rigs does not stand under the last of them.
  const mark = fleet ? '#' : '##';
  return paragraphs(
    `# Estimate: ${plain(paper.name)}`,
    `As of ${paper.asOf}, computed from what was recorded and planned. Built-in figures: library ${paper.library}.`,
    ...(fleet ? ofFleet(paper) : []),
    ...paper.estimates.flatMap((estimate, i) =>
      ofRig(estimate, { seams: paper.advice[i]?.seams ?? [], comparison: paper.comparisons[i]?.comparison }, fleet),
    ),
    section('Due, but not planned', unplannedTable(paper), mark),
    section('Cautions', bullets(paper.cautions.map(({ text }) => text)), mark),
    paper.note,
  );
}

function ofFleet({ estimates, sums, unsummed, together }: EstimatePaper): string[] {
  const rigs = estimates.map(({ rig, hours, totals, jobs }) => [
    plain(rig.unit === undefined ? rig.name : `${rig.name} (${rig.unit})`),
    String(jobs.length),
    hours.likely.text,
    totals.total?.money.text ?? '',
    totals.complete ? 'yes' : 'no',
  ]);
  const all = sums.map(({ total, rigs: n, incomplete }) => {
    const but = incomplete.length > 0 ? `; not whole: ${incomplete.map(plain).join(', ')}` : '';
    return `**${total.text}** over ${n} ${n === 1 ? 'rig' : 'rigs'}${but}.`;
  });
  return [
    section(
      'All rigs',
      paragraphs(
        table([left('rig'), right('jobs'), right('hours'), right('total'), left('whole')], rigs),
        bullets([...all, ...unsummed.map(plain)]),
      ).trimEnd(),
    ),
    section(
      'To buy for all rigs together',
      paragraphs(
        purchaseTable({ purchases: together.map(({ purchase }) => purchase) }),
        bullets([...together.flatMap(savedText), ...together.flatMap(sentText)]),
        together.length > 0
          ? 'Whoever buys together cuts by these lists. Those of the single rigs hold where each buys for itself; their totals are reckoned so.'
          : undefined,
      ).trimEnd(),
    ),
    ...together.flatMap(({ cutting }) => (cutting ? [cuttingText(cutting)] : [])),
  ];
}

/** What goes from the shelf of one yard to another. */
function sentText({ material, sent = [] }: EstimatePaper['together'][number]): readonly string[] {
  return sent.map(({ from, to, what }) => plain(`${material}: send ${what} from ${from} to ${to}.`));
}

/** What one purchase for all saves of a material. */
function savedText({ material, rigs, apart, pooling, shelf }: EstimatePaper['together'][number]): readonly string[] {
  if (!apart || !pooling) return [];
  const beyond = shelf && shelf.value > 0 ? `; the fleet's own shelf saves ${shelf.text} more` : '';
  const count = rigs.length === 1 ? '1 rig' : `${rigs.length} rigs`;
  return [
    pooling.value === 0
      ? `${plain(material)} (${count}): buying together saves nothing${beyond}.`
      : `${plain(material)} (${count}): each for itself ${apart.text}; ${pooling.text} is ${pooling.rule}${beyond}.`,
  ];
}

/** What is decided before anything is bought. */
interface Decisions {
  readonly seams: readonly SeamAdvice[];
  readonly comparison: CompareResult | undefined;
}

function ofRig(estimate: Estimate, { seams, comparison }: Decisions, fleet: boolean): string[] {
  const { rig, jobs, visits, cutting, questions } = estimate;
  const unit = rig.unit === undefined ? '' : plain(rig.unit);
  const title = fleet
    ? [`# ${plain(rig.name)}${unit === '' ? '' : ` (${unit})`}`]
    : unit === ''
      ? []
      : [`Unit ${unit}.`];
  const ways = section(
    'The ways over the years',
    comparison ? comparisonMarkdown(comparison, fleet ? undefined : `${rig.name}.ways.svg`) : '',
  );
  if (jobs.length === 0)
    return [
      ...title,
      adviceMarkdown(seams),
      'Nothing is planned: there is nothing to buy. A plan is a line such as `tape front with EdgeTape4 after 2027-04-15`.',
      ways,
      section('What is assumed', assumptionTable(estimate, comparison)),
    ];
  const numbered = visits.length > 1;
  return [
    ...title,
    summary(estimate),
    adviceMarkdown(seams),
    section('The work', bullets(jobs.map((job) => `${numbered ? `Visit ${job.visit}: ` : ''}${jobText(job)}`))),
    section('To buy', purchaseTable(estimate)),
    ...cutting.map((list) => cuttingText(list)),
    section('Take-off', takeOffTable(estimate)),
    section('Labour', labourTable(estimate)),
    section('Total', totalTable(estimate)),
    section('Open questions', bullets(questions.map((question) => plain(question.text)))),
    ways,
    section('What is assumed', assumptionTable(estimate, comparison)),
  ];
}

/** The whole job in a sentence. */
function summary({ jobs, visits, purchases, hours, totals }: Estimate): string {
  const count = (n: number, noun: string) => `${n} ${noun}${n === 1 ? '' : 's'}`;
  const needs = purchases.map(({ need, material }) => `${need.text} of ${plain(material)}`);
  const parts = [
    `${count(jobs.length, 'job')} in ${count(visits.length, 'visit')}`,
    ...(needs.length > 0 ? [`it takes ${needs.join(', ')}`] : []),
    `${hours.likely.text} of work`,
    ...(totals.total ? [`${totals.total.money.text} in all${totals.complete ? '' : ', as far as it is known'}`] : []),
  ];
  return `${parts.join('; ')}.`;
}

function jobText(job: Estimate['jobs'][number]): string {
  const facts = [
    ...(job.tapeLength
      ? [`${job.tapeLength.text} of tape in ${job.pieces.length} ${job.pieces.length === 1 ? 'piece' : 'pieces'}`]
      : []),
    ...(job.beadLength ? [`${job.beadLength.text} of bead`] : []),
    ...(job.sealantVolume ? [job.sealantVolume.text] : []),
  ];
  const skipped = job.skipped.map(({ item, reason }) => ` ${plain(item)} is left out: ${plain(reason)}.`).join('');
  return `${plain(job.text)}${facts.length > 0 ? ` – ${facts.join(', ')}` : ''}.${skipped}`;
}

function labourTable({ labour, hours }: Estimate): string {
  const rows = labour.map((line) => [
    String(line.visit),
    plain(line.task),
    line.quantity.text,
    rateText(line),
    line.hours.likely.text,
    `${line.hours.least.text} to ${line.hours.most.text}`,
    line.cost?.money.text ?? '',
  ]);
  const all = ['', '**all**', '', '', hours.likely.text, `${hours.least.text} to ${hours.most.text}`, ''];
  return table(
    [right('visit'), left('task'), right('amount'), right('rate'), right('hours'), right('range'), right('cost')],
    rows.length > 0 ? [...rows, all] : [],
  );
}

/** The likely rate, which stands beside the quantity in the explanation of the hours. */
const rateText = ({ hours: { likely } }: LabourLine): string =>
  plain(likely.inputs.find(({ name }) => name !== 'quantity')?.text ?? '');

function totalTable({ totals, labour, purchases }: Estimate): string {
  const { materials, tax, total, complete } = totals;
  const input = (priced: Priced | undefined, name: string) =>
    plain(priced?.figure.inputs.find((one) => one.name === name)?.text ?? '');
  const wage = input(labour.find(({ cost }) => cost !== undefined)?.cost, 'labour');
  const row = (name: string, priced: Priced | undefined, how: string) =>
    priced ? [[name, priced.money.text, how]] : [];
  /** Lines without a price come to nothing, which would read as free. */
  const unknown = (lines: readonly { readonly cost?: Priced }[]) =>
    lines.length > 0 && lines.every(({ cost }) => !cost);
  const rows = [
    ...(unknown(purchases) && materials
      ? [['materials', 'not known', 'no price is known']]
      : row('materials', materials, '')),
    ...(unknown(labour) && totals.labour
      ? [['labour', 'not known', 'no wage is known']]
      : row('labour', totals.labour, wage === '' ? '' : `at ${wage}`)),
    ...row('tax', tax, `${input(tax, 'tax')} ${tax?.figure.rule}`),
    ...(total ? [['**total**', `**${total.money.text}**`, '']] : []),
  ];
  const whole = complete ? undefined : 'The total is not whole: what is missing stands among the open questions.';
  return paragraphs(table([left(''), right(''), left('')], rows), whole).trimEnd();
}

function assumptionTable({ assumptions }: Estimate, comparison: CompareResult | undefined): string {
  const more = comparison && 'assumptions' in comparison ? comparison.assumptions : [];
  return table(
    [left('figure'), left('value'), left('kind'), left('used for')],
    [...assumptions, ...more].map((one) => [
      plain(one.name),
      plain(one.text),
      plain(one.source ?? one.kind),
      plain(one.usedFor),
    ]),
  );
}

function unplannedTable({ unplanned, kind }: EstimatePaper): string {
  const fleet = kind === 'fleet';
  return table(
    [left('when'), ...(fleet ? [left('rig')] : []), left('what'), left('why')],
    unplanned.map((due) => [
      `${due.date}${due.status === 'overdue' ? ' (overdue)' : ''}`,
      ...(fleet ? [plain(due.rig)] : []),
      plain(due.title),
      plain(due.because),
    ]),
  );
}
