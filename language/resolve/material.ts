// Materials and surfaces, with what their base and the built-in library add where they are silent.
import type { MaterialDeclaration, SurfaceDeclaration } from '../records/file.ts';
import type { MaterialKind } from '../statements/file.ts';
import type { MaterialStatement } from '../statements/material.ts';
import { canonical, type Family } from '../statements/words.ts';
import { lengthOf } from '../values/length.ts';
import { chainOf, type Line, linesThatHold } from './like.ts';
import type { Entry } from './names.ts';
import { originOf, stated } from './origin.ts';
import type {
  Cleaner,
  ClockName,
  Coating,
  Grade,
  Material,
  OnSale,
  Origin,
  Primer,
  Sealant,
  Stated,
  Surface,
  SurfaceGroup,
  Tape,
} from './types.ts';

export type FindMaterial = (entry: Entry<MaterialDeclaration>) => Entry<MaterialDeclaration> | undefined;

const clockWords = ['skin', 'rain', 'drive', 'wash'] as const satisfies readonly ClockName[];
const gradeWords = {
  'bonds-to': 'yes',
  'safe-on': 'yes',
  'by-label': 'label',
  'test-patch': 'test',
  'never-on': 'never',
} as const satisfies Record<string, Grade>;

/** The lines of one material, by word. */
type Lines = ReadonlyMap<string, readonly Line<MaterialStatement>[]>;

function byWord(lines: readonly Line<MaterialStatement>[]): Lines {
  const map = new Map<string, Line<MaterialStatement>[]>();
  for (const line of lines) {
    const word = line.statement.word;
    map.set(word, [...(map.get(word) ?? []), line]);
  }
  return map;
}

type Said<W extends MaterialStatement['word']> = Extract<MaterialStatement, { word: W }>;

function all<W extends MaterialStatement['word']>(lines: Lines, word: W): readonly Line<Said<W>>[] {
  return (lines.get(word) ?? []) as never;
}

function one<W extends MaterialStatement['word'], T>(
  lines: Lines,
  word: W,
  value: (statement: Said<W>) => T,
): Stated<T> | undefined {
  const line = all(lines, word)[0];
  return line && stated(value(line.statement), line.file, line.statement);
}

function onSale<W extends 'roll' | 'cartridge' | 'case' | 'container', T>(
  lines: Lines,
  word: W,
  size: (statement: Said<W>) => T,
): OnSale<T>[] {
  return all(lines, word).map(({ statement: said, file }) => {
    const statement = said as Said<'roll' | 'cartridge' | 'case' | 'container'>;
    return {
      size: size(said),
      ...(statement.price ? { price: statement.price } : {}),
      origin: originOf(file, statement.at, statement.source),
    };
  });
}

/** What a material says of surfaces: the user's own word goes before that of the built-in library, which then stands only where the label names nothing. */
function bonding(lines: Lines, fallback: Lines | undefined): Record<string, Stated<Grade>> {
  const out: Record<string, Stated<Grade>> = {};
  const said = (from: Lines) => {
    const graded = (Object.entries(gradeWords) as [keyof typeof gradeWords, Grade][]).flatMap(([word, grade]) =>
      all(from, word).map((line) => ({ ...line, grade })),
    );
    // What was written nearest goes first, whichever of the four words it uses.
    for (const { statement, file, grade } of graded.sort((x, y) => x.depth - y.depth)) {
      for (const surface of statement.surfaces) out[canonical(surface.name)] ??= stated(grade, file, statement);
    }
  };
  said(lines);
  if (fallback) said(fallback);
  return out;
}

