import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { check, readFolder } from '../project/workspace.ts';
import { findings } from './snippet.ts';

/** The rules about a rig with these lines on a day; every seam was looked at on 2026-05-01 unless the lines say more. */
const on = (asOf: string, lines: string) => findings(lines, undefined, { asOf }).map((finding) => finding.rule);
const looked = '  inspected 2026-05-01 {\n    all sound\n  }\n';

describe('inspections', () => {
  it('are due soon, then overdue, then done', () => {
    expect(on('2026-09-20', looked)).not.toContain('inspection-due-soon');
    expect(on('2026-10-20', looked)).toContain('inspection-due-soon');
    expect(on('2026-11-02', looked)).toContain('inspection-overdue');
    expect(on('2026-11-02', `${looked}  inspected 2026-10-30 {\n    all sound\n  }\n`)).not.toContain(
      'inspection-overdue',
    );
  });
  it('say on the rig how long they are overdue, and are never an error', () => {
    const [finding] = findings(looked, 'inspection-overdue', { asOf: '2026-12-09' });
    expect(finding).toMatchObject({ severity: 'warning', message: expect.stringContaining('38 days overdue') });
  });
  it('are asked for after a blow', () => {
    expect(on('2026-06-03', `${looked}  struck 2026-06-01 front by branch\n`)).toContain('event-look-missing');
    expect(
      on(
        '2026-06-03',
        `${looked}  struck 2026-06-01 front by branch\n  inspected 2026-06-02 {\n    front sound\n  }\n`,
      ),
    ).not.toContain('event-look-missing');
  });
  it('what was not seen is asked for', () => {
    const lines = '  inspected 2026-01-01 {\n    front not-seen\n    rest sound\n  }\n';
    expect(on('2026-07-05', lines)).toContain('not-seen-too-long');
    expect(on('2026-03-05', lines)).not.toContain('not-seen-too-long');
  });
});

describe('findings', () => {
  const found = (word: string, more = '') => `  inspected 2026-05-01 {\n    vent ${word}\n    rest sound\n  }\n${more}`;
  it.each([
    ['cracked', '2026-06-05'],
    ['lifting', '2026-05-20'],
    ['open', '2026-05-10'],
  ])('%s without a follow-up in time', (word, day) => {
    expect(on(day, found(word))).toContain('follow-up-overdue');
    expect(on(day, found(word, '  stripped 2026-05-01 vent\n  sealed 2026-05-01 vent with Lap\n'))).not.toContain(
      'follow-up-overdue',
    );
  });
  it('stand at the seam in the record that found it', () => {
    const [finding] = findings(found('open'), 'follow-up-overdue', { asOf: '2026-05-10' });
    expect(finding?.item).toBe('vent');
    expect(finding?.message).toContain('Do not let the rig leave');
  });
  it('a rig that leaves with an open seam', () => {
    expect(on('2026-05-02', `${found('open')}  trip 2026-05-03 to 2026-05-06\n`)).toContain('leaves-open');
    expect(on('2026-05-02', `${found('cracked')}  trip 2026-05-03 to 2026-05-06\n`)).not.toContain('leaves-open');
    expect(
      on(
        '2026-05-02',
        `${found('open', '  covered 2026-05-01 vent until 2026-05-20\n')}  trip 2026-05-03 to 2026-05-06\n`,
      ),
    ).not.toContain('leaves-open');
  });
});

describe('sealant and tape', () => {
  it('are looked at hard by their interval; a sound finding moves the date on', () => {
    const sealed = '  sealed 2024-06-01 vent with Lap\n';
    expect(on('2026-05-02', `${sealed}${looked}`)).not.toContain('look-hard-due');
    expect(on('2026-05-02', sealed)).toContain('look-hard-due');
  });
  it('tape is in the second half of its life', () => {
    const taped = '  stripped 2020-06-01 front\n  taped 2020-06-01 front with Strip\n';
    expect(on('2026-05-02', taped)).not.toContain('tape-in-second-half');
    expect(on('2029-05-02', taped)).toContain('tape-in-second-half');
    expect(on('2036-05-02', taped)).toContain('tape-past-life');
  });
  it('a temporary cover expires', () => {
    const covered = '  covered 2026-05-01 vent until 2026-05-15\n';
    expect(on('2026-05-10', covered)).not.toContain('temporary-cover-expired');
    expect(on('2026-05-20', covered)).toContain('temporary-cover-expired');
  });
  it('on the shelf goes past its best-before date', () => {
    expect(on('2026-05-10', '  on-hand Lap 2 cartridges best-before 2026-05-01\n')).toContain('best-before-past');
    expect(on('2026-02-10', '  on-hand Lap 2 cartridges best-before 2026-05-01\n')).not.toContain('best-before-past');
  });
});

