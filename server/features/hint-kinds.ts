// What stands behind the lines: computed figures, each with its sum and the place that it follows from.
import type { JobLine } from '../../language/estimate/index.ts';
import type { Explained, Input } from '../../language/explain.ts';
import type { Span } from '../../language/grammar/problem.ts';
import { seamLength } from '../../language/measure/length.ts';
import type { RigFigures } from '../figures.ts';
import { distance } from './due-text.ts';
import { explained, inline } from './explained.ts';
import type { Features, Here } from './here.ts';
import { purchaseText } from './purchase-text.ts';
import { type Place, writtenElsewhere } from './refer.ts';

/** What stands behind a line. The sum is worked out when somebody looks at it: it may have to read other files. */
export interface Hint {
  /** The line that it stands behind. */
  readonly at: Span;
  readonly text: string;
  readonly tooltip: () => string;
  /** Where the figure comes from. */
  readonly from?: Place;
}

/** All hints of an open file, in the order of its rigs. */
export function hintsOf({ session: { settings, figures } }: Features, here: Here): Hint[] {
  if (!settings.inlayHints) return [];
  const on = settings.hints;
  return figures(here.path).rigs.flatMap((rig) => [
    ...(on.lengths ? lengthHints(rig, here) : []),
    ...(on.work ? workHints(rig, here) : []),
    ...(on.dueDates ? dueHints(rig, here) : []),
    ...(on.totals ? totalHint(rig, here) : []),
  ]);
}

/** The length of each seam that is described here; of several alike, of one and of all. */
function lengthHints({ view: { rig } }: RigFigures, here: Here): Hint[] {
  const byLine = new Map<number, { at: Span; texts: string[]; figures: [Explained, string][] }>();
  for (const item of rig.items) {
    if (item.origin.file !== here.path) continue;
    const measured = seamLength(item, rig.roof, rig.policy.units.value);
    if (!measured.ok) continue;
    const { each, all } = measured.value;
    const { at } = item.origin;
    const line = byLine.get(at[0]) ?? { at, texts: [], figures: [] };
    byLine.set(at[0], line);
    const text = item.count > 1 ? `${item.count} × ${each.figure.text} = ${all.figure.text}` : all.figure.text;
    if (!line.texts.includes(text)) line.texts.push(text);
    line.figures.push([all.figure, item.name]);
  }
  return [...byLine.values()].map(({ at, texts, figures }) => ({
    at,
    text: texts.join(', '),
    tooltip: () => figures.map(([figure, name]) => explained(figure, here.texts, name)).join('\n\n'),
    ...from(figures[0]?.[0].inputs, here, at),
  }));
}

/** Strips and pieces of each taping, bead and volume of each sealing, and at the first job of a material what it takes to buy. */
function workHints({ estimate }: RigFigures, here: Here): Hint[] {
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
      const tooltip = () => [...new Set(figures)].map((figure) => explained(figure, here.texts)).join('\n\n');
      return [{ at: job.at, text: texts.join('; '), tooltip, ...from(figures.at(-1)?.inputs, here, job.at) }];
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
  return dues.flatMap(({ kind, word, date, status, days, because, explained: reason }) => {
    const far = `${date}${distance(status, days)}`;
    const tooltip = () => inline(because);
    if (kind === 'inspect' && last?.file === here.path) {
      const { at } = last.record;
      return [{ at, text: `next by ${far}`, tooltip, ...from(reason.inputs, here, at) }];
    }
    // Which of several plans a due belongs to, it does not say.
    const [plan, ...others] = planned;
    if (kind !== 'plan' || word !== 'inspect' || plan?.file !== here.path || others.length > 0) return [];
    return [{ at: plan.statement.at, text: `due ${far}`, tooltip }];
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
      tooltip: () => `${explained(total.figure, here.texts)}${open}`,
      ...from(total.figure.inputs, here, rig.at),
    },
  ];
}

function from(inputs: readonly Input[] | undefined, here: Here, at: Span): { readonly from?: Place } {
  const place = writtenElsewhere(inputs ?? [], { file: here.path, at });
  return place ? { from: place } : {};
}
