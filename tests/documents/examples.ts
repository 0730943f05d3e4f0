// The papers of both examples, worked out once for several tests.
import { fileURLToPath } from 'node:url';
import { textDocumentsOf } from '../../language/documents/index.ts';
import { createProject } from '../../language/resolve/project.ts';
import type { Dates } from '../../language/resolve/types.ts';
import { filesOf, projectOf, readFolder } from '../project/workspace.ts';

export const dates: Dates = { asOf: '2026-11-25', today: '2026-11-25' };

type Texts = Readonly<Record<string, string>>;

const folder = (name: string) => readFolder(fileURLToPath(new URL(`../../examples/${name}`, import.meta.url)));

/** Every paper of a folder, by file name. */
export function papersOf(texts: Texts, on: Dates = dates): Map<string, string> {
  const project = createProject(filesOf(texts));
  const out = new Map<string, string>();
  for (const path of Object.keys(texts)) {
    for (const view of project.rigs(path)) {
      if (view.rig.kind === 'rig')
        for (const { name, text } of textDocumentsOf({ kind: 'rig', view }, on)) out.set(name, text);
    }
    for (const { fleet, views } of project.fleets(path))
      for (const { name, text } of textDocumentsOf({ kind: 'fleet', fleet, views }, on)) out.set(name, text);
  }
  return out;
}

export const single = folder('single');
export const fleet = folder('fleet');
export const papers: ReadonlyMap<string, string> = new Map([...papersOf(single), ...papersOf(fleet)]);

/** The text of a paper that has to be there. */
export function paper(name: string, from: ReadonlyMap<string, string> = papers): string {
  const text = from.get(name);
  if (text === undefined) throw new Error(`there is no ${name}`);
  return text;
}

/** The papers of one text with one rig. */
export function papersOfText(text: string, on: Dates = dates): Map<string, string> {
  const [view] = projectOf({ 'a.rig': text })
    .rigs('a.rig')
    .filter(({ rig }) => rig.kind === 'rig');
  if (!view) throw new Error('the text has no rig');
  return new Map(textDocumentsOf({ kind: 'rig', view }, on).map(({ name, text: body }) => [name, body]));
}

/** The text with its declarations in the opposite order; what stands before them stays. */
export function turned(text: string): string {
  const [head = '', ...declarations] = text.split(/^(?=(?:tape|sealant|primer|cleaner|coating|model|rig|policy)\b)/m);
  return [head, ...declarations.reverse().map((each) => `${each.trimEnd()}\n\n`)].join('');
}
