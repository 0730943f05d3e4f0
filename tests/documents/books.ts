// Service books, incident files and pages of the morning of a folder or a text, without the other papers.
import { fileURLToPath } from 'node:url';
import { bookOf } from '../../language/documents/book/index.ts';
import { morningOf } from '../../language/documents/morning/index.ts';
import { papersOf, type Subject } from '../../language/documents/papers.ts';
import { createProject } from '../../language/resolve/project.ts';
import type { Dates } from '../../language/resolve/types.ts';
import { filesOf, readFolder } from '../project/workspace.ts';

type Texts = Readonly<Record<string, string>>;

export const folder = (name: string): Texts =>
  readFolder(fileURLToPath(new URL(`../../examples/${name}`, import.meta.url)));

export const on: Dates = { asOf: '2026-11-25', today: '2026-11-25' };

/** Every page of a folder of records, by file name. */
export function pagesOf(texts: Texts, dates: Dates = on): ReadonlyMap<string, string> {
  const project = createProject(filesOf(texts));
  const out = new Map<string, string>();
  const add = (subject: Subject) => {
    const papers = papersOf(subject, dates);
    for (const file of [...bookOf(subject, papers, dates), ...morningOf(subject, papers)])
      if ('text' in file) out.set(file.name, file.text);
  };
  for (const path of Object.keys(texts)) {
    for (const view of project.rigs(path)) if (view.rig.kind === 'rig') add({ kind: 'rig', view });
    for (const { fleet, views } of project.fleets(path)) add({ kind: 'fleet', fleet, views });
  }
  return out;
}

export function pageOf(name: string, from: ReadonlyMap<string, string>): string {
  const text = from.get(name);
  if (text === undefined) throw new Error(`there is no ${name} among ${[...from.keys()].join(', ')}`);
  return text;
}
