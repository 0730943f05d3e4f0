import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { draftOver } from '../../language/authoring/draft.ts';
import { csvOf } from '../../language/documents/csv.ts';
import { type ImportOptions, importTable } from '../../language/tables/import.ts';
import { columnsOf, type Said, type TableKind, tableKinds } from '../../language/tables/kinds.ts';
import { rowsOf } from '../../language/tables/said.ts';
import { check, filesOf, projectOf, readFolder, today } from '../project/workspace.ts';

type Texts = Readonly<Record<string, string>>;
const dates = { asOf: today, today };
const rigFiles = (texts: Texts) => Object.keys(texts).filter((path) => path.endsWith('.rig'));

function imported(kind: TableKind, csv: string, texts: Texts = {}, options: Partial<ImportOptions> = {}) {
  const draft = draftOver(filesOf(texts), dates);
  const { problems, added, there } = importTable(kind, csv, draft, {
    files: rigFiles(texts),
    into: '',
    use: () => [],
    ...options,
  });
  const changes = draft.changes();
  const after: Texts = { ...texts, ...Object.fromEntries(changes.map((change) => [change.path, change.after])) };
  return { problems, added, there, changes, after };
}
const exported = (kind: TableKind, texts: Texts): readonly Said[] => rowsOf(kind, projectOf(texts), rigFiles(texts));
const tableOf = (kind: TableKind, rows: readonly Said[]) => csvOf(columnsOf[kind], rows);
const said = (problems: ReturnType<typeof imported>['problems']) =>
  problems.map(({ line, kind, message }) => `${line} ${kind} ${message}`);

const heron = `rig Heron {
  unit         "1042"
  roof         28 ft by 8 ft 2 in  epdm
  edge         curbside, roadside
  cap          front       5 in wide
  opening      bath-vent   16 in by 16 in      at 18 ft, 2 ft  of abs    # measured
  sealed    2024-06-01 all with GenericSolventLap
  inspected 2026-04-18 by "R. Adeyemi" {
    curbside    hairline  from 6 ft to 9 ft
    bath-vent   cracked   note "under \\"it\\""
    rest        sound
  }
}
`;

describe('a table of rigs', () => {
  test('makes a file for each new rig, and nothing when it is read again', () => {
    const csv = 'Rig,Unit,Length,Width,Membrane,Built\nTeal,0042,18 ft,8 ft,epdm,2016-03\nTern,7,,,,\n';
    const first = imported('rigs', csv, {}, { into: 'rigs' });
    expect(first.problems).toEqual([]);
    expect(first.after['rigs/teal.rig']).toBe(
      'rig Teal {\n  unit         "0042"\n  built        2016-03\n  roof         18 ft by 8 ft  epdm\n}\n',
    );
    const again = imported('rigs', csv, first.after, { into: 'rigs' });
    expect([again.added, again.there, again.changes, again.problems]).toEqual([0, 2, [], []]);
  });

  test('adds what a rig does not say yet, and tells what differs', () => {
    const { after, problems } = imported(
      'rigs',
      'rig,unit,length,width,acquired\nHeron,1043,28 ft,8 ft 2 in,2021-04-10\n',
      { 'heron.rig': heron },
    );
    expect(after['heron.rig']).toContain('acquired     2021-04-10\n');
    expect(said(problems)).toEqual(['2 differs unit: `1043` here, and there it is `1042`; that is left as it is.']);
  });

  test.each([
    ['rig,length,width\nTeal,18,8 ft\n', '2 error length: '],
    ['rig,length\nTeal,18 ft\n', '2 error width: The size of a roof'],
    ['rig,like\nTeal,Alder\n', '2 error like: '],
    ['rig,unit\nTeal 2,7\n', '2 error rig: '],
    ['rig,built\nTeal,2016-13\n', '2 error built: '],
    ['rig,built\nTeal,2016 }\n', '2 error built: '],
    ['rig,length,width,membrane\nTeal,18 ft,8 ft,epdn\n', '2 error membrane: '],
  ])('says at the cell what is wrong: %j', (csv, message) => {
    const { problems, changes } = imported('rigs', csv);
    expect(said(problems)[0]).toContain(message);
    expect(changes).toEqual([]);
  });

  test('lets new rigs use what they need', () => {
    const texts = { 'models.rig': 'model Alder { roof 18 ft by 8 ft epdm }\n' };
    const { after, problems } = imported('rigs', 'rig,like\nTeal,Alder\n', texts, {
      into: 'rigs',
      use: () => ['../models.rig'],
    });
    expect(problems).toEqual([]);
    expect(after['rigs/teal.rig']).toBe('use "../models.rig"\n\nrig Teal like Alder\n');
  });
});

