// A schedule made again beside the one that was written before: what stays, what moves, and the reasons that are told.
import { describe, expect, test } from 'vitest';
import { Schedule, scheduleOfFleet, scheduleOfRig } from '../../language/schedule/index.ts';
import { projectOf } from '../project/workspace.ts';
import { fleetFrom, manyRigs } from './many.ts';
import { materials, onlyVisit, rig, scheduleOf, told } from './yard.ts';

const asOf = '2027-05-02';

function again(before: Schedule, lines: string, on = asOf, more = ''): Schedule {
  const [view] = projectOf({ 'a.rig': `${materials}${more}${rig('Gull', lines)}` }).rigs('a.rig');
  if (!view) throw new Error('no rig');
  // As it is read back from the paper.
  return scheduleOfRig(view, { asOf: on, today: on }, Schedule.parse(JSON.parse(JSON.stringify(before))));
}

function fleet(rigs: Readonly<Record<string, string>>, lines = '', before?: Schedule, on = asOf): Schedule {
  const texts = Object.entries(rigs).map(([name, plans]) => rig(name, plans));
  const text = `${materials}${texts.join('')}fleet Yard under Home {\n rigs "a.rig"\n crew 2 for 8 h each on mon to fri\n${lines}\n}\n`;
  const [found] = projectOf({ 'a.rig': text }).fleets('a.rig');
  if (!found) throw new Error('no fleet');
  return scheduleOfFleet(found.fleet, found.views, { asOf: on, today: on }, before);
}

const days = ({ visits }: Schedule) => visits.map((visit) => `${visit.rig} ${visit.days[0]}`);
const big = 'strip openings, rear\n seal openings, rear with Lap';

describe('what stays', () => {
  test('the same plans keep their days, though earlier ones have become free', () => {
    const before = scheduleOf('tape front with Strip after 2027-06-01', asOf);
    const freed = again(before, 'tape front with Strip');
    expect(told(freed)).toEqual(told(before));
    expect(freed.moved).toEqual([]);
    expect(told(scheduleOf('tape front with Strip', asOf))).not.toEqual(told(before));
  });
  test('a day of its own is kept against the earlier schedule', () => {
    const before = fleet({ Auk: big, Brant: big });
    expect(days(before)).toEqual(['Auk 2027-05-03', 'Brant 2027-05-04']);
    const pinned = fleet({ Auk: `${big.replaceAll('\n', ' on 2027-05-04\n')} on 2027-05-04`, Brant: big }, '', before);
    expect(days(pinned)).toContain('Auk 2027-05-04');
    expect(pinned.moved?.map(({ rig: name }) => name)).toEqual(['Brant', 'Auk']);
  });
  test('this week is kept even against something worse; it is placed around it', () => {
    const before = fleet({ Auk: big, Brant: big });
    const worse = `inspected 2027-05-01 {\n vent open\n }\n ${big}`;
    const after = fleet({ Auk: big, Brant: big, Curlew: worse }, '', before);
    expect(days(after)).toEqual(['Auk 2027-05-03', 'Brant 2027-05-04', 'Curlew 2027-05-05']);
    expect(days(fleet({ Auk: big, Brant: big, Curlew: worse }))[0]).toBe('Curlew 2027-05-03');
    expect(after.moved).toMatchObject([{ rig: 'Curlew', to: '2027-05-05', because: 'It is new, or had no day.' }]);
  });
  test('new work goes with a visit that is kept, where its days stay as they are', () => {
    const before = scheduleOf('tape front with Strip after 2027-05-05', asOf);
    const after = again(before, 'tape front with Strip after 2027-05-05\n inspect');
    expect(onlyVisit(after).days).toEqual(['2027-05-05']);
    expect(after.moved).toMatchObject([{ title: 'inspection', to: '2027-05-05' }]);
  });
});

