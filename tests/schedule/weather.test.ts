// Days that weather takes, temperatures of the months, mornings, turn days, and what has to be ordered.
import { describe, expect, test } from 'vitest';
import { keptFree } from '../../language/schedule/weather.ts';
import { fleetOf, onlyVisit, rig, scheduleOf, told } from './yard.ts';

const lay = 'tape front with Strip';

/** The schedule of a rig under a policy with these lines. */
const under = (policy: string, lines: string, asOf = '2027-05-01') =>
  scheduleOf('', asOf, `policy Site like Home {\n ${policy}\n}\n${rig('Tern', lines, 'Site')}`);

describe('days kept free for those that weather takes', () => {
  test('spread over the month: of 20 working days at 30 % these six', () => {
    const workday = (day: string) => Number(day.slice(8)) <= 20;
    expect([...keptFree('2027-04', 30, workday)].map((day) => Number(day.slice(8)))).toEqual([4, 7, 10, 14, 17, 20]);
    expect(keptFree('2027-04', 0, workday).size).toBe(0);
    expect(keptFree('2027-02', 100, () => true).size).toBe(28);
  });
  test('outdoor work goes around them and says so, a look does not', () => {
    const slack = 'slack may 50 %';
    expect(told(under(slack, `${lay} after 2027-05-04`))).toEqual(['Tern 2027-05-05 taping of front']);
    expect(onlyVisit(under(slack, `${lay} after 2027-05-04`)).because[0]).toBe(
      '2027-05-04 is kept free for days that weather takes (50 % of the month).',
    );
    expect(told(under(slack, 'inspect after 2027-05-04'))).toEqual(['Tern 2027-05-04 inspection']);
  });
  test('a day of its own is kept; a visit of some days passes over a free one', () => {
    expect(told(under('slack may 50 %', `${lay} on 2027-05-04`))).toEqual(['Tern 2027-05-04 taping of front']);
    const long = onlyVisit(under('slack may 50 %', 'strip all after 2027-05-03\n seal all with Lap'));
    expect(long.days.slice(0, 2)).toEqual(['2027-05-03', '2027-05-05']);
  });
  test('in a bay none is kept free', () => {
    const fleet = (bay: string) =>
      fleetOf(`  crew 2 for 8 h each on mon to sun\n${bay}`, { Auk: 'strip vent after 2027-05-04' }, '2027-05-01');
    expect(fleet('').visits[0]?.days).toEqual(['2027-05-04']);
    const slack = (bay: string) => under2(bay).visits[0]?.days;
    const under2 = (bay: string) => fleetUnder('slack may 50 %', bay, 'strip vent after 2027-05-04');
    expect(slack('')).toEqual(['2027-05-05']);
    expect(slack('  bay Shed indoor')).toEqual(['2027-05-04']);
  });
});

/** A fleet whose policy has this line; its rigs are under it too. */
function fleetUnder(policy: string, lines: string, plans: string) {
  return fleetOf(`  crew 2 for 8 h each on mon to sun\n${lines}`, { Auk: plans }, '2027-05-01', policy);
}

describe('the normals of the months', () => {
  const cold = 'tape Cold { width 4 in  roll 50 ft at 60 USD  bonds-to epdm  apply 50 F to 95 F }\n';
  const site = (normals: string, lines: string) =>
    scheduleOf('', '2027-05-01', `${cold}policy Site like Home {\n ${normals}\n}\n${rig('Tern', lines, 'Site')}`);
  test('a month that is too cold on a normal day is left out, with the reason', () => {
    const visit = onlyVisit(site('normals may 30 F to 48 F', 'tape front with Cold'));
    expect(visit.days).toEqual(['2027-06-01']);
    expect(visit.because[0]).toBe('Cold is applied from 50 F, and the normal high of may is 48 F.');
  });
  test('a plan of such a month has no day, and is told the first that would do', () => {
    const { visits, unplaced } = site('normals may 30 F to 48 F', 'tape front with Cold before 2027-05-20');
    expect(visits).toEqual([]);
    expect(unplaced[0]).toMatchObject({
      because: 'Cold is applied from 50 F, and the normal high of may is 48 F',
      firstDay: '2027-06-01',
    });
  });
  test('a month that is warm enough at noon will do, one that is hot at night will not', () => {
    expect(onlyVisit(site('normals may 30 F to 50 F', 'tape front with Cold')).days).toEqual(['2027-05-02']);
    expect(onlyVisit(site('normals may 96 F to 110 F', 'tape front with Cold')).days).toEqual(['2027-06-01']);
  });
  test('what lays nothing goes on', () => {
    expect(onlyVisit(site('normals may 30 F to 48 F', 'wash')).days).toEqual(['2027-05-02']);
  });
  test('where the day is hotter than a material likes, it is for the morning', () => {
    const visit = onlyVisit(site('normals may 70 F to 100 F', 'tape front with Cold'));
    expect(visit.because.at(-1)).toBe(
      'Lay and gun before noon: Cold is applied up to 95 F, and the normal high of may is 100 F.',
    );
  });
});

