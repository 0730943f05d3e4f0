import { describe, expect, it } from 'vitest';
import type { EstimatePaper } from '../../language/documents/papers.ts';
import { fleet, paper, papers, papersOf, papersOfText, single, turned } from './examples.ts';

const names = ['Brook', 'Cairn', 'Dell', 'Fell', 'Glen', 'Heath', 'Highmeadow', 'Lough', 'Moor', 'Wren'];
const ends = ['estimate.md', 'estimate.csv', 'estimate.json', 'schedule.md', 'schedule.ics', 'schedule.json'];

/** JSON without the places in files, which are the only thing that the order of declarations may change. */
const withoutPlaces = (name: string, text: string): unknown =>
  name.endsWith('.json') ? JSON.parse(text, (key, value) => (key === 'at' ? undefined : value)) : text;

describe('what is written', () => {
  it('is six papers for each rig and each fleet', () => {
    expect([...papers.keys()].sort()).toEqual(names.flatMap((name) => ends.map((end) => `${name}.${end}`)).sort());
  });

  it('has the same bytes on a second run, whatever the order in which files are seen', () => {
    for (const texts of [single, fleet]) {
      const again = papersOf(Object.fromEntries(Object.entries(texts).reverse()));
      for (const [name, text] of again) expect(text, name).toBe(papers.get(name));
    }
  });

  it('is the same whatever the order of the declarations in a file', () => {
    let moved = 0;
    for (const texts of [single, fleet]) {
      const other = Object.fromEntries(Object.entries(texts).map(([path, text]) => [path, turned(text)]));
      moved += Object.keys(texts).filter((path) => texts[path] !== other[path]).length;
      for (const [name, text] of papersOf(other))
        expect(withoutPlaces(name, text), name).toEqual(withoutPlaces(name, paper(name)));
    }
    expect(moved).toBeGreaterThanOrEqual(3);
  });

  it('names no folder of this machine', () => {
    const texts = Object.fromEntries(Object.entries(single).map(([path, text]) => [`elsewhere/rigs/${path}`, text]));
    for (const [name, text] of papersOf(texts)) {
      expect(text, name).not.toContain('elsewhere');
      expect(text, name).toBe(papers.get(name));
    }
  });
});

const overdue = `rig Late {
  roof 20 ft by 8 ft epdm
  cap rear
  cap front
  inspected 2025-06-01 {
    rear open
    rest sound
  }
}
`;

describe('work that is due and not planned', () => {
  const written = papersOfText(overdue);
  it('stands in the estimate, overdue work marked', () => {
    const markdown = paper('Late.estimate.md', written);
    expect(markdown).toContain('## Due, but not planned');
    expect(markdown).toMatch(/^\| 2025-\d\d-\d\d \(overdue\) \| follow up rear: open \|/m);
    expect(paper('Late.estimate.csv', written)).toMatch(/^Late,not planned,follow up rear: open,2025-/m);
    const { unplanned } = JSON.parse(paper('Late.estimate.json', written)) as EstimatePaper;
    expect(unplanned.every((due) => due.settledBy === undefined && due.status !== 'not-due')).toBe(true);
    expect(unplanned.length).toBeGreaterThan(1);
  });
  it('comes first in the schedule, with the days that it is over', () => {
    const [, , first] = paper('Late.schedule.md', written).split('## Falls due\n\n')[1]?.split('\n') ?? [];
    expect(first).toMatch(/^\| 2025-\d\d-\d\d \| overdue \d+ days \|/);
  });
  it('is gone once a plan settles it', () => {
    const planned = papersOfText(overdue.replace('  cap front\n', '  cap front\n  inspect before 2027-04-01\n'));
    const { unplanned } = JSON.parse(paper('Late.estimate.json', planned)) as EstimatePaper;
    expect(unplanned.map(({ kind }) => kind)).not.toContain('inspect');
  });
});

