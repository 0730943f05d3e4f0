// Inlay hints: computed figures at the end of the lines they belong to, each with its sum.
import type { InlayHintProvider } from 'langium/lsp';
import type { InlayHint } from 'vscode-languageserver';
import type { JobLine } from '../../language/estimate/index.ts';
import type { Explained } from '../../language/explain.ts';
import type { Span } from '../../language/grammar/problem.ts';
import { seamLength } from '../../language/measure/length.ts';
import type { RigFigures } from '../figures.ts';
import { distance } from './due-text.ts';
import { explained } from './explained.ts';
import { type Features, type Here, hereIn } from './here.ts';
import { purchaseText } from './purchase-text.ts';

/** What stands behind a line, and the sum that its tooltip shows. */
interface Hint {
  readonly at: Span;
  readonly text: string;
  readonly tooltip: string;
}

export const hints = (features: Features): InlayHintProvider => ({
  getInlayHints(document, { range }) {
    if (!features.session.settings.inlayHints) return [];
    const here = hereIn(features, document);
    const [from, to] = [here.document.offsetAt(range.start), here.document.offsetAt(range.end)];
    return features.session
      .figures(here.path)
      .rigs.flatMap((rig) => [
        ...itemHints(rig, here),
        ...planHints(rig, here),
        ...dueHints(rig, here),
        ...totalHint(rig, here),
      ])
      .filter(({ at }) => at[1] >= from && at[1] <= to)
      .map(({ at, text, tooltip }): InlayHint => {
        const position = here.document.positionAt(endOf(here.text, at));
        return { position, label: text, tooltip: { kind: 'markdown', value: tooltip }, paddingLeft: true };
      });
  },
});

/** Behind the line, and behind the brace that it opens. */
function endOf(text: string, [, end]: Span): number {
  return end + (/^[ \t]*\{(?=[ \t]*(#|\r?\n|$))/.exec(text.slice(end, end + 100))?.[0].length ?? 0);
}

/** The length of each seam that is described here; of several alike, of one and of all. */
function itemHints({ view: { rig } }: RigFigures, here: Here): Hint[] {
  const byLine = new Map<number, { at: Span; texts: string[]; sums: string[] }>();
  for (const item of rig.items) {
    if (item.origin.file !== here.path) continue;
    const measured = seamLength(item, rig.roof, rig.policy.units.value);
    if (!measured.ok) continue;
    const { each, all } = measured.value;
    const { at } = item.origin;
    const line = byLine.get(at[0]) ?? { at, texts: [], sums: [] };
    byLine.set(at[0], line);
    const text = item.count > 1 ? `${item.count} × ${each.figure.text} = ${all.figure.text}` : all.figure.text;
    if (!line.texts.includes(text)) line.texts.push(text);
    line.sums.push(explained(all.figure, here.texts, item.name));
  }
  return [...byLine.values()].map(({ at, texts, sums }) => ({
    at,
    text: texts.join(', '),
    tooltip: sums.join('\n\n'),
  }));
}

/** Strips and pieces of each taping, bead and volume of each sealing, and at the first job of a material what it takes to buy. */
function planHints({ estimate }: RigFigures, here: Here): Hint[] {
  const bought = new Set<string>();
  return estimate.jobs
    .filter(({ file }) => file === here.path)
    .flatMap((job) => {
      const figures: Explained[] = [];
      const texts = [...tapeTexts(job, figures), ...sealantTexts(job, figures)];
      if (texts.length === 0) return [];
      const materials = new Set([...job.pieces.map(({ tape }) => tape), ...job.beads.map(({ sealant }) => sealant)]);
      for (const purchase of estimate.purchases) {
        if (!materials.has(purchase.material) || bought.has(purchase.material)) continue;
        bought.add(purchase.material);
        texts.push(purchaseText(purchase));
        figures.push(purchase.need, ...(purchase.cost ? [purchase.cost.figure] : []));
      }
      const sums = [...new Set(figures)].map((figure) => explained(figure, here.texts));
      return [{ at: job.at, text: texts.join('; '), tooltip: sums.join('\n\n') }];
    });
}

function tapeTexts({ strips, pieces, tapeLength }: JobLine, figures: Explained[]): string[] {
  if (pieces.length === 0) return [];
  const counts = strips.map(({ strips: count }) => count.value);
  figures.push(...strips.map(({ strips: count }) => count), ...(tapeLength ? [tapeLength] : []));
  const each =
    counts.length > 0 && counts.every((n) => n === counts[0]) ? `${many(counts[0] as number, 'strip')}, ` : '';
  return [`${each}${many(pieces.length, 'piece')}${tapeLength ? `, ${tapeLength.text}` : ''}`];
}

function sealantTexts({ beads, beadLength, sealantVolume }: JobLine, figures: Explained[]): string[] {
  if (beads.length === 0 || !beadLength || !sealantVolume) return [];
  figures.push(beadLength, sealantVolume);
  return [`bead ${beadLength.text}, ${sealantVolume.text}`];
}

const many = (n: number, noun: string) => `${n} ${noun}${n === 1 ? '' : 's'}`;

/** When the next inspection falls due, behind the last one; how far off a planned one is, behind its line. */
function dueHints({ view: { rig }, state, dues }: RigFigures, here: Here): Hint[] {
  const last = rig.events.findLast((event) => event.record.word === 'inspected' && event.last <= state.asOf);
  const planned = rig.plans.filter(({ statement }) => statement.word === 'inspect');
  return dues.flatMap(({ kind, word, date, status, days, because }) => {
    const far = `${date}${distance(status, days)}`;
    if (kind === 'inspect' && last?.file === here.path)
      return [{ at: last.record.at, text: `next by ${far}`, tooltip: because }];
    // Which of several plans a due belongs to, it does not say.
    const [plan, ...others] = planned;
    if (kind !== 'plan' || word !== 'inspect' || plan?.file !== here.path || others.length > 0) return [];
    return [{ at: plan.statement.at, text: `due ${far}`, tooltip: because }];
  });
}

/** The total of a rig's plans, on its heading. */
function totalHint({ view: { rig }, estimate }: RigFigures, here: Here): Hint[] {
  const { total, complete, missing } = estimate.totals;
  if (rig.kind !== 'rig' || !total || estimate.jobs.length === 0) return [];
  const open = complete ? '' : `\n\nNot in it: ${missing.join(' ')}`;
  return [
    {
      at: rig.at,
      text: `${total.money.text}${complete ? '' : ' and more'}`,
      tooltip: `${explained(total.figure, here.texts)}${open}`,
    },
  ];
}
