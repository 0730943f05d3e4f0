// The bundled command line as a process that things happen to: killed, short of files, of space, of permission.
import { type SpawnSyncOptions, spawn, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, watch } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { bundled } from '../server/bundle.ts';

export interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface CommandLine {
  /** A folder of its own, empty at first. */
  readonly folder: string;
  readonly bundle: string;
  readonly server: string;
  run(args: readonly string[], options?: SpawnSyncOptions): Ended;
  /** Runs a script of the shell with `rigseam` as a command in it. */
  shell(script: string, options?: SpawnSyncOptions): Ended;
  /** Starts it, and kills it once so many things have happened in a folder; resolves when it has ended. */
  killed(args: readonly string[], inFolder: string, happenings: number): Promise<void>;
  end(): void;
}

export function startCommandLine(): CommandLine {
  const bundles = bundled();
  // Another user has to be able to read it.
  chmodSync(dirname(bundles.commandLine), 0o755);
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'rigseam-faults-')));
  chmodSync(folder, 0o755);
  const options = { cwd: folder, encoding: 'utf8', maxBuffer: 64e6 } as const;
  const ended = ({ status, stdout, stderr }: { status: number | null; stdout: unknown; stderr: unknown }): Ended => ({
    status,
    stdout: String(stdout),
    stderr: String(stderr),
  });
  return {
    folder,
    bundle: bundles.commandLine,
    server: bundles.server,
    run: (args, more) => ended(spawnSync(process.execPath, [bundles.commandLine, ...args], { ...options, ...more })),
    shell: (script, more) =>
      ended(
        spawnSync('bash', ['-c', `rigseam() { "${process.execPath}" "${bundles.commandLine}" "$@"; }\n${script}`], {
          ...options,
          ...more,
        }),
      ),
    killed: (args, inFolder, happenings) =>
      new Promise((done, failed) => {
        const child = spawn(process.execPath, [bundles.commandLine, ...args], { cwd: folder, stdio: 'ignore' });
        let seen = 0;
        const watcher = watch(inFolder, { recursive: true }, () => {
          if (++seen >= happenings) child.kill('SIGKILL');
        });
        child.once('error', failed);
        child.once('exit', () => {
          watcher.close();
          done();
        });
      }),
    end() {
      bundles.remove();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** All files below a folder, by path. */
export function filesIn(folder: string): Map<string, string> {
  mkdirSync(folder, { recursive: true });
  return new Map(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .sort()
      .map((path) => [path.slice(folder.length + 1), readFileSync(path, 'latin1')]),
  );
}
