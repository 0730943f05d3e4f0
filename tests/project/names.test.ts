import { describe, expect, it } from 'vitest';
import { check, projectOf } from './workspace.ts';

const rules = (texts: Record<string, string>, path: string) => check(texts, path).map((finding) => finding.rule);
const model = 'model Alder {\n  roof 28 ft by 8 ft epdm\n  edge curbside, roadside\n  opening vent 16 in by 16 in\n}\n';

describe('use', () => {
  it('makes names visible, through other files too', () => {
    const texts = { 'a.rig': 'use "b.rig"\nrig Teal like Alder\n', 'b.rig': 'use "c.rig"\n', 'c.rig': model };
    expect(rules(texts, 'a.rig')).toEqual([]);
    expect(
      projectOf(texts)
        .rigs('a.rig')[0]
        ?.rig.items.map((item) => item.name),
    ).toEqual(['curbside', 'roadside', 'vent']);
  });

  it('names what is not visible, and offers the nearest name', () => {
    const [finding] = check({ 'a.rig': 'use "b.rig"\nrig Teal like Aldr\n', 'b.rig': model }, 'a.rig');
    expect(finding).toMatchObject({ rule: 'unknown-name', message: expect.stringContaining('did you mean `Alder`?') });
    expect(finding?.fixes?.[0]?.text).toBe('Alder');
  });

  it('says that a file is not there, at the path', () => {
    const text = 'use "nowhere.rig"\n';
    const [finding] = check(text);
    expect(finding?.rule).toBe('file-not-found');
    expect(text.slice(...(finding?.at ?? [0, 0]))).toBe('"nowhere.rig"');
  });

  it('never leaves the workspace', () => {
    expect(rules({ 'a.rig': 'use "../../secrets.rig"\n' }, 'a.rig')).toEqual(['use-leaves-workspace']);
    expect(rules({ 'a.rig': 'use "/etc/passwd"\n' }, 'a.rig')).toEqual(['use-leaves-workspace']);
  });

  it('may go in a circle: the names are there, and it is said', () => {
    const texts = { 'a.rig': `use "b.rig"\n${model}`, 'b.rig': 'use "a.rig"\nrig Teal like Alder\n' };
    expect(rules(texts, 'b.rig').filter((rule) => rule !== 'use-circle')).toEqual([]);
    expect(projectOf(texts).rigs('b.rig')[0]?.rig.items).toHaveLength(3);
  });

  it('tells a name that comes from two files, with both places', () => {
    const texts = { 'a.rig': 'use "b.rig"\nuse "c.rig"\n', 'b.rig': model, 'c.rig': model };
    const [finding] = check(texts, 'a.rig');
    expect(finding).toMatchObject({ rule: 'name-twice', message: expect.stringContaining('b.rig and c.rig') });
    expect(finding?.related).toHaveLength(2);
  });

  it('reaches one file by two ways without complaint', () => {
    const texts = {
      'a.rig': 'use "b.rig"\nuse "c.rig"\nrig Teal like Alder\n',
      'b.rig': 'use "d.rig"\n',
      'c.rig': 'use "d.rig"\n',
      'd.rig': model,
    };
    expect(rules(texts, 'a.rig')).toEqual([]);
  });

  it('lets a name of the user hide one of the built-in library', () => {
    const texts = { 'a.rig': 'tape GenericSeamTape { width 3 in }\n' };
    expect(rules(texts, 'a.rig')).toEqual([]);
    expect(projectOf(texts).material('a.rig', 'GenericSeamTape')).toMatchObject({
      width: { value: { text: '3 in' }, origin: { kind: 'record' } },
    });
  });
});

