// On which days plans of one rig are done, and why then.
import { describe, expect, test } from 'vitest';
import { Schedule } from '../../language/schedule/index.ts';
import { onlyVisit, scheduleOf, told } from './yard.ts';

const tape = 'tape front with Strip';

describe('the season', () => {
  test('taping waits for it and says so', () => {
    const visit = onlyVisit(scheduleOf(tape));
    expect(visit.days).toEqual(['2027-04-15']);
    expect(visit.because[0]).toBe('The season (04-15 to 10-15) begins on 2027-04-15.');
  });
  test('a season over the new year holds on both sides of it', () => {
    const south = 'policy South { season 10-01 to 03-31 }\n';
    const at = (asOf: string) => {
      const schedule = scheduleOf(
        '',
        asOf,
        `${south}rig Tern under South { roof 20 ft by 8 ft epdm\n cap front\n ${tape} }\n`,
      );
      return schedule.visits[0]?.days[0];
    };
    expect([at('2027-01-10'), at('2027-03-30'), at('2027-03-31'), at('2026-12-31')]).toEqual([
      '2027-01-11',
      '2027-03-31',
      '2027-10-01',
      '2027-01-01',
    ]);
  });
  test('a look and a temporary cover do not wait for it; a wash does', () => {
    expect(told(scheduleOf('inspect'))).toEqual(['2027-01-11 inspection']);
    expect(told(scheduleOf('cover vent'))).toEqual(['2027-01-11 temporary cover of vent']);
    expect(told(scheduleOf('wash'))).toEqual(['2027-04-15 wash']);
  });
  test('work of several days does not run out of it', () => {
    const lines = 'strip all after 2027-10-14\n seal all with Lap after 2027-10-14';
    const [visit] = scheduleOf(lines).visits;
    expect(visit?.days[0]).toBe('2028-04-15');
    expect(visit?.days.length).toBeGreaterThan(2);
  });
});

describe('written days', () => {
  test('after: not before that day; the as-of day itself is not planned', () => {
    expect(told(scheduleOf(`${tape} after 2027-06-02`))).toEqual(['2027-06-02 taping of front']);
    expect(told(scheduleOf(tape, '2027-06-02'))).toEqual(['2027-06-03 taping of front']);
  });
  test('before: kept, and told as the deadline', () => {
    const visit = onlyVisit(scheduleOf(`${tape} before 2027-05-01`));
    expect([visit.days, visit.deadline]).toEqual([['2027-04-15'], '2027-05-01']);
  });
  test('before, out of season: unplaced, with the constraint and the first day that would do', () => {
    const { visits, unplaced } = scheduleOf(`${tape} before 2027-03-01`);
    expect(visits).toEqual([]);
    expect(unplaced).toMatchObject([
      {
        rig: 'Gull',
        title: 'taping of front',
        items: ['front'],
        because: 'the season (04-15 to 10-15) begins on 2027-04-15',
        firstDay: '2027-04-15',
        file: 'a.rig',
      },
    ]);
  });
  test('before, already past: done at once and said to be late', () => {
    const visit = onlyVisit(scheduleOf(`${tape} before 2027-01-05`));
    expect(visit.days).toEqual(['2027-04-15']);
    expect(visit.because).toContain('It is late: it was due by 2027-01-05.');
  });
  test('on: that day or none', () => {
    expect(told(scheduleOf(`${tape} on 2027-07-07`))).toEqual(['2027-07-07 taping of front']);
    const { visits, unplaced } = scheduleOf(`stored 2027-06-01 to 2027-06-30\n ${tape} on 2027-06-20`);
    expect(visits).toEqual([]);
    expect(unplaced[0]).toMatchObject({
      because: 'Gull is laid up from 2027-06-01 to 2027-06-30',
      firstDay: '2027-07-01',
    });
  });
  test('on, already past: unplaced', () => {
    const { visits, unplaced } = scheduleOf('inspect on 2027-01-05');
    expect(visits).toEqual([]);
    expect(unplaced[0]?.firstDay).toBe('2027-01-11');
  });
  test('a month holds every day of it', () => {
    expect(told(scheduleOf(`${tape} on 2027-07`))).toEqual(['2027-07-01 taping of front']);
  });
  test('what a record did since then is not planned again', () => {
    expect(scheduleOf(`taped 2027-04-20 front with Strip\n ${tape} after 2027-04-15`, '2027-05-01').visits).toEqual([]);
    expect(scheduleOf(`taped 2027-04-20 rear with Strip\n ${tape} after 2027-04-15`, '2027-05-01').visits).toHaveLength(
      1,
    );
  });
});

