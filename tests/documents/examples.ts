// The papers of both examples, worked out once for several tests.
import { fileURLToPath } from 'node:url';
import { documentsOf } from '../../language/documents/index.ts';
import { createProject } from '../../language/resolve/project.ts';
import { filesOf, projectOf, readFolder } from '../project/workspace.ts';

export const dates = { asOf: '2026-11-25', today: '2026-11-25' };

const folder = (name: string) => readFolder(fileURLToPath(new URL(`../../examples/${name}`, import.meta.url)));

/** Every paper of a folder, by file name. */
export function papersOf(texts: Readonly<Record<string, string>>): Map<string, string> {
  const project = createProject(filesOf(texts));
  const out = new Map<string, string>();
  for (const path of Object.keys(texts)) {
    for (const view of project.rigs(path)) {
      if (view.rig.kind === 'rig')
        for (const { name, text } of documentsOf({ kind: 'rig', view }, dates)) out.set(name, text);
    }
    for (const { fleet, views } of project.fleets(path))
      for (const { name, text } of documentsOf({ kind: 'fleet', fleet, views }, dates)) out.set(name, text);
  }
  return out;
}

export const single = folder('single');
export const fleet = folder('fleet');
export const papers = new Map([...papersOf(single), ...papersOf(fleet)]);

/** The papers of one text with one rig. */
export function papersOfText(text: string): Map<string, string> {
  const [view] = projectOf({ 'a.rig': text })
    .rigs('a.rig')
    .filter(({ rig }) => rig.kind === 'rig');
  if (!view) throw new Error('the text has no rig');
  return new Map(documentsOf({ kind: 'rig', view }, dates).map(({ name, text: body }) => [name, body]));
}
