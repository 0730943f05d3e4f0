// What is done in one visit, and in which order.
import { describe, expect, test } from 'vitest';
import { labourLine, tasksOf as labourOf } from '../../language/estimate/labour.ts';
import { takeOff } from '../../language/estimate/takeoff.ts';
import { seamStates } from '../../language/seams/index.ts';
import { projectOf } from '../project/workspace.ts';
import { materials, onlyVisit, rig, scheduleOf, taskOf, tasksOf, told } from './yard.ts';

const summer = '2027-05-01';

describe('one visit', () => {
  test('what can be done together is, with one set-up and one wash', () => {
    const visit = onlyVisit(scheduleOf('tape front with Strip\n seal vent with Lap\n wash\n inspect', summer));
    expect(tasksOf(visit)).toEqual([
      'set-up',
      'inspect',
      'inspect-inside',
      'cover vent',
      'wash',
      'wipe front',
      'lay front',
      'press front',
      'gun-around vent',
      'cover vent',
    ]);
  });
  test('a plan waits for another of its season, not over a winter', () => {
    expect(told(scheduleOf('tape front with Strip\n seal vent with Lap after 2027-06-10', summer))).toEqual([
      '2027-06-10 taping of front; sealing of vent',
    ]);
    expect(told(scheduleOf('tape front with Strip\n seal vent with Lap after 2028-05-10', summer))).toEqual([
      '2027-05-02 taping of front',
      '2028-05-10 sealing of vent',
    ]);
  });
  test('a plan is not made late by another', () => {
    expect(
      told(scheduleOf('tape front with Strip before 2027-06-01\n seal vent with Lap after 2027-06-10', summer)),
    ).toEqual(['2027-05-02 taping of front', '2027-06-10 sealing of vent']);
  });
  test('a temporary cover is no visit with its repair', () => {
    expect(told(scheduleOf('seal vent with Lap\n cover vent', summer))).toHaveLength(2);
  });
  test('the hours are those of the estimate', () => {
    const lines = 'inspect\n strip all\n tape edges, caps with Strip\n seal all with Lap\n rebed skylight';
    const visit = onlyVisit(scheduleOf(lines, summer));
    const [view] = projectOf({ 'a.rig': `${materials}${rig('Gull', lines)}` }).rigs('a.rig');
    if (!view) throw new Error('no rig');
    const scene = { view, states: seamStates(view, summer), system: 'us' as const, asOf: summer };
    const counted = new Set<string>();
    const jobs = view.rig.plans.map((plan) => takeOff(plan, scene, counted));
    const hours = labourOf(jobs, view.rig.roof, 'us').map((task) => labourLine(1, task, view.rig.policy, 'us'));
    const minutes = hours.reduce((sum, line) => sum + (line && 'hours' in line ? 60 * line.hours.likely.value : 0), 0);
    expect(visit.minutes).toBeGreaterThan(600);
    expect(visit.minutes).toBeCloseTo(minutes, 1);
  });
  test('a long visit takes the days that follow, none longer than the workday', () => {
    const visit = onlyVisit(scheduleOf('strip all\n seal all with Lap', summer));
    expect(visit.days).toEqual(['2027-05-02', '2027-05-03', '2027-05-04', '2027-05-05'].slice(0, visit.days.length));
    expect(visit.days.length).toBeGreaterThanOrEqual(Math.ceil(visit.minutes / 480));
    for (const day of visit.days) {
      expect(visit.tasks.some(({ date }) => date === day)).toBe(true);
    }
  });
});

describe('on one seam', () => {
  test('stripped, then sealed, in the same visit', () => {
    const visit = onlyVisit(scheduleOf('seal vent with Lap\n strip vent after 2027-06-01', summer));
    expect(visit.days).toEqual(['2027-06-01']);
    expect(taskOf(visit, 'gun-around vent').after).toEqual(['Gull/strip/vent']);
    expect(taskOf(visit, 'gun-around vent').because).toEqual(['After the old sealant is off.']);
  });
  test('if the seal has no day, the strip is not left alone', () => {
    const { visits, unplaced } = scheduleOf('strip vent\n seal vent with Lap before 2027-02-01');
    expect(visits).toEqual([]);
    expect(unplaced.map(({ title }) => title)).toEqual(['stripping of vent', 'sealing of vent']);
  });
  test('bedded before it is sealed', () => {
    const visit = onlyVisit(scheduleOf('seal skylight with Lap\n rebed skylight', summer));
    expect(tasksOf(visit, 'rebed', 'gun-around')).toEqual(['rebed skylight', 'gun-around skylight']);
  });
  test('tape first, then sealant, where nothing puts the sealant first', () => {
    const visit = onlyVisit(scheduleOf('seal front with Lap\n tape front with Strip', summer));
    expect(taskOf(visit, 'gun front').after).toEqual(['Gull/press/front']);
    expect(taskOf(visit, 'gun front').because).toEqual(['After the tape: a bead under it would have to cure first.']);
  });
  test('silicone comes off more slowly', () => {
    const sealed = 'sealed 2020-05-01 vent with Rubber\n';
    const visit = onlyVisit(
      scheduleOf(`${sealed} stripped 2020-05-01 skylight\n strip vent\n seal vent with Lap`, summer),
    );
    expect(tasksOf(visit, 'strip', 'strip-hard')).toEqual(['strip-hard vent']);
  });
  test('a seam that two plans name is worked on once', () => {
    const visit = onlyVisit(scheduleOf('seal vent with Lap\n seal openings with Lap', summer));
    expect(tasksOf(visit, 'gun-around')).toEqual(['gun-around vent', 'gun-around skylight']);
  });
});

