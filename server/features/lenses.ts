// Code lenses: on a rig what comes next, what is to be bought, and the papers; on a fleet the counts.
import type { CodeLensProvider } from 'langium/lsp';
import type { CodeLens, Range } from 'vscode-languageserver';
import { type WriteArgument, writeCommand } from '../../language/protocol/index.ts';
import { type RigFigures, rigFigures } from '../figures.ts';
import { rangeOf } from '../places.ts';
import { counted, dueText } from './due-text.ts';
import { type Features, hereIn } from './here.ts';
import { purchaseText } from './purchase-text.ts';

export const lenses = (features: Features): CodeLensProvider => ({
  provideCodeLens(document) {
    const { session } = features;
    if (!session.settings.codeLens) return [];
    const here = hereIn(features, document);
    const { uri } = here.document;
    const { rigs, fleets } = session.figures(here.path);
    const ofRigs = rigs
      .filter(({ view }) => view.rig.kind === 'rig')
      .flatMap((figures) => {
        const { rig } = figures.view;
        const range = rangeOf(here.document, rig.nameAt);
        return [
          ...said(range, nextText(figures)),
          ...said(range, buyText(figures)),
          write(range, { uri, name: rig.name }),
        ];
      });
    const ofFleets = fleets.flatMap(({ fleet, views }) => {
      const range = rangeOf(here.document, fleet.nameAt);
      const figures = views.map((view) => rigFigures(view, session.dates));
      return [...said(range, countsText(figures)), write(range, { uri, name: fleet.name })];
    });
    return [...ofRigs, ...ofFleets];
  },
});

/** Words above a heading; they do nothing when clicked. */
function said(range: Range, title: string | undefined): CodeLens[] {
  return title === undefined ? [] : [{ range, command: { title, command: '' } }];
}

const write = (range: Range, argument: WriteArgument): CodeLens => ({
  range,
  command: { title: 'write estimate and schedule', command: writeCommand, arguments: [argument] },
});

/** What is most pressing: what is overdue the longest, else what falls due first. What only holds from a day on is not pressing. */
function nextText({ dues, schedule }: RigFigures): string | undefined {
  const next = schedule.dues.find((due, i) => dues[i]?.nature !== 'from' && due.status === 'overdue');
  const coming = next ?? schedule.dues.find((due, i) => dues[i]?.nature === 'deadline' && due.days >= 0);
  return coming && `next: ${dueText(coming)}`;
}

function buyText({ estimate }: RigFigures): string | undefined {
  const tapes = estimate.purchases.filter(({ kind }) => kind === 'tape');
  const texts = tapes.map((tape) => `${purchaseText(tape)}${tape.proven && tape.cost ? ', proven cheapest' : ''}`);
  return texts.length === 0 ? undefined : texts.join('; ');
}

function countsText(rigs: readonly RigFigures[]): string {
  const having = (status: string) => rigs.filter(({ dues }) => dues.some((due) => due.status === status)).length;
  const [overdue, soon] = [having('overdue'), having('soon')];
  return [
    counted(rigs.length, 'rig'),
    `${overdue === 0 ? 'none' : overdue} with something overdue`,
    ...(soon > 0 ? [`${soon} with something due soon`] : []),
  ].join(', ');
}
