// Everywhere that a thing is named, in open files as they are typed now and in closed ones as they are on disk.
import { linesOfText } from '../../language/records/file.ts';
import { spellings } from '../../language/statements/words.ts';
import type { Features } from '../features/here.ts';
import { entryAround, isSame, type Meant, meantBy } from './meant.ts';
import { type Mention, mentionsIn, type Role } from './mentions.ts';

export interface Found {
  readonly file: string;
  readonly mention: Mention;
  /** Whether it is declared or described here. */
  readonly declares: boolean;
}

/** The files that can name something: those of the workspace, and what these use. */
export function filesKnown({ session }: Features, from: readonly string[]): Set<string> {
  const { project, workspace } = session;
  // Listed anew, for soon after the start not all have been checked.
  const listed = session.folders.flatMap((folder) => session.files.under(folder));
  const files = new Set([...listed, ...workspace.checkedFiles()]);
  for (const path of from) for (const used of project.dependsOn(path)) files.add(used);
  return files;
}

/** All mentions of a thing in some files, in the order of the files' paths and of their places. */
export function mentionsOfThing(features: Features, meant: Meant, files: ReadonlySet<string>): Found[] {
  const steps = findMentions(features, meant, files);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same, a file a step, so that whoever asks may stop or let others go first. */
export function* findMentions(
  features: Features,
  meant: Meant,
  files: ReadonlySet<string>,
): Generator<void, Found[], void> {
  const { session } = features;
  const found = new Map<string, Found>();
  const names = new Set(namesOf(meant));
  // The set grows while it is walked: by the former names that are found on the way.
  for (const name of names) {
    for (const file of [...files].sort()) {
      for (const mention of mentionsNamed(features, file, name)) {
        const one = meantBy(session, file, mention, files);
        if (!one || !isSame(one, meant)) continue;
        found.set(`${file} ${mention.at[0]}`, { file, mention, declares: declares(mention) });
        for (const former of mention.role === 'former' ? [] : formerNames(features, file, mention, meant))
          names.add(former);
      }
      yield;
    }
  }
  for (const file of files) if (!session.isOpen(file)) session.project.release(file);
  return [...found.values()].sort((a, b) =>
    a.file === b.file ? a.mention.at[0] - b.mention.at[0] : a.file < b.file ? -1 : 1,
  );
}

const declaring: ReadonlySet<string> = new Set(['declaration', 'item', 'bay', 'yard', 'crew'] satisfies Role[]);
export const declares = ({ role }: Mention): boolean => declaring.has(role);

/** The places of a file where a name stands; a file that does not hold its letters is not read. */
export function mentionsNamed({ session }: Features, file: string, name: string): Mention[] {
  const text = session.project.text(file);
  if (text === undefined) return [];
  const letters = /^[\w-]*$/.test(name) ? text : text.normalize('NFC');
  if (!letters.includes(name)) return [];
  return [...mentionsIn(linesOfText(text).lines)].filter((mention) => mention.name === name);
}

const sideWords: Readonly<Record<string, readonly string[]>> = {
  curbside: ['curbside', 'nearside', 'left', 'right'],
  roadside: ['roadside', 'offside', 'left', 'right'],
};
const namesOf = ({ kind, name }: Meant) =>
  kind === 'item' ? (sideWords[name] ?? [name]) : kind === 'surface' ? spellings(name) : [name];

/** Under which other names a rig or its item is known where it is mentioned. */
function formerNames({ session }: Features, file: string, mention: Mention, { kind, name }: Meant): string[] {
  const declaration = entryAround(session, file, mention)?.declaration;
  if (declaration?.kind !== 'rig') return [];
  return declaration.statements.flatMap((s) =>
    s.word === 'formerly' && (kind === 'item' ? s.now?.name === name : kind === 'rig' && !s.now) ? [s.name.name] : [],
  );
}