describe('lay order', () => {
  const all = ['front', 'curbside', 'rear', 'roadside'];
  const plans = (items: readonly string[]) => items.map((item) => `tape ${item} with Strip`).join('\n ');

  test('rear, then the sides over it, the front over both, however it is written', () => {
    for (const items of [all, [...all].reverse(), ['roadside', 'front', 'rear', 'curbside']]) {
      const visit = onlyVisit(scheduleOf(plans(items), summer));
      expect(tasksOf(visit, 'lay')).toEqual(['lay rear', 'lay roadside', 'lay curbside', 'lay front']);
      expect(taskOf(visit, 'lay front').after).toEqual(
        expect.arrayContaining(['Gull/lay/rear', 'Gull/lay/roadside', 'Gull/lay/curbside']),
      );
      expect(taskOf(visit, 'lay rear').after).not.toContain('Gull/lay/curbside');
      expect(taskOf(visit, 'lay curbside').after).not.toContain('Gull/lay/roadside');
    }
  });
  test('of the two strips of a cap the rear one first', () => {
    const visit = onlyVisit(scheduleOf(plans(['front']), summer));
    expect(taskOf(visit, 'lay front').label).toBe('lay tape on front: rear strip, then forward strip');
  });
  test('a slide crosses nothing; a front that falls forward is spoken of', () => {
    const lines = 'slide lounge 8 ft by 2 ft on roadside at 6 ft\n falls to front\n tape lounge, front with Strip';
    const visit = onlyVisit(scheduleOf(lines, summer));
    expect(taskOf(visit, 'lay lounge').because[0]).toMatch(/^With the slide out; it crosses no other tape/);
    expect(taskOf(visit, 'lay front').because.join(' ')).toMatch(/more steeply than 1 in 12, water decides/);
  });
  test('the front waits for the sides of its season', () => {
    expect(told(scheduleOf('tape front with Strip\n tape edges with Strip after 2027-06-01', summer))).toEqual([
      '2027-06-01 taping of front; taping of curbside and roadside',
    ]);
  });
  test('a front that must be laid before its sides says what that breaks', () => {
    const lines = 'tape front with Strip before 2027-05-20\n tape curbside with Strip after 2027-06-01';
    const schedule = scheduleOf(lines, summer);
    expect(told(schedule)).toEqual(['2027-05-02 taping of front', '2027-06-01 taping of curbside']);
    expect(schedule.visits[0] && taskOf(schedule.visits[0], 'lay front').because.join(' ')).toMatch(
      /curbside is laid later, on 2027-06-01, though it belongs under front/,
    );
  });
});

describe('what falls due', () => {
  const cracked = 'inspected 2027-04-20 {\n vent cracked\n rest sound\n }\n';
  test('a repair is due by its follow-up and settles it', () => {
    const schedule = scheduleOf(`${cracked} strip vent\n seal vent with Lap`, summer);
    const visit = onlyVisit(schedule);
    expect(visit.deadline).toBe('2027-05-20');
    expect(schedule.dues.find(({ kind }) => kind === 'follow-up')).toMatchObject({
      date: '2027-05-20',
      settledBy: visit.id,
    });
  });
  test('what nothing settles is there without a visit', () => {
    const schedule = scheduleOf(cracked, summer);
    expect(schedule.visits).toEqual([]);
    const due = schedule.dues.find(({ kind }) => kind === 'follow-up');
    expect(due).toMatchObject({ rig: 'Gull', item: 'vent', date: '2027-05-20', status: 'soon', days: 19 });
    expect(due).not.toHaveProperty('settledBy');
  });
  test('a look at one item does not settle the look at all', () => {
    const one = scheduleOf('inspect vent', summer);
    const whole = scheduleOf('inspect', summer);
    const settled = (schedule: typeof one) => schedule.dues.find(({ kind }) => kind === 'inspect')?.settledBy;
    expect([settled(one), settled(whole)]).toEqual([undefined, 'Gull/inspect']);
  });
});
