import { describe, expect, it } from 'vitest';
import { fleet, single } from './examples.ts';
import { attribute, filled, html, rigOf, rigWith, sheet, sheetsOfFolder, sheetsOfRig, textOf } from './sheets.ts';

const owner = sheetsOfFolder(single);
const yard = sheetsOfFolder(fleet);
const pages = [...owner, ...yard].filter(([name]) => name.endsWith('.html'));
const wren = html(sheet('Wren.worksheet.html', owner));

const tagged = (all: ReturnType<typeof html>['all'], tag: string) => all.filter(({ tagName }) => tagName === tag);
const classed = (all: ReturnType<typeof html>['all'], name: string) =>
  all.filter((one) => attribute(one, 'class')?.split(' ').includes(name));

const piecesIn = (plan: ReturnType<typeof html>['all'][number]): readonly string[] =>
  plan.childNodes.flatMap((node) =>
    'tagName' in node ? [...[attribute(node, 'data-piece') ?? []].flat(), ...piecesIn(node)] : [],
  );

describe('every sheet', () => {
  it('is a page without errors of form, of one heading and headings in order', () => {
    expect(pages.length).toBeGreaterThan(20);
    for (const [name, text] of pages) {
      const { all, errors } = html(text);
      expect(errors, name).toEqual([]);
      expect(tagged(all, 'h1'), name).toHaveLength(1);
      const levels = all.flatMap(({ tagName }) => (/^h\d$/.test(tagName) ? [Number(tagName[1])] : []));
      for (const [i, level] of levels.entries()) expect(level - (levels[i - 1] ?? 0), name).toBeLessThanOrEqual(1);
      expect(attribute(tagged(all, 'html')[0]!, 'lang')).toBe('en');
      expect(attribute(tagged(all, 'meta')[0]!, 'charset')).toBe('utf-8');
    }
  });

  it('runs nothing, fetches nothing and has one style', () => {
    for (const [name, text] of pages) {
      const { all } = html(text);
      for (const tag of ['script', 'link', 'iframe', 'object', 'embed', 'base', 'form'])
        expect(tagged(all, tag), name).toEqual([]);
      expect(tagged(all, 'style'), name).toHaveLength(1);
      const policy = tagged(all, 'meta').find((one) => attribute(one, 'http-equiv') === 'Content-Security-Policy');
      expect(attribute(policy!, 'content')).toBe("default-src 'none'; style-src 'unsafe-inline'; img-src data:");
      for (const { attrs } of all)
        for (const { name: attr } of attrs) expect(attr).not.toMatch(/^(on.*|src|href|style|srcdoc)$/);
    }
  });

  it('has tables with heads and names that are not used twice', () => {
    for (const [name, text] of pages) {
      const { all } = html(text);
      for (const head of tagged(all, 'th')) expect(attribute(head, 'scope'), name).toMatch(/^(col|row)$/);
      for (const row of tagged(all, 'tr'))
        expect(row.childNodes.filter((n) => 'tagName' in n && n.tagName === 'th').length).toBeGreaterThan(0);
      const ids = all.flatMap((one) => attribute(one, 'id') ?? []);
      expect(new Set(ids).size, name).toBe(ids.length);
    }
  });

  it('has a name for each box to tick and each blank', () => {
    for (const [name, text] of pages) {
      const { all } = html(text);
      const marks = [...classed(all, 'tick'), ...classed(all, 'blank'), ...classed(all, 'room')];
      expect(marks.length, name).toBeGreaterThan(3);
      for (const mark of marks)
        expect(attribute(mark, 'aria-label'), name).toMatch(/^(to tick|to fill in|room to write): ./);
    }
  });

  it('is the same each time', () => {
    expect(sheetsOfFolder(single)).toEqual(owner);
  });
});

