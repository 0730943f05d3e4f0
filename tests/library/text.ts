// The built-in library as records, for the tests beside this file.
import { libraryFiles } from '../../language/library/index.ts';
import { type Declaration, readFile } from '../../language/records/file.ts';
import type { MaterialKind } from '../../language/statements/file.ts';
import { canonical } from '../../language/statements/words.ts';

export const files = libraryFiles.map(({ path, text }) => ({ path, text, records: readFile(text) }));

export const declarations: readonly Declaration[] = files.flatMap(({ records }) => records.declarations);

/** A statement with whatever its row gives it: the tests ask for fields by name. */
export interface Said {
  readonly word: string;
  readonly at: readonly [number, number];
  readonly source?: string;
  readonly [field: string]: unknown;
}

/** Every statement, with the text of its line and where it stands. */
export const lines = files.flatMap(({ path, text, records }) =>
  records.declarations.flatMap((declaration) =>
    (declaration.statements as unknown as readonly Said[]).map((said) => ({
      said,
      of: declaration.name,
      where: `${path}:${text.slice(0, said.at[0]).split('\n').length} ${declaration.name} ${said.word}`,
    })),
  ),
);

export function statementsOf(name: string): readonly Said[] {
  const found = declarations.find((declaration) => declaration.name === name);
  if (!found) throw new Error(`the library has no ${name}`);
  return found.statements as unknown as readonly Said[];
}

/** The first line with a word, and the first place of it whose text is asked for. */
export function said(name: string, word: string): Said {
  const found = statementsOf(name).find((statement) => statement.word === word);
  if (!found) throw new Error(`${name} says nothing of ${word}`);
  return found;
}

export const kindOf = (source: string | undefined) =>
  /^(published|common practice|from memory)/.exec(source ?? '')?.[1];

const grades = { 'bonds-to': 'Y', 'safe-on': 'Y', 'by-label': 'L', 'test-patch': 'T', 'never-on': 'N' } as const;

/** What a material says of each surface: `Y C` for usual by common practice, and so on, in the letters of the trade's tables. */
export function gradesOf(name: string): ReadonlyMap<string, string> {
  const out = new Map<string, string>();
  for (const statement of statementsOf(name)) {
    const grade = grades[statement.word as keyof typeof grades];
    if (grade === undefined) continue;
    const kind = { published: 'P', 'common practice': 'C', 'from memory': 'M' }[kindOf(statement.source) ?? ''];
    for (const surface of statement.surfaces as readonly { name: string }[]) {
      const key = canonical(surface.name);
      if (out.has(key)) throw new Error(`${name} speaks of ${key} twice`);
      out.set(key, `${grade} ${kind}`);
    }
  }
  return out;
}

export const named = (kind: MaterialKind | 'surface' | 'policy') =>
  declarations.filter((declaration) => declaration.kind === kind).map((declaration) => declaration.name);
