// The plan of a roof that an editor shows beside the text: what it shows, where its seams are written, when it is stale.
import type { Connection } from 'vscode-languageserver';
import { itemsAt, roofPlan, roofView } from '../language/documents/roof/index.ts';
import { roofPage } from '../language/documents/sheets/roof-page.ts';
import {
  type RigAddress,
  type RoofPlan,
  roofLineAsk,
  roofPaperAsk,
  roofPlanAsk,
  roofSpotAsk,
} from '../language/protocol/index.ts';
import { answer } from './answer.ts';
import { statementsAt } from './cursor/standing.ts';
import { type Features, hereAt, rigAround } from './features/here.ts';
import type { RigFigures } from './figures.ts';
import { locationOf, pathOf, textsFrom, uriOf } from './places.ts';
import type { StaleNotices } from './stale.ts';

/** Serves the plans; whoever asks for one is told when it is stale. */
export function serveRoofPlans(connection: Connection, features: Features, stale: StaleNotices): void {
  const { session, open } = features;
  const rigOf = ({ uri, name }: RigAddress) =>
    session.figures(pathOf(uri)).rigs.find(({ view: { rig } }) => rig.kind === 'rig' && rig.name === name);

  answer(connection, roofPlanAsk, (address): RoofPlan | null => {
    stale.wanted();
    const figures = rigOf(address);
    return figures ? { ...roofView(figures.view, figures.state), unread: isUnread(features, figures) } : null;
  });
  answer(connection, roofSpotAsk, ({ uri, position }) => {
    const path = pathOf(uri);
    const here = hereAt(features, path);
    const offset = here?.document.offsetAt(position) ?? 0;
    const rig = here && rigAround(features, path, statementsAt(here.lines.lines, offset))?.view.rig;
    const found = rig?.kind === 'rig' ? rig : undefined;
    const items = found ? itemsAt(found, path, offset) : [];
    return {
      rig: found ? { uri: uriOf(found.file), name: found.name } : null,
      // Before and behind the words of a line the line is meant.
      items: found && here && items.length === 0 ? itemsAt(found, path, lineStart(here.text, offset)) : items,
      rigs: session.figures(path).rigs.flatMap(({ view }) => (view.rig.kind === 'rig' ? [view.rig.name] : [])),
    };
  });
  answer(connection, roofLineAsk, ({ item, ...address }) => {
    const origin = rigOf(address)?.view.rig.items.find(({ name }) => name === item)?.origin;
    return origin
      ? locationOf(
          textsFrom((path) => session.project.text(path), open),
          origin.file,
          origin.at,
        )
      : null;
  });
  answer(connection, roofPaperAsk, ({ by, form, ...address }) => {
    const figures = rigOf(address);
    if (!figures) return null;
    const { view, state } = figures;
    const stem = `${view.rig.name}.roof${by === 'due' ? '-by-due-date' : ''}`;
    return form === 'svg'
      ? { name: `${stem}.svg`, text: roofPlan(view, state, { by }) }
      : { name: `${stem}.html`, text: roofPage(view, state, by) };
  });
}

/** Where the words of the line around an offset begin. */
function lineStart(text: string, offset: number): number {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  return start + (text.slice(start).match(/^[ \t]*/)?.[0].length ?? 0);
}

/** Whether something about a rig could not be read, in its own file or in those of its records. */
function isUnread({ session }: Features, { view: { rig } }: RigFigures): boolean {
  const own = session
    .figures(rig.file)
    .records?.declarations.find(({ kind, name }) => kind === 'rig' && name === rig.name);
  return (own?.broken.length ?? 0) > 0 || rig.unread.all || rig.unread.items.size > 0;
}
