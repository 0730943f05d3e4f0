import { describe, expect, it } from 'vitest';
import { found, mended, rigWith, said, under } from './asked.ts';

const vent = 'opening vent 16 in by 16 in at 18 ft, 4 ft';

describe('a described roof', () => {
  it('is quiet when all is in its place', () => {
    const text = rigWith(
      'edge curbside, roadside',
      'cap front 5 in wide',
      vent,
      'opening skylight 32 in by 24 in at 23 ft, 5 ft',
      'opening loose-vent 14 in by 14 in',
      'slide dinette 11 ft by 3 ft on roadside at 9 ft',
      'joint drip-rail 26 ft on curbside',
      'drain spout at 27 ft 9 in, 0 ft',
    );
    expect(found(text)).toEqual([]);
  });

  it('says that edges, caps and places need a roof, once', () => {
    const text = 'rig Heron {\n  edge curbside\n  opening vent 16 in by 16 in at 18 ft, 4 ft\n}\n';
    const findings = said('no-roof', text);
    expect(findings).toHaveLength(1);
    expect(findings[0]?.message).toContain('`curbside` and `vent`');
    expect(under(text, findings[0]!)).toBe('Heron');
  });

  it('is quiet about the roof while its line or its base cannot be read', () => {
    expect(said('no-roof', 'rig Heron {\n  roof 28 ft by\n  edge curbside\n}\n')).toEqual([]);
    expect(said('no-roof', 'rig Heron like Unseen { edge curbside }\n')).toEqual([]);
    expect(said('no-roof', 'rig Heron { field membrane }\n')).toEqual([]);
  });

  it('says that a seam cannot be measured', () => {
    const text = rigWith('opening vent at 18 ft, 4 ft');
    expect(said('no-size', text)).toMatchObject([{ item: 'vent', severity: 'warning' }]);
    expect(said('no-size', rigWith('opening vent length 64 in'))).toEqual([]);
    expect(said('no-size', rigWith('gasket air-con'))).toEqual([]);
  });
});

describe('an item outside the roof', () => {
  it('is found by its centre, and swapped measures are mended', () => {
    const text = rigWith('opening vent 16 in by 16 in at 4 ft, 18 ft');
    const [finding] = said('off-the-roof', text);
    expect(finding?.message).toContain('28 ft by 8 ft');
    const after = mended(text, finding!);
    expect(after).toContain('at 18 ft, 4 ft');
    expect(said('off-the-roof', after)).toEqual([]);
  });

  it('offers no swap that would not help', () => {
    const [finding] = said('off-the-roof', rigWith('opening vent 16 in by 16 in at 30 ft, 18 ft'));
    expect(finding?.fixes).toBeUndefined();
  });

  it('is found by its flange, with how far it reaches over', () => {
    const [finding] = said('off-the-roof', rigWith('opening vent 16 in by 16 in at 18 ft, 3 in'));
    expect(finding?.message).toContain('5 in over the edge');
    expect(said('off-the-roof', rigWith('opening vent 16 in by 16 in at 18 ft, 8 in'))).toEqual([]);
  });

  it('names the place of several', () => {
    const [finding] = said('off-the-roof', rigWith('mount feet 3 in by 4 in at 27 ft, 1 ft and 29 ft, 1 ft'));
    expect(finding?.message).toContain('(place 2)');
  });

  it('may be a slide that runs past the end of its side', () => {
    const [finding] = said('off-the-roof', rigWith('slide bunk 10 ft by 2 ft on roadside at 25 ft'));
    expect(finding?.message).toContain('2 ft past the end');
    expect(said('off-the-roof', rigWith('slide bunk 10 ft by 2 ft on roadside at 23 ft'))).toEqual([]);
  });

  it('is said of a model once, not of every rig that is like it', () => {
    const texts = {
      'models.rig': 'model Alder { roof 28 ft by 8 ft epdm\n opening vent 16 in by 16 in at 18 ft, 3 in }\n',
      'heron.rig': 'use "models.rig"\nrig Heron like Alder\n',
    };
    expect(said('off-the-roof', texts, { path: 'models.rig' })).toHaveLength(1);
    expect(said('off-the-roof', texts, { path: 'heron.rig' })).toEqual([]);
  });
});