describe('a table of seams', () => {
  const csv =
    'rig,kind,name,size,at,of,sealed,sealant\nHeron,opening,skylight,32 in by 24 in,"23 ft, 5 ft",abs,2026-04-20,GenericSolventLap\nHeron,opening,bath-vent,16 in by 16 in,"18 ft, 2 ft",abs,,\n';

  test('describes what is not there, behind what is, and records the work', () => {
    const { after, added, there, problems } = imported('seams', csv, { 'heron.rig': heron });
    expect([added, there, problems]).toEqual([1, 1, []]);
    expect(after['heron.rig']).toMatch(
      /# measured\n {2}opening {6}skylight {4}32 in by 24 in {6}at 23 ft, 5 ft {2}of abs\n/,
    );
    expect(after['heron.rig']).toContain('sealed    2026-04-20 skylight with GenericSolventLap');
    expect(imported('seams', csv, after)).toMatchObject({ added: 0, there: 2, changes: [], problems: [] });
  });

  test.each([
    ['Hern,edge,curbside,,', '2 error rig: No rig is called `Hern`. Did you mean `Heron`?'],
    ['Heron,egde,curbside,,', '2 error kind: `egde` is none of'],
    ['Heron,opening,hatch,16,', '2 error size: '],
    [
      'Heron,opening,bath-vent,14 in by 14 in,',
      '2 differs size: `14 in by 14 in` here, and there it is `16 in by 16 in`',
    ],
    ['Heron,cap,rear,,2026-05-01', '2 error sealant: The material is missing'],
  ])('says at the cell what is wrong: %s', (row, message) => {
    const { problems, changes } = imported('seams', `rig,kind,name,size,sealed\n${row}\n`, { 'heron.rig': heron });
    expect(said(problems)[0]).toContain(message);
    expect(changes).toEqual([]);
  });

  test('stands behind what is said of a rig that has no lines of the roof', () => {
    const texts = {
      'a.rig':
        'model Alder { roof 18 ft by 8 ft epdm }\nrig Teal like Alder {\n  unit         "7"\n\n  inspect  before 2027-01-01\n}\n',
    };
    const { after } = imported('seams', 'rig,kind,name,size\nTeal,joint,rail,9 ft\n', texts);
    expect(after['a.rig']).toMatch(/unit {9}"7"\n {2}joint {8}rail {8}9 ft\n\n {2}inspect/);
  });

  test('leaves out the one row that brings an error, and writes the others', () => {
    const rows = 'Heron,cap,rear,2026-05-01,GenericSolventLap\nHeron,opening,hatch,2026-05-01,Gum\n';
    const { problems, after } = imported('seams', `rig,kind,name,sealed,sealant\n${rows}`, { 'heron.rig': heron });
    expect(said(problems)).toEqual([expect.stringContaining('3 error sealant: ')]);
    expect(after['heron.rig']).toContain('sealed    2026-05-01 rear with GenericSolventLap');
    expect(after['heron.rig']).not.toContain('Gum');
  });
});

