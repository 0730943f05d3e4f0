import { describe, expect, it } from 'vitest';
import { walkingOrder } from '../../language/documents/sheets/walking.ts';
import { conditions } from '../../language/statements/words.ts';
import { single } from './examples.ts';
import {
  attribute,
  filled,
  type HtmlElement,
  html,
  rigOf,
  rigWith,
  sheet,
  sheetsOfFolder,
  sheetsOfRig,
  textOf,
} from './sheets.ts';

const { all } = html(sheet('Wren.inspection.html', sheetsOfFolder(single)));
const tagged = (tag: string) => all.filter(({ tagName }) => tagName === tag);
const body = textOf(tagged('body')[0]!);
const rows = tagged('tr').map((row) => row.childNodes.filter((node) => 'tagName' in node) as HtmlElement[]);
const rowOf = (name: string) => rows.find(([head]) => head && textOf(head).startsWith(name))!;

describe('the inspection sheet', () => {
  it('walks once round from the door side, then over the roof from the rear forward', () => {
    const order = tagged('caption').map(textOf);
    expect(order.slice(0, 5).map((one) => one.replace(/,.*/, ''))).toEqual([
      'Round the outside: curb side',
      'Round the outside: the rear',
      'Round the outside: road side',
      'Round the outside: the front',
      'On the roof',
    ]);
    const heads = rows.flatMap(([head]) => (head ? [textOf(head)] : []));
    const at = (name: string) => heads.findIndex((head) => head.startsWith(name));
    const walked = [
      'curbside',
      'spout-curb',
      'rear',
      'sofa',
      'roadside',
      'front',
      'bath-stack',
      'bath-vent',
      'fridge-vent',
      'galley-vent',
      'panel-feet',
      'membrane',
    ];
    const found = walked.map(at);
    expect(found.every((each) => each >= 0)).toBe(true);
    expect(found).toEqual([...found].sort((a, b) => a - b));
  });

  it('has every item of a rig once', () => {
    const { rig } = rigOf(
      single['wren.rig']!.replace('use "policy.rig"', '')
        .replace('under Home', '')
        .replace(/wash .*\n|inspect .*\n/g, ''),
    );
    const names = walkingOrder(rig).flatMap(({ items }) => items.map(({ name }) => name));
    expect([...names].sort()).toEqual(rig.items.map(({ name }) => name).sort());
  });

  it('shows what was found last, and what was not seen', () => {
    expect(textOf(rowOf('bath-vent')[0]!)).toContain('last: hairline 2026-10-10');
    expect(textOf(rowOf('panel-feet')[0]!)).toMatch(/could not be seen 2026-10-10.*the catch of the panel is jammed/);
    expect(body).toContain('Not seen last time: panel-feet.');
  });

  it('has a box for each word, for not seen and for wet, and the gauges', () => {
    const boxes = (rowOf('bath-vent')[1]!.childNodes as HtmlElement[]).map((choice) => textOf(choice).trim());
    expect(boxes).toEqual([...conditions, 'not seen', 'wet']);
    for (const word of conditions)
      expect(rows.some(([head, ...cells]) => head && textOf(head) === word && cells.length === 5)).toBe(true);
    expect(rows.find(([head]) => head && textOf(head) === 'lifting')!.map(textOf)[1]).toContain('thumbnail');
  });

  it('has an indoor page with readings at numbered points, their last figure and their trend', () => {
    expect(body).toContain('ceiling round fridge-vent');
    expect(body).toMatch(/Same meter, same mode, same point/);
    const point = rows.find((cells) => cells[1] && textOf(cells[1]) === 'fridge-vent: cupboard over the fridge')!;
    expect(textOf(point[2]!)).toBe('12 % on 2025-09-27, down 1 point');
  });

  it('tells of leaks that are open, and of none that a look has closed', () => {
    expect(body).not.toContain('Leaks that are not closed');
    const leaky = rigOf(`
rig Leaky {
  roof 20 ft by 8 ft epdm
  opening hatch 14 in by 14 in at 10 ft, 4 ft
  leaked 2026-06-01 inside "over the bed" suspect hatch moisture 24 %
}
`);
    const text = sheet('Leaky.inspection.html', sheetsOfRig(leaky));
    expect(text).toContain('Leaks that are not closed');
    expect(text).toContain('over the bed, suspected hatch');
  });

  it('brings the cautions of looking: no solvents, falls first', () => {
    const box = all.find((one) => attribute(one, 'class') === 'cautions')!;
    expect(textOf(box)).toMatch(/Falls kill/);
    expect(textOf(box)).not.toMatch(/Solvents burn|isocyanates/);
    expect(body).not.toMatch(/safe to walk|is dry\b/);
  });

  it('ends with lines that the language reads once they are filled in', () => {
    const lines = textOf(tagged('pre')[0]!);
    const named = lines
      .replace(/^ {2}____ ____/m, '  sofa cracked')
      .replace(/^ {2}____ not-seen/m, '  rear not-seen')
      .replace(/^( {2}\S+) ____/gm, '$1 hairline');
    const { events, unread } = rigWith(filled(named));
    expect(lines).toMatch(/^ {2}bath-vent ____ .*# last: hairline$/m);
    const [look, leak] = events.filter(({ first }) => first === '2026-11-20');
    expect(look?.findings.map(({ line }) => line.targets.map(({ name }) => name).join())).toEqual(
      named.match(/^ {2}[\w-]+/gm)?.map((one) => one.trim()),
    );
    expect(look?.findings.flatMap(({ places }) => places)).toHaveLength(18);
    expect(leak?.record).toMatchObject({ word: 'leaked', inside: 'K1', moisture: { percent: 12 } });
    expect(unread).toEqual({ all: false, items: new Set() });
  });
});