describe('two items', () => {
  it('that overlap are found, at the later line, with the other one', () => {
    const text = rigWith(vent, 'opening hatch 14 in by 14 in at 19 ft, 4 ft');
    const [finding, ...more] = said('overlap', text);
    expect(more).toEqual([]);
    expect(finding?.message).toContain('overlap by 3 in');
    expect(under(text, finding!)).toMatch(/^opening hatch/);
    expect(finding?.related).toHaveLength(1);
  });

  it('were never there together: one came when the other went', () => {
    const text = rigWith(
      'opening old 16 in by 16 in at 18 ft, 4 ft until 2030-05-01',
      'opening new 16 in by 16 in at 18 ft, 4 ft since 2030-05-01',
    );
    expect(said('overlap', text)).toEqual([]);
    expect(said('overlap', text.replace('since 2030-05-01', 'since 2030-04-01'))).toHaveLength(1);
  });

  it('do not overlap when one was removed', () => {
    const lines = ['mount antenna 7 in by 9 in at 10 ft, 4 ft', 'mount dish 7 in by 9 in at 10 ft, 4 ft'];
    expect(said('overlap', rigWith(...lines))).toHaveLength(1);
    expect(said('overlap', rigWith(...lines, 'removed 2024-05-01 antenna'))).toEqual([]);
  });

  it('that are too close leave no margin', () => {
    const close = 'opening hatch 16 in by 16 in at 19 ft 5 in, 4 ft';
    const [finding] = said('too-close', rigWith(vent, close));
    expect(finding?.message).toContain('lie 1 in apart');
    expect(finding?.message).toContain('needs 2 in');
    expect(said('too-close', rigWith(vent, close.replace('19 ft 5 in', '19 ft 6 in')))).toEqual([]);
  });

  it('that are both left alone may lie side by side', () => {
    const lines = ['gasket one 14 in by 14 in at 10 ft, 4 ft', 'gasket two 14 in by 14 in at 11 ft 3 in, 4 ft'];
    expect(said('too-close', rigWith(...lines))).toEqual([]);
  });

  it('need more room for frames of tape than for sealant', () => {
    const tape = 'tape Strip4 { width 4 in  roll 50 ft at 58 USD }\n';
    // 4 in apart; a frame reaches 3 in and needs 2 in of margins.
    const lines = [vent, 'opening hatch 16 in by 16 in at 19 ft 8 in, 4 ft'];
    const text = tape + rigWith(...lines, 'tape vent with Strip4');
    const [finding] = said('too-close', text);
    expect(finding?.message).toContain('needs 5 in');
    expect(finding?.message).toContain('4 in away');
    expect(under(text, finding!)).toBe('vent');
    expect(said('too-close', tape + rigWith(...lines, 'seal vent'))).toEqual([]);
  });
});

describe('what is said of an item', () => {
  it('has a side that the roof has', () => {
    const [finding] = said('no-such-side', rigWith('edge curbside', 'slide bunk 6 ft by 2 ft on roadside at 9 ft'));
    expect(finding?.message).toContain('no edge');
    expect(said('no-such-side', rigWith('edge curbside', 'slide bunk 6 ft by 2 ft on curbside at 9 ft'))).toEqual([]);
    expect(said('no-such-side', rigWith('slide bunk 6 ft by 2 ft on roadside at 9 ft'))).toEqual([]);
    expect(said('no-such-side', rigWith('edge curbside', 'joint corner 7 ft on wall roadside'))).toEqual([]);
    expect(said('no-such-side', rigWith('cap rear', 'joint lip 7 ft on front'))).toHaveLength(1);
  });

  it('is seldom a band of a foot', () => {
    const [finding] = said('wide-band', rigWith('cap front 5 ft wide'));
    expect(finding?.message).toContain('5 ft wide');
    expect(said('wide-band', rigWith('cap front 12 in wide'))).toEqual([]);
  });

  it('cannot go before it came', () => {
    expect(said('until-before-since', rigWith(`${vent} since 2022-05-01 until 2021-05-01`))).toHaveLength(1);
    expect(
      said('until-before-since', rigWith(`${vent} since 2022 until 2022-05-01`.replace('2022 ', 'about 2022 '))),
    ).toEqual([]);
  });

  it('is said twice if two words mean one edge', () => {
    expect(found(rigWith('edge curbside, right')).map(({ rule }) => rule)).toEqual(['name-twice']);
  });
});