describe('a table of inspections', () => {
  const csv =
    'rig;date;by;item;condition;defect;note\nHeron;2026-09-01;R. Adeyemi;curbside;cracked;torn;"at ""6 ft"""\nHeron;2026-09-01;R. Adeyemi;rest;sound;;\n';

  test('makes one block of the rows of one inspection', () => {
    const { after, problems, added } = imported('inspections', csv, { 'heron.rig': heron });
    expect([added, problems]).toEqual([2, []]);
    expect(after['heron.rig']).toContain(
      '\n  inspected 2026-09-01 by "R. Adeyemi" {\n    curbside    cracked torn  note "at \\"6 ft\\""\n    rest        sound\n  }\n',
    );
    expect(imported('inspections', csv, after)).toMatchObject({ added: 0, there: 2, changes: [], problems: [] });
  });

  test('is left out whole where one of its rows is wrong', () => {
    const { problems, changes } = imported('inspections', csv.replace('cracked', 'craked'), { 'heron.rig': heron });
    expect(changes).toEqual([]);
    expect(said(problems)).toEqual([
      expect.stringContaining('2 error condition: `craked` is no condition; did you mean `cracked`?'),
      '3 error item: This inspection is left out whole, because of row 2.',
    ]);
  });

  test('leaves an inspection that is there, and tells what differs', () => {
    const row =
      'rig,date,by,item,stretch,condition\nHeron,2026-04-18,R. Adeyemi,curbside,6 ft to 9 ft,cracked\nHeron,2026-04-18,R. Adeyemi,roadside,,sound\n';
    const { problems, changes } = imported('inspections', row, { 'heron.rig': heron });
    expect(changes).toEqual([]);
    expect(said(problems)).toEqual([
      '2 differs condition: `cracked` here, and there it is `hairline`; that is left as it is.',
      expect.stringContaining('3 differs item: `roadside` here, and nothing is said of it there'),
    ]);
  });

  test.each([
    ['Heron,2026-02-30,curbside,sound', '2 error date: '],
    ['Heron,2027-02-03,curbside,sound', '2 error date: '],
    ['Heron,2026-09-01,curbsid,sound', '2 error item: Heron has no seam or item `curbsid`. Did you mean `curbside`?'],
    ['Heron,2026-09-01,,sound', '2 error item: '],
    ['Heron,2026-09-01,curbside,', '2 error condition: What was seen is missing'],
  ])('says at the cell what is wrong: %s', (row, message) => {
    const { problems } = imported('inspections', `rig,date,item,condition\n${row}\n`, { 'heron.rig': heron });
    expect(said(problems)[0]).toContain(message);
  });
});

/** All three tables of a workspace, written and read into an empty one. */
function carriedOver(texts: Texts, use: readonly string[] = [], kept: Texts = {}) {
  let after: Texts = kept;
  for (const kind of tableKinds) {
    const result = imported(kind, tableOf(kind, exported(kind, texts)), after, { use: () => use });
    expect(said(result.problems)).toEqual([]);
    after = result.after;
  }
  for (const kind of tableKinds) expect(exported(kind, after)).toEqual(exported(kind, texts));
  return after;
}

describe('what is written as tables and read again', () => {
  test('is the same', () => {
    const after = carriedOver({ 'heron.rig': heron });
    expect(check(after, 'heron.rig').filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  test.each(['examples/single', 'examples/fleet', 'tests/worked-example'])('is the same for %s', (folder) => {
    const texts = readFolder(folder);
    const isShared = (path: string) => /policy|materials|models/.test(path);
    const shared = Object.fromEntries(Object.entries(texts).filter(([path]) => isShared(path)));
    const uses = Object.keys(shared);
    carriedOver(texts, uses, shared);
  });

  test('is the same whatever its texts hold', () => {
    const word = fc.string({
      unit: fc.constantFrom('a', 'Ü', '船', ' ', '"', '\\', ',', ';', "'", '=', '-', '#', '{', '7'),
      minLength: 1,
      maxLength: 12,
    });
    const text = word.map((one) => one.replace(/\s+/g, ' ').trim()).filter((one) => one !== '');
    const written = (one: string) => one.replace(/["\\]/g, '\\$&');
    const condition = fc.constantFrom('sound', 'hairline', 'cracked', 'not-seen', 'lifting wet');
    const rig = fc.record({ unit: text, by: text, note: text, condition, wide: fc.integer({ min: 1, max: 6 }) });
    fc.assert(
      fc.property(fc.array(rig, { minLength: 1, maxLength: 3 }), (rigs) => {
        const texts = Object.fromEntries(
          rigs.map(({ unit, by, note, condition, wide }, i) => [
            `file-${9 - i}.rig`,
            `rig Rig-${i} {\n  roof 18 ft by 8 ft epdm\n  unit "${written(unit)}"\n  cap front wide ${wide} in note "${written(note)}"\n  inspected 2026-04-18 by "${written(by)}" {\n    front ${condition} note "${written(note)}"\n  }\n}\n`,
          ]),
        );
        carriedOver(texts);
      }),
      { numRuns: 30 },
    );
  });
});
