import { describe, expect, it } from 'vitest';
import { examined, fleetsExamined } from '../../language/rules/check.ts';
import { summaryOf, workspaceFindings } from '../../language/rules/workspace.ts';
import { projectOf, today } from '../project/workspace.ts';
import { found, mended, said, under } from './asked.ts';

const rig =
  'use "policy.rig"\nrig Heron under Yard {\n  roof 28 ft by 8 ft epdm\n  edge roadside\n  found 2020-05-01 all with unknown\n}\n';
const yard = (...lines: readonly string[]) => `policy Yard {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
const files = (...lines: readonly string[]) => ({ 'a.rig': rig, 'policy.rig': yard(...lines) });
const rulesOf = (texts: Record<string, string>, asOf = today) =>
  found(texts, { path: 'a.rig', asOf }).map(({ rule }) => rule);

/** What the files of a workspace say together. */
function across(texts: Readonly<Record<string, string>>, asOf = today) {
  const project = projectOf(texts);
  const dates = { asOf, today: asOf };
  return workspaceFindings(
    Object.keys(texts).map((path) => {
      const { written, worked } = examined(project, path, dates).silences;
      const ofFleets = fleetsExamined(project, path, dates).worked;
      return summaryOf(project, path, { written, worked: [...worked, ...ofFleets] });
    }),
  ).filter(({ rule }) => rule === 'accept-unused');
}

const silent = 'accept inspection-overdue until 2027-04-15 because "all roofs are planned for spring"';
const off = 'severity inspection-overdue off because "the shop keeps its own list"';

describe('an accept in a policy', () => {
  it('silences the rule on the rigs under it until its date', () => {
    expect(rulesOf(files())).toContain('inspection-overdue');
    expect(rulesOf(files(silent))).not.toContain('inspection-overdue');
    expect(rulesOf(files(silent), '2027-04-15')).not.toContain('inspection-overdue');
    expect(rulesOf(files(silent), '2027-04-16')).toContain('inspection-overdue');
  });

  it('is told when it has expired, in the file of the policy', () => {
    const texts = files(silent);
    expect(said('accept-expired', texts, { path: 'policy.rig' })).toEqual([]);
    const [expired, ...more] = said('accept-expired', texts, { path: 'policy.rig', asOf: '2027-04-16' });
    expect(more).toEqual([]);
    expect(under(texts['policy.rig'], expired!)).toBe('inspection-overdue');
    expect(across(texts, '2027-04-16')).toEqual([]);
  });

  it('comes from the policy that a policy is like', () => {
    const texts = { 'a.rig': rig, 'policy.rig': `policy House {\n  ${silent}\n}\npolicy Yard like House {\n}\n` };
    expect(rulesOf(texts)).not.toContain('inspection-overdue');
    expect(across(texts)).toEqual([]);
  });

  it('has to give its reason and a rule that exists', () => {
    const without = files('accept inspection-overdue until 2027-04-15');
    expect(found(without, { path: 'policy.rig' }).map(({ severity }) => severity)).toContain('error');
    const wrong = files(
      'accept inspection-overdu until 2027-04-15 because "x"',
      'severity inspection-overdu off because "x"',
    );
    const unknown = said('unknown-rule', wrong, { path: 'policy.rig' });
    expect(unknown).toHaveLength(2);
    expect(mended(wrong['policy.rig'], unknown[0]!)).toContain('accept inspection-overdue until');
    for (const rule of ['unknown-seam', 'unused-use', 'accept-unused'])
      expect(
        said('accept-not-possible', files(`accept ${rule} until 2027-04-15 because "x"`), { path: 'policy.rig' }),
      ).toHaveLength(1);
  });

  it('for what only a fleet finds holds in the fleet', () => {
    const fleet = (policy: string) => ({
      'fleet.rig':
        'use "a.rig"\nuse "policy.rig"\nfleet Shore under Yard {\n  rigs "a.rig"\n  booked Heron 2026-12-01 to 2026-12-05\n  booked Heron 2026-12-04 to 2026-12-09\n}\n',
      'a.rig': rig,
      'policy.rig': yard(policy),
    });
    const overlap = (policy: string) => said('bookings-overlap', fleet(policy), { path: 'fleet.rig' });
    expect(overlap('horizon 9 years')).not.toEqual([]);
    const accept = 'accept bookings-overlap until 2027-04-15 because "two halves of one hire"';
    expect(overlap(accept)).toEqual([]);
    expect(across(fleet(accept))).toEqual([]);
  });
});

describe('a line of a policy that silences nothing', () => {
  it.each([silent, off])('is told once the whole workspace was looked at: %s', (line) => {
    expect(across(files(line))).toEqual([]);
    const texts = { 'policy.rig': yard(line), 'a.rig': rig.replace('under Yard', '') };
    const [unused, ...more] = across(texts);
    expect(more).toEqual([]);
    expect(unused).toMatchObject({ file: 'policy.rig', severity: 'hint' });
    expect(under(texts['policy.rig'], unused!)).toBe('inspection-overdue');
    expect(mended(texts['policy.rig'], unused!)).not.toContain('inspection-overdue');
  });

  it('is not concluded from files that cannot be read', () => {
    const texts = { 'policy.rig': yard(silent), 'a.rig': rig.replace('under Yard', '').replace('28 ft', '28') };
    expect(across(texts)).toEqual([]);
  });
});

describe('a rule that is off', () => {
  it('says nothing, and its line has to say why', () => {
    expect(rulesOf(files(off))).not.toContain('inspection-overdue');
    expect(said('off-without-reason', files(off), { path: 'policy.rig' })).toEqual([]);
    expect(said('off-without-reason', files('severity inspection-overdue off'), { path: 'policy.rig' })).toHaveLength(
      1,
    );
    expect(said('off-without-reason', files('severity inspection-overdue error'), { path: 'policy.rig' })).toEqual([]);
  });
});