describe('leaks and moisture', () => {
  it('a repair closes no leak, a later dry look does', () => {
    const leak =
      '  leaked 2026-05-10 inside "over the bed" suspect vent\n  stripped 2026-05-12 vent\n  sealed 2026-05-12 vent with Lap\n';
    expect(on('2026-07-20', leak)).toContain('leak-not-looked-at');
    expect(on('2026-07-20', `${leak}  inspected 2026-06-10 {\n    vent sound\n  }\n`)).not.toContain(
      'leak-not-looked-at',
    );
  });
  it('a leak that comes back', () => {
    const twice =
      '  leaked 2026-05-10 suspect vent\n  sealed 2026-05-12 vent with Lap\n  leaked 2026-06-10 suspect vent\n';
    expect(on('2026-06-11', twice)).toContain('leak-again');
    expect(on('2026-06-11', '  leaked 2026-05-10 suspect vent\n')).not.toContain('leak-again');
  });
  it.each([
    ['14 %', '19 %', 'moisture-rising'],
    ['19 %', '20 %', 'moisture-decay'],
    ['19 %', '25 %', 'moisture-open-up'],
  ])('%s and then %s is %s', (before, after, rule) => {
    const reading = (day: string, text: string) => `  inspected ${day} {\n    vent sound moisture ${text}\n  }\n`;
    expect(on('2026-06-02', reading('2026-05-01', before) + reading('2026-06-01', after))).toContain(rule);
    expect(
      on('2026-06-02', reading('2026-05-01', '13 %') + reading('2026-06-01', '14 %')).filter((name) =>
        name.startsWith('moisture'),
      ),
    ).toEqual([]);
  });
});

describe('amounts used', () => {
  const sealed = (used: string) => `  sealed 2026-05-01 curbside with Lap used ${used}\n`;
  it('far below the take-off is a thin bead, far above a seam too few', () => {
    // 20 ft of 1 in by 1/4 in is 60 cubic inches, 3.2 cartridges of 10.3 fl oz.
    const rules = (used: string) => findings(sealed(used)).map((finding) => finding.rule);
    expect(rules('1 cartridge')).toContain('used-too-little');
    expect(rules('3 cartridges')).not.toContain('used-too-little');
    expect(rules('5 cartridges')).not.toContain('used-too-much');
    expect(rules('9 cartridges')).toContain('used-too-much');
  });
});

describe('policy and accept', () => {
  const rig = (policy: string, accept = '') =>
    `policy P { inspect every 6 months ${policy} }\nrig A under P {\n  roof 20 ft by 8 ft epdm\n  cap rear\n  inspected 2026-01-01\n${accept}}\n`;
  it('a policy sets the severity', () => {
    expect(
      check(rig('severity inspection-overdue error')).find((finding) => finding.rule === 'inspection-overdue')
        ?.severity,
    ).toBe('error');
    expect(check(rig('severity inspection-overdue off')).map((finding) => finding.rule)).not.toContain(
      'inspection-overdue',
    );
  });
  it('an accept silences a rule until its date, and is reported once it has expired', () => {
    const accept = (until: string) =>
      rig('', `  accept inspection-overdue until ${until} because "in the paint shop"\n`);
    expect(check(accept('2026-12-31')).map((finding) => finding.rule)).not.toContain('inspection-overdue');
    expect(check(accept('2026-11-01')).map((finding) => finding.rule)).toEqual(
      expect.arrayContaining(['inspection-overdue', 'accept-expired']),
    );
    expect(
      check(rig('', '  accept look-hard-due until 2026-12-31 because "x"\n')).map((finding) => finding.rule),
    ).toContain('accept-unused');
  });
});

describe('the examples', () => {
  it.each(['single', 'fleet'])('%s has no error, and little else', (name) => {
    const texts = readFolder(fileURLToPath(new URL(`../../examples/${name}`, import.meta.url)));
    const all = Object.keys(texts).flatMap((path) => check(texts, path, '2026-11-25'));
    expect(all.filter((finding) => finding.severity === 'error')).toEqual([]);
    expect(all.length).toBeLessThan(15);
  });
});

describe('a plan to inspect, past its day', () => {
  const rig = (looked: string) =>
    `policy P { inspect every 3 months }\nrig A under P {\n  roof 20 ft by 8 ft epdm\n  cap rear\n  inspected ${looked}\n  inspect before 2026-10-23\n}\n`;
  it('is not taken for kept by a look of another time', () => {
    expect(check(rig('2026-03-20')).map((finding) => finding.rule)).toContain('plan-in-the-past');
    expect(check(rig('2026-09-20')).map((finding) => finding.rule)).toContain('plan-done');
  });
});
