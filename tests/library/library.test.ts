import { describe, expect, it } from 'vitest';
import { libraryFiles, libraryVersion, surfaceLeftBy } from '../../language/library/index.ts';
import { bandKinds, canonical, families, solvents, tasks } from '../../language/statements/words.ts';
import { projectOf } from '../project/workspace.ts';
import { declarations, files, gradesOf, kindOf, lines, named, said, statementsOf } from './text.ts';

// The form of the built-in library: that it is whole, honest about its figures, and asks nobody for a price.

describe('the text of the library', () => {
  it('is read without a problem', () => {
    const problems = files.flatMap(({ path, text, records }) =>
      records.problems.map((p) => `${path}:${text.slice(0, p.at[0]).split('\n').length} ${p.rule}: ${p.message}`),
    );
    expect(problems).toEqual([]);
    expect(declarations.length).toBeGreaterThan(40);
    expect(libraryVersion).toMatch(/^\d+$/);
  });

  it('stands under paths of its own, each once', () => {
    const paths = libraryFiles.map(({ path }) => path);
    expect(new Set(paths).size).toBe(paths.length);
    for (const path of paths) expect(path).toMatch(/^library\/[a-z]+\.rig$/);
  });

  it('gives each name once', () => {
    const names = declarations.map(({ kind, name }) => (kind === 'surface' ? `surface ${name}` : name));
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
  });

  it('says of every line how far it can be trusted, a published one with its source', () => {
    const bad = lines.filter(
      ({ said: { source } }) => !/^(published: \S.{8,}|common practice|from memory)$/.test(source ?? ''),
    );
    expect(bad.map(({ where, said: { source } }) => `${where}: ${source}`)).toEqual([]);
    expect(new Set(lines.map(({ said: { source } }) => kindOf(source)))).toEqual(
      new Set(['published', 'common practice', 'from memory']),
    );
  });

  it('holds no price, no wage, no tax and no currency', () => {
    const money = files.flatMap(({ path, text }) =>
      text
        .split('\n')
        .flatMap((line, i) =>
          /\b(USD|EUR|GBP|CAD|AUD|labour|labor|tax|currency)\s+\d|\bat \d+\.\d\d\b/.test(line)
            ? [`${path}:${i + 1}`]
            : [],
        ),
    );
    expect(money).toEqual([]);
    const priced = lines.filter(
      ({ said: line }) => 'price' in line || ['labour', 'tax', 'currency'].includes(line.word),
    );
    expect(priced.map(({ where }) => where)).toEqual([]);
  });

  it('documents every material and the policy', () => {
    const bare = declarations.filter(({ kind, doc }) => kind !== 'surface' && doc === undefined);
    expect(bare.map(({ name }) => name)).toEqual([]);
  });
});

describe('what the library covers', () => {
  const surfaces = new Set(named('surface').map(canonical));

  it('declares every surface that it names', () => {
    const unknown = lines.flatMap(({ said: line, where }) =>
      [...((line.surfaces ?? []) as readonly { name: string }[]), ...((line.on ?? []) as readonly { name: string }[])]
        .filter(({ name }) => !surfaces.has(canonical(name)))
        .map(({ name }) => `${where} ${name}`),
    );
    expect(unknown).toEqual([]);
  });

  it('has the surfaces of the trade and of the worked example', () => {
    const wanted =
      'epdm tpo pvc fibreglass aluminium painted-steel abs polycarbonate acrylic pp pe wood solvent-lap silicone acrylic-coating urethane-coating silicone-coating tape';
    for (const name of wanted.split(' ')) expect(surfaces, name).toContain(name);
  });

  it('gives every surface a group', () => {
    for (const declaration of declarations) {
      if (declaration.kind !== 'surface') continue;
      const base = declaration.like === undefined ? [] : statementsOf(declaration.like.name);
      const words = [...statementsOf(declaration.name), ...base].map((statement) => statement.word);
      expect(words, declaration.name).toContain('group');
    }
  });

  it('has one sealant for every family and one cleaner for every solvent', () => {
    expect(
      named('sealant')
        .map((name) => said(name, 'family').family)
        .sort(),
    ).toEqual([...families].sort());
    expect(
      named('cleaner')
        .map((name) => said(name, 'solvent').solvent)
        .sort(),
    ).toEqual([...solvents].sort());
  });

  it('knows the bead of every family, every coating and tape as a surface', () => {
    const left = [
      ...families.map((family) => surfaceLeftBy('sealant', family)),
      surfaceLeftBy('sealant'),
      surfaceLeftBy('tape', 'butyl'),
      ...named('coating').map((name) => surfaceLeftBy('coating', said(name, 'family').family as 'acrylic')),
    ];
    for (const surface of left) expect(surfaces).toContain(surface);
    expect(surfaceLeftBy('sealant', 'acrylic')).not.toBe('acrylic');
    expect(surfaceLeftBy('primer')).toBeUndefined();
    expect(surfaceLeftBy('cleaner')).toBeUndefined();
  });

  it('says of every sealant and of tape whether they may lie on each bead, skin and flange', () => {
    const skins = [...surfaces].filter((name) => !['wood', 'tape'].includes(name));
    for (const name of [...named('sealant'), ...named('tape')]) {
      const grades = gradesOf(name);
      expect(
        skins.filter((skin) => !grades.has(skin)),
        name,
      ).toEqual([]);
    }
  });

  it('lets nothing but silicone lie on silicone', () => {
    for (const name of [...named('sealant'), ...named('tape'), ...named('coating')]) {
      for (const under of ['silicone', 'acetoxy-silicone', 'silicone-coating']) {
        const silicone = /Silicone/.test(name);
        expect(gradesOf(name).get(under)?.startsWith('N'), `${name} on ${under}`).toBe(!silicone);
      }
    }
  });

  it('has a band for every kind of seam and a rate for every task', () => {
    const policy = statementsOf('Standard');
    expect(policy.filter((s) => s.word === 'band').map((s) => s.of)).toEqual([...bandKinds]);
    expect(
      policy
        .filter((s) => s.word === 'rate')
        .map((s) => s.task)
        .sort(),
    ).toEqual([...tasks].sort());
  });

  it('puts the three points of every rate and life in order', () => {
    for (const { said: line, where } of lines) {
      const points = (line.word === 'rate' ? line.value : line.word === 'life' ? line.life : undefined) as
        | { least: Figure; likely: Figure; most: Figure }
        | undefined;
      if (!points) continue;
      expect(amount(points.least), where).toBeLessThan(amount(points.likely));
      expect(amount(points.likely), where).toBeLessThan(amount(points.most));
    }
  });
});

interface Figure {
  readonly nmPerH?: number;
  readonly mm2PerH?: number;
  readonly minutes?: number;
  readonly months?: number;
}
const amount = (figure: Figure) => figure.nmPerH ?? figure.mm2PerH ?? figure.minutes ?? figure.months ?? Number.NaN;

it('keeps every surface that a cleaner is safe on, in however many lines that stands', () => {
  const project = projectOf({ 'a.rig': 'rig A {\n}\n' });
  const alcohol = project.material('a.rig', 'GenericIsopropyl');
  expect(
    Object.entries(alcohol?.bonding ?? {})
      .flatMap(([on, { value }]) => (value === 'yes' ? [on] : []))
      .sort(),
  ).toEqual([
    'abs',
    'acrylic',
    'aluminium',
    'epdm',
    'fibreglass',
    'painted-steel',
    'pe',
    'polycarbonate',
    'pp',
    'pvc',
    'tpo',
  ]);
});
