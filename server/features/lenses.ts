// Code lenses: on a rig what comes next, what is to be bought, and the commands; on a fleet the counts. Which lenses there
// are is known at once, what they say is worked out for those that are on the screen.
import { URI } from 'langium';
import type { CodeLensProvider } from 'langium/lsp';
import type { CodeLens, Command } from 'vscode-languageserver';
import * as z from 'zod';
import {
  type CalendarAddress,
  calendarCommand,
  goToCommand,
  roofPlanCommand,
  type WriteArgument,
  writeCommand,
  writeSheetsCommand,
} from '../../language/protocol/index.ts';
import { type RigFigures, rigFigures } from '../figures.ts';
import { locationOf, pathOf, rangeOf } from '../places.ts';
import { counted, dueText } from './due-text.ts';
import { type Features, type Here, hereAt, hereIn } from './here.ts';
import { purchaseText } from './purchase-text.ts';
import { type Place, written } from './refer.ts';

const dataSchema = z.object({ uri: z.string(), says: z.enum(['next', 'purchase', 'counts']), name: z.string() });
type Data = z.infer<typeof dataSchema>;

export const lenses = (features: Features): CodeLensProvider => ({
  provideCodeLens(document) {
    const { session } = features;
    if (!session.settings.codeLens) return [];
    const on = session.settings.lenses;
    const here = hereIn(features, document);
    const { uri } = here.document;
    const { rigs, fleets } = session.figures(here.path);
    const open = (says: Data['says'], name: string): Omit<CodeLens, 'range'> => ({ data: { uri, says, name } });
    const commands = (name: string) => (on.commands ? commandsFor({ uri, name }) : []);
    const roof = (name: string) => (on.commands ? [does('roof plan', roofPlanCommand, { uri, name })] : []);
    const at = (nameAt: Place['at'], some: readonly Omit<CodeLens, 'range'>[]) =>
      some.map((lens): CodeLens => ({ range: rangeOf(here.document, nameAt), ...lens }));
    const ofRigs = rigs
      .filter(({ view }) => view.rig.kind === 'rig')
      .flatMap(({ view: { rig } }) =>
        at(rig.nameAt, [
          ...(on.next ? [open('next', rig.name)] : []),
          ...(on.purchase && rig.plans.some(isTaping) ? [open('purchase', rig.name)] : []),
          ...commands(rig.name),
          ...roof(rig.name),
        ]),
      );
    const ofFleets = fleets.flatMap(({ fleet: { name, nameAt } }) =>
      at(nameAt, [...(on.next ? [open('counts', name)] : []), ...commands(name)]),
    );
    return [...ofRigs, ...ofFleets];
  },
});

const isTaping = ({ statement }: { readonly statement: { readonly word: string } }) => statement.word === 'tape';

/** The lens with its words; as it came where the text has moved on since. */
export function resolveLens(features: Features, lens: CodeLens): CodeLens {
  const { success, data } = dataSchema.safeParse(lens.data);
  const here = success ? hereAt(features, pathOf(URI.parse(data.uri))) : undefined;
  return { ...lens, command: (success && here && commandOf(features, here, data)) || { title: '', command: '' } };
}

function commandOf({ session }: Features, here: Here, { says, name }: Data): Command | undefined {
  const { rigs, fleets } = session.figures(here.path);
  if (says === 'counts') {
    const fleet = fleets.find((one) => one.fleet.name === name);
    return fleet && { title: countsText(fleet.views.map((view) => rigFigures(view, session.dates))), command: '' };
  }
  const rig = rigs.find(({ view }) => view.rig.name === name);
  return rig && (says === 'next' ? nextOf(rig, here) : purchaseOf(rig, here));
}

const commandsFor = (argument: WriteArgument & CalendarAddress): readonly Omit<CodeLens, 'range'>[] => [
  does('write estimate and schedule', writeCommand, argument),
  does('work sheet', writeSheetsCommand, argument),
  does('calendar', calendarCommand, argument),
];

const does = (title: string, command: string, argument: unknown): Omit<CodeLens, 'range'> => ({
  command: { title, command, arguments: [argument] },
});

/** Words above a heading that lead to a line, or nowhere. */
function leadingTo(title: string, place: Place | undefined, here: Here): Command {
  if (!place) return { title, command: '' };
  return { title, command: goToCommand, arguments: [locationOf(here.texts, place.file, place.at)] };
}

/** What is most pressing: what is overdue the longest, else what falls due first. What only holds from a day on is not pressing. */
function nextOf({ dues, schedule }: RigFigures, here: Here): Command {
  const overdue = schedule.dues.findIndex((due, i) => dues[i]?.nature !== 'from' && due.status === 'overdue');
  const index =
    overdue >= 0 ? overdue : schedule.dues.findIndex((due, i) => dues[i]?.nature === 'deadline' && due.days >= 0);
  const next = schedule.dues[index];
  const due = dues[index];
  if (!next || !due) return { title: 'nothing is due', command: '' };
  return leadingTo(`next: ${dueText(next)}`, due.sourceEvent ?? written(due.explained.inputs), here);
}

function purchaseOf({ view, estimate }: RigFigures, here: Here): Command {
  const tapes = estimate.purchases.filter(({ kind }) => kind === 'tape');
  const texts = tapes.map((tape) => `${purchaseText(tape)}${tape.proven && tape.cost ? ', proven cheapest' : ''}`);
  const plan = view.rig.plans.find(isTaping);
  return leadingTo(
    texts.length > 0 ? texts.join('; ') : 'no tape to buy',
    plan && { file: plan.file, at: plan.statement.at },
    here,
  );
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