describe('where the rig is', () => {
  test('not in storage and not on a trip', () => {
    expect(told(scheduleOf('stored 2026-11-01 to 2027-03-20\n inspect'))).toEqual(['2027-03-21 inspection']);
    expect(told(scheduleOf(`trip 2027-04-10 to 2027-05-02\n ${tape}`))).toEqual(['2027-05-03 taping of front']);
  });
  test('something open is covered even in storage', () => {
    expect(told(scheduleOf('stored 2026-11-01 to 2027-03-20\n cover vent'))).toEqual([
      '2027-01-11 temporary cover of vent',
    ]);
  });
  test('the drive clock keeps it there: 24 h after an evening free the second day', () => {
    const seal = 'seal vent with Lap after 2027-05-10';
    expect(told(scheduleOf(`trip 2027-05-12 to 2027-05-20\n ${seal}`))).toEqual(['2027-05-10 sealing of vent']);
    const visit = onlyVisit(scheduleOf(`trip 2027-05-11 to 2027-05-20\n ${seal}`));
    expect(visit.days).toEqual(['2027-05-21']);
    expect(visit.because[0]).toMatch(/Gull is on a trip from 2027-05-11 to 2027-05-20/);
    expect(visit.clocks.find(({ clock }) => clock === 'drive')).toEqual({
      clock: 'drive',
      materials: ['Lap'],
      notBefore: '2027-05-22',
      safeFrom: '2027-05-23',
    });
  });
  test('a visit of some days does not begin before a trip that it would run into', () => {
    const lines = 'trip 2027-04-16 to 2027-04-20\n strip all\n seal all with Lap';
    const visit = onlyVisit(scheduleOf(lines));
    expect(visit.days[0]).toBe('2027-04-21');
    expect(visit.days.length).toBeGreaterThan(1);
  });
});

describe('the cover clock', () => {
  const sealed = 'sealed 2027-04-20 front with Lap';
  test('of recorded sealant: from the safe day on', () => {
    const visit = onlyVisit(scheduleOf(`${sealed}\n ${tape}`, '2027-05-01'));
    expect(visit.days).toEqual(['2027-06-19']);
    expect(visit.because[0]).toBe('Lap laid on front on 2027-04-20 may be covered from 2027-06-19.');
  });
  test('a last day between the two figures forces it there, and says so', () => {
    const visit = onlyVisit(scheduleOf(`${sealed}\n ${tape} before 2027-06-01`, '2027-05-01'));
    expect(visit.days).toEqual(['2027-05-20']);
    expect(visit.because[0]).toMatch(/earliest from 2027-05-20, safely from 2027-06-19: its last day forces it/);
  });
  test('a last day before the low figure is refused', () => {
    const { visits, unplaced } = scheduleOf(`${sealed}\n ${tape} before 2027-05-10`, '2027-05-01');
    expect(visits).toEqual([]);
    expect(unplaced[0]).toMatchObject({
      because: 'Lap laid on front on 2027-04-20 may be covered from 2027-06-19',
      firstDay: '2027-06-19',
    });
  });
  test('only of the stretch that is taped', () => {
    const lines =
      'sealed 2027-04-20 curbside from 0 ft to 5 ft with Lap\n tape curbside from 10 ft to 15 ft with Strip';
    expect(told(scheduleOf(lines, '2027-05-01'))).toEqual(['2027-05-02 taping of curbside']);
  });
  test('what is stripped first has nothing to wait for', () => {
    expect(told(scheduleOf(`${sealed}\n strip front\n ${tape}`, '2027-05-01'))).toEqual([
      '2027-05-02 stripping of front; taping of front',
    ]);
  });
  test('of planned sealant that its dates put first', () => {
    const lines = 'seal front with Lap before 2027-04-20\n tape front with Strip after 2027-05-01';
    expect(told(scheduleOf(lines))).toEqual(['2027-04-15 sealing of front', '2027-06-14 taping of front']);
  });
  test('silicone takes no tape on any day', () => {
    const { unplaced } = scheduleOf(`sealed 2026-05-01 front with Rubber\n ${tape}`);
    expect(unplaced).toHaveLength(1);
    expect(unplaced[0]).not.toHaveProperty('firstDay');
    expect(unplaced[0]?.because).toBe('Rubber on front is never covered with tape: strip it first');
  });
});

describe('other constraints', () => {
  test('what has to be ordered is waited for, unless it is on hand', () => {
    const policy = 'policy Slow { lead Strip 6 weeks }\n';
    const one = (lines: string) =>
      scheduleOf('', '2027-05-01', `${policy}rig Tern under Slow { roof 20 ft by 8 ft epdm\n cap front\n ${lines} }\n`);
    expect(one(tape).visits[0]?.days).toEqual(['2027-06-12']);
    expect(one(tape).visits[0]?.because[0]).toBe('Strip takes 6 weeks to come.');
    expect(one(`on-hand Strip 50 ft\n ${tape}`).visits[0]?.days).toEqual(['2027-05-02']);
  });
  test('a gasket is not sealed, a wash waits until what was laid may be washed', () => {
    const gasket = scheduleOf('gasket air-con 14 in by 14 in at 9 ft, 4 ft\n seal air-con with Lap', '2027-05-01');
    expect([gasket.visits, gasket.unplaced[0]?.because]).toEqual([
      [],
      expect.stringMatching(/^air-con is not to be sealed/),
    ]);
    const lines = 'seal vent with Lap on 2027-06-01\n wash after 2027-06-02 before 2027-06-20';
    expect(told(scheduleOf(lines))).toEqual(['2027-06-01 sealing of vent', '2027-06-08 wash']);
  });
  test('drying out comes a day before anything is closed up', () => {
    expect(told(scheduleOf('seal vent with Lap\n dry vent', '2027-05-01'))).toEqual([
      '2027-05-02 drying out of vent',
      '2027-05-03 sealing of vent',
    ]);
  });
});

test('the schedule is plain data of its own form, and the same twice', () => {
  const lines = `${tape} after 2027-05-01\n inspect\n strip vent\n seal vent with Lap\n tape rear with Strip before 2027-02-01`;
  const schedule = scheduleOf(lines);
  expect(Schedule.parse(JSON.parse(JSON.stringify(schedule)))).toEqual(schedule);
  expect(scheduleOf(lines)).toEqual(schedule);
});
