// A real git repository in a temporary folder, of files written as texts.
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

export interface TestRepository {
  readonly folder: string;
  write(texts: Readonly<Record<string, string>>): void;
  /** Puts one text in the place of another that must be there. */
  replace(path: string, old: string, text: string): void;
  move(from: string, to: string): void;
  remove(path: string): void;
  /** Commits everything and gives the name of the commit. */
  commit(message: string): string;
  git(...args: string[]): string;
  end(): void;
}

/** A folder in no repository. */
export const emptyFolder = (): string => realpathSync(mkdtempSync(join(tmpdir(), 'rigseam-git-')));

export function testRepository(texts: Readonly<Record<string, string>>): TestRepository {
  const folder = emptyFolder();
  const git = (...args: string[]) =>
    execFileSync('git', ['-c', 'user.name=Test', '-c', 'user.email=test@example.org', ...args], {
      cwd: folder,
      encoding: 'utf8',
      env: { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null' },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
  const repository: TestRepository = {
    folder,
    write(all) {
      for (const [path, text] of Object.entries(all)) {
        mkdirSync(dirname(join(folder, path)), { recursive: true });
        writeFileSync(join(folder, path), text);
      }
    },
    replace(path, old, text) {
      const before = readFileSync(join(folder, path), 'utf8');
      if (!before.includes(old)) throw new Error(`${path} does not hold ${old}`);
      writeFileSync(join(folder, path), before.replace(old, text));
    },
    move(from, to) {
      mkdirSync(dirname(join(folder, to)), { recursive: true });
      renameSync(join(folder, from), join(folder, to));
    },
    remove: (path) => rmSync(join(folder, path)),
    commit(message) {
      git('add', '--all');
      git('commit', '--quiet', '--message', message);
      return git('rev-parse', 'HEAD').trim();
    },
    git,
    end: () => rmSync(folder, { recursive: true, force: true }),
  };
  git('init', '--quiet', '--initial-branch=main');
  repository.write(texts);
  repository.commit('first');
  return repository;
}
