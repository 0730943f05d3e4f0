// What has changed since a revision, for an editor: texts as they are typed now, a little at a time.
import { type CancellationToken, type Connection, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import { type Comparison, compareMarkdown, comparing, type Side } from '../language/compare/index.ts';
import { compareAsk } from '../language/protocol/index.ts';
import { folderOf } from '../language/resolve/paths.ts';
import { createProject } from '../language/resolve/project.ts';
import { isVirtual } from './addresses.ts';
import { answer } from './answer.ts';
import type { Features } from './features/here.ts';
import { type DiskFiles, isBelow } from './files.ts';
import type { Host } from './host.ts';
import { Misuse } from './misuse.ts';
import { pathOf } from './places.ts';
import type { Session } from './session.ts';
import { loadLinearPrograms } from './solver/highs.ts';
import { nextTurn } from './turn.ts';

/** How long one slice of work may hold up a request, in milliseconds; a rig is worked out in one go. */
const slice = 10;

export function serveComparisons(connection: Connection, { session }: Features, host: Host): void {
  answer(connection, compareAsk, async ({ uri, revision }, token) => {
    try {
      const comparison = await compareSince(session, host, pathOf(uri), revision, token);
      return { kind: 'compared' as const, markdown: compareMarkdown(comparison) };
    } catch (error) {
      if (error instanceof Misuse) return { kind: 'refused' as const, because: error.message };
      throw error;
    }
  });
}

async function compareSince(
  session: Session,
  { revisions }: Host,
  path: string,
  revision: string,
  token: CancellationToken,
): Promise<Comparison> {
  if (!revisions || isVirtual(path))
    throw new Misuse(
      'Revisions are read by git on the machine that holds the files: they cannot be compared in a browser or on a file system that only the editor knows. Open the folder on the desktop, or call `rigseam compare`.',
    );
  const { files: open, dates } = session;
  const repository = revisions.around(open.roots.includes(path) ? path : folderOf(path));
  // The folders of the workspace that lie in the repository; one that holds the repository is compared as far as that goes.
  const within = open.roots.filter((root) => isBelow(repository.root, root));
  const folders = within.length > 0 ? within : [repository.root];
  const before = sideOf(repository.at(revision), folders, repository.root);
  await pause(token);
  const after = sideOf(
    repository.now((file) => (open.inside(file) ? open.read(file) : undefined)),
    folders,
    repository.root,
  );
  const lp = await loadLinearPrograms();
  const steps = comparing(before, after, {
    from: revision,
    to: 'the texts as they are now',
    dates,
    fileName: (file) => file.slice(repository.root === '/' ? 1 : repository.root.length + 1),
    ...(lp && { lp }),
  });
  for (let from = performance.now(); ; ) {
    const { done, value } = steps.next();
    if (done) return value;
    if (performance.now() - from < slice) continue;
    await pause(token);
    from = performance.now();
  }
}

function sideOf(files: DiskFiles, folders: readonly string[], root: string): Side {
  const paths = files.under(root).filter((path) => folders.some((folder) => isBelow(folder, path)));
  return { project: createProject(files), files, paths };
}

/** Whatever else waits gets its turn; ends the work where nobody wants it any more. */
async function pause(token: CancellationToken): Promise<void> {
  await nextTurn();
  if (token.isCancellationRequested)
    throw new ResponseError(LSPErrorCodes.RequestCancelled, 'The comparison was called off.');
}
