// The bundles as they are packed, made anew for a test.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export interface Bundles {
  /** The language server: `node SERVER --stdio`. */
  readonly server: string;
  readonly client: string;
  readonly commandLine: string;
  remove(): void;
}

export function bundled(): Bundles {
  const out = mkdtempSync(join(tmpdir(), 'rigseam-bundle-'));
  const root = fileURLToPath(new URL('../..', import.meta.url));
  execFileSync(process.execPath, ['esbuild.mjs', '--dev', '--out', out], { cwd: root });
  return {
    server: join(out, 'server.cjs'),
    client: join(out, 'client.cjs'),
    commandLine: join(out, 'rigseam.js'),
    remove: () => rmSync(out, { recursive: true, force: true }),
  };
}