describe('like', () => {
  it('takes over description, never identity, records or plans', () => {
    const texts = {
      'a.rig': `${model}rig One like Alder {\n  vin "11111111111111111"\n  washed 2026-04-01\n  wash after 2027-04-15\n  kept-until 2030-01-01\n}\nrig Two like One\n`,
    };
    const two = projectOf(texts).rigs('a.rig')[2]?.rig;
    expect(two?.items).toHaveLength(3);
    expect(two).toMatchObject({ bases: ['One', 'Alder'], identity: {}, events: [], plans: [] });
  });

  it('replaces a line with the same head and name whole, and `without` drops one', () => {
    const texts = { 'a.rig': `${model}rig Teal like Alder {\n  opening vent 20 in by 20 in\n  without roadside\n}\n` };
    const rig = projectOf(texts).rigs('a.rig')[1]?.rig;
    expect(rig?.items.map((item) => item.name)).toEqual(['curbside', 'vent']);
    expect(rig?.items[1]?.size).toMatchObject({ along: { text: '20 in' } });
  });

  it('says that a dropped seam was dropped, where a record names it', () => {
    const findings = check(`${model}rig Teal like Alder {\n  without vent\n  sealed 2026-04-01 vent with unknown\n}\n`);
    expect(findings.find((finding) => finding.rule === 'unknown-seam')).toMatchObject({
      message: expect.stringContaining('`without`'),
      related: [expect.anything()],
    });
  });

  it('shows a circle once for each member and counts them as having no base', () => {
    const text = 'model A like B\nmodel B like C\nmodel C like A\n';
    const findings = check(text).filter((finding) => finding.rule === 'like-circle');
    expect(findings.map((finding) => finding.message)).toEqual([
      'This goes in a circle: `A` is like `B` is like `C` is like `A`.',
      'This goes in a circle: `B` is like `C` is like `A` is like `B`.',
      'This goes in a circle: `C` is like `A` is like `B` is like `C`.',
    ]);
  });

  it('refuses a base of another kind', () => {
    expect(rules({ 'a.rig': 'tape A { width 4 in }\nsealant B like A { grade non-sag }\n' }, 'a.rig')).toContain(
      'like-another-kind',
    );
  });

  it('lets one price of a material be replaced by its size', () => {
    const texts = {
      'a.rig':
        'tape A {\n  width 4 in\n  roll 50 ft at 61 USD\n  roll 25 ft at 34 USD\n}\ntape B like A {\n  roll 25 ft at 33 USD\n}\n',
    };
    const tape = projectOf(texts).material('a.rig', 'B');
    expect(tape?.kind === 'tape' && tape.rolls.map((roll) => [roll.size.text, roll.price?.text])).toEqual([
      ['50 ft', '61 USD'],
      ['25 ft', '33 USD'],
    ]);
  });
});

describe('policy', () => {
  it("is the one the rig is under, else that of its base, else the built-in one, never the fleet's", () => {
    const texts = {
      'a.rig': `policy Yard { inspect every 3 months }\npolicy Shop { inspect every 1 month }\nmodel Alder { roof 28 ft by 8 ft }\nrig One like Alder under Yard\nrig Two like One\nrig Three like Alder\nfleet All under Shop { rigs "a.rig" }\n`,
    };
    const names = projectOf(texts)
      .rigs('a.rig')
      .map(({ rig }) => [rig.name, rig.policy.name, rig.policy.inspect.value.text]);
    expect(names).toEqual([
      ['Alder', 'Standard', '6 months'],
      ['One', 'Yard', '3 months'],
      ['Two', 'Yard', '3 months'],
      ['Three', 'Standard', '6 months'],
    ]);
    expect(projectOf(texts).fleets('a.rig')[0]?.fleet.policy.name).toBe('Shop');
  });

  it('keeps what a shorter follow-up list does not speak of', () => {
    const texts = { 'a.rig': 'policy Yard { follow-up hairline within 2 months }\nrig One under Yard\n' };
    const followUp = projectOf(texts).rigs('a.rig')[0]?.rig.policy.followUp ?? {};
    expect(followUp.hairline?.value.text).toBe('2 months');
    expect(followUp.open?.origin.file).toBe('library/policy.rig');
  });
});

describe('histories', () => {
  const rig = `${model}rig Teal like Alder {\n  records "teal/*.rig"\n  washed 2024-05-01\n}\n`;

  it('count when the rig claims them, in the order of time', () => {
    const texts = {
      'a.rig': rig,
      'teal/2025.rig': 'history Teal { washed 2025-05-01 }\n',
      'teal/2023.rig': 'history Teal { washed 2023-05-01 }\n',
      'other/x.rig': 'history Teal { washed 2026-05-01 }\n',
    };
    expect(
      projectOf(texts)
        .rigs('a.rig')[1]
        ?.rig.events.map((event) => event.last),
    ).toEqual(['2023-05-01', '2024-05-01', '2025-05-01']);
  });

  it('are seen with the names of the rig that claims them, and their slips stand in their own file', () => {
    const texts = { 'a.rig': rig, 'teal/2025.rig': 'history Teal { sealed 2025-05-01 vnt with unknown }\n' };
    const finding = check(texts, 'a.rig').find((one) => one.rule === 'unknown-seam');
    expect(finding).toMatchObject({ file: 'teal/2025.rig', message: expect.stringContaining('did you mean `vent`?') });
  });

  it('belong to a seam under its former name', () => {
    const texts = {
      'a.rig': `${model}rig Teal like Alder {\n  formerly hatch to vent\n  sealed 2024-05-01 hatch with unknown\n}\n`,
    };
    expect(
      projectOf(texts)
        .rigs('a.rig')[1]
        ?.rig.events[0]?.places.map((place) => place.item),
    ).toEqual(['vent']);
    expect(check(texts, 'a.rig').map((finding) => finding.rule)).not.toContain('unknown-seam');
  });
});

