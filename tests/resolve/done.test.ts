// What is left of plans that are partly done, and that every paper counts what is left and nothing else.
import { describe, expect, test } from 'vitest';
import { textDocumentsOf } from '../../language/documents/index.ts';
import { papersOf } from '../../language/documents/papers.ts';
import { doneBy, itemsOf, openPlans, targetsLeft } from '../../language/resolve/done.ts';
import type { RigView } from '../../language/resolve/types.ts';
import { Schedule, scheduleOfRig } from '../../language/schedule/index.ts';
import { projectOf } from '../project/workspace.ts';
import { materials, rig } from '../schedule/yard.ts';

const dates = { asOf: '2027-04-25', today: '2027-04-25' };

function viewOf(lines: string): RigView {
  const [view] = projectOf({ 'a.rig': `${materials}${rig('Gull', lines)}` }).rigs('a.rig');
  if (!view) throw new Error('no rig');
  return view;
}

/** What is left of each plan, as it would be typed. */
function left(lines: string, asOf = dates.asOf): readonly string[] {
  const view = viewOf(lines);
  return openPlans(view.rig, asOf).map((plan) => targetsLeft(plan, 'us', 'its end').join(', '));
}

const plan = 'tape front, rear with Strip after 2027-04-15';

describe('what is left of a plan', () => {
  test.each([
    ['nothing is recorded', '', 'front, rear'],
    ['one of two', 'taped 2027-04-20 front with Strip', 'rear'],
    ['both, on two days', 'taped 2027-04-20 front with Strip\n taped 2027-04-21 rear with Strip', undefined],
    ['both at once, with more', 'taped 2027-04-20 rear, front, curbside with Strip', undefined],
    ['before the first day of the plan', 'taped 2027-04-14 front with Strip', 'front, rear'],
    ['after the as-of date', 'taped 2027-04-26 front with Strip', 'front, rear'],
    ['other work', 'washed 2027-04-20 front', 'front, rear'],
    ['a part of one', 'taped 2027-04-20 front from 0 ft to 3 ft with Strip', 'front from 3 ft to 8 ft, rear'],
    [
      'the middle of one',
      'taped 2027-04-20 front from 3 ft to 5 ft with Strip',
      'front from 0 in to 3 ft, front from 5 ft to 8 ft, rear',
    ],
    [
      'one in two parts that overlap',
      'taped 2027-04-20 front from 0 ft to 5 ft with Strip\n taped 2027-04-21 front from 4 ft to 8 ft with Strip',
      'rear',
    ],
    ['more of one than there is', 'taped 2027-04-20 front from 0 ft to 9 ft with Strip', 'rear'],
  ])('%s', (_, record, open) => {
    expect(left(`${record}\n ${plan}`)).toEqual(open === undefined ? [] : [open]);
  });
  test('of a set what no record names', () => {
    expect(left('sealed 2027-04-20 vent with Lap\n seal openings with Lap after 2027-04-15')).toEqual(['skylight']);
  });
  test('of a part of a seam what is left of that part', () => {
    const part = 'tape curbside from 4 ft to 12 ft with Strip after 2027-04-15';
    expect(left(`taped 2027-04-20 curbside from 0 ft to 6 ft with Strip\n ${part}`)).toEqual([
      'curbside from 6 ft to 12 ft',
    ]);
    expect(left(`taped 2027-04-20 curbside from 12 ft to 20 ft with Strip\n ${part}`)).toEqual([
      'curbside from 4 ft to 12 ft',
    ]);
    expect(left(`taped 2027-04-20 curbside with Strip\n ${part}`)).toEqual([]);
  });
  test('a finding about a part is a look at the whole; what was not seen is left', () => {
    const look = 'inspect front, rear, vent after 2027-04-15';
    expect(left(`inspected 2027-04-20 {\n front cracked from 2 ft to 3 ft\n vent not-seen\n }\n ${look}`)).toEqual([
      'rear, vent',
    ]);
    expect(left(`inspected 2027-04-20 front, rear, vent {\n vent not-seen\n }\n ${look}`)).toEqual(['vent']);
  });
  test('a plan without a first day stays as it is written', () => {
    expect(left('taped 2027-04-20 front with Strip\n tape front, rear with Strip')).toEqual(['front, rear']);
  });
  test('the last record is the one that did it', () => {
    const { rig: gull } = viewOf(`taped 2027-04-20 front with Strip\n taped 2027-04-21 rear with Strip\n ${plan}`);
    expect(doneBy(gull.plans[0]!, gull, dates.asOf)?.first).toBe('2027-04-21');
    expect(doneBy(gull.plans[0]!, gull, '2027-04-20')).toBeUndefined();
  });
});

