import { describe, expect, it } from 'vitest';
import { itemsAt, roofView } from '../../language/documents/roof/index.ts';
import { roofPage } from '../../language/documents/sheets/roof-page.ts';
import { rigState } from '../../language/seams/index.ts';
import { rigOf, xml } from './sheets.ts';

const text = `
policy P { follow-up cracked within 2 weeks  due-soon 30 days }
rig Plover under P {
  roof 30 ft by 8 ft epdm
  edge curbside, roadside
  cap front
  opening hatch 20 in by 14 in at 20 ft, 3 ft
  opening pipe round 6 in at 5 ft, 6 ft
  drain spout at 29 ft, 8 ft
  joint corner 6 ft on wall rear
  opening old 6 in by 6 in at 6 ft, 4 ft until 2026-02-01
  inspected 2026-10-04 {
    curbside hairline from 6 ft to 9 ft
    roadside cracked
    hatch lifting wet
    rest sound
  }
  strip pipe after 2027-03-01
  inspect before 2027-02-10
}
`;
const rig = rigOf(text);
const view = roofView(rig, rigState(rig, '2026-11-25'));
const seam = (name: string) => view.seams.find(({ item }) => item === name)!;

describe('the view of a roof', () => {
  it('has every seam that is there, once, in walking order', () => {
    expect(view.seams.map(({ item }) => item)).toEqual([
      'curbside',
      'corner',
      'spout',
      'roadside',
      'front',
      'hatch',
      'pipe',
    ]);
  });

  it('says of each what it is, how it is, how long, and what is due', () => {
    // Two weeks from 4 Oct 2026; 30 ft as long as the roof.
    expect(seam('roadside').says).toBe('roadside edge, cracked, 30 ft, overdue since 18 Oct 2026');
    expect(seam('roadside').why).toMatch(/cracked/);
    expect(seam('hatch').says).toMatch(/^hatch opening, lifting, wet, 5 ft 8 in, /);
    expect(seam('curbside').says).toMatch(
      /^curbside edge, no condition is recorded from 0 in to 6 ft, hairline from 6 ft to 9 ft, .*, 30 ft, due 4 Apr 2027$/,
    );
  });

  it('draws each, or says why not', () => {
    for (const way of ['condition', 'due'] as const) {
      const { all, root } = xml(view.drawings[way].svg);
      const drawn = all.map((one) => one.getAttribute('data-item')).filter((name) => name !== null);
      const lines = view.seams.filter(({ missing }) => missing === undefined).map(({ item }) => item);
      expect([...drawn].sort()).toEqual([...lines].sort());
      expect(all.filter((one) => one.tagName === 'style')).toEqual([]);
      expect(root.textContent).not.toContain('as of 2026-11-25Roof');
      // Every class that is drawn stands in the legend, and has its pattern.
      const legend = view.drawings[way].legend.map(({ id }) => id);
      const used = new Set(all.map((one) => one.getAttribute('data-class')).filter((one) => one !== null));
      expect([...used].filter((one) => !legend.includes(one as string))).toEqual([]);
      for (const id of legend) {
        expect(all.some((one) => one.getAttribute('id') === `plan-${way}-${id}`)).toBe(true);
      }
    }
    expect(seam('corner').missing).toBe('on a wall');
    expect(seam('hatch').missing).toBeUndefined();
  });

  it('names the bands of due dates by the day', () => {
    const bands = (asOf: string) => {
      const { seams } = roofView(rig, rigState(rig, asOf));
      return seams.find(({ item }) => item === 'roadside')?.class.due;
    };
    // Due on 18 Oct 2026, soon 30 days before.
    expect(bands('2026-10-04')).toBe('soon');
    expect(bands('2026-10-18')).toBe('due');
    expect(bands('2026-10-19')).toBe('overdue');
    const yearly = rigOf(text.replace('due-soon 30 days', 'due-soon 30 days  inspect every 1 year'));
    const far = (asOf: string) =>
      roofView(yearly, rigState(yearly, asOf)).seams.find(({ item }) => item === 'pipe')?.class.due;
    // The next look on 4 Oct 2027: six months before is 4 Apr 2027.
    expect(far('2026-12-01')).toBe('later');
    expect(far('2027-04-03')).toBe('later');
    expect(far('2027-04-04')).toBe('half-year');
    const unknown = rigOf('rig Bare {\n  roof 9 ft by 8 ft epdm\n  drain spout at 2 ft, 2 ft\n}');
    expect(roofView(unknown, rigState(unknown, '2026-11-25')).seams[0]?.says).toMatch(
      /^spout drain, no condition is recorded, due today$/,
    );
  });

  it('tells of a roof without a size, and of what is due on the whole', () => {
    const bare = rigOf('rig Bare {\n  edge curbside\n  opening hatch 1 ft by 1 ft at 2 ft, 2 ft\n}');
    const { seams, notes } = roofView(bare, rigState(bare, '2026-11-25'));
    expect(seams.map(({ missing }) => missing)).toEqual(['the roof has no size', 'the roof has no size']);
    expect(notes.join(' ')).toMatch(/`roof LENGTH by WIDTH`/);
    expect(view.notes.join(' ')).toMatch(/Due 10 Feb 2027: .*[^.]\.$/);
  });
});

describe('the seams that a place speaks of', () => {
  const at = (before: string, after = '') => {
    const index = text.indexOf(before + after);
    expect(index).toBeGreaterThan(0);
    return itemsAt(rig.rig, 'a.rig', index + before.length);
  };

  it('are those of the line', () => {
    expect(at('opening ha', 'tch')).toEqual(['hatch']);
    expect(at('edge ', 'curb')).toEqual(['curbside', 'roadside']);
  });

  it('are those that a record or a plan names', () => {
    expect(at('    hatch lif', 'ting')).toEqual(['hatch']);
    expect(at('hairline from 6', ' ft')).toEqual(['curbside']);
    expect(at('    rest so', 'und')).toEqual(['front', 'pipe', 'spout', 'corner', 'old']);
    expect(at('strip pi', 'pe')).toEqual(['pipe']);
  });

  it('are none where none is named', () => {
    expect(at('roof 30', ' ft')).toEqual([]);
    expect(at('rig Plo', 'ver')).toEqual([]);
  });
});

describe('the page to print', () => {
  it('is a page without script, with the plan at the scale that it states', () => {
    const page = roofPage(rig, rigState(rig, '2026-11-25'), 'due');
    expect(page).toContain('@page{size:landscape');
    expect(page).not.toContain('<script');
    const svg = page.match(/<svg.*<\/svg>/s)?.[0] as string;
    const { root, all } = xml(svg);
    const outline = all.find((one) => one.getAttribute('data-outline') === 'roof')!;
    const wide = Number(outline.getAttribute('width')) * Number(root.getAttribute('data-scale'));
    expect(wide / 304.8).toBeCloseTo(30, 2);
    expect(root.getAttribute('width')).toMatch(/mm$/);
  });
});