describe('sets', () => {
  const text = `model Alder {\n  roof 28 ft by 8 ft\n  edge curbside, roadside\n  opening vent 16 in by 16 in\n  gasket air-con 14 in by 14 in\n  drain spout\n}\nrig Teal like Alder {\n  sealed 2024-05-01 all with unknown\n  inspected 2025-05-01 {\n    vent cracked\n    rest sound\n  }\n  taped 2025-06-01 edges with unknown\n}\n`;
  const events = () => projectOf({ 'a.rig': text }).rigs('a.rig')[1]?.rig.events ?? [];

  it('`all` of work means the seams, never a gasket or a drain', () => {
    expect(events()[0]?.places.map((place) => place.item)).toEqual(['curbside', 'roadside', 'vent']);
  });
  it('`rest` of a look is every item that was not named', () => {
    expect(events()[1]?.findings[1]?.places.map((place) => place.item)).toEqual([
      'curbside',
      'roadside',
      'air-con',
      'spout',
    ]);
  });
  it('the kinds in the plural mean those of the kind', () => {
    expect(events()[2]?.places.map((place) => place.item)).toEqual(['curbside', 'roadside']);
  });
});

describe('sides', () => {
  it.each([
    ['right', 'curbside'],
    ['left', 'roadside'],
    ['nearside', 'curbside'],
    ['offside', 'roadside'],
  ])('%s of travel is the %s where the kerb is on the right', (word, side) => {
    expect(
      projectOf({ 'a.rig': `rig A {\n  roof 20 ft by 8 ft\n  edge ${word}\n}\n` }).rigs('a.rig')[0]?.rig.items[0]?.name,
    ).toBe(side);
  });
  it('left is the curb side where the policy says so', () => {
    expect(
      projectOf({ 'a.rig': 'policy P { curb left }\nrig A under P {\n  roof 20 ft by 8 ft\n  edge left\n}\n' }).rigs(
        'a.rig',
      )[0]?.rig.items[0]?.name,
    ).toBe('curbside');
  });
});

describe('records of one day', () => {
  const rig = (inside: string) =>
    `rig A {\n  roof 20 ft by 8 ft\n  opening vent 16 in by 16 in\n  records "h.rig"\n${inside}}\n`;
  const words = (texts: Record<string, string>) =>
    projectOf(texts)
      .rigs('a.rig')[0]
      ?.rig.events.map((event) => event.record.word);

  it('stand as written within a block', () => {
    expect(words({ 'a.rig': rig('  sealed 2026-04-20 vent with unknown\n  stripped 2026-04-20 vent\n') })).toEqual([
      'sealed',
      'stripped',
    ]);
  });
  it('between blocks their times settle it', () => {
    const texts = {
      'a.rig': rig('  sealed 2026-04-20 09:00 vent with unknown\n'),
      'h.rig': 'history A { stripped 2026-04-20 15:00 vent }\n',
    };
    expect(words(texts)).toEqual(['sealed', 'stripped']);
    expect(rules(texts, 'a.rig')).not.toContain('same-day-order');
  });
  it('without times a fixed order of verbs does, with a warning', () => {
    const texts = {
      'a.rig': rig('  sealed 2026-04-20 vent with unknown\n'),
      'h.rig': 'history A { stripped 2026-04-20 vent }\n',
    };
    expect(words(texts)).toEqual(['stripped', 'sealed']);
    expect(rules(texts, 'a.rig')).toContain('same-day-order');
  });
});

describe('accept', () => {
  const text = (accept: string) => `rig A {\n  roof 20 ft by 8 ft\n  ${accept}\n}\n`;
  it('of a rule that is not there is an error with the nearest name', () => {
    expect(check(text('accept look-hrad-due until 2027-01-01 because "x"'))[0]?.rule).toBe('unknown-rule');
  });
  it('cannot silence what the reader cannot read', () => {
    expect(rules({ 'a.rig': text('accept wrong-value until 2027-01-01 because "x"') }, 'a.rig')).toContain(
      'accept-not-possible',
    );
  });
});

