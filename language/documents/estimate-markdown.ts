// The estimate as Markdown.
import type { Estimate } from '../estimate/index.ts';
import { type Align, bullets, paragraphs, plain, section, table } from './markdown.ts';
import type { EstimatePaper } from './papers.ts';

const left = (title: string): readonly [string, Align] => [title, 'left'];
const right = (title: string): readonly [string, Align] => [title, 'right'];

export function estimateMarkdown(paper: EstimatePaper): string {
  const several = paper.estimates.length > 1 || paper.kind === 'fleet';
  return paragraphs(
    `# Estimate: ${plain(paper.name)}`,
    `As of ${paper.asOf}, from what is planned in the records. Built-in figures: library ${paper.library}.`,
    several ? fleetTable(paper) : undefined,
    ...paper.estimates.flatMap((estimate) => ofRig(estimate, several)),
    section('Cautions', bullets(paper.cautions.map(({ text }) => text))),
    paper.note,
  );
}

function fleetTable(paper: EstimatePaper): string {
  const rows = paper.estimates.map(({ rig, hours, totals, jobs }) => [
    plain(rig.unit === undefined ? rig.name : `${rig.name} (${rig.unit})`),
    String(jobs.length),
    hours.likely.text,
    totals.total?.money.text ?? '',
    totals.complete ? 'yes' : 'no',
  ]);
  const sums = paper.sums.map(
    (sum) =>
      `**${sum.total.text}** over ${sum.rigs} ${sum.rigs === 1 ? 'rig' : 'rigs'}${sum.incomplete.length > 0 ? `; not whole: ${sum.incomplete.map(plain).join(', ')}` : ''}`,
  );
  return section(
    'All rigs',
    paragraphs(
      table([left('rig'), right('jobs'), right('hours'), right('total'), left('whole')], rows),
      bullets(sums),
    ).trimEnd(),
  );
}

function ofRig(estimate: Estimate, several: boolean): string[] {
  const title = several
    ? [`# ${plain(estimate.rig.name)}${estimate.rig.unit === undefined ? '' : ` (${plain(estimate.rig.unit)})`}`]
    : estimate.rig.unit === undefined
      ? []
      : [`Unit ${plain(estimate.rig.unit)}.`];
  if (estimate.jobs.length === 0)
    return [
      ...title,
      'Nothing is planned: there is nothing to buy. A plan is a line such as `tape front with EdgeTape4 after 2027-04-15`.',
    ];
  return [
    ...title,
    section('The work', bullets(estimate.jobs.map(jobText))),
    section('To buy', purchaseTable(estimate)),
    ...estimate.cutting.map(cuttingText),
    section('Take-off', takeOff(estimate)),
    section('Labour', labourTable(estimate)),
    section('Total', totals(estimate)),
    section('Open questions', bullets(estimate.questions.map((question) => plain(question.text)))),
    section('What is assumed', assumptions(estimate)),
  ];
}

function jobText(job: Estimate['jobs'][number]): string {
  const facts = [
    ...(job.tapeLength
      ? [`${job.tapeLength.text} of tape in ${job.pieces.length} ${job.pieces.length === 1 ? 'piece' : 'pieces'}`]
      : []),
    ...(job.beadLength ? [`${job.beadLength.text} of bead`] : []),
    ...(job.sealantVolume ? [job.sealantVolume.text] : []),
  ];
  const skipped = job.skipped.map(({ item, reason }) => ` \`${item}\` is left out: ${plain(reason)}.`).join('');
  return `${plain(job.text)}${facts.length > 0 ? ` – ${facts.join(', ')}` : ''}.${skipped}`;
}

function purchaseTable({ purchases }: Estimate): string {
  const rows = purchases.flatMap((purchase) => {
    const head = [plain(purchase.material), purchase.need.text];
    const proof = plain(purchase.proof);
    if (purchase.buy.length === 0) return [[...head, 'nothing', '', purchase.cost?.money.text ?? '', proof]];
    return purchase.buy.map((line, i) => [
      ...(i === 0 ? head : ['', '']),
      `${line.count} x ${plain(line.what)}`,
      line.unitPrice?.text ?? 'no price',
      line.cost?.money.text ?? '',
      i === 0 ? proof : '',
    ]);
  });
  const shelf = purchases
    .filter((p) => p.onHand && p.onHand.value > 0)
    .map((p) => `From the shelf: ${p.onHand?.text} of ${plain(p.material)}.`);
  const spare = purchases
    .filter((p) => p.withSpare)
    .map((p) => `With the spare: ${p.withSpare?.text} of ${plain(p.material)}.`);
  const over = purchases
    .filter((p) => p.left && p.left.value > 0)
    .map((p) => `Left over: ${p.left?.text} of ${plain(p.material)}.`);
  const count = purchases
    .filter((p) => p.cartridges)
    .map((p) => `${plain(p.material)}: ${p.cartridges?.text}, on the shelf or bought.`);
  return paragraphs(
    table([left('material'), right('needed'), left('buy'), right('each'), right('cost'), left('why')], rows),
    bullets([...shelf, ...spare, ...count, ...over]),
  ).trimEnd();
}

