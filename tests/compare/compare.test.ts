// What changed between two projects, in records and in what follows from them.
import { describe, expect, it } from 'vitest';
import { compareMarkdown, compareProjects, type Side } from '../../language/compare/index.ts';
import { Comparison } from '../../language/compare/schema.ts';
import { filesOf, projectOf } from '../project/workspace.ts';

type Texts = Readonly<Record<string, string>>;
const dates = { asOf: '2026-11-25', today: '2026-11-25' };
const side = (texts: Texts): Side => ({
  project: projectOf(texts),
  files: filesOf(texts),
  paths: Object.keys(texts).sort(),
});
const compare = (before: Texts, after: Texts) =>
  Comparison.parse(compareProjects(side(before), side(after), { from: 'A', to: 'B', dates, fileName: (path) => path }));

const policy = `policy Shop {
  inspect   every 6 months
  currency  USD
  labour    60.00 USD per h
}
`;
const materials = `tape EdgeTape4 {
  width  4 in
  roll   50 ft at 61.00 USD
}
`;
const history = `history Wren {
  inspected 2026-04-18 by "A. Moreau" {
    front  cracked
    rest   sound
  }
}
`;
const wren = `use "policy.rig"
use "materials.rig"

rig Wren under Shop {
  records  "wren/*.rig"
  roof     18 ft by 8 ft  epdm
  edge     curbside, roadside  wide 2 in
  cap      front  wide 4 in
  opening  bath-vent  16 in by 16 in  at 10 ft, 4 ft  of abs
  tape     front with EdgeTape4 after 2027-04-15
}
`;
const base: Texts = {
  'policy.rig': policy,
  'materials.rig': materials,
  'wren.rig': wren,
  'wren/2026.rig': history,
};
const with_ = (changes: Texts): Texts => ({ ...base, ...changes });
const replaced = (path: string, old: string, text: string): Texts => {
  const before = base[path] as string;
  if (!before.includes(old)) throw new Error(`${path} does not hold ${old}`);
  return with_({ [path]: before.replace(old, text) });
};
const nothing = { shared: [], rigs: [], fleets: [], money: [] };

describe('no change is', () => {
  it('the same text', () => {
    expect(compare(base, base)).toMatchObject(nothing);
    expect(compareMarkdown(compare(base, base))).toContain('no record differs.');
  });

  it('a file that is called otherwise, a rig and its history in other folders', () => {
    const moved = {
      'shop/policy.rig': policy,
      'shop/stock.rig': materials,
      'yard/bird.rig': wren
        .replace('"policy.rig"', '"../shop/policy.rig"')
        .replace('"materials.rig"', '"../shop/stock.rig"')
        .replace('"wren/*.rig"', '"past/*.rig"'),
      'yard/past/all.rig': history,
    };
    expect(compare(base, moved)).toMatchObject(nothing);
  });

  it('white space, remarks, the order of lines, and another unit for the same', () => {
    const lines = wren.split('\n');
    const [edge, cap] = [lines[6] as string, lines[7] as string];
    const turned = wren
      .replace(`${edge}\n${cap}`, `${cap}  # measured twice\n\n\t${edge.trim()}`)
      .replace('18 ft by 8 ft', '216 in by 96 in');
    expect(turned).not.toBe(wren);
    expect(compare(base, with_({ 'wren.rig': turned }))).toMatchObject(nothing);
  });

  it('two rigs of one file in two', () => {
    const one = (name: string) => `rig ${name} {\n  roof  18 ft by 8 ft  epdm\n  cap   front  wide 4 in\n}\n`;
    const together = { 'a.rig': one('Wren') + one('Gull') };
    expect(compare(together, { 'a.rig': one('Gull'), 'b.rig': one('Wren') })).toMatchObject(nothing);
  });
});