describe('what could not be read', () => {
  it('keeps the names of half-typed items known', () => {
    const findings = check(
      'rig A {\n  roof 20 ft by 8 ft\n  opening vent 16 by 16 in\n  sealed 2026-04-20 vent with unknown\n}\n',
    );
    expect(findings.filter((finding) => finding.severity === 'error').map((finding) => finding.rule)).toEqual([
      'wrong-value',
    ]);
  });
});

describe('a file that changes', () => {
  it('is read again, and so is what depends on it', () => {
    const texts: Record<string, string> = { 'a.rig': 'use "b.rig"\nrig Teal like Alder\n', 'b.rig': model };
    const project = projectOf(texts);
    expect(project.rigs('a.rig')[0]?.rig.items).toHaveLength(3);
    texts['b.rig'] = model.replace('  opening vent 16 in by 16 in\n', '');
    project.changed(['b.rig']);
    expect(project.rigs('a.rig')[0]?.rig.items).toHaveLength(2);
    expect([...project.dependsOn('a.rig')].sort()).toEqual(['a.rig', 'b.rig']);
  });
  it('that was missing is found once it comes', () => {
    const texts: Record<string, string> = { 'a.rig': 'use "b.rig"\nrig Teal like Alder\n' };
    const project = projectOf(texts);
    expect(project.problems('a.rig').map((problem) => problem.rule)).toEqual(['file-not-found']);
    texts['b.rig'] = model;
    project.changed(['b.rig']);
    expect(project.problems('a.rig')).toEqual([]);
  });
});

describe('what a material bonds to', () => {
  const tape = (text: string, name = 'B') => projectOf({ 'a.rig': text }).material('a.rig', name)?.bonding ?? {};

  it('may stand in several lines of one block', () => {
    const bonding = tape('tape B {\n  bonds-to epdm\n  bonds-to aluminium\n}\n');
    expect([bonding.epdm?.value, bonding.aluminium?.value]).toEqual(['yes', 'yes']);
    expect(check('tape B {\n  bonds-to epdm\n  bonds-to aluminium\n}\n')).toEqual([]);
  });
  it('is replaced whole by a nearer block, and the nearest word about a surface holds', () => {
    const bonding = tape(
      'tape A {\n  bonds-to epdm, aluminium\n}\ntape B like A {\n  bonds-to abs\n  never-on pvc\n}\n',
    );
    expect([bonding.abs?.value, bonding.pvc?.value]).toEqual(['yes', 'never']);
    const nearer = tape('tape A {\n  bonds-to pp\n}\ntape B like A {\n  never-on pp\n}\n');
    expect(nearer.pp?.value).toBe('never');
  });
  it('is filled up by the built-in material where the label is silent', () => {
    expect(tape('tape B {\n  bonds-to abs\n}\n').silicone).toMatchObject({
      value: 'never',
      origin: { kind: 'common practice' },
    });
  });
});

describe('the suspects of a leak', () => {
  it('are places like any other: former names hold, unknown ones are named', () => {
    const texts = {
      'a.rig': `${model}rig Teal like Alder {\n  formerly hatch to vent\n  leaked 2024-05-01 suspect hatch\n  leaked 2024-06-01 suspect vnt\n}\n`,
    };
    expect(
      projectOf(texts)
        .rigs('a.rig')[1]
        ?.rig.events[0]?.places.map((place) => place.item),
    ).toEqual(['vent']);
    expect(check(texts, 'a.rig').find((finding) => finding.rule === 'unknown-seam')?.message).toContain(
      'did you mean `vent`?',
    );
  });
});

describe('a default that nobody wrote', () => {
  it('is never taken for the word of the user', () => {
    const project = projectOf({
      'a.rig': 'sealant Plain { grade non-sag }\ntape Odd {\n  family silicone\n  width 4 in\n}\n',
    });
    const sealant = project.material('a.rig', 'Plain');
    expect(sealant?.kind === 'sealant' && sealant.coatsAtMost.origin.kind).toBe('common practice');
    const tape = project.material('a.rig', 'Odd');
    expect(tape?.kind === 'tape' && [tape.endLap.value.text, tape.endLap.origin.file]).toEqual([
      '2 in',
      'library/tapes.rig',
    ]);
  });
});

describe('a file that says nothing', () => {
  it.each(['', '\n\n', '# later\n'])('%j is told how to begin, and that is no error', (text) => {
    expect(check(text)).toMatchObject([
      { rule: 'empty-file', severity: 'information', message: expect.stringContaining('`rig Heron {`') },
    ]);
  });
});
