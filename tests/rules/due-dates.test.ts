import { describe, expect, it } from 'vitest';
import { check } from '../project/workspace.ts';
import { findings } from './snippet.ts';

const on = (asOf: string, lines: string, rule: string) => findings(lines, rule, { asOf });
const found = (word: string, day = '2026-05-01') => `  inspected ${day} {\n    vent ${word}\n    rest sound\n  }\n`;

describe('half-typed lines', () => {
  it('raise no alarm about what they may have settled', () => {
    const open = found('open');
    expect(on('2026-06-20', open, 'follow-up-overdue')).toHaveLength(1);
    expect(on('2026-06-20', `${open}  sealed 2026-05-02 vent with\n`, 'follow-up-overdue')).toEqual([]);
    const leak = '  leaked 2026-05-10 suspect vent\n';
    expect(on('2026-06-20', leak, 'follow-up-overdue')).toHaveLength(1);
    expect(on('2026-06-20', `${leak}  sealed 2026-05-12 vent with\n`, 'follow-up-overdue')).toEqual([]);
  });
  it('hide nothing about other seams', () => {
    const lines = `${found('open')}  sealed 2026-05-02 dome with\n`;
    expect(on('2026-06-20', lines, 'follow-up-overdue')).toHaveLength(1);
  });
});

describe('one cause, one finding', () => {
  it('a seam to be stripped is not to be followed up as well', () => {
    const coats = [2022, 2023, 2024].map((year) => `  sealed ${year}-05-01 vent with Lap\n`).join('');
    const rules = (asOf: string) =>
      findings(coats + found('cracked'), undefined, { asOf })
        .filter(({ item, rule }) => item === 'vent' && /strip|follow-up/.test(rule))
        .map(({ rule }) => rule);
    expect(rules('2026-05-20')).toEqual(['follow-up-due-soon']);
    expect(rules('2026-06-20')).toEqual(['strip-due']);
  });
  it('a high reading is said once, a reading to be taken again by its date', () => {
    const rules = (text: string) =>
      findings(found(`sound moisture ${text}`), undefined, { asOf: '2026-05-20' })
        .filter(({ rule }) => /moisture|follow-up/.test(rule))
        .map(({ rule }) => rule);
    expect(rules('24 %')).toEqual(['moisture-decay']);
    expect(rules('17 %')).toEqual(['follow-up-overdue']);
    expect(rules('15 %')).toEqual([]);
  });
  it('two causes at one place stay two', () => {
    const messages = on('2026-05-20', found('open wet'), 'follow-up-overdue').map(({ message }) => message);
    expect(messages).toHaveLength(2);
    expect(messages.join()).toMatch(/found open.*found wet|found wet.*found open/);
    expect(
      on('2026-06-05', '  leaked 2026-05-10 suspect vent moisture 17 %\n', 'follow-up-overdue').map((f) => f.message),
    ).toEqual([expect.stringContaining('Water came in'), expect.stringContaining('17 % was read')]);
  });
});

describe('what a finding says', () => {
  it('an inspection names the longest gap only where that is past too', () => {
    const message = (asOf: string) => on(asOf, found('sound'), 'inspection-overdue')[0]?.message;
    expect(message('2027-05-01')).not.toContain('longest gap');
    expect(message('2027-05-02')).toContain('past the longest gap of the policy too, 12 months');
  });
  it('a date that was moved out of storage says so', () => {
    const lines = `${found('sound')}  stored 2026-10-20 to 2027-03-20\n`;
    const [finding] = on('2027-03-25', lines, 'inspection-overdue');
    expect(finding?.message).toContain('That falls into storage, so that it counts from 2027-03-21, after storage.');
  });
  it("points to the lines of the user's own that it hangs on, not to built-in ones", () => {
    const text = `policy P { follow-up lifting within 3 days }
rig A under P {
  roof 20 ft by 8 ft epdm
  opening vent 16 in by 16 in at 5 ft, 4 ft
  inspected 2026-06-01 { vent lifting }
  trip 2026-06-30 to 2026-07-02
}
`;
    const [mine] = check(text, 'a.rig', '2026-06-10').filter(({ rule }) => rule === 'follow-up-overdue');
    expect(mine?.related?.map(({ message }) => message)).toEqual(['within: 3 days']);
    const builtIn = text.replace('{ follow-up lifting within 3 days }', '{ currency USD }');
    const [other] = check(builtIn, 'a.rig', '2026-06-10').filter(({ rule }) => rule === 'follow-up-overdue');
    expect(other?.related).toEqual([]);
  });
});

describe('amounts', () => {
  it('only the rest of a whole container is let pass', () => {
    const rear = (used: string) => `  stripped 2026-06-01 rear\n  taped 2026-06-01 rear with Strip used ${used}\n`;
    const rules = (used: string) => on('2026-06-20', rear(used), 'used-too-much').length;
    expect(rules('1 roll of 50 ft')).toBe(0);
    expect(rules('2 rolls of 50 ft')).toBe(1);
    expect(rules('9 ft')).toBe(0);
    expect(rules('40 ft')).toBe(1);
  });
});

describe('a fleet', () => {
  const rig = (lines: string) =>
    `sealant Lap { family solvent-lap }\nrig Teal {\n  roof 20 ft by 8 ft epdm\n  opening vent 16 in by 16 in at 5 ft, 4 ft\n${lines}}\n`;
  const yard = (lines: string, more: string) =>
    check(
      { 'yard.rig': `use "teal.rig"\nfleet Yard {\n  rigs "teal.rig"\n${more}}\n`, 'teal.rig': rig(lines) },
      'yard.rig',
      '2026-06-10',
    );
  const named = (rule: string, lines: string, more: string) => yard(lines, more).filter((one) => one.rule === rule);
  const open = '  inspected 2026-06-09 {\n    vent open\n  }\n';
  const booked = '  booked Teal 2026-06-12 to 2026-06-14\n';
  it('does not let a rig go with an open seam', () => {
    const [finding] = named('leaves-open', open, booked);
    expect(finding).toMatchObject({ file: 'yard.rig', rig: 'Teal', severity: 'warning' });
    expect(finding?.message).toContain('Teal: `vent` was found open on 2026-06-09');
    expect(named('leaves-open', open.replace('open', 'sound'), booked)).toEqual([]);
    expect(named('leaves-open', `${open}  sealed 2026-06-10 vent with Lap\n`, booked)).toEqual([]);
  });
  it('keeps to what its rigs accept', () => {
    const accept = '  accept leaves-open until 2026-07-01 because "patched on the spot"\n';
    expect(named('leaves-open', open + accept, booked)).toEqual([]);
  });
  it('knows the lots that its rigs used', () => {
    const sealed = '  sealed 2026-06-05 vent with Lap lot "K1"\n';
    const bought = (day: string) => `  bought 2025-01-01 Lap 2 cartridges lot "K1" best-before ${day}\n`;
    expect(named('used-past-best-before', sealed, bought('2026-06-04'))).toHaveLength(1);
    expect(named('used-past-best-before', sealed, bought('2026-06-05'))).toEqual([]);
  });
  it.each([
    ['2026-06-09', ['best-before-past']],
    ['2026-06-10', ['best-before-soon']],
    ['2026-07-10', ['best-before-soon']],
    ['2026-07-11', []],
  ])('looks at its shelf: best before %s', (day, rules) => {
    const shelf = yard('', `  on-hand Lap 2 cartridges best-before ${day}\n`);
    expect(shelf.filter(({ rule }) => rule.startsWith('best-before')).map(({ rule }) => rule)).toEqual(rules);
  });
});