describe('a rig without plans', () => {
  it('has papers that say so', () => {
    const written = papersOfText(
      'rig Bare {\n  roof 20 ft by 8 ft epdm\n  cap rear\n  inspected 2026-10-01 {\n    rest sound\n  }\n}\n',
    );
    expect(paper('Bare.estimate.md', written)).toContain('Nothing is planned');
    expect(paper('Bare.schedule.md', written)).toContain('No work is planned.');
    expect(paper('Bare.schedule.md', written)).toContain('2027-04-01');
    // What is due in four months needs no plan yet.
    expect((JSON.parse(paper('Bare.estimate.json', written)) as EstimatePaper).unplanned).toEqual([]);
  });
});

describe('a fleet', () => {
  const highmeadow = JSON.parse(paper('Highmeadow.estimate.json')) as EstimatePaper;
  const rigs = names
    .filter((name) => name !== 'Wren' && name !== 'Highmeadow')
    .map((name) => JSON.parse(paper(`${name}.estimate.json`)) as EstimatePaper);

  it('comes to what its rigs come to', () => {
    const cents = rigs.map(({ estimates }) => Math.round(100 * Number(estimates[0]?.totals.total?.money.amount)));
    expect(highmeadow.sums).toHaveLength(1);
    expect(highmeadow.sums[0]?.rigs).toBe(8);
    expect(Math.round(100 * (highmeadow.sums[0]?.total.value as number))).toBe(cents.reduce((a, b) => a + b, 0));
    expect(highmeadow.unsummed).toEqual([]);
  });

  it('buys what its rigs buy', () => {
    const bought = (all: readonly EstimatePaper[]) => {
      const out = new Map<string, number>();
      for (const { estimates } of all)
        for (const { material, buy } of estimates.flatMap(({ purchases }) => purchases))
          for (const { what, count } of buy)
            out.set(`${material} ${what}`, (out.get(`${material} ${what}`) ?? 0) + count);
      return out;
    };
    const shopping = new Map(
      highmeadow.shopping.map(({ material, what, count }) => [`${material} ${what}`, count.value]),
    );
    expect(shopping).toEqual(bought(rigs));
  });

  it('counts each thing as often as each rig buys it', () => {
    const rig = (name: string) =>
      `tape Strip${name} { width 4 in  roll 25 ft at 30 USD  bonds-to epdm }\nrig ${name} {\n  roof 20 ft by 8 ft epdm\n  edge curbside wide 1 1/2 in\n  edge roadside wide 1 1/2 in\n  tape curbside, roadside with Strip${name}\n}\n`;
    const two = papersOf({
      'one.rig': rig('One'),
      'two.rig': rig('Two').replaceAll('StripTwo', 'StripOne'),
      'yard/both.rig': 'fleet Both {\n  rigs "../*.rig"\n}\n',
    });
    const { shopping } = JSON.parse(paper('Both.estimate.json', two)) as EstimatePaper;
    expect(shopping.map(({ what, count, cost }) => [what, count.value, cost?.text])).toEqual([
      ['roll of 25 ft', 4, '120.00 USD'],
    ]);
  });

  it('says why two currencies have no one sum', () => {
    const rig = (name: string, currency: string) =>
      `policy ${currency} { currency ${currency}  labour 40 ${currency} per h }\nrig ${name} under ${currency} {\n  roof 6 m by 2 m epdm\n  cap rear\n  inspect before 2027-04-01\n}\n`;
    const two = papersOf({
      'one.rig': rig('One', 'EUR'),
      'two.rig': rig('Two', 'USD'),
      'yard/both.rig': 'fleet Both {\n  rigs "../*.rig"\n}\n',
    });
    const both = JSON.parse(paper('Both.estimate.json', two)) as EstimatePaper;
    expect(both.sums.map(({ currency }) => currency)).toEqual(['EUR', 'USD']);
    expect(paper('Both.estimate.md', two)).toContain('EUR and USD: no rate of exchange is known');
  });
});
