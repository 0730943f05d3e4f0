import { describe, expect, it } from 'vitest';
import type { EstimatePaper, SchedulePaper } from '../../language/documents/papers.ts';
import { fleet, paper, papers, papersOf, papersOfText, single, turned } from './examples.ts';

const names = ['Brook', 'Cairn', 'Dell', 'Fell', 'Glen', 'Heath', 'Lough', 'Moor', 'Wren'];
const kinds = [
  'estimate.md',
  'estimate.csv',
  'estimate.json',
  'schedule.md',
  'schedule.csv',
  'schedule.ics',
  'schedule.json',
];
const ofFleet = ['late.md', 'late.csv', 'budget.md', 'budget.csv', 'summary.html'];
const rows = ['rigs', 'seams', 'dues', 'visits', 'budget'].map((kind) => `${kind}.jsonl`);
const sheets = ['worksheet.html', 'inspection.html'];

/** JSON without the places in files, which are the only thing that the order of declarations may change. */
const withoutPlaces = (name: string, text: string): unknown =>
  name.endsWith('.json') ? JSON.parse(text, (key, value) => (key === 'at' ? undefined : value)) : text;

describe('what is written', () => {
  it('is every paper for each rig; of a fleet sheets and schedules of the rigs that come soon, and its morning', () => {
    const ends = [...kinds, ...sheets, 'roof.svg', 'ways.svg', 'history.html'];
    for (const [asOf, until] of [
      ['2026-11-25', '2026-12-25'],
      ['2027-03-10', '2027-04-09'],
    ] as const) {
      const written = [...papersOf(single, { asOf, today: asOf }), ...papersOf(fleet, { asOf, today: asOf })];
      const plan = JSON.parse(paper('Highmeadow.schedule.json', new Map(written))) as SchedulePaper;
      const soon = plan.schedule.visits.flatMap(({ rig, days }) => ((days[0] as string) <= until ? [rig] : []));
      expect(soon.length, asOf).toBeGreaterThan(0);
      const incidents = written.map(([name]) => name).filter((name) => /\.incident-\d+\.html$/.test(name));
      const all = [
        ...incidents,
        'Highmeadow.morning.html',
        ...names.flatMap((name) => ends.map((end) => `${name}.${end}`)),
        ...[...kinds, ...ofFleet, ...rows].map((end) => `Highmeadow.${end}`),
        ...[...new Set(soon)].flatMap((rig) =>
          [...sheets, 'schedule.md', 'schedule.ics'].map((end) => `${rig}.Highmeadow.${end}`),
        ),
      ];
      expect(written.map(([name]) => name).sort(), asOf).toEqual(all.sort());
    }
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

  it('names the visits above or below, as they stand from each table of what falls due', () => {
    const texts = [...papers].flatMap(([name, text]) => (name.endsWith('.schedule.md') ? [text] : []));
    const sides = texts.map((text) => text.split('## Falls due later'));
    const near = sides.map(([before]) => before).join();
    const later = sides.map(([, after = '']) => after).join();
    expect([near.includes('visit below)'), near.includes('visit above)')]).toEqual([true, false]);
    expect([later.includes('visit below)'), later.includes('visit above)')]).toEqual([false, true]);
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

  it('buys for all rigs together, for no more than each for itself', () => {
    const needs = new Map<string, number>();
    const costs = new Map<string, number>();
    for (const { estimates } of rigs) {
      for (const { material, need, cost } of estimates.flatMap(({ purchases }) => purchases)) {
        needs.set(material, (needs.get(material) ?? 0) + need.value);
        costs.set(material, (costs.get(material) ?? 0) + (cost?.figure.value ?? 0));
      }
    }
    expect(highmeadow.together.map(({ material }) => material).sort()).toEqual([...needs.keys()].sort());
    for (const { material, purchase, apart, pooling, shelf } of highmeadow.together) {
      expect(purchase.need.value, material).toBeCloseTo(needs.get(material) as number, 6);
      if (!apart || !pooling || !purchase.cost) continue;
      expect(apart.value, material).toBeCloseTo(costs.get(material) as number, 6);
      expect(pooling.value, material).toBeGreaterThanOrEqual(0);
      expect(purchase.cost.figure.value + pooling.value + (shelf?.value ?? 0), material).toBeCloseTo(apart.value, 6);
    }
    expect(highmeadow.together.some(({ pooling }) => (pooling?.value ?? 0) > 0)).toBe(true);
  });

  it('cuts the rolls of several rigs together, and says whose piece is whose', () => {
    const rig = (name: string) =>
      `tape Strip { width 4 in  roll 25 ft at 30 USD  bonds-to epdm }\nrig ${name} {\n  roof 11 ft by 8 ft epdm\n  edge curbside wide 1 1/2 in\n  tape curbside with Strip\n}\n`;
    const two = papersOf({
      'one.rig': rig('One'),
      'two.rig': rig('Two'),
      'yard/both.rig': 'fleet Both {\n  rigs "../*.rig"\n}\n',
    });
    const { together } = JSON.parse(paper('Both.estimate.json', two)) as EstimatePaper;
    // Each edge takes 11 ft and two end laps of 2 in: 11 ft 4 in, two of them of one roll.
    expect(
      together.map(({ purchase, apart, pooling }) => [purchase.cost?.money.text, apart?.text, pooling?.text]),
    ).toEqual([['30.00 USD', '60.00 USD', '30.00 USD']]);
    expect(together[0]?.cutting?.stock.map(({ cuts }) => cuts.map(({ rig: whose, piece }) => [whose, piece]))).toEqual([
      [
        ['One', 1],
        ['Two', 1],
      ],
    ]);
    const markdown = paper('Both.estimate.md', two);
    expect(markdown).toContain('each for itself 60.00 USD; 30.00 USD is saved by buying together (50.0 %)');
    expect(markdown).toContain('One 1 (curbside, strip) 11 ft 4 in; Two 1 (curbside, strip) 11 ft 4 in');
  });

  it('keeps apart what is sold at two prices under one name, and cuts the shelf of the fleet first', () => {
    const rig = (name: string, price: string) =>
      `tape Strip { width 4 in  roll 25 ft at ${price} USD  bonds-to epdm }\nrig ${name} {\n  roof 11 ft by 8 ft epdm\n  edge curbside wide 1 1/2 in\n  tape curbside with Strip\n}\n`;
    const two = papersOf({
      'one.rig': rig('One', '30'),
      'two.rig': rig('Two', '31'),
      'three.rig': rig('Three', '30'),
      'yard/both.rig': 'use "../one.rig"\nfleet Both {\n  rigs "../*.rig"\n  on-hand Strip 12 ft\n}\n',
    });
    const { together } = JSON.parse(paper('Both.estimate.json', two)) as EstimatePaper;
    expect(together.map(({ rigs: whose }) => whose)).toEqual([['One', 'Three'], ['Two']]);
    const [one] = together;
    expect([one?.apart?.text, one?.pooling?.text, one?.shelf?.text, one?.purchase.cost?.money.text]).toEqual([
      '60.00 USD',
      '30.00 USD',
      '0.00 USD',
      '30.00 USD',
    ]);
    expect(one?.cutting?.stock[0]?.kind).toBe('on-hand');
    // The one length on the shelf is cut once, for the first.
    expect(together[1]?.cutting?.stock.map(({ kind }) => kind)).toEqual(['roll']);
    expect(together[1]?.purchase.onHand).toBeUndefined();
  });

  it('leaves to each what lies on the shelves of its own rigs, where one name is sold at two prices', () => {
    const rig = (name: string, price: string, shelf: string) =>
      `tape Strip { width 4 in  roll 25 ft at ${price} USD  bonds-to epdm }\nrig ${name} {\n  roof 11 ft by 8 ft epdm\n  edge curbside wide 1 1/2 in\n  tape curbside with Strip\n  ${shelf}\n}\n`;
    const two = papersOf({
      'one.rig': rig('One', '30', ''),
      'two.rig': rig('Two', '31', 'on-hand Strip 12 ft'),
      'yard/both.rig': 'fleet Both {\n  rigs "../*.rig"\n}\n',
    });
    const { together } = JSON.parse(paper('Both.estimate.json', two)) as EstimatePaper;
    expect(together.map(({ cutting }) => cutting?.stock.map(({ kind }) => kind))).toEqual([['roll'], ['on-hand']]);
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
