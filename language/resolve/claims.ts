// The files that a rig claims for its history and that a fleet lists, by pattern: only `*` and `**`, sorted by path.
import picomatch from 'picomatch';
import type { Declaration, HistoryDeclaration, RigDeclaration } from '../records/file.ts';
import type { Entry, Reading } from './names.ts';
import { folderOf, resolvePath } from './paths.ts';

export interface Listing {
  under(folder: string): readonly string[];
  inside(path: string): boolean;
}

/** The patterns that a declaration says, as written. */
export function patternsIn(declaration: Declaration): readonly string[] {
  if (declaration.kind === 'fleet') return declaration.statements.flatMap((s) => (s.word === 'rigs' ? s.patterns : []));
  if (declaration.kind === 'rig')
    return declaration.statements.flatMap((s) => (s.word === 'records' ? s.patterns : []));
  return [];
}

export interface Pattern {
  readonly whole: string;
  readonly folder: string;
  readonly fits: (path: string) => boolean;
}

/** The last patterns that were asked for: of one file each is asked for several times. */
const known = new Map<string, Pattern>();
const mostKnown = 200;

/** A pattern as seen from the folder of its file, and whether a path fits it. */
export function patternIn(file: string, written: string): Pattern {
  const whole = resolvePath(folderOf(file), written);
  const before = known.get(whole);
  if (before) return before;
  const pattern = read(whole);
  if (known.size >= mostKnown) known.clear();
  known.set(whole, pattern);
  return pattern;
}

function read(whole: string): Pattern {
  const { base } = picomatch.scan(whole);
  return {
    whole,
    folder: whole === base ? folderOf(whole) : base,
    fits: picomatch(whole, { dot: false, nobrace: true, noext: true }),
  };
}

/** The files that the patterns of a declaration stand for, each once, sorted. */
export function filesNamedBy(declaration: Declaration, file: string, files: Listing): readonly string[] {
  const named = new Set<string>();
  for (const written of patternsIn(declaration)) {
    const { folder, fits } = patternIn(file, written);
    for (const path of files.under(folder)) if (fits(path) && files.inside(path)) named.add(path);
  }
  return [...named].sort();
}

/** The histories of a rig: in its own file, and in those that it claims, under its name or a former one. */
export function historiesOf(
  { declaration, file }: Entry<RigDeclaration>,
  files: Listing,
  reading: Reading,
): Entry<HistoryDeclaration>[] {
  const names = new Set([declaration.name]);
  for (const s of declaration.statements) if (s.word === 'formerly' && !s.now) names.add(s.name.name);
  const places = new Set([file, ...filesNamedBy(declaration, file, files)]);
  return [...places].flatMap((path) =>
    (reading.records(path)?.declarations ?? []).flatMap((d) =>
      d.kind === 'history' && names.has(d.name) ? [{ declaration: d, file: path }] : [],
    ),
  );
}
