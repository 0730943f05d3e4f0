// Which item a name means: the same one all the way along `like`, up to where it was first described.
import type { RigDeclaration } from '../../language/records/file.ts';
import { basesBy } from '../../language/resolve/bases.ts';
import { historiesOf } from '../../language/resolve/claims.ts';
import { sideOf } from '../../language/resolve/items.ts';
import { chainOf } from '../../language/resolve/like.ts';
import type { Entry } from '../../language/resolve/names.ts';
import { itemWords } from '../../language/statements/roof.ts';
import type { Session } from '../session.ts';

export type RigEntry = Entry<RigDeclaration>;

type Curb = 'left' | 'right';

/** The names of the items that a declaration itself describes, half-typed lines included; of a side one word for all. */
export function itemsDescribedBy({ statements, broken }: RigDeclaration, curb: Curb = 'right'): Set<string> {
  const out = new Set<string>();
  const add = (word: string, fields: object) => {
    if (!itemWords.has(word)) return;
    const { name, names } = fields as { name?: string | { name: string }; names?: readonly string[] };
    if (name !== undefined) out.add(typeof name === 'string' ? name : name.name);
    for (const one of names ?? []) out.add(sideOf(one, curb) ?? one);
  };
  for (const statement of statements) add(statement.word, statement);
  for (const { word, fields } of broken) add(word, fields);
  return out;
}

const drops = ({ statements }: RigDeclaration, name: string, curb: Curb) =>
  statements.some((s) => s.word === 'without' && s.names.some((one) => (sideOf(one.name, curb) ?? one.name) === name));

/** On which side the kerb is for a rig: asked only where a name is one of a side, for the whole rig is worked out. */
function curbOf(session: Session, { declaration, file }: RigEntry, name: string): Curb {
  if (!sideOf(name, 'right')) return 'right';
  const resolved = session.project.rigs(file).find(({ rig }) => rig.at[0] === declaration.at[0]);
  return resolved?.rig.policy.curb.value ?? 'right';
}

/** What a declaration is like, nearest first, itself at the head. */
export function chain(session: Session, entry: RigEntry): readonly RigEntry[] {
  return chainOf(entry, basesBy((file) => session.project.names(file)).rig).chain;
}

/** The farthest declaration from which a name comes down to this one; `above`: to what this one is like. */
export function rootOf(session: Session, entry: RigEntry, name: string, above = false): RigEntry | undefined {
  const curb = curbOf(session, entry, name);
  let root: RigEntry | undefined;
  for (const [i, link] of chain(session, entry).entries()) {
    if (above && i === 0) continue;
    if (itemsDescribedBy(link.declaration, curb).has(name)) root = link;
    if (drops(link.declaration, name, curb)) break;
  }
  return root;
}

/** The name that a word has now on a rig: not a former one, and one word for each side. */
export function nameNow(session: Session, entry: RigEntry, written: string): string {
  for (const s of entry.declaration.statements)
    if (s.word === 'formerly' && s.now && s.name.name === written) return s.now.name;
  return sideOf(written, curbOf(session, entry, written)) ?? written;
}

/** The rigs that read a history: they say `records`, and their name or a former one is that of the history. */
export function rigsReading(session: Session, path: string, name: string, files: Iterable<string>): RigEntry[] {
  const { project } = session;
  const reading = { records: project.records, inside: session.files.inside };
  const out: RigEntry[] = [];
  const { summaries } = session.workspace;
  // Of a file that was checked since it changed it is known whom it reads: only the others have to be looked through.
  const unknown = [...files].filter((file) => !summaries.has(file) || session.stale.has(file));
  for (const file of new Set([path, ...session.workspace.readersOf(path, name), ...unknown])) {
    const text = project.text(file);
    if (!text?.includes(name) || (file !== path && !text.includes('records'))) continue;
    for (const declaration of project.records(file)?.declarations ?? []) {
      if (declaration.kind !== 'rig') continue;
      const histories = historiesOf({ declaration, file }, session.files, reading);
      if (histories.some((one) => one.file === path && one.declaration.name === name)) out.push({ declaration, file });
    }
  }
  return out;
}
