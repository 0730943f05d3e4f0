// Records that are written from answers: what may be chosen, whether an answer can be read, where an inspection goes.
import type { Connection } from 'vscode-languageserver';
import { inspectionInsertion } from '../language/authoring/inspection-place.ts';
import { answerProblem } from '../language/authoring/read-answer.ts';
import { isRoofing } from '../language/authoring/usual.ts';
import { walkRound } from '../language/authoring/walk.ts';
import { inspectionAsk, newRigAsk, type RigAddress, readAnswerAsk, walkAsk } from '../language/protocol/index.ts';
import { isLibrary } from '../language/resolve/origin.ts';
import { relativeTo } from '../language/resolve/paths.ts';
import { answer } from './answer.ts';
import type { Features } from './features/here.ts';
import { isBelow } from './files.ts';
import { clash, malformed } from './names/new-name.ts';
import { locationOf, pathOf, textsFrom } from './places.ts';
import { blocksOf } from './record-blocks.ts';
import type { Session } from './session.ts';

export function serveAuthoring(connection: Connection, features: Features): void {
  const { session, open } = features;
  const rigOf = ({ uri, name }: RigAddress) =>
    session.figures(pathOf(uri)).rigs.find(({ view: { rig } }) => rig.kind === 'rig' && rig.name === name);

  answer(connection, newRigAsk, ({ folder }) => {
    const path = folder === null ? undefined : pathOf(folder);
    return {
      membranes: membranesIn(session, path === undefined ? '' : `${path}/`),
      policies: path === undefined ? [] : policiesFor(session, path),
    };
  });
  answer(connection, readAnswerAsk, ({ kind, text, atMost }) => {
    const problem =
      kind === 'rig-name'
        ? nameProblem(features, text.trim())
        : answerProblem(kind, text, { today: session.dates.today, atMost });
    return { problem: problem ?? null };
  });
  answer(connection, walkAsk, (address) => {
    const figures = rigOf(address);
    return figures ? { ...walkRound(figures.view, figures.state), date: session.dates.asOf } : null;
  });
  answer(connection, inspectionAsk, ({ inspection, ...address }) => {
    const figures = rigOf(address);
    if (!figures) return null;
    const items = walkRound(figures.view, figures.state).stations.map(({ item }) => item);
    const change = inspectionInsertion(blocksOf(session, figures), inspection, items);
    if (!change) return null;
    const texts = textsFrom((path) => session.project.text(path), open);
    return { ...locationOf(texts, change.file, change.at), newText: change.text };
  });
}

/** Surfaces that a file may lay on a roof, those of the workspace first. */
function membranesIn({ project }: Session, path: string) {
  return [...project.names(path).all('surface')].flatMap(([name, { file, declaration }]) => {
    const surface = project.surface(path, name);
    if (!isRoofing(surface?.group, isLibrary(file))) return [];
    return [{ name, about: declaration.doc ?? surface?.group ?? '' }];
  });
}

/** The policies that a new file of a folder can use, the nearest first. */
function policiesFor(session: Session, folder: string) {
  const { project, workspace, files } = session;
  const found = [...workspace.summaries.values()].flatMap(({ path, declared }) =>
    files.roots.some((root) => isBelow(root, folder) && isBelow(root, path))
      ? Object.keys(declared).flatMap((key) => {
          const [namespace, name = ''] = key.split(' ');
          return namespace === 'policy' ? [{ name, file: path, path: relativeTo(folder, path) }] : [];
        })
      : [],
  );
  const depth = (path: string) => path.split('/').length;
  return found
    .sort((a, b) => depth(a.path) - depth(b.path) || (a.path < b.path ? -1 : a.path > b.path ? 1 : 0))
    .map(({ name, file, path }) => ({
      name,
      path,
      units: project.policy(file, name).units.value,
      membranes: membranesIn(session, file),
    }));
}

/** What is wrong with a name for a new rig, as a sentence. */
function nameProblem(features: Features, name: string): string | undefined {
  if (name === '') return 'Write a name: it begins with a letter and goes on with letters, digits, `-` and `_`.';
  const meant = { kind: 'rig', name: '', entry: undefined, isBuiltIn: false } as const;
  return malformed(meant, name) ?? clash(features, meant, name, [], new Set());
}
