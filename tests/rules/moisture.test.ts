import { describe, expect, it } from 'vitest';
import { findings } from './snippet.ts';

const on = (asOf: string, lines: string, rule: string) => findings(lines, rule, { asOf });
const read = (day: string, text: string, item = 'vent') =>
  `  inspected ${day} {\n    ${item} sound moisture ${text}\n  }\n`;
const damp = (lines: string, asOf = '2026-06-20') =>
  findings(lines, undefined, { asOf }).filter(({ rule }) => rule.startsWith('moisture'));

describe('readings', () => {
  it.each([
    ['15 %', []],
    ['19 %', []],
    ['20 %', ['moisture-decay']],
    ['24 %', ['moisture-decay']],
    ['25 %', ['moisture-open-up']],
  ])('a first reading of %s', (text, rules) => {
    expect(damp(read('2026-06-01', text)).map(({ rule }) => rule)).toEqual(rules);
  });
  it.each([
    ['12 %', '15 %', []],
    ['12 %', '16 %', ['moisture-rising']],
    ['16 %', '12 %', []],
  ])('%s and then %s', (before, after, rules) => {
    expect(damp(read('2026-05-01', before) + read('2026-06-01', after)).map(({ rule }) => rule)).toEqual(rules);
  });
  it('names the reading before, its day and its place', () => {
    const [finding] = damp(read('2026-05-01', '14 %') + read('2026-06-01', '22 %'));
    expect(finding).toMatchObject({
      severity: 'warning',
      item: 'vent',
      message: expect.stringContaining('`vent` reads 22 % on 2026-06-01, 14 % on 2026-05-01.'),
      related: [{ message: '14 % here.' }],
    });
  });
  it('of several stretches say what the dampest one does', () => {
    const lines =
      '  inspected 2026-06-01 {\n    curbside sound from 0 ft to 5 ft moisture 20 %\n    curbside sound from 6 ft to 9 ft moisture 26 %\n  }\n';
    expect(damp(lines)).toMatchObject([{ rule: 'moisture-open-up', message: expect.stringContaining('26 %') }]);
  });
  it('end with a lower one', () => {
    expect(damp(`${read('2026-05-01', '24 %')}  dried 2026-06-01 vent moisture 14 %\n`)).toEqual([]);
  });
  it('are let be while a line about the item is half typed, and once the part is gone', () => {
    expect(damp(`${read('2026-05-01', '24 %')}  dried 2026-06-01 vent moisture\n`)).toEqual([]);
    const aerial = `  opening aerial 4 in by 4 in at 10 ft, 4 ft\n${read('2026-05-01', '26 %', 'aerial')}`;
    expect(damp(aerial)).toHaveLength(1);
    expect(damp(`${aerial}  removed 2026-05-02 aerial\n`)).toEqual([]);
  });
});

describe('a leak that comes back', () => {
  const leaked = (day: string, clauses: string) => `  leaked ${day} ${clauses}\n`;
  const again = (lines: string) => on('2026-06-20', lines, 'leak-again');
  const first = leaked('2026-05-10', 'inside "over the bed" suspect vent');
  const mended = '  sealed 2026-05-12 vent with Lap\n';
  it('is known by its words or by a suspect, and points to what did not end it', () => {
    const [finding] = again(first + mended + leaked('2026-06-10', 'inside "Over the bed"'));
    expect(finding?.message).toContain('Water came in where it did before (Over the bed): 2026-05-10.');
    expect(finding?.related?.map(({ message }) => message)).toEqual(['It leaked here.', 'This did not end it.']);
    expect(again(first + mended + leaked('2026-06-10', 'suspect vent'))).toHaveLength(1);
  });
  it('is another one elsewhere', () => {
    expect(again(first + mended + leaked('2026-06-10', 'inside "at the door" suspect dome'))).toEqual([]);
  });
  it('is closed by a later look that finds the place sound', () => {
    const twice = first + mended + leaked('2026-06-10', 'suspect vent');
    expect(again(`${twice}  sealed 2026-06-12 vent with Lap\n${read('2026-06-18', '12 %')}`)).toEqual([]);
  });
  it('is not asked about while a line about its suspect is half typed', () => {
    const twice = first + mended + leaked('2026-06-10', 'suspect vent');
    expect(again(`${twice}  sealed 2026-06-12 vent with\n`)).toEqual([]);
  });
});

describe('departures', () => {
  const found = (word: string, day = '2026-06-01') => `  inspected ${day} {\n    vent ${word}\n  }\n`;
  const trip = (first: string, last: string) => `  trip ${first} to ${last}\n`;
  const leaves = (lines: string, asOf = '2026-06-20') => on(asOf, lines, 'leaves-open');
  it.each(['open', 'lifting'])('with a seam found %s', (word) => {
    const [finding, ...more] = leaves(found(word) + trip('2026-06-25', '2026-06-28'));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      severity: 'warning',
      item: 'vent',
      message: expect.stringContaining(`found ${word} on 2026-06-01 and is not mended; the rig leaves on 2026-06-25`),
      related: [{ message: `Found ${word} here.` }],
    });
  });
  it.each(['sound', 'chalky', 'hairline', 'cracked'])('with a seam found %s are let pass', (word) => {
    expect(leaves(found(word) + trip('2026-06-25', '2026-06-28'))).toEqual([]);
  });
  it('on the day of the finding count', () => {
    expect(leaves(found('open', '2026-06-20') + trip('2026-06-20', '2026-06-21'))).toHaveLength(1);
    expect(leaves(found('open', '2026-06-20') + trip('2026-06-18', '2026-06-21'))).toEqual([]);
  });
  it('after a repair are let pass', () => {
    const mended = '  stripped 2026-06-05 vent\n  sealed 2026-06-05 vent with Lap\n';
    expect(leaves(found('open') + mended + trip('2026-06-25', '2026-06-28'))).toEqual([]);
  });
  it('under a cover are let pass as long as it does', () => {
    const covered = (until: string) => `  covered 2026-06-02 vent until ${until}\n`;
    expect(leaves(found('open') + covered('2026-06-30') + trip('2026-06-25', '2026-06-28'))).toEqual([]);
    expect(leaves(found('open') + covered('2026-06-10') + trip('2026-06-25', '2026-06-28'))).toHaveLength(1);
  });
  it('far ahead leave time to mend it', () => {
    const lines = found('open') + trip('2026-09-01', '2026-09-08');
    expect(leaves(lines)).toEqual([]);
    expect(leaves(lines, '2026-08-03')).toHaveLength(1);
  });
  it('that are past did happen; the next one matters more', () => {
    const past = found('lifting') + trip('2026-06-10', '2026-06-12');
    expect(leaves(past)[0]?.message).toContain('the rig left on 2026-06-10');
    expect(leaves(past + trip('2026-07-01', '2026-07-05'))[0]?.message).toContain('the rig leaves on 2026-07-01');
  });
});
