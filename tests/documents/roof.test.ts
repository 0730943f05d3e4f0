import type { Element } from '@xmldom/xmldom';
import { describe, expect, it } from 'vitest';
import { single } from './examples.ts';
import { planText, rigOf, sheet, sheetsOfFolder, sheetsOfRig, xml } from './sheets.ts';

const heading = `
tape Four { width 4 in  roll 50 ft  end-lap 2 in  side-lap 1 in }
sealant Lap { family solvent-lap  cartridge 10.3 fl-oz }
`;

/** Millimetres: 30 ft by 8 ft. */
const text = `${heading}
rig Plover {
  roof 30 ft by 8 ft epdm
  falls to rear
  edge curbside, roadside
  cap front 4 in wide
  cap rear wide 2 in
  slide lounge 10 ft by 3 ft on roadside at 12 ft
  opening hatch 20 in by 14 in at 20 ft, 3 ft
  opening pipe round 6 in at 5 ft, 6 ft
  gasket cooler 14 in by 14 in at 10 ft, 4 ft
  drain spout at 29 ft, 8 ft
  joint seam 6 ft at 25 ft, 4 ft
  channel awning 12 ft on curbside
  mount ladder 3 in by 4 in
  joint corner 6 ft on wall rear
  field sheet
  found 2026-01-01 all with Lap
  inspected 2026-03-01 { all sound }
  inspected 2026-04-01 {
    curbside hairline from 6 ft to 9 ft
    hatch lifting wet
    pipe not-seen
    rest sound
  }
}
`;
const view = rigOf(text);
const FT = 304.8;
const IN = 25.4;

const number = (element: Element, name: string): number => Number(element.getAttribute(name));

function drawing(svg: string) {
  const { root, all } = xml(svg);
  const scale = number(root, 'data-scale');
  const items = (name: string) => all.filter((one) => one.getAttribute('data-item') === name);
  const inside = (name: string, tag: string) => items(name).flatMap((one) => Array.from(one.getElementsByTagName(tag)));
  const classed = (name: string, tag: string) => inside(name, tag).filter((one) => one.getAttribute('data-class'));
  return { root, all, scale, items, inside, classed };
}

/** A rectangle in millimetres of the roof. */
const measured = (element: Element, scale: number) =>
  (['x', 'y', 'width', 'height'] as const).map((name) => number(element, name) * scale);

/** Numbers in the picture have three decimals: half of the last, times the scale. */
const near = (found: readonly number[], wanted: readonly number[], scale: number) => {
  expect(found).toHaveLength(wanted.length);
  for (const [i, value] of found.entries()) expect(Math.abs(value - (wanted[i] as number))).toBeLessThan(0.001 * scale);
};

