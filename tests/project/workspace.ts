// A workspace in memory: tests write files as texts and ask what the engine makes of them.
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { createProject, type Files, type Project } from '../../language/resolve/project.ts';
import { checkFile } from '../../language/rules/check.ts';
import type { Finding } from '../../language/rules/finding.ts';

export const today = '2026-11-25';

export function filesOf(texts: Readonly<Record<string, string>>): Files {
  return {
    read: (path) => texts[path],
    under: (folder) =>
      Object.keys(texts)
        .filter((path) => path.endsWith('.rig') && (folder === '' || path.startsWith(`${folder}/`)))
        .sort(),
    inside: (path) => !path.startsWith('..') && !path.startsWith('/'),
  };
}

export const projectOf = (texts: Readonly<Record<string, string>>): Project => createProject(filesOf(texts));

/** The findings of one file of a workspace, or of its only one. */
export function check(
  texts: Readonly<Record<string, string>> | string,
  path?: string,
  asOf: string = today,
): Finding[] {
  const all = typeof texts === 'string' ? { 'a.rig': texts } : texts;
  return checkFile(projectOf(all), path ?? (Object.keys(all)[0] as string), {
    asOf,
    today: asOf > today ? asOf : today,
  });
}

/** The `.rig` files of a folder on disk, by path from that folder. */
export function readFolder(folder: string): Record<string, string> {
  const out: Record<string, string> = {};
  const walk = (path: string) => {
    for (const name of readdirSync(join(folder, path)).sort()) {
      const inner = path === '' ? name : `${path}/${name}`;
      if (statSync(join(folder, inner)).isDirectory()) walk(inner);
      else if (name.endsWith('.rig')) out[inner] = readFileSync(join(folder, inner), 'utf8');
    }
  };
  walk('');
  return out;
}
