// The page of a yard in the morning, as data.
import { describe, expect, test } from 'vitest';
import { estimateOf } from '../../language/estimate/index.ts';
import { type DayPlan, dayPlan, DayPlan as Form, scheduleOfFleet } from '../../language/schedule/index.ts';
import { projectOf } from '../project/workspace.ts';
import { fleetFrom, manyRigs } from './many.ts';
import { materials, rig } from './yard.ts';

const asOf = '2027-07-05';

/** The page of a day for a fleet of these rigs, which are under a policy with these lines. */
function page(rigs: Readonly<Record<string, string>>, date = '2027-07-06', lines = '', policy = ''): DayPlan {
  const texts = Object.entries(rigs).map(([name, plans]) => rig(name, plans, 'Site'));
  const text = `${materials}policy Site like Home {\n ${policy}\n}\n${texts.join('')}fleet Yard under Site {\n rigs "a.rig"\n crew 2 for 8 h each on mon to fri\n${lines}\n}\n`;
  const [found] = projectOf({ 'a.rig': text }).fleets('a.rig');
  if (!found) throw new Error('no fleet');
  const dates = { asOf, today: asOf };
  const schedule = scheduleOfFleet(found.fleet, found.views, dates);
  const estimates = new Map(found.views.map((view) => [view.rig.name, estimateOf(view, dates)]));
  const plan = dayPlan(schedule, date, { views: found.views, fleet: found.fleet, estimates });
  expect(Form.parse(JSON.parse(JSON.stringify(plan)))).toEqual(plan);
  return plan;
}

const seal = 'seal vent, skylight with Lap';

describe('the rows', () => {
  test('what the heat spoils comes first, and is over by noon; while one roof dries the next one is washed', () => {
    const { rows } = page({ Auk: 'unit "7"\n wash', Brant: `unit "12"\n ${seal}` });
    expect(rows.map(({ rig: name, unit, begin, job, people }) => [name, unit, begin, job, people])).toEqual([
      ['Brant', '12', '08:00', 'gun vent + skylight', 2],
      ['Auk', '7', rows[0]?.blocks?.[0]?.end, 'wash', 2],
    ]);
    expect((rows[0]?.end ?? '') <= '12:00').toBe(true);
    expect(rows[0]?.finishBy.time).toBe('12:00');
    expect(rows[0]?.finishBy.because).toMatch(/before noon/);
    expect(rows[1]?.finishBy).toEqual({ time: '16:00', because: 'the end of the working day' });
  });
  test('drive clock, kit, bay, booking before and after', () => {
    const bay = '  bay Shed indoor 40 ft\n  booked Auk 2027-07-01 to 2027-07-03\n  booked Auk 2027-07-20 to 2027-07-24';
    const { rows } = page({ Auk: `strip vent\n ${seal}\n tape rear with Strip` }, '2027-07-06', bay);
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ place: 'Shed', returned: '2027-07-03', leaves: '2027-07-20', day: [1, 1] });
    expect(rows[0]?.driveOk).toEqual({
      materials: ['Strip', 'Lap'],
      after: 'done __:__ + 24 h',
      notBefore: '2027-07-07',
      safeFrom: '2027-07-08',
    });
    const kit = new Map(rows[0]?.kit.map((line) => [line.material, line]));
    expect(kit.get('Strip')).toEqual({ material: 'Strip', pieces: [1], text: 'piece 1 of Strip' });
    // Beads around 16 by 16 and 30 by 22 in, 1/4 sq in each: 43.5 cu in at most, 24 fl oz, in cartridges of 10.3.
    expect(kit.get('Lap')?.cartridges).toBe(3);
    expect(rows[0]?.job).toBe('strip vent, tape rear, gun vent + skylight');
  });
  test('work of several days: each has its part, numbered', () => {
    const all = { Auk: 'strip all\n seal all with Lap' };
    const first = page(all).rows[0];
    expect(first?.day[0]).toBe(1);
    expect(first?.day[1]).toBeGreaterThan(1);
    expect(first?.driveOk).toBeUndefined();
    expect(page(all, '2027-07-07').rows[0]?.day).toEqual([2, first?.day[1]]);
  });
  test('nothing on a day without work', () => {
    expect(page({ Auk: seal }, '2027-07-10').rows).toEqual([]);
  });
  test('nobody is in two places, and nothing runs into the night', () => {
    const { fleet, views } = fleetFrom(manyRigs(60, 3));
    const dates = { asOf: '2027-04-18', today: '2027-04-18' };
    const schedule = scheduleOfFleet(fleet, views, dates);
    const crew = new Map(schedule.visits.map((visit) => [visit.id, visit.crew ?? []]));
    let rows = 0;
    for (const date of new Set(schedule.visits.flatMap(({ days }) => days))) {
      const plan = dayPlan(schedule, date, { views, fleet });
      rows += plan.rows.length;
      for (const [i, a] of plan.rows.entries()) {
        expect(a.begin < a.end && a.end <= '20:00', `${date} ${a.rig} ${a.begin} ${a.end}`).toBe(true);
        for (const b of plan.rows.slice(i + 1)) {
          if (!crew.get(a.visit)?.some((person) => crew.get(b.visit)?.includes(person))) continue;
          for (const one of a.blocks ?? [])
            for (const two of b.blocks ?? []) expect(one.end <= two.begin || two.end <= one.begin).toBe(true);
        }
      }
    }
    expect(rows).toBeGreaterThan(50);
  });
});