describe('before noon', () => {
  const said = (policy: string, plan: string) =>
    onlyVisit(under(policy, plan)).because.some((text) => text.startsWith('Lay and gun before noon'));
  test('in summer, unless the policy says otherwise; a wash at any time', () => {
    expect(said('', `${lay} on 2027-07-06`)).toBe(true);
    expect(said('', `${lay} on 2027-05-06`)).toBe(false);
    expect(said('before-noon 05-01 to 05-31', `${lay} on 2027-05-06`)).toBe(true);
    expect(said('', 'wash on 2027-07-06')).toBe(false);
  });
  test('or above a normal high', () => {
    const hot = 'before-noon 80 F\n normals jul 62 F to 84 F\n normals aug 60 F to 80 F';
    expect(said(hot, `${lay} on 2027-07-06`)).toBe(true);
    expect(said(hot, `${lay} on 2027-08-06`)).toBe(false);
  });
});

describe('a day on which a rig comes back and leaves again', () => {
  const trips = 'trip 2027-05-03 to 2027-05-10\n trip 2027-05-10 to 2027-05-20\n';
  const day = (policy: string, plan: string) => under(policy, `${trips} ${plan} after 2027-05-08`);
  test('takes nothing unless the policy gives it some time', () => {
    expect(onlyVisit(day('', 'tighten vent')).days).toEqual(['2027-05-21']);
    expect(onlyVisit(day('turn-round 90 min', 'tighten vent')).days).toEqual(['2027-05-10']);
  });
  test('and no more than fits, nor what may not be driven yet', () => {
    const visit = onlyVisit(day('turn-round 30 min', 'tighten vent'));
    expect([visit.days, visit.because[0]]).toEqual([
      ['2027-05-21'],
      'Tern is on a trip from 2027-05-10 to 2027-05-20.',
    ]);
    const sealed = day('turn-round 12 h', 'seal vent with Lap before 2027-05-15');
    expect(sealed.unplaced[0]?.firstDay).toBe('2027-05-21');
    expect(onlyVisit(day('turn-round 12 h', 'seal vent with Lap')).days).toEqual(['2027-05-21']);
  });
  test('the days around it stay taken', () => {
    expect(
      onlyVisit(under('turn-round 90 min', `${trips} tighten vent after 2027-05-09 before 2027-05-10`)).days,
    ).toEqual(['2027-05-10']);
    const { unplaced } = under('turn-round 90 min', `${trips} tighten vent on 2027-05-09`);
    expect(unplaced[0]?.because).toBe('Tern is on a trip from 2027-05-03 to 2027-05-10');
  });
});

describe('what has to be ordered', () => {
  const lead = 'lead Strip 6 weeks';
  test('is named as waiting, with its day', () => {
    expect(under(lead, `inspect\n ${lay}`).waiting).toEqual([
      {
        rig: 'Tern',
        title: 'taping of front',
        material: 'Strip',
        since: '2027-05-01',
        until: '2027-06-12',
        because: 'Strip takes 6 weeks to come.',
      },
    ]);
    expect(under(lead, `on-hand Strip 50 ft\n ${lay}`).waiting).toEqual([]);
  });
  test('what lies on the shelf of the fleet is there', () => {
    const yard = (stock: string) => fleetUnder(lead, stock, lay);
    expect(yard('').visits[0]?.days).toEqual(['2027-06-12']);
    expect(yard('  on-hand Strip 50 ft').visits[0]?.days).toEqual(['2027-05-02']);
  });
});

test('replacing, patching, tightening, coating, drying out and a cover take their time', () => {
  const minutes = (plan: string, task: string) =>
    onlyVisit(under('', plan)).tasks.find((one) => one.task === task)?.minutes;
  expect([
    minutes('replace vent', 'replace'),
    minutes('patch vent with Strip', 'patch'),
    minutes('tighten vent, skylight', 'tighten'),
    minutes('coat', 'coat'),
    minutes('dry vent', 'dry'),
    minutes('cover vent', 'temporary-cover'),
  ]).toEqual([60, 20, 10, 80, 30, 20]);
});