describe('what moves, and why', () => {
  const plan = 'tape front with Strip after 2027-05-05';
  const before = scheduleOf(plan, asOf);
  const why = (lines: string, on = asOf, more = '') => again(before, lines, on, more).moved;
  test('a trip', () => {
    expect(why(`trip 2027-05-04 to 2027-05-09\n ${plan}`)).toEqual([
      {
        rig: 'Gull',
        title: 'taping of front',
        from: '2027-05-05',
        to: '2027-05-10',
        because: 'Gull is on a trip from 2027-05-04 to 2027-05-09.',
      },
    ]);
  });
  test('material that comes late', () => {
    const [move] = fleet({ Auk: plan }, '', fleet({ Auk: plan })).moved ?? [];
    expect(move).toBeUndefined();
    const slow = 'policy Slow like Home { lead Strip 3 weeks }\n';
    const [view] = projectOf({ 'a.rig': `${materials}${slow}${rig('Gull', plan, 'Slow')}` }).rigs('a.rig');
    const late = view && scheduleOfRig(view, { asOf, today: asOf }, before);
    expect(late?.moved).toMatchObject([
      { from: '2027-05-05', to: '2027-05-23', because: 'Strip takes 3 weeks to come.' },
    ]);
    expect(late?.waiting).toMatchObject([{ material: 'Strip', until: '2027-05-23' }]);
  });
  test('of two reasons the one that holds longer is told', () => {
    const slow = 'policy Slow like Home { lead Strip 3 weeks }\n';
    const reasons = ['2027-05-09', '2027-06-09'].map((end) => {
      const lines = `trip 2027-05-04 to ${end}\n ${plan}`;
      const [view] = projectOf({ 'a.rig': `${materials}${slow}${rig('Gull', lines, 'Slow')}` }).rigs('a.rig');
      return view && scheduleOfRig(view, { asOf, today: asOf }, before).moved?.map(({ because }) => because);
    });
    expect(reasons).toEqual([['Strip takes 3 weeks to come.'], ['Gull is on a trip from 2027-05-04 to 2027-06-09.']]);
  });
  test('its time to come is counted from the first schedule that named it, and anew if it did not come', () => {
    const slow = 'policy Slow like Home { lead Strip 3 weeks }\n';
    const on = (day: string, earlier?: Schedule): Schedule => {
      const [view] = projectOf({ 'a.rig': `${materials}${slow}${rig('Gull', plan, 'Slow')}` }).rigs('a.rig');
      if (!view) throw new Error('no rig');
      return scheduleOfRig(view, { asOf: day, today: day }, earlier);
    };
    const first = on('2027-05-02');
    const second = on('2027-05-10', first);
    expect([first, second].map((one) => onlyVisit(one).days)).toEqual([['2027-05-23'], ['2027-05-23']]);
    expect(second.moved).toEqual([]);
    expect(second.waiting?.[0]?.because).toBe('Strip takes 3 weeks to come, counted from 2027-05-02.');
    const third = on('2027-05-24', second);
    expect(onlyVisit(third).days).toEqual(['2027-06-14']);
    expect(third.waiting?.[0]?.because).toBe(
      'Strip was to be there by 2027-05-23 and is not on hand: Strip takes 3 weeks to come.',
    );
  });
  test('two materials on their way are both remembered, so that the work does not slide from day to day', () => {
    const wipe = 'cleaner Wipe { solvent isopropyl  container 1 qt at 9 USD  covers 200 sq-ft per gal }\n';
    const both = 'policy Slow like Home { lead Strip 3 weeks\n lead Wipe 3 weeks }\n';
    const on = (day: string, earlier?: Schedule): Schedule => {
      const lay = 'tape front with Wipe, Strip after 2027-05-05';
      const [view] = projectOf({ 'a.rig': `${materials}${wipe}${both}${rig('Gull', lay, 'Slow')}` }).rigs('a.rig');
      if (!view) throw new Error('no rig');
      return scheduleOfRig(view, { asOf: day, today: day }, earlier);
    };
    const days = ['2027-05-03', '2027-05-04', '2027-05-05'];
    let last = on('2027-05-02');
    expect(last.waiting?.map(({ material }) => material).sort()).toEqual(['Strip', 'Wipe']);
    for (const day of days) {
      last = on(day, last);
      expect(onlyVisit(last).days).toEqual(['2027-05-23']);
      expect(last.moved).toEqual([]);
    }
  });
  test('done, and gone', () => {
    expect(why(`taped 2027-05-05 front with Strip\n ${plan}`, '2027-05-06')).toMatchObject([
      { from: '2027-05-05', because: 'It is done: recorded on 2027-05-05.' },
    ]);
    expect(why('')).toEqual([
      { rig: 'Gull', title: 'taping of front', from: '2027-05-05', because: 'The plan is not there any more.' },
    ]);
  });
  test('past and not recorded', () => {
    expect(why(plan, '2027-05-06')).toMatchObject([
      {
        from: '2027-05-05',
        to: '2027-05-07',
        because: 'Its day, 2027-05-05, is past and nothing is recorded of it.',
      },
    ]);
  });
  test('the day of the schedule itself is not past', () => {
    expect(why(plan, '2027-05-05')).toEqual([]);
  });
  test('no day any more: the reason', () => {
    expect(why(`${plan} before 2027-05-20\n trip 2027-05-03 to 2027-06-01`)).toMatchObject([
      { from: '2027-05-05', because: 'Gull is on a trip from 2027-05-03 to 2027-06-01.' },
    ]);
  });
  test('another rig has the day now, and is named', () => {
    const rigs = { Auk: big, Brant: `${big}` };
    const first = fleet(rigs);
    const pinned = fleet({ ...rigs, Curlew: `${big.replaceAll('\n', ' on 2027-05-03\n')} on 2027-05-03` }, '', first);
    expect(pinned.moved?.find(({ rig: name }) => name === 'Auk')?.because).toMatch(
      /^The crew has no time left on 2027-05-03: Curlew, .* has it\.$/,
    );
  });
});

test('lateness stands beside its bound, and is never below it', () => {
  const late = {
    Auk: `inspected 2027-05-01 {\n vent open\n }\n ${big}`,
    Brant: `inspected 2027-05-01 {\n vent open\n }\n ${big}`,
  };
  const { lateness } = fleet(late);
  // Due on 05-02, from the next day on, weight 6 for each of the two plans about an open vent: a day late at best.
  expect(lateness?.bound).toBeGreaterThan(0);
  expect(lateness?.days).toBeGreaterThan(lateness?.bound as number);
});

test('the same of seeded fleets, by any order of their rigs', () => {
  for (let seed = 1; seed <= 25; seed++) {
    const many = manyRigs(4 + (seed % 9), seed);
    const dates = { asOf: '2027-04-05', today: '2027-04-05' };
    const bounds = [many, { ...many, rigs: [...many.rigs].reverse() }].map((one) => {
      const { fleet: found, views } = fleetFrom(one);
      const { days: late, bound } = scheduleOfFleet(found, views, dates).lateness ?? { days: 0, bound: 1 };
      expect(late, `seed ${seed}`).toBeGreaterThanOrEqual(bound);
      return bound;
    });
    expect(bounds[0]).toBe(bounds[1]);
  }
});