describe('what must not leave', () => {
  test('open, wet, leaking, and what may not be driven yet, with the record and the visit that mends it', () => {
    const { doNotDispatch } = page({
      Auk: `inspected 2027-07-02 {\n vent open\n skylight wet\n }\n ${seal}`,
      Brant: 'leaked 2027-06-30 inside "over the bed" suspect rear',
      Curlew: 'sealed 2027-07-05 16:00 rear with Lap',
      Dunlin: 'inspected 2027-07-02 { rest sound }',
    });
    expect(doNotDispatch.map(({ rig: name, item, word, since }) => [name, item, word, since])).toEqual([
      ['Auk', 'vent', 'open', '2027-07-02'],
      ['Auk', 'skylight', 'wet', '2027-07-02'],
      ['Brant', 'rear', 'leak', '2027-06-30'],
      ['Curlew', 'rear', 'drive clock', '2027-07-05'],
    ]);
    expect(doNotDispatch[0]?.planned).toBe('2027-07-06');
    expect(doNotDispatch[0]).toMatchObject({ file: 'a.rig' });
  });
});

describe('what waits, what is done in the wet, what changed', () => {
  test('parts with their day, gaps, readings', () => {
    const { waiting, wetDay } = page(
      {
        Auk: 'tape rear with Strip',
        Brant: `${seal} on 2027-07-11`,
        Curlew: 'inspected 2027-07-02 {\n vent wet\n }\n inspect',
      },
      '2027-07-06',
      '',
      'lead Strip 3 weeks',
    );
    expect(waiting.parts).toEqual([{ rig: 'Auk', title: 'taping of rear', material: 'Strip', until: '2027-07-26' }]);
    expect(waiting.gap).toMatchObject([{ rig: 'Brant', because: 'nobody works on Sundays', firstDay: '2027-07-12' }]);
    expect(waiting.dryOut).toEqual([]);
    expect(wetDay).toContainEqual({ what: 'order Strip' });
    expect(wetDay).toContainEqual({ rig: 'Curlew', what: 'look and measure inside' });
  });
  test('five lines of what changed, and how many more', () => {
    const { fleet, views } = fleetFrom(manyRigs(60, 3));
    const dates = { asOf: '2027-04-18', today: '2027-04-18' };
    const before = scheduleOfFleet(fleet, views, dates);
    const empty = { ...before, visits: before.visits.slice(9) };
    const schedule = scheduleOfFleet(fleet, views, dates, empty);
    const { changed, changedMore } = dayPlan(schedule, '2027-04-19', { views, fleet });
    expect(changed).toHaveLength(5);
    expect(changedMore).toBe((schedule.moved ?? []).length - 5);
    expect(changed[0]).toMatch(/^R\d{3}, .+: new on 2027-\d\d-\d\d\. It is new, or had no day\.$/);
  });
});