function cuttingText(list: Estimate['cutting'][number]): string {
  const stock = list.stock.map((one) => {
    const cuts = one.cuts.map(
      (cut) =>
        `${cut.piece} (${plain(cut.item)}, ${plain(cut.what)}${cut.part ? `, part ${cut.part[0]} of ${cut.part[1]}` : ''}) ${cut.length.text}`,
    );
    return `${plain(one.what)}, ${one.usable.text} usable: ${cuts.length === 0 ? 'not needed' : cuts.join('; ')} – ${one.left.text} left`;
  });
  const splices =
    list.splices === 0
      ? 'No splice.'
      : `${list.splices} ${list.splices === 1 ? 'splice' : 'splices'}: the forward part laps over the rear part.`;
  return section(
    `Cutting list: ${plain(list.tape)}`,
    paragraphs(
      'Pieces are numbered in the order in which they are laid.',
      bullets(stock),
      `${splices}${list.longestLeft ? ` Longest single offcut: ${list.longestLeft.text}.` : ''}`,
    ).trimEnd(),
  );
}

function takeOff({ jobs, visits }: Estimate): string {
  const strips = jobs.flatMap((job) =>
    job.strips.map((s) => [
      plain(s.item),
      'strips of tape',
      s.strips.text,
      `${s.slack.text} to spare${s.noSlack ? ': lay it with care' : ''}`,
    ]),
  );
  const beads = jobs.flatMap((job) =>
    job.beads.map((b) => [plain(b.item), b.smothered ? 'covered whole' : 'bead', b.length.text, b.volume.text]),
  );
  const liquids = [...visits.flatMap((v) => v.liquids), ...jobs.flatMap((j) => j.liquids)].map((l) => [
    l.material === undefined ? '' : plain(l.material),
    l.task,
    l.area.text,
    l.volume?.text ?? '',
  ]);
  const stripped = jobs.flatMap((job) =>
    job.stripped.map((s) => [plain(s.item), s.hard ? 'strip (hard)' : 'strip', s.length.text, '']),
  );
  return table([left('what'), left('for'), right('amount'), right('')], [...strips, ...beads, ...stripped, ...liquids]);
}

function labourTable({ labour, hours }: Estimate): string {
  const rows = labour.map((line) => [
    String(line.visit),
    plain(line.task),
    line.quantity.text,
    line.hours.likely.text,
    `${line.hours.least.text} to ${line.hours.most.text}`,
    line.cost?.money.text ?? '',
  ]);
  return table(
    [right('visit'), left('task'), right('amount'), right('hours'), right('range'), right('cost')],
    [
      ...rows,
      ...(labour.length > 0
        ? [['', '**all**', '', hours.likely.text, `${hours.least.text} to ${hours.most.text}`, '']]
        : []),
    ],
  );
}

function totals({ totals: t }: Estimate): string {
  const rows = (
    [
      ['materials', t.materials],
      ['labour', t.labour],
      ['tax', t.tax],
      ['**total**', t.total],
    ] as const
  ).flatMap(([name, priced]) =>
    priced ? [[name, name.startsWith('*') ? `**${priced.money.text}**` : priced.money.text]] : [],
  );
  const missing = t.complete ? '' : paragraphs('The total is not whole:', bullets(t.missing.map(plain))).trimEnd();
  return paragraphs(table([left(''), right('')], rows), missing).trimEnd();
}

function assumptions(estimate: Estimate): string {
  return table(
    [left('figure'), left('value'), left('kind'), left('used for')],
    estimate.assumptions.map((one) => [
      plain(one.name.replaceAll('_', ' ')),
      plain(one.text),
      plain(one.source ?? one.kind),
      plain(one.usedFor),
    ]),
  );
}
