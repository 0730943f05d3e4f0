// Groups, yards and crews: what is said where something does not fit together.
import { describe, expect, it } from 'vitest';
import { found, mended, said, under } from './asked.ts';

const roof = 'roof 28 ft by 8 ft epdm';
const ladder = 'crew Ladder 2 for 8 h each on mon to fri';
const fleet = (...lines: readonly string[]) =>
  `fleet Yards {\n  rigs "rigs/*.rig"\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
const with2 = (text: string, heron = '', teal = '') => ({
  'yard.rig': text,
  'groups.rig': 'group Coastal\ngroup Northern\n',
  'rigs/heron.rig': `use "../groups.rig"\nrig Heron {\n  ${roof}\n  cap front 5 in wide\n  ${heron}\n}\n`,
  'rigs/teal.rig': `use "../groups.rig"\nrig Teal {\n  ${roof}\n  cap front 5 in wide\n  ${teal}\n}\n`,
});

describe('a group', () => {
  const policies = 'policy Salt { inspect every 3 months }\npolicy Mine { inspect every 9 months }\n';
  it('that nobody knows is an unknown name, with the nearest', () => {
    const texts = with2(fleet(), 'group Coastel');
    const [finding] = said('unknown-name', texts, { path: 'rigs/heron.rig' });
    expect(finding?.message).toContain('No group `Coastel` is visible here; did you mean `Coastal`?');
  });
  it('has no effect where the rig names another policy', () => {
    const text = `${policies}group Coastal under Salt\nrig Heron under Mine {\n  ${roof}\n  group Coastal\n}\n`;
    const [finding] = said('group-without-effect', text);
    expect(finding).toMatchObject({ severity: 'information', rig: 'Heron' });
    expect(under(text, finding!)).toBe('group Coastal');
    expect(finding?.related).toHaveLength(1);
    expect(said('group-without-effect', text.replace('under Mine', 'under Salt'))).toEqual([]);
    expect(said('group-without-effect', text.replace(' under Mine', ''))).toEqual([]);
    expect(said('group-without-effect', text.replace('group Coastal under Salt', 'group Coastal'))).toEqual([]);
  });
});

describe('a yard', () => {
  it('serves what is in the fleet', () => {
    const text = fleet(`yard Harbour { ${ladder}  serves Herron, Coastal }`);
    const [finding, ...others] = said('serves-unknown', with2(text, '', 'group Coastal'));
    expect(others).toEqual([]);
    expect(under(text, finding!)).toBe('Herron');
    const after = mended(text, finding!);
    expect(after).toContain('serves Heron, Coastal');
    expect(said('serves-unknown', with2(after, '', 'group Coastal'))).toEqual([]);
    expect(said('serves-unknown', with2(text))).toHaveLength(2);
  });
  it('shares no rig with another yard', () => {
    const text = fleet(`yard Harbour { ${ladder}  serves Coastal }`, 'yard Inland { serves Heron, Teal }');
    const [finding, ...others] = said('served-twice', with2(text, 'group Coastal'));
    expect(others).toEqual([]);
    expect(under(text, finding!)).toBe('Heron');
    expect(finding?.message).toContain('Heron is served by Harbour already, and by Inland here');
    expect(finding?.related?.map(({ at }) => text.slice(...at))).toEqual(['Coastal']);
    expect(said('served-twice', with2(text, 'group Northern'))).toEqual([]);
    const inOne = fleet(`yard Harbour { ${ladder}  serves Coastal, Heron }`);
    expect(said('served-twice', with2(inOne, 'group Coastal'))).toEqual([]);
  });
  it('that is served a group twice says so once', () => {
    const text = fleet('yard A { serves Coastal }', 'yard B { serves Coastal }');
    expect(said('served-twice', with2(text, 'group Coastal', 'group Coastal'))).toHaveLength(1);
  });
  it('has a name of its own', () => {
    const text = fleet('yard A { serves Heron }', 'yard A { serves Teal }');
    const [finding] = said('yard-twice', with2(text));
    expect(finding?.severity).toBe('error');
    expect(said('yard-twice', with2(text.replace('yard A { serves Teal', 'yard B { serves Teal')))).toEqual([]);
  });
  it('that serves nobody is a hint', () => {
    const text = fleet(`yard Harbour { ${ladder} }`);
    expect(said('yard-serves-nobody', with2(text))).toMatchObject([{ severity: 'hint' }]);
    expect(said('yard-serves-nobody', with2(text.replace(' }', '  serves Heron }')))).toEqual([]);
  });
  it('without a crew is told, and so are rigs that none serves', () => {
    const text = fleet(`yard Harbour { ${ladder}  serves Heron }`);
    const [finding] = said('no-crew-here', with2(text));
    expect(finding?.message).toContain('No yard serves `Teal`, and Yards has no crew of its own');
    expect(said('no-crew-here', with2(fleet('crew 1 for 8 h on mon', text.split('\n')[2] ?? '')))).toEqual([]);
    const empty = fleet('crew 1 for 8 h on mon', 'yard Harbour { serves Heron }');
    expect(said('no-crew-here', with2(empty))[0]?.message).toContain('Harbour has no crew of its own');
    expect(said('no-crew-here', with2(fleet()))).toEqual([]);
  });
  it('has days that do not end before they begin, and stock of materials that are known', () => {
    const text = fleet(`yard Harbour { closed 2027-01-03 to 2026-12-24  on-hand Lapp 2 cartridges  serves Heron }`);
    expect(said('days-reversed', with2(text))).toHaveLength(1);
    expect(said('unknown-material', with2(text))).toHaveLength(1);
  });
  it('has bays for the rigs that it serves', () => {
    const text = fleet(`yard Harbour { ${ladder}  bay Shed indoor 10 ft  serves Heron }`);
    expect(said('bay-too-short', with2(text))[0]?.message).toContain('the roof of `Heron` is longer');
    const other = fleet('bay Tent indoor 10 ft', `yard Harbour { ${ladder}  serves Heron, Teal }`);
    expect(said('bay-too-short', with2(other))).toEqual([]);
  });
  it('has free days of its own', () => {
    const text = fleet(
      `yard Harbour { ${ladder}  closed 2027-05-03 to 2027-05-07  serves Heron }`,
      'crew 1 for 8 h on mon',
    );
    const plan = 'inspect after 2027-05-03 before 2027-05-06';
    const told = said('no-free-day-in-fleet', with2(text, plan, plan));
    expect(told.map(({ rig }) => rig)).toEqual(['Heron']);
  });
});

describe('crews', () => {
  it('are known by their names', () => {
    const text = fleet(ladder, 'off Lader 2027-07-01 to 2027-07-14', 'skill Ladder tape');
    const [finding] = said('crew-unknown', with2(text));
    const after = mended(text, finding!);
    expect(after).toContain('off Ladder 2027');
    expect(said('crew-unknown', with2(after))).toEqual([]);
    const unnamed = fleet('crew 2 for 8 h each on mon to fri', 'off Ladder 2027-07-01');
    expect(said('crew-unknown', with2(unnamed))[0]?.message).toContain('Its crew has no name yet');
  });
  it('may be spoken of in any block of their fleet', () => {
    const text = fleet('off Ladder 2027-07-01', `yard Harbour { ${ladder}  serves Heron }`);
    expect(said('crew-unknown', with2(text))).toEqual([]);
  });
  it('have a name each where there are several, in the whole fleet', () => {
    const text = fleet(ladder, 'crew 1 for 8 h on mon', `yard Harbour { ${ladder}  serves Heron }`);
    expect(said('crew-twice', with2(text))).toHaveLength(1);
    const [finding, ...others] = said('crew-without-name', with2(text));
    expect(under(text, finding!)).toBe('crew 1 for 8 h on mon');
    expect(others).toEqual([]);
    const apart = fleet('crew 1 for 8 h on mon', 'yard Harbour { crew 1 for 8 h on tue  serves Heron }');
    expect(said('crew-without-name', with2(apart))).toEqual([]);
  });
  it('that can do what is planned', () => {
    const text = fleet(
      ladder,
      'skill Ladder tape, seal, strip',
      'yard Harbour { crew Wash 1 for 6 h on sat  skill Wash wash, inspect  serves Heron }',
    );
    const texts = with2(text, 'tape front', 'tape front');
    const [finding, ...others] = said('no-skill-for-plan', texts);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ rig: 'Heron', file: 'rigs/heron.rig', severity: 'warning' });
    expect(finding?.message).toContain('In Yards: no crew at Harbour does `tape`.');
    expect(said('no-skill-for-plan', with2(text, 'wash', 'strip front'))).toEqual([]);
    const accepted = 'accept no-skill-for-plan until 2027-12-31 because "a shop does it"\n  tape front';
    expect(said('no-skill-for-plan', with2(text, accepted))).toEqual([]);
  });
  it('of a sound fleet are nothing to be told of', () => {
    const text = fleet(ladder, `yard Harbour { crew Wash 1 for 6 h on sat  serves Coastal }`);
    const rules = found(with2(text, 'group Coastal')).map(({ rule }) => rule);
    expect(rules.filter((rule) => /crew|yard|serve|skill|group/.test(rule))).toEqual([]);
  });
});
