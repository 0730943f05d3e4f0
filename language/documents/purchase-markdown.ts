// What an estimate buys, cuts and measures, as Markdown.
import type { Estimate } from '../estimate/index.ts';
import { bullets, left, paragraphs, plain, right, section, table } from './markdown.ts';

/** The purchase list: what is needed, what is bought, with its proof, what lies on the shelf and what is left. */
export function purchaseTable({ purchases }: Pick<Estimate, 'purchases'>): string {
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
  const notes = purchases.flatMap(({ material, onHand, kind, withSpare, cartridges, left: over, hint }) => {
    const said = [
      ...(withSpare ? [`${withSpare.text} with the spare`] : []),
      ...(onHand && onHand.value > 0 ? [`${onHand.text} from the shelf`] : []),
      ...(cartridges ? [`${cartridges.text} in all`] : []),
      ...(over && over.value > 0 ? [`${over.text} left over${kind === 'tape' ? ' in one length' : ''}`] : []),
    ];
    return [
      ...(said.length > 0 ? [`${plain(material)}: ${said.join('; ')}.`] : []),
      ...(hint ? [`${plain(material)}: ${plain(hint)}`] : []),
    ];
  });
  return paragraphs(
    table([left('material'), right('needed'), left('buy'), right('each'), right('cost'), left('why')], rows),
    bullets(notes),
  ).trimEnd();
}

/** The cutting list of one tape: roll by roll, piece by numbered piece, and what is left. */
export function cuttingText(list: Estimate['cutting'][number]): string {
  const stock = list.stock.map((one) => {
    const cuts = one.cuts.map(
      (cut) =>
        `${cut.rig === undefined ? '' : `${plain(cut.rig)} `}${cut.piece} (${plain(cut.item)}, ${plain(cut.what)}${cut.part ? `, part ${cut.part[0]} of ${cut.part[1]}` : ''}) ${cut.length.text}`,
    );
    return `${plain(one.at === undefined ? one.what : `${one.what} at ${one.at}`)}, ${one.usable.text} usable: ${cuts.length === 0 ? 'not needed' : cuts.join('; ')} – ${one.left.text} left`;
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
      bullets(list.joints.map(jointText)),
    ).trimEnd(),
  );
}

function jointText({ rig, piece, item, at, tooNear }: Estimate['cutting'][number]['joints'][number]): string {
  const whose = rig === undefined ? '' : `${plain(rig)}, `;
  const near = tooNear ? ': nearer to a corner or an opening than 12 in, for the roll leaves no other place' : '';
  return `Splice of ${whose}piece ${piece} (${plain(item)}) at ${at.text} from its front end${near}.`;
}

/** What was measured for the purchase: strips, beads, what is stripped, liquids. */
export function takeOffTable({ jobs, visits }: Estimate): string {
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