describe('a change of records', () => {
  const only = (after: Texts, before = base) => {
    const { rigs } = compare(before, after);
    expect(rigs).toHaveLength(1);
    return rigs[0] as Comparison['rigs'][number];
  };

  it('of a seam is told with what it takes then', () => {
    const rig = only(replaced('wren.rig', 'front  wide 4 in', 'front  wide 5 in'));
    expect(rig.seams).toEqual([{ name: 'front', before: 'cap front wide 4 in', after: 'cap front wide 5 in' }]);
    expect(rig.records).toEqual([]);
    expect(rig).toMatchObject({ name: 'Wren', change: 'changed', file: 'wren.rig' });
  });

  it('of a model is told once of the model and of each rig that is like it', () => {
    const like = (wide: string) => ({
      'models.rig': `model Small {\n  roof  18 ft by 8 ft  epdm\n  cap   front  wide ${wide}\n}\n`,
      'wren.rig': 'use "models.rig"\n\nrig Wren like Small {\n}\n',
      'gull.rig': 'use "models.rig"\n\nrig Gull like Small {\n}\n',
    });
    const { shared, rigs } = compare(like('4 in'), like('5 in'));
    expect(shared).toMatchObject([
      { kind: 'model', name: 'Small', records: [{ before: 'cap front wide 4 in', after: 'cap front wide 5 in' }] },
    ]);
    expect(rigs.map(({ name, seams }) => [name, seams.map((seam) => seam.name)])).toEqual([
      ['Gull', ['front']],
      ['Wren', ['front']],
    ]);
  });

  it('of a name is a seam that is called otherwise, not one that went and one that came', () => {
    const named = wren.replace('bath-vent', 'vent').replace('  tape ', '  formerly bath-vent to vent\n  tape ');
    const rig = only(with_({ 'wren.rig': named }));
    expect(rig.seams).toEqual([{ name: 'vent', was: 'bath-vent' }]);
    expect(rig.records).toEqual([]);
    expect(rig.dues).toEqual([]);
  });

  it('of the name of a rig is no rig that went and one that came', () => {
    const named = {
      'wren.rig': wren.replace('rig Wren', 'rig Robin').replace('  roof ', '  formerly Wren\n  roof '),
    };
    const rig = only(with_(named));
    expect(rig).toMatchObject({ name: 'Robin', was: 'Wren', change: 'changed', seams: [], records: [], visits: [] });
  });

  it('by a finding has the due date that follows', () => {
    const rig = only(replaced('wren/2026.rig', 'rest   sound', 'curbside  open\n    rest   sound'));
    expect(rig.records).toEqual([{ kind: 'finding', after: 'inspected 2026-04-18: curbside open' }]);
    expect(rig.dues.some(({ title, before, after }) => title.includes('curbside') && !before && after)).toBe(true);
  });

  it('of a finding is one changed finding', () => {
    const rig = only(replaced('wren/2026.rig', 'front  cracked', 'front  sound'));
    expect(rig.records).toEqual([
      {
        kind: 'finding',
        before: 'inspected 2026-04-18: front cracked',
        after: 'inspected 2026-04-18: front sound',
      },
    ]);
  });

  it('of the date of an inspection moves what follows from it', () => {
    const rig = only(replaced('wren/2026.rig', '2026-04-18', '2026-05-18'));
    expect(rig.records[0]).toEqual({
      kind: 'record',
      before: 'inspected 2026-04-18 by "A. Moreau"',
      after: 'inspected 2026-05-18 by "A. Moreau"',
    });
    expect(rig.dues).toContainEqual(expect.objectContaining({ before: '2026-10-18', after: '2026-11-18' }));
  });

  it('of a plan moves its visit', () => {
    const rig = only(replaced('wren.rig', 'after 2027-04-15', 'after 2027-05-20'));
    expect(rig.records).toMatchObject([{ kind: 'plan', before: expect.stringContaining('2027-04-15') }]);
    const [visit] = rig.visits;
    expect(visit?.before?.[0]).toMatch(/^2027-04-/);
    expect(visit?.after?.[0]).toMatch(/^2027-05-/);
  });

  it('that cannot be read is told as it is written', () => {
    const rig = only(replaced('wren.rig', 'after 2027-04-15', 'aftr 2027-04-15'));
    expect(rig.records).toMatchObject([{ after: 'tape front with EdgeTape4 aftr 2027-04-15' }]);
  });
});

describe('money', () => {
  it('follows a price, by currency, as a difference of totals', () => {
    const { shared, rigs, money } = compare(base, replaced('materials.rig', '61.00 USD', '66.50 USD'));
    expect(shared).toMatchObject([
      {
        kind: 'tape',
        name: 'EdgeTape4',
        records: [{ before: 'roll 50 ft at 61.00 USD', after: 'roll 50 ft at 66.50 USD' }],
      },
    ]);
    expect(rigs[0]?.buy).toMatchObject([
      { material: 'EdgeTape4', costBefore: { amount: '61.00' }, costAfter: { amount: '66.50' } },
    ]);
    // One roll more dear by 5.50, and no tax.
    expect(money).toMatchObject([{ currency: 'USD', difference: { amount: '5.50', currency: 'USD' } }]);
    expect(compareMarkdown(compare(base, replaced('materials.rig', '61.00 USD', '66.50 USD')))).toContain('+5.50 USD');
  });

  it('of a rig that goes falls away', () => {
    const { 'wren.rig': gone, ...rest } = base;
    const { rigs, money } = compare(base, rest);
    expect(rigs).toMatchObject([{ name: 'Wren', change: 'removed', totalBefore: { complete: expect.any(Boolean) } }]);
    expect(rigs[0]?.totalAfter).toBeUndefined();
    expect(money[0]?.after.amount).toBe('0.00');
    expect(money[0]?.difference.amount).toBe(`-${money[0]?.before.amount}`);
    const back = compare(rest, base);
    expect(back.rigs).toMatchObject([{ name: 'Wren', change: 'added' }]);
    expect(back.money[0]?.difference.amount).toBe(money[0]?.before.amount);
  });
});

describe('a fleet', () => {
  const fleet = (more = '') => `fleet Yard {\n  rigs  "*.rig"\n${more}}\n`;
  const yard = (texts: Texts) => ({ ...texts, 'yard/fleet.rig': fleet().replace('"*.rig"', '"../*.rig"') });

  it('has the visits of its rigs, and says who joined', () => {
    const gull = 'rig Gull {\n  roof  18 ft by 8 ft  epdm\n  cap   front  wide 4 in\n}\n';
    const before = yard(base);
    const after = { ...yard(replaced('wren.rig', 'after 2027-04-15', 'after 2027-05-20')), 'gull.rig': gull };
    const { rigs, fleets } = compare(before, after);
    expect(fleets).toMatchObject([{ name: 'Yard', change: 'changed', joined: ['Gull'], left: [], records: [] }]);
    expect(fleets[0]?.visits).toContainEqual(expect.objectContaining({ rig: 'Wren' }));
    expect(rigs.every(({ visits }) => visits.length === 0)).toBe(true);
  });
});