describe('the plan of a roof', () => {
  const svg = planText(view);
  const { root, all, scale, items, classed } = drawing(svg);

  it('is as long as the roof, by a scale that is stated', () => {
    const outline = all.find((one) => one.getAttribute('data-outline') === 'roof')!;
    near(measured(outline, scale), [0, 0, 30 * FT, 8 * FT], scale);
    expect(svg).toContain(`drawn 1 : ${scale}`);
    // One unit is one millimetre of paper.
    const [, , wide, high] = root.getAttribute('viewBox')!.split(' ');
    expect([root.getAttribute('width'), root.getAttribute('height')]).toEqual([`${wide}mm`, `${high}mm`]);
  });

  it('has each item at its place and in its size', () => {
    near(measured(classed('hatch', 'rect')[0]!, scale), [20 * FT - 10 * IN, 3 * FT - 7 * IN, 20 * IN, 14 * IN], scale);
    near(measured(classed('cooler', 'rect')[0]!, scale), [10 * FT - 7 * IN, 4 * FT - 7 * IN, 14 * IN, 14 * IN], scale);
    const pipe = classed('pipe', 'circle')[0]!;
    near(
      ['cx', 'cy', 'r'].map((name) => number(pipe, name) * scale),
      [5 * FT, 6 * FT, 3 * IN],
      scale,
    );
    const seam = classed('seam', 'rect')[0]!;
    near(measured(seam, scale).slice(0, 3), [22 * FT, 4 * FT, 6 * FT], scale);
    const spout = items('spout').flatMap((one) => Array.from(one.getElementsByTagName('path')))[0]!;
    const at = spout
      .getAttribute('data-at')!
      .split(' ')
      .map((one) => Number(one) * scale);
    near(at, [29 * FT, 8 * FT], scale);
  });

  it('has edges, caps and slides where they run', () => {
    const [front] = classed('front', 'rect').map((one) => measured(one, scale));
    near(front!, [0, 0, Math.max(4 * IN, 1.8 * scale), 8 * FT], scale);
    const rear = measured(classed('rear', 'rect')[0]!, scale);
    expect(rear[0]! + rear[2]!).toBeCloseTo(30 * FT, -1);
    const [first, outer, last] = classed('lounge', 'rect').map((one) => measured(one, scale));
    expect(outer![0]).toBeCloseTo(7 * FT, -1);
    expect(outer![2]).toBeCloseTo(10 * FT, -1);
    expect(outer![1]! + outer![3]!).toBeCloseTo(11 * FT, -1);
    near([first![0]!, first![1]!, first![3]!], [7 * FT, 8 * FT, 3 * FT], scale);
    near([last![0]! + last![2]!, last![1]!, last![3]!], [17 * FT, 8 * FT, 3 * FT], scale);
  });

  it('draws each stretch of a seam in its own class', () => {
    const parts = classed('curbside', 'rect').map((one) => [one.getAttribute('data-class'), ...measured(one, scale)]);
    expect(parts.map(([word]) => word)).toEqual(['sound', 'hairline', 'sound']);
    near([Number(parts[1]![1]), Number(parts[1]![3])], [6 * FT, 3 * FT], scale);
  });

  it('tells classes apart by pattern as well as by colour', () => {
    const tiles = new Map(
      ['condition', 'due'].flatMap((by) =>
        drawing(planText(view, { by: by as 'condition' | 'due' }))
          .all.filter(({ tagName }) => tagName === 'pattern')
          .map((one) => [
            `${by} ${one.getAttribute('id')}`,
            Array.from(one.getElementsByTagName('path'))
              .map((path) => `${path.getAttribute('d')} ${path.getAttribute('stroke-width')}`)
              .join() || `plain ${Array.from(one.getElementsByTagName('rect'))[0]?.getAttribute('fill')}`,
          ]),
      ),
    );
    for (const by of ['condition', 'due']) {
      const marks = [...tiles].filter(([name]) => name.startsWith(by)).map(([, mark]) => mark);
      expect(marks.length).toBeGreaterThan(4);
      expect(new Set(marks).size).toBe(marks.length);
    }
  });

  it('names each seam and its state, and the picture as a whole', () => {
    expect(root.getAttribute('role')).toBe('img');
    const ids = root.getAttribute('aria-labelledby')!.split(' ');
    for (const id of ids) expect(all.find((one) => one.getAttribute('id') === id)?.textContent).toBeTruthy();
    expect(items('hatch')[0]!.getAttribute('aria-label')).toMatch(/^hatch: lifting, wet/);
    expect(items('pipe')[0]!.getAttribute('aria-label')).toMatch(/could not be seen/);
    expect(items('hatch')[0]!.getElementsByTagName('title')[0]?.textContent).toMatch(/lifting/);
    expect(svg).toContain('data-wet');
  });

  it('lists what has no place or lies on a wall, and draws none of it', () => {
    const words = all
      .filter(({ tagName }) => tagName === 'text')
      .map((one) => one.textContent)
      .join(' ');
    for (const name of ['awning', 'ladder', 'corner', 'sheet']) {
      expect(items(name)).toEqual([]);
      expect(words).toContain(`${name} (`);
    }
    expect(words).toContain('corner (on a wall)');
    expect(words).toContain('Water falls to the rear');
  });

  it('has a bar as long as it says', () => {
    const bar = all.find((one) => one.getAttribute('data-bar'))!;
    const [count, unit] = bar.getAttribute('data-bar')!.split(' ');
    expect(unit).toBe('ft');
    near([number(bar, 'data-length') * scale], [Number(count) * FT], scale);
    const metric = rigOf(`policy M { units metric }\n${text.replace('rig Plover', 'rig Plover under M')}`);
    const other = drawing(planText(metric));
    const metres = other.all.find((one) => one.getAttribute('data-bar'))!;
    near(
      [number(metres, 'data-length') * other.scale],
      [Number.parseFloat(metres.getAttribute('data-bar')!) * 1000],
      scale,
    );
  });

  it('puts the curb side where it is: on the right of travel, or on the left', () => {
    const left = rigOf(`policy L { curb left }\n${text.replace('rig Plover', 'rig Plover under L')}`);
    const turned = drawing(planText(left));
    near(
      measured(turned.classed('hatch', 'rect')[0]!, turned.scale).slice(0, 2),
      [20 * FT - 10 * IN, 5 * FT - 7 * IN],
      scale,
    );
    const words = (one: ReturnType<typeof drawing>) =>
      one.all.filter(({ tagName }) => tagName === 'text').map((each) => [each.textContent, number(each, 'y')] as const);
    const at = (one: ReturnType<typeof drawing>, word: string) =>
      words(one).find(([each]) => each?.startsWith(word))![1];
    expect(at(drawing(svg), 'curb side')).toBeLessThan(at(drawing(svg), 'road side'));
    expect(at(turned, 'curb side')).toBeGreaterThan(at(turned, 'road side'));
  });

  it('numbers the pieces of a work plan where they lie, laps and all', () => {
    const sheets = sheetsOfFolder(single);
    const page = sheet('Wren.worksheet.html', sheets);
    const plan = page.match(/<svg.*?<\/svg>/s)?.[0] as string;
    const { all: parts, scale: one } = drawing(plan);
    const pieces = parts.filter((each) => each.getAttribute('data-piece'));
    expect(pieces.map((each) => Number(each.getAttribute('data-piece'))).sort((a, b) => a - b)).toEqual([
      1, 2, 3, 4, 5, 6, 7, 8,
    ]);
    const box = (n: number) => measured(pieces.find((each) => each.getAttribute('data-piece') === String(n))!, one);
    // Piece 6 runs along the curb side: 18 ft 8 in and 2 in at each end, 4 in wide, its middle on that of a 1 3/4 in band.
    near(box(6), [-2 * IN, (0.875 - 2) * IN, 19 * 12 * IN, 4 * IN], one);
    // Two strips on the front, 1 in of side lap: the first, to the rear, begins 3 in behind the second.
    near([box(7)[0]! - box(8)[0]!, box(7)[3]!, box(7)[2]!], [3 * IN, 96 * IN, 4 * IN], one);
  });

  it('frames a flange: a bite onto it, front and rear to the outer corners', () => {
    const planned = rigOf(
      text
        .replace('  found 2026', '  tape hatch with Four after 2027-04-20\n  found 2026')
        .replace('hatch lifting wet', 'hatch chalky'),
    );
    const page = sheet('Plover.worksheet.html', sheetsOfRig(planned));
    const { all: parts, scale: one } = drawing(page.match(/<svg.*?<\/svg>/s)?.[0] as string);
    const boxes = parts.filter((each) => each.getAttribute('data-piece')).map((each) => measured(each, one));
    expect(boxes).toHaveLength(4);
    // 20 in by 14 in, 4 in of tape, 1 in of it on the flange: out to 3 in beyond, the opening inside stays free.
    const [x, y] = [20 * FT, 3 * FT];
    near(boxes[0]!, [x + 9 * IN, y - 10 * IN, 4 * IN, 20 * IN], one);
    near(boxes[1]!, [x - 13 * IN, y - 10 * IN, 26 * IN, 4 * IN], one);
    near(boxes[2]!, [x - 13 * IN, y + 6 * IN, 26 * IN, 4 * IN], one);
    near(boxes[3]!, [x - 13 * IN, y - 10 * IN, 4 * IN, 20 * IN], one);
  });

  it('lays a strip where its stretch is', () => {
    const planned = rigOf(
      text.replace(
        '  found 2026',
        '  tape roadside from 10 ft to 20 ft, roadside from 24 ft to 26 ft with Four after 2027-04-20\n  found 2026',
      ),
    );
    const page = sheet('Plover.worksheet.html', sheetsOfRig(planned));
    const { all: parts, scale: one } = drawing(page.match(/<svg.*?<\/svg>/s)?.[0] as string);
    const [box, next] = parts.filter((each) => each.getAttribute('data-piece')).map((each) => measured(each, one));
    near([box![0]!, box![2]!], [10 * FT - 2 * IN, 10 * FT + 4 * IN], one);
    near([next![0]!, next![2]!], [24 * FT - 2 * IN, 2 * FT + 4 * IN], one);
  });

  it('stands without script, style of others, or anything from elsewhere', () => {
    expect(all.map(({ tagName }) => tagName)).not.toContain('script');
    expect(svg.match(/href|@import|@font-face/g)).toBeNull();
    expect(svg.match(/url\([^)]*\)/g)?.every((use) => use.startsWith('url(#'))).toBe(true);
    expect(svg).toBe(planText(rigOf(text)));
  });

  it('keeps hostile names harmless', () => {
    const name = ']]><script>alert(1)</script>\u0000\u202e"&';
    const hostile = {
      ...view,
      rig: { ...view.rig, name, items: view.rig.items.map((item) => ({ ...item, doc: name })) },
    };
    const { all: parts } = drawing(planText(hostile));
    expect(parts.map(({ tagName }) => tagName)).not.toContain('script');
    expect(parts.find(({ tagName }) => tagName === 'title')?.textContent).toContain(']]><script>alert(1)</script>');
  });

  it('says so where the roof has no size', () => {
    const none = drawing(planText(rigOf('rig Bare { edge curbside opening hatch 1 ft by 1 ft at 2 ft, 2 ft }')));
    expect(none.root.textContent).toMatch(/nothing can be drawn to scale/);
    expect(none.items('hatch')).toEqual([]);
    expect(none.root.textContent).toMatch(/hatch \(the roof has no\s*size\)/);
  });
});
