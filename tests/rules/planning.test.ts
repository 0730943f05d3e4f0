import { describe, expect, it } from 'vitest';
import { mended, rigWith, said, under } from './asked.ts';

const tape = 'tape Strip4 { width 4 in  roll 50 ft at 58 USD }\n';
const rig = (...lines: readonly string[]) => tape + rigWith('edge curbside', 'cap front 5 in wide', ...lines);
/** Inside the built-in season, 04-15 to 10-15. */
const spring = { asOf: '2027-05-01' };

describe('the dates of a plan', () => {
  it('cross', () => {
    for (const dates of [
      'after 2027-06-02 before 2027-06-01',
      'after 2027-06-02 on 2027-06-01',
      'on 2027-06-02 before 2027-06-01',
    ]) {
      const findings = said('after-beyond-before', rig(`tape front with Strip4 ${dates}`), spring);
      expect(findings, dates).toMatchObject([{ severity: 'error' }]);
    }
    expect(said('after-beyond-before', rig('wash after 2027-06-01 before 2027-06-01'), spring)).toEqual([]);
    expect(said('after-beyond-before', rig('wash after 2027-06 before 2027-06-01'), spring)).toEqual([]);
  });

  it('may be past, which is a warning and never an error', () => {
    const text = rig('tape front with Strip4 before 2027-04-30');
    const [finding] = said('plan-in-the-past', text, spring);
    expect(finding).toMatchObject({ severity: 'warning' });
    expect(finding?.message).toContain('by 2027-04-30, 1 day ago: record it as `taped DATE …`');
    expect(said('plan-in-the-past', text, { asOf: '2027-04-30' })).toEqual([]);
    expect(said('plan-in-the-past', rig('tape front with Strip4 after 2027-04-30'), spring)).toEqual([]);
    expect(said('plan-in-the-past', rig('tape front with Strip4'), spring)).toEqual([]);
  });

  it('that were kept for some of it are spoken of for the rest alone', () => {
    const text = rig('tape front, curbside with Strip4 before 2027-04-30', 'taped 2027-04-20 front with Strip4');
    expect(said('plan-done', text, spring)).toEqual([]);
    const [finding] = said('plan-in-the-past', text, spring);
    expect(finding?.message).toContain('Of this, `curbside` was to be done by 2027-04-30');
  });

  it('are no matter of days once all is done', () => {
    const text = rig('trip 2027-05-01 to 2027-06-30', 'tape front with Strip4 after 2027-04-16 before 2027-06-01');
    expect(said('no-free-day', text, spring)).toHaveLength(1);
    expect(
      said('no-free-day', `${text.trimEnd().slice(0, -1)}\ntaped 2027-04-20 front with Strip4\n}\n`, spring),
    ).toEqual([]);
  });

  it('that were kept are seen in the records: the plan can go', () => {
    const text = rig('tape front with Strip4 before 2027-04-30', 'taped 2027-04-20 front with Strip4');
    const [finding] = said('plan-done', text, spring);
    expect(said('plan-in-the-past', text, spring)).toEqual([]);
    expect(mended(text, finding!)).not.toContain('tape front with');
    const other = text.replace('taped 2027-04-20 front', 'taped 2027-04-20 curbside');
    expect(said('plan-in-the-past', other, spring)).toHaveLength(1);
    const older = text.replace('taped 2027-04-20', 'taped 2025-04-20');
    expect(said('plan-in-the-past', older, spring)).toHaveLength(1);
  });

  it('that were kept may be those of a look with findings', () => {
    const text = rig('inspect front before 2027-04-30', 'inspected 2027-04-20 {\n front sound\n}');
    expect(said('plan-done', text, spring)).toHaveLength(1);
  });
});