describe('the papers', () => {
  const record = 'taped 2027-04-20 front with Strip';
  const partly = viewOf(`${record}\n ${plan} before 2027-06-01`);
  const rest = viewOf(`${record}\n tape rear with Strip after 2027-04-15 before 2027-06-01`);
  const papers = papersOf({ kind: 'rig', view: partly }, dates);
  const expected = papersOf({ kind: 'rig', view: rest }, dates);

  test('count, buy, price and time what is left, as if that alone were written', () => {
    const [mine, theirs] = [papers.estimate.estimates[0]!, expected.estimate.estimates[0]!];
    for (const part of ['purchases', 'cutting', 'labour', 'hours', 'totals'] as const)
      expect(mine[part], part).toEqual(theirs[part]);
    expect(mine.jobs.map(({ text, items, pieces }) => ({ text, items, pieces }))).toEqual(
      theirs.jobs.map(({ text, items, pieces }) => ({ text, items, pieces })),
    );
    expect(mine.jobs[0]?.skipped).toEqual([{ item: 'front', reason: 'it is recorded as done' }]);
  });
  test('schedule what is left, and say by when', () => {
    const plain = ({ schedule }: typeof papers.schedule) =>
      schedule.visits.map(({ days, title, tasks, deadline }) => [
        days,
        title,
        tasks.map(({ label }) => label),
        deadline,
      ]);
    expect(plain(papers.schedule)).toEqual(plain(expected.schedule));
    const due = papers.schedule.schedule.dues.find(({ kind }) => kind === 'plan');
    expect(due).toMatchObject({
      title: 'planned: taping of rear',
      because: 'It is planned to tape rear before 2027-06-01.',
    });
    expect(due?.settledBy).toBe(papers.schedule.schedule.visits[0]?.id);
  });
  test('the work sheet has what is left, and the line to type afterwards too', () => {
    const sheet = (view: RigView) =>
      textDocumentsOf({ kind: 'rig', view }, dates).find(({ name }) => name === 'Gull.worksheet.html')?.text ?? '';
    expect(sheet(partly).match(/taped [^<]*with/g)).toEqual(sheet(rest).match(/taped [^<]*with/g));
    expect(sheet(partly)).toMatch(/taped [^<]*rear with/);
  });
  test('what is done is no danger any more', () => {
    const open = viewOf('seal vent, front with Lap after 2027-04-15');
    const closed = viewOf('sealed 2027-04-20 vent with Lap\n seal vent, front with Lap after 2027-04-15');
    const texts = (view: RigView) =>
      papersOf({ kind: 'rig', view }, dates)
        .estimate.cautions.map(({ text }) => text)
        .join('\n');
    expect(texts(open)).not.toBe(texts(closed));
  });
});

describe('the schedule that was written before', () => {
  const day = (asOf: string, lines: string, before?: Schedule) =>
    scheduleOfRig(viewOf(lines), { asOf, today: asOf }, before && Schedule.parse(JSON.parse(JSON.stringify(before))));
  const before = day('2027-04-18', plan);
  const first = before.visits[0]!;

  test('a visit that is partly done keeps its name, and nothing has moved or been dropped', () => {
    const all = 'strip all after 2027-04-15\n seal all with Lap after 2027-04-15';
    const long = day('2027-04-18', all);
    const visit = long.visits[0]!;
    expect(visit.days.length).toBeGreaterThan(1);
    const on = visit.days[0]!;
    const after = day(visit.days[1]!, `stripped ${on} vent\n sealed ${on} vent with Lap\n ${all}`, long);
    expect(after.visits[0]?.id).toBe(visit.id);
    expect(after.visits[0]?.plans).toEqual(visit.plans);
    expect(after.visits[0]?.tasks.some(({ items }) => items.includes('vent'))).toBe(false);
    expect(after.moved).toEqual([]);
  });
  test('what is left after its day has a day, with the reason', () => {
    const [on] = first.days as [string];
    const after = day('2027-04-25', `taped ${on} front with Strip\n ${plan}`, before);
    expect(after.visits[0]?.id).toBe(first.id);
    expect(after.moved).toMatchObject([
      {
        from: on,
        to: after.visits[0]?.days[0],
        because: `Some of it is done, recorded on ${on}; what is left has this day.`,
      },
    ]);
    const none = day('2027-04-25', plan, before);
    expect(none.moved?.[0]?.because).toContain('nothing is recorded of it');
  });
  test('a second plan for the same seams keeps its name when the first is done', () => {
    const two = `${plan}\n tape front, rear with Strip after 2028-04-15`;
    const both = day('2027-04-18', two);
    const one = day('2027-04-25', `taped 2027-04-20 front, rear with Strip\n ${two}`, both);
    expect(one.visits.flatMap(({ plans }) => plans)).toEqual(both.visits[1]?.plans);
    expect(one.moved?.map(({ because }) => because)).toEqual(['It is done: recorded on 2027-04-20.']);
  });
  test('items of the plan as written', () => {
    const [open] = openPlans(viewOf(`taped 2027-04-20 front with Strip\n ${plan}`).rig, dates.asOf);
    expect(itemsOf(open!)).toEqual(['rear']);
    expect(itemsOf(open!.partly!.whole)).toEqual(['front', 'rear']);
  });
});