/** A material as it stands, resolved along its `like`; `standard` finds the built-in material of its kind and family. */
export function resolveMaterial(
  entry: Entry<MaterialDeclaration>,
  baseOf: FindMaterial,
  standard: (kind: MaterialKind, family: Family | undefined) => Entry<MaterialDeclaration> | undefined,
): Material {
  const own = byWord(
    linesThatHold<MaterialDeclaration, MaterialStatement>(chainOf(entry, baseOf).chain, () => true).lines,
  );
  const { kind } = entry.declaration;
  const family =
    one(own, 'family', (s) => s.family) ??
    (kind === 'tape' ? { value: 'butyl' as const, origin: unsaid(entry) } : undefined);
  const of = (one(own, 'solvent', (s) => s.solvent)?.value as Family | undefined) ?? family?.value;
  // Tape of any family laps like the usual one: pieces without laps would come out short.
  const library = standard(kind, of) ?? (kind === 'tape' ? standard(kind, 'butyl') : undefined);
  const fallback =
    library && library.declaration !== entry.declaration
      ? byWord(library.declaration.statements.map((statement) => ({ statement, file: library.file, depth: 0 })))
      : undefined;
  const get = <W extends MaterialStatement['word'], T>(word: W, value: (statement: Said<W>) => T) =>
    one(own, word, value) ?? (fallback && one(fallback, word, value));

  const lives = (all(own, 'life').length > 0 || !fallback ? all(own, 'life') : all(fallback, 'life')).map(
    ({ statement, file }) => ({
      ...stated(statement.life, file, statement),
      ...(statement.on ? { on: statement.on.map((s) => canonical(s.name)) } : {}),
    }),
  );
  const clocks: Partial<Record<ClockName, Stated<Said<'skin'>['span']>>> = {};
  for (const word of clockWords) {
    const clock = get(word, (s) => s.span);
    if (clock) clocks[word] = clock;
  }
  const apply = get('apply', (s) => s.air);
  const surfaceUpTo = get('surface-up-to', (s) => s.limit);
  const cover = get('cover', (s) => s.span);
  const covers = get('covers', (s) => s.coverage);
  const flash = get('flash', (s) => s.span);
  const base = {
    name: entry.declaration.name,
    origin: originOf(entry.file, entry.declaration.nameAt),
    ...(entry.declaration.doc === undefined ? {} : { doc: entry.declaration.doc }),
    ...(family ? { family } : {}),
    bonding: bonding(own, fallback),
    ...(apply ? { apply } : {}),
    ...(surfaceUpTo ? { surfaceUpTo } : {}),
    clocks,
    ...(cover ? { cover } : {}),
    lives,
    containers: onSale(own, 'container', (s) => s.volume),
    ...(covers ? { covers } : {}),
    passes: get('passes', (s) => s.count.count) ?? { value: 1, origin: unsaid(entry) },
  };

  switch (kind) {
    case 'tape': {
      const width = one(own, 'width', (s) => s.width);
      const tape: Tape = {
        kind,
        ...base,
        ...(width ? { width } : {}),
        rolls: onSale(own, 'roll', (s) => s.length),
        endLap: get('end-lap', (s) => s.length) ?? { value: lengthOf(0), origin: unsaid(entry) },
        sideLap: get('side-lap', (s) => s.length) ?? { value: lengthOf(0), origin: unsaid(entry) },
      };
      return tape;
    }
    case 'sealant': {
      const grade = get('grade', (s) => s.grade);
      const bead = get('bead', (s) => ({
        width: s.size[0],
        height: s.size[1],
        section: s.section ?? ('rectangle' as const),
      }));
      const lookHard = get('look-hard', (s) => s.every);
      const sealant: Sealant = {
        kind,
        ...base,
        ...(grade ? { grade } : {}),
        cartridges: onSale(own, 'cartridge', (s) => s.volume),
        cases: onSale(own, 'case', (s) => s.holds),
        ...(bead ? { bead } : {}),
        coatsAtMost: get('coats', (s) => s.most.count) ?? { value: 3, origin: unsaid(entry) },
        ...(lookHard ? { lookHard } : {}),
      };
      return sealant;
    }
    case 'primer': {
      const neededOn = [own, ...(fallback && all(own, 'needed-on').length === 0 ? [fallback] : [])].flatMap((from) =>
        all(from, 'needed-on').flatMap(({ statement, file }) =>
          statement.surfaces.map((surface) => stated(canonical(surface.name), file, statement)),
        ),
      );
      const primer: Primer = { kind, ...base, neededOn, ...(flash ? { flash } : {}) };
      return primer;
    }
    case 'cleaner': {
      const solvent = get('solvent', (s) => s.solvent);
      const cleaner: Cleaner = { kind, ...base, ...(solvent ? { solvent } : {}), ...(flash ? { flash } : {}) };
      return cleaner;
    }
    case 'coating': {
      const coating: Coating = { kind, ...base };
      return coating;
    }
  }
}

/** For what a material neither says nor the library knows: points to the declaration, and is nobody's word but custom's. */
function unsaid(entry: Entry<MaterialDeclaration>): Origin {
  return { file: entry.file, at: entry.declaration.nameAt, kind: 'common practice', source: 'common practice' };
}

export function resolveSurface(
  entry: Entry<SurfaceDeclaration>,
  baseOf: (e: Entry<SurfaceDeclaration>) => Entry<SurfaceDeclaration> | undefined,
): Surface {
  const { lines } = linesThatHold(chainOf(entry, baseOf).chain, () => true);
  let group: SurfaceGroup = 'unknown';
  let life: Surface['life'];
  let caution: Surface['caution'];
  for (const { statement, file } of lines as readonly Line<SurfaceDeclaration['statements'][number]>[]) {
    if (statement.word === 'group') group = statement.group;
    else if (statement.word === 'life') life = stated(statement.life, file, statement);
    else caution = stated(statement.note, file, statement);
  }
  return {
    name: canonical(entry.declaration.name),
    origin: originOf(entry.file, entry.declaration.nameAt),
    group,
    ...(life ? { life } : {}),
    ...(caution ? { caution } : {}),
  };
}