describe('a day', () => {
  it('out of season is not free, and the fix writes the first one that is', () => {
    const text = rig('tape front with Strip4 on 2027-03-01');
    const [finding] = said('day-not-free', text);
    expect(finding?.message).toContain('out of season (04-15 to 10-15)');
    const after = mended(text, finding!);
    expect(after).toContain('tape front with Strip4 on 2027-04-15');
    expect(said('day-not-free', after)).toEqual([]);
  });

  it('may be taken by one thing after the other', () => {
    const text = rig(
      'tape front with Strip4 on 2027-03-01',
      'stored 2026-12-01 to 2027-04-20',
      'trip 2027-04-21 to 2027-05-02',
    );
    const [finding] = said('day-not-free', text);
    expect(finding?.message).toContain('stored 2026-12-01 to 2027-04-20, on a trip 2027-04-21 to 2027-05-02');
    expect(finding?.message).toContain('could be done is 2027-05-03');
    expect(finding?.related).toHaveLength(2);
  });

  it('may be any for a look, and laid up or not for a cover', () => {
    expect(said('day-not-free', rig('inspect on 2027-03-01'))).toEqual([]);
    expect(said('day-not-free', rig('inspect on 2027-03-01', 'stored 2026-12-01 to 2027-04-20'))).toHaveLength(1);
    expect(said('day-not-free', rig('cover front on 2027-03-01', 'stored 2026-12-01 to 2027-04-20'))).toEqual([]);
  });
});

describe('a plan that has to be done by a day', () => {
  it('has no free day before the season, with the first that could', () => {
    const [finding] = said('no-free-day', rig('tape front with Strip4 before 2027-04-14'));
    expect(finding?.message).toContain('No day from 2026-11-25 to 2027-04-14 is free');
    expect(finding?.message).toContain('could be done is 2027-04-15');
    expect(finding?.fixes).toEqual([expect.objectContaining({ text: 'before 2027-04-15', unsure: true })]);
  });

  it('has one on the first day of the season', () => {
    expect(said('no-free-day', rig('tape front with Strip4 before 2027-04-15'))).toEqual([]);
    expect(said('no-free-day', rig('tape front with Strip4 after 2027-04-15'))).toEqual([]);
  });

  it('counts the days from `after` on', () => {
    const trip = 'trip 2027-05-10 to 2027-05-20';
    const text = rig('tape front with Strip4 after 2027-05-10 before 2027-05-20', trip);
    expect(said('no-free-day', text, spring)).toHaveLength(1);
    expect(said('no-free-day', text.replace('after 2027-05-10', 'after 2027-05-09'), spring)).toEqual([]);
  });

  it('may wait for ever', () => {
    const [finding] = said('no-free-day', rig('wash before 2027-05-20', 'trip 2026-01-01 to 2040-01-01'), spring);
    expect(finding?.message).toContain('No day within three years is free.');
  });
});

describe('a span of days', () => {
  it('that ends before it begins is turned', () => {
    const text = rig('stored 2027-03-31 to 2026-12-01');
    const [finding] = said('days-reversed', text);
    expect(under(text, finding!)).toBe('2027-03-31 to 2026-12-01');
    const after = mended(text, finding!);
    expect(after).toContain('stored 2026-12-01 to 2027-03-31');
    expect(said('days-reversed', after)).toEqual([]);
  });

  it('is looked at in fleets and histories too', () => {
    expect(said('days-reversed', 'fleet Yard { closed 2027-03-31 to 2026-12-01 }\n')).toHaveLength(1);
    expect(said('days-reversed', 'history Heron { trip 2027-03-31 to 2026-12-01 }\n')).toHaveLength(1);
    expect(said('days-reversed', 'fleet Yard { closed 2027-03-31 }\n')).toEqual([]);
  });
});

describe('a plan of more hours than its days have', () => {
  const short = (days: string) =>
    `policy P { workday 5 h }\n${rig('edge roadside', `tape curbside, roadside, front with Strip4 ${days}`)}`.replace(
      'rig Heron',
      'rig Heron under P',
    );
  const found = (text: string) => said('too-long-for-its-days', text, spring);

  it('is told with the hours, and lines that fit', () => {
    const [finding, ...more] = found(short('after 2027-05-08 before 2027-05-08'));
    expect(more).toEqual([]);
    expect(finding?.message).toMatch(
      /^For one person it takes \d+(\.\d)? h of work, \d days of 5 h, and no more than 1 day/,
    );
    expect(finding?.message).toMatch(/split it, each part with days of its own.*: `tape .* with Strip4`; then `tape /);
  });

  it('is not told where its days are enough, or nothing ends them', () => {
    expect(found(short('after 2027-05-08 before 2027-05-18'))).toEqual([]);
    expect(found(short('after 2027-05-08'))).toEqual([]);
  });
});
