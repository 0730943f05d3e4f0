import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { duesOf, nextChange, nextDue, statuses, worst } from '../../language/due/index.ts';
import { addDays } from '../../language/values/calendar.ts';
import { projectOf, readFolder } from '../project/workspace.ts';
import { viewOf } from '../seams/view.ts';
import { dues } from './ask.ts';

const lines = `  stored 2026-11-01 to 2027-03-31
  trip 2026-07-10 to 2026-07-20
  inspected 2026-04-18 {
    curbside hairline from 6 ft to 9 ft
    roadside not-seen
    rest sound
  }
  struck 2026-06-01 front
  sealed 2026-06-02 dome with Lap
  taped 2026-06-20 front with Strip
  inspected 2026-07-01 { vent lifting }
  covered 2026-07-01 vent until 2026-07-08
  leaked 2026-08-01 suspect vent
  quote "shop A" 1450 USD for recoat until 2026-12-31
  inspect before 2026-12-31`;

describe('the dues of a rig', () => {
  const view = viewOf(lines);
  const days = fc.integer({ min: 0, max: 900 }).map((n) => addDays('2026-04-01', n));
  const on = (asOf: string) => duesOf(view, { asOf, today: asOf });

  it('stand in order of their dates, each with a reason and its inputs', () => {
    const all = dues(lines, '2026-08-02');
    expect(all.map((due) => due.date)).toEqual(all.map((due) => due.date).sort());
    for (const due of all) {
      expect(due.because).toMatch(/\.$/);
      for (const { name } of due.explained.inputs.slice(0, 1)) expect(due.explained.formula).toContain(name);
    }
  });

  it('no deadline falls inside storage', () => {
    fc.assert(
      fc.property(days, (asOf) => {
        for (const due of on(asOf)) {
          if (due.nature === 'deadline') expect(due.date < '2026-11-01' || due.date > '2027-03-31').toBe(true);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('nothing changes before the next change', () => {
    const shown = (asOf: string) =>
      on(asOf).map(({ kind, item, word, date, status }) => [kind, item, word, date, status].join(' '));
    for (const asOf of ['2026-08-02', '2026-08-20', '2026-10-05', '2027-04-20']) {
      const next = nextChange(on(asOf), asOf) as string;
      expect(next > asOf).toBe(true);
      for (let day = asOf; day < next; day = addDays(day, 1)) expect(shown(day)).toEqual(shown(asOf));
      expect(shown(next)).not.toEqual(shown(asOf));
    }
  });

  it('the worst is the gravest, then the longest overdue; the next is still ahead', () => {
    fc.assert(
      fc.property(days, (asOf) => {
        const all = on(asOf);
        const grave = (status: (typeof statuses)[number]) => statuses.indexOf(status);
        const most = worst(all)!;
        for (const due of all) {
          expect(grave(due.status)).toBeLessThanOrEqual(grave(most.status));
          if (due.status === most.status) expect(due.date >= most.date).toBe(true);
        }
        const ahead = all.filter((due) => due.days >= 0).map((due) => due.days);
        expect(nextDue(all)?.days).toBe(ahead.length === 0 ? undefined : Math.min(...ahead));
      }),
      { numRuns: 60 },
    );
    expect(worst([])).toBeUndefined();
    expect(nextDue([])).toBeUndefined();
    expect(nextChange([], '2026-01-01')).toBeUndefined();
  });

  it('a model has none', () => {
    const [model] = projectOf({ 'a.rig': 'model M {\n  roof 28 ft by 8 ft epdm\n  edge curbside\n}\n' }).rigs('a.rig');
    expect(duesOf(model!, { asOf: '2026-01-01', today: '2026-01-01' })).toEqual([]);
  });

  it('a line that cannot be read raises no alarm by what is missing', () => {
    const broken = 'rig T {\n  built 2020-01-01\n  roof 28 ft by 8 ft epdm\n  edge curbside\n  inspected 2026-0\n}\n';
    const [rig] = projectOf({ 'a.rig': broken }).rigs('a.rig');
    const kinds = duesOf(rig!, { asOf: '2026-10-01', today: '2026-10-01' }).map((due) => due.kind);
    expect(kinds).not.toContain('inspect');
  });
});

describe('the worked example', () => {
  const texts = readFolder('tests/worked-example');
  const view = projectOf(texts)
    .rigs('rigs/heron.rig')
    .find(({ rig }) => rig.name === 'Heron')!;
  const all = duesOf(view, { asOf: '2026-07-10', today: '2026-07-10' });
  const said = all.map(({ kind, item, word, date, status }) => [kind, item ?? word ?? '', date, status].join(' '));

  it('is inspected by the autumn, and looks after its leak and what was not seen', () => {
    expect(said).toContain('inspect  2026-10-18 not-due');
    expect(said).toContain('follow-up bath-vent 2026-06-18 overdue');
    expect(said).toContain('not-seen roadside 2026-10-18 not-due');
    expect(said).toContain('quote  2027-03-31 not-due');
  });

  it('has nothing to follow up where it was stripped and sealed again, or taped over', () => {
    expect(said.filter((text) => /^follow-up (skylight|curbside)/.test(text))).toEqual([]);
  });
});
