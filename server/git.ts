// What git knows of the files around a folder. Nothing goes through a shell, and nothing is written.
import { type ExecFileSyncOptionsWithBufferEncoding, execFileSync } from 'node:child_process';
import { enginePath } from './disk-node.ts';
import { Misuse } from './misuse.ts';

export interface Repository {
  /** The folder of its working tree. */
  readonly root: string;
  /** What git prints, called in this folder. Throws where git ends with an error. */
  run(args: readonly string[], input?: string): Buffer;
}

/** Room for the texts of a large repository; a child process may print no more. */
const mostBytes = 2 ** 31 - 1;

/** The repository around a folder, its working tree named by the path that the folder was asked by. */
export function repositoryAround(folder: string): Repository {
  let up: string;
  try {
    up = git(folder, ['rev-parse', '--show-cdup']).toString('utf8').replace(/\n$/, '');
  } catch (error) {
    const { code, stderr } = error as NodeJS.ErrnoException & { readonly stderr?: Buffer };
    if (code === 'ENOENT') throw new Misuse('git could not be started: install it, or put it on the PATH.');
    const said = stderr?.toString('utf8').trim().split('\n')[0] ?? '';
    throw new Misuse(
      /not a git repository/.test(said)
        ? `\`${folder}\` lies in no git repository: there are no revisions.`
        : `git knows nothing of \`${folder}\`: ${said || (error as Error).message}`,
    );
  }
  const root = enginePath(up === '' ? folder : `${folder}/${up}`);
  return { root, run: (args, input) => git(root, args, input) };
}

/** The commit that a revision names. A revision is never taken for an option. */
export function commitOf({ root, run }: Repository, revision: string): string {
  const refused = () =>
    new Misuse(
      `git knows no revision \`${revision}\` in ${root}: name a branch, a tag or a commit. A shallow clone has only the newest.`,
    );
  if (revision === '' || revision.startsWith('-')) throw refused();
  try {
    return run(['rev-parse', '--verify', '--quiet', `${revision}^{commit}`])
      .toString('utf8')
      .trim();
  } catch {
    throw refused();
  }
}

function git(folder: string, args: readonly string[], input?: string): Buffer {
  const options: ExecFileSyncOptionsWithBufferEncoding = {
    cwd: folder,
    env: { ...process.env, LC_ALL: 'C', GIT_OPTIONAL_LOCKS: '0', GIT_TERMINAL_PROMPT: '0' },
    maxBuffer: mostBytes,
    stdio: ['pipe', 'pipe', 'pipe'],
    ...(input === undefined ? {} : { input }),
  };
  return execFileSync('git', args, options);
}

/** The parts of what `-z` lets git print. */
export const parts = (printed: Buffer): readonly string[] =>
  printed
    .toString('utf8')
    .split('\0')
    .filter((part) => part !== '');