describe('the work sheet', () => {
  it('has a block for each visit with at most seven cautions, falls first, and who comes before them', () => {
    const visits = tagged(wren.all, 'h2').map(textOf);
    expect(visits).toEqual(['2027-04-04: inspection', '2027-04-15 to 2027-04-16: wash, stripping, taping, sealing']);
    const boxes = classed(wren.all, 'cautions');
    expect(boxes).toHaveLength(2);
    const cautions = boxes.map(textOf);
    for (const text of cautions) {
      expect(text).toMatch(/Falls kill/);
      expect(text).toMatch(/Labels, the maker's manual, local codes and licensed trades come first/);
    }
    // A look brings no solvents; the work does.
    expect(cautions[0]).not.toMatch(/Solvents burn/);
    expect(cautions[1]).toMatch(/Solvents burn/);
    for (const [, text] of pages) {
      for (const box of classed(html(text).all, 'cautions')) {
        const list = box.childNodes.find((node) => 'tagName' in node && node.tagName === 'ol');
        expect(list && 'childNodes' in list ? list.childNodes.length : 0).toBeLessThanOrEqual(7);
      }
    }
  });

  it('cuts every piece of the estimate once, in the order of their numbers, and says from which roll', () => {
    const cut = tagged(wren.all, 'table').find((one) => textOf(one).startsWith('In the order in which they are laid'))!;
    const rows = tagged(wren.all, 'tr').filter((row) => row.parentNode && textOf(row).includes('SeamStrip4: '));
    expect(rows.map((row) => Number(textOf(row).trim()[0]))).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(textOf(cut)).toContain('19 ft');
    expect(textOf(cut)).toContain('28 ft on hand');
  });

  it('names in each laying step its pieces, and how they lap', () => {
    const steps = classed(wren.all, 'steps').flatMap((one) =>
      one.childNodes.flatMap((n) => ('tagName' in n ? [n] : [])),
    );
    const texts = steps.map(textOf);
    const front = texts.find((one) => one.startsWith('lay tape on front'))!;
    expect(front).toMatch(/piece 7, rear strip, 8 ft.*piece 8, forward strip, 8 ft/);
    expect(texts.filter((one) => one.startsWith('lay tape')).every((one) => one.includes('forward over rear'))).toBe(
      true,
    );
    expect(texts.findIndex((one) => one.startsWith('lay tape on rear'))).toBeLessThan(texts.indexOf(front));
    expect(texts.some((one) => /Roll across first.*then along/.test(one))).toBe(true);
    expect(classed(wren.all, 'tick').length).toBeGreaterThan(steps.length);
  });

  it('has limits and clocks with the figures of the materials', () => {
    const text = textOf(tagged(wren.all, 'body')[0]!);
    expect(text).toContain('Air and surface from 50 F (LevelLap) to 95 F (LevelLap).');
    expect(text).toContain('Surface at least 5 F (3 C) above the dew point.');
    expect(text).toMatch(/LevelLap may be driven.*gunned : \+ 12 h = :.*gunned : \+ 24 h = :/);
    expect(text).toMatch(/LevelLap may be covered with tape.*\+ 30 days =.*\+ 60 days =/);
  });

  it('says by when it is due, and when that is over', () => {
    expect(textOf(tagged(wren.all, 'body')[0]!)).toContain('Due by 2027-04-10.');
    const late = rigOf(`
sealant Lap { family solvent-lap cartridge 10.3 fl-oz }
rig Late {
  roof 20 ft by 8 ft epdm
  opening hatch 14 in by 14 in at 10 ft, 4 ft
  inspected 2026-04-01 { hatch cracked }
  strip hatch after 2027-05-01
  seal hatch with Lap after 2027-05-01
}
`);
    expect(sheet('Late.worksheet.html', sheetsOfRig(late))).toContain('Late: it was due by 2026-05-01.');
  });

  it('takes along whole cartridges with the spare', () => {
    // 19.2 fl-oz with 5 % are two cartridges of 10.3 fl-oz.
    expect(textOf(tagged(wren.all, 'body')[0]!)).toContain(
      'LevelLap, 19.2 fl-oz with the spare of 5 %: 2 cartridges of 10.3 fl-oz',
    );
  });

  it('ends with lines that the language reads once they are filled in', () => {
    const lines = tagged(wren.all, 'pre').flatMap((one) => textOf(one).split('\n'));
    expect(lines).toHaveLength(7);
    expect(
      lines.some((one) =>
        /^taped ____-__-__ rear with WipeAlcohol used ____ fl-oz with SeamStrip4 used ____ ft/.test(one),
      ),
    ).toBe(true);
    const { events, unread } = rigWith(lines.map(filled).join('\n'));
    const read = events.filter(({ first }) => first === '2026-11-20');
    expect(read.map(({ record }) => record.word).sort()).toEqual(lines.map((one) => one.split(' ')[0]).sort());
    expect(unread).toEqual({ all: false, items: new Set() });
    const rear = read.find(({ record, places }) => record.word === 'taped' && places[0]?.item === 'rear')?.record;
    expect(rear).toMatchObject({ lot: 'K1', took: { minutes: 120 } });
  });

  it('of a fleet cuts by the lists of all rigs and names only its own pieces', () => {
    const name = [...yard.keys()].find(
      (one) => one.endsWith('.Highmeadow.worksheet.html') && sheet(one, yard).includes('class="pieces"'),
    );
    const { all } = html(sheet(name as string, yard));
    const rows = tagged(all, 'tr')
      .map(textOf)
      .filter((row) => /RidgeTape100: /.test(row));
    expect(rows.length).toBeGreaterThan(0);
    const numbers = rows.map((row) => Number.parseInt(row, 10));
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
  });

  it('gives each plan to the visit that does it, and to no other', () => {
    const twice = rigOf(`
tape Four { width 4 in  roll 50 ft  end-lap 2 in  side-lap 1 in }
rig Twice {
  roof 20 ft by 8 ft epdm
  edge curbside, roadside
  wash after 2027-05-01 before 2027-05-05
  tape curbside from 0 ft to 10 ft with Four after 2027-05-01 before 2027-05-05
  wash after 2027-07-01
  tape curbside from 10 ft to 20 ft with Four after 2027-07-01
}
`);
    const { all } = html(sheet('Twice.worksheet.html', sheetsOfRig(twice)));
    const lines = tagged(all, 'pre').map((one) => textOf(one).split('\n'));
    expect(lines.map((one) => one.map((line) => line.split(' with')[0]))).toEqual([
      ['washed ____-__-__ by "____" took ____ h', 'taped ____-__-__ curbside from 0 ft to 10 ft'],
      ['washed ____-__-__ by "____" took ____ h', 'taped ____-__-__ curbside from 10 ft to 20 ft'],
    ]);
    const numbers = all.filter(({ tagName }) => tagName === 'svg').map((plan) => piecesIn(plan));
    expect(numbers).toEqual([['1'], ['2']]);
  });

  it('says so where nothing is planned', () => {
    const page = sheet('Bare.worksheet.html', sheetsOfRig(rigOf('rig Bare { roof 20 ft by 8 ft epdm edge curbside }')));
    expect(page).toContain('No work is planned');
  });
});

describe('hostile text', () => {
  const evil = "</script><script>alert(1)</script><img src=x onerror=alert(1)> & 'single' `tick` =1+1 🙂 \u05d0\u05d1";
  const long = 'x'.repeat(10_000);
  const view = rigOf(`
sealant Lap { family solvent-lap cartridge 10.3 fl-oz }
rig Evil {
  unit "${evil}"
  roof 20 ft by 8 ft epdm
  edge curbside, roadside
  opening hatch 14 in by 14 in at 10 ft, 4 ft
  found 2026-01-01 all with Lap
  inspected 2026-04-01 by "${evil}" {
    hatch lifting note "${evil}${long}" moisture 15 % inside "${evil}\u202etrap"
    rest sound
  }
  strip hatch after 2027-05-01 because "${evil}"
  seal hatch with Lap after 2027-05-01 because "${evil}${long}"
}
`);
  const out = [...sheetsOfRig(view)].filter(([name]) => name.endsWith('.html'));

  it('stays text and stays readable', () => {
    expect(out).toHaveLength(2);
    for (const [name, text] of out) {
      const { all, errors } = html(text);
      expect(errors, name).toEqual([]);
      for (const tag of ['script', 'img']) expect(tagged(all, tag), name).toEqual([]);
      expect(textOf(tagged(all, 'body')[0]!)).toContain(evil);
      expect(text).not.toContain('\u202e');
    }
    expect(out.map(([, text]) => text).join('')).toContain(long);
  });
});
