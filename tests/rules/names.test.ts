import { describe, expect, it } from 'vitest';
import { found, said, under } from './asked.ts';

const roof = '{ roof 28 ft by 8 ft epdm }';

describe('names of rigs, models and fleets', () => {
  it('differ in more than their case, in one file', () => {
    const text = `rig Heron ${roof}\nrig heron ${roof}\n`;
    const [finding, ...more] = said('names-differ-in-case', text);
    expect(more).toEqual([]);
    expect(under(text, finding!)).toBe('heron');
    expect(finding?.message).toContain('in this file');
    expect(finding?.related).toHaveLength(1);
  });

  it('differ from those of used files too', () => {
    const texts = {
      'rigs/a.rig': `use "../models.rig"\nmodel alder28 ${roof}\n`,
      'models.rig': `model Alder28 ${roof}\n`,
    };
    expect(said('names-differ-in-case', texts)[0]?.message).toContain('in ../models.rig');
    expect(said('names-differ-in-case', texts, { path: 'models.rig' })).toEqual([]);
  });

  it('may be alike across kinds, and of materials', () => {
    const text = `model Heron ${roof}\nrig heron like Heron\ntape Strip { width 4 in }\ntape strip { width 4 in }\n`;
    expect(said('names-differ-in-case', text)).toEqual([]);
  });

  it('are names that every machine takes for files', () => {
    for (const name of ['con', 'Aux', 'NUL', 'prn', 'com1', 'LPT9']) {
      expect(said('reserved-name', `rig ${name} ${roof}\n`), name).toHaveLength(1);
    }
    for (const name of ['Conrad', 'com', 'lpt10', 'aux-1']) {
      expect(said('reserved-name', `rig ${name} ${roof}\n`), name).toEqual([]);
    }
    expect(said('reserved-name', 'tape con { width 4 in }\n')).toEqual([]);
  });
});

describe('a circle of `use`', () => {
  const texts = {
    'a.rig': 'use "b.rig"\n',
    'b.rig': 'use "yard/c.rig"\n',
    'yard/c.rig': 'use "../a.rig"\n',
    'd.rig': 'use "a.rig"\n',
  };

  it('is told at each of its lines, with the way round', () => {
    for (const path of ['a.rig', 'b.rig', 'yard/c.rig'])
      expect(said('use-circle', texts, { path }), path).toMatchObject([{ severity: 'information' }]);
    expect(said('use-circle', texts)[0]?.message).toContain(
      'uses `b.rig`, which uses `yard/c.rig`, which uses `a.rig`',
    );
  });

  it('is not the matter of a file that only looks into it', () => {
    expect(found(texts, { path: 'd.rig' })).toEqual([]);
  });
});

describe('materials of a history in a file of its own', () => {
  const texts = (record: string) => ({
    'materials.rig': 'sealant GreyLap { family solvent-lap }\n',
    'rigs/heron.rig': `use "../materials.rig"\nrig Heron {\n  roof 28 ft by 8 ft epdm\n  cap front\n  records "heron/*.rig"\n}\n`,
    'rigs/heron/all.rig': `history Heron {\n  ${record}\n}\n`,
  });

  it('are those that are visible where the rig is written', () => {
    const known = texts('sealed 2026-05-02 front with GreyLap');
    expect(said('unknown-material', known, { path: 'rigs/heron.rig' })).toEqual([]);
    const misspelt = texts('sealed 2026-05-02 front with GrayLap');
    const [finding, ...more] = said('unknown-material', misspelt, { path: 'rigs/heron.rig' });
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ file: expect.stringMatching(/rigs\/heron\/all\.rig$/), severity: 'error' });
    expect(under(misspelt['rigs/heron/all.rig'], finding!)).toBe('GrayLap');
    expect(finding?.fixes).toMatchObject([{ text: 'GreyLap' }]);
  });
});
