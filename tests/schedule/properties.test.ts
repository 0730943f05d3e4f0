// What holds of every schedule, whatever is planned.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Schedule } from '../../language/schedule/index.ts';
import { weekday } from '../../language/values/calendar.ts';
import { inSeason } from '../../language/values/season.ts';
import { fleetOf } from './yard.ts';

const season = { from: '04-15', to: '10-15', text: '04-15 to 10-15' };
const date = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 28 }))
  .map(([month, day]) => `2027-${`${month}`.padStart(2, '0')}-${`${day}`.padStart(2, '0')}`);
const span = fc.tuple(date, date).map((days) => [...days].sort() as [string, string]);
const when = fc.oneof(
  { arbitrary: fc.constant(''), weight: 3 },
  { arbitrary: date.map((day) => ` after ${day}`), weight: 3 },
  { arbitrary: date.map((day) => ` before ${day}`), weight: 2 },
  { arbitrary: date.map((day) => ` on ${day}`), weight: 1 },
);
const items = fc.subarray(['front', 'rear', 'curbside', 'roadside', 'vent', 'skylight'], {
  minLength: 1,
  maxLength: 3,
});
const plan = fc
  .tuple(fc.constantFrom('tape', 'seal', 'strip', 'rebed', 'dry', 'inspect', 'wash', 'cover', 'tighten'), items, when)
  .map(([word, names, day]) => {
    const on = word === 'wash' ? '' : ` ${names.join(', ')}`;
    return `${word}${on}${word === 'tape' ? ' with Strip' : word === 'seal' ? ' with Lap' : ''}${day}`;
  });
const fact = fc.oneof(
  span.map(([first, last]) => `trip ${first} to ${last}`),
  span.map(([first, last]) => `stored ${first} to ${last}`),
  date.map((day) => `sealed ${day.replace('2027', '2026')} front, vent with Lap`),
);
const lines = fc.tuple(fc.array(plan, { maxLength: 5 }), fc.array(fact, { maxLength: 1 }));
const rigs = fc.record({ Auk: lines, Brant: lines, Curlew: lines });
const closed = fc.array(span, { maxLength: 1 });
const crew = fc.constantFrom(1, 2, 3, 4);

type Lines = Readonly<Record<string, readonly [readonly string[], readonly string[]]>>;
const texts = (of: Lines) =>
  Object.fromEntries(Object.entries(of).map(([name, [plans, facts]]) => [name, [...facts, ...plans].join('\n ')]));
const yard = (people: number, shut: readonly (readonly [string, string])[], of: Lines) =>
  fleetOf(
    `  crew ${people} for 8 h each on mon to fri${shut.map(([a, b]) => `\n  closed ${a} to ${b}`).join('')}`,
    texts(of),
    '2027-01-10',
  );

const looking = new Set(['set-up', 'inspect', 'inspect-inside', 'temporary-cover', 'dry', 'tighten', 'cover']);

test('every constraint is kept', () => {
  fc.assert(
    fc.property(crew, closed, rigs, (people, shut, of) => {
      const schedule = yard(people, shut, of);
      expect(() => Schedule.parse(schedule)).not.toThrow();
      const perDay = new Map<string, number>();
      for (const { rig: name, days, tasks, clocks } of schedule.visits) {
        const facts = of[name as keyof typeof of][1].map((line) => line.split(' '));
        const urgent = tasks.every(({ task }) => ['set-up', 'temporary-cover', 'dry'].includes(task));
        for (const day of days) {
          expect(day > '2027-01-10').toBe(true);
          expect(weekday(day)).toBeLessThan(6);
          for (const [first, last] of shut) expect(first <= day && day <= last).toBe(false);
        }
        const [first, last] = [days[0] as string, days.at(-1) as string];
        for (const [word, from = '', , to = ''] of facts) {
          if (word === 'trip' || (word === 'stored' && !urgent)) expect(first <= to && from <= last).toBe(false);
          const drive = clocks.find(({ clock }) => clock === 'drive');
          if (word === 'trip' && drive && from > last) expect(drive.safeFrom <= from).toBe(true);
        }
        const place = new Map(tasks.map((task, i) => [task.id, i]));
        for (const [i, task] of tasks.entries()) {
          expect(days).toContain(task.date);
          if (!looking.has(task.task)) expect(inSeason(task.date, season)).toBe(true);
          for (const id of task.after) expect(place.get(id)).toBeLessThan(i);
          if (i > 0) expect((tasks[i - 1] as typeof task).date <= task.date).toBe(true);
          if (days.length === 1) perDay.set(task.date, (perDay.get(task.date) ?? 0) + task.minutes);
        }
        const laid = tasks.filter(({ task }) => task === 'lay').map(({ items: [item] }) => item);
        const rank = (item: string | undefined) => (item === 'rear' ? 0 : item === 'front' ? 2 : 1);
        for (let i = 1; i < laid.length; i++) expect(rank(laid[i - 1])).toBeLessThanOrEqual(rank(laid[i]));
        for (const item of ['vent', 'skylight', 'front', 'rear']) {
          const at = (...words: readonly string[]) =>
            tasks.findIndex(({ task, items: [one] }) => words.includes(task) && one === item);
          const [strip, lay, gun] = [at('strip', 'rebed'), at('lay', 'frame'), at('gun', 'gun-around')];
          if (strip >= 0 && lay >= 0) expect(strip).toBeLessThan(lay);
          if (strip >= 0 && gun >= 0) expect(strip).toBeLessThan(gun);
          if (lay >= 0 && gun >= 0) expect(lay).toBeLessThan(gun);
        }
      }
      for (const minutes of perDay.values()) expect(minutes).toBeLessThanOrEqual(people * 480 + 0.1);
      const ids = schedule.visits.flatMap(({ id, tasks }) => [`visit ${id}`, ...tasks.map((task) => task.id)]);
      expect(new Set(ids).size).toBe(ids.length);
    }),
    { numRuns: 150 },
  );
});

test('two visits of one rig never share a day', () => {
  fc.assert(
    fc.property(rigs, (of) => {
      const taken = yard(2, [], of).visits.flatMap(({ rig: name, days }) => days.map((day) => `${name} ${day}`));
      expect(new Set(taken).size).toBe(taken.length);
    }),
    { numRuns: 100 },
  );
});

test('every plan is in a visit or said to be unplaced', () => {
  fc.assert(
    fc.property(rigs, (of) => {
      const schedule = yard(2, [], of);
      const plans = Object.values(of).flatMap(([own]) => own);
      const told = schedule.visits.flatMap(({ title }) => title.split('; ')).length + schedule.unplaced.length;
      expect(told).toBe(plans.length);
      for (const { firstDay } of schedule.unplaced)
        if (firstDay !== undefined) expect(firstDay > '2027-01-10').toBe(true);
    }),
    { numRuns: 100 },
  );
});

test('the order of rigs and of lines that are no plans changes nothing', () => {
  fc.assert(
    fc.property(rigs, fc.array(fact, { minLength: 2, maxLength: 2 }), (of, facts) => {
      const told = (schedule: ReturnType<typeof yard>) => ({
        ...schedule,
        unplaced: schedule.unplaced
          .map(({ at: _, file: __, ...one }) => one)
          .sort((a, b) => (`${a.rig} ${a.title}` < `${b.rig} ${b.title}` ? -1 : 1)),
        assumptions: [],
      });
      const auk = [of.Auk[0], facts] as const;
      const there = yard(2, [], { ...of, Auk: auk });
      const back = yard(2, [], { Curlew: of.Curlew, Brant: of.Brant, Auk: [auk[0], [...facts].reverse()] });
      expect(told(back)).toEqual(told(there));
    }),
    { numRuns: 60 },
  );
});

test('the order of plans changes no day where each has a last day of its own', () => {
  const seams = ['front', 'vent', 'skylight', 'curbside'] as const;
  fc.assert(
    fc.property(
      fc.shuffledSubarray([...seams]),
      fc.uniqueArray(date, { minLength: 4, maxLength: 4 }),
      (order, days) => {
        const lines = (names: readonly (typeof seams)[number][]) =>
          names.map((name) => `seal ${name} with Lap before ${days[seams.indexOf(name)]}`);
        const told = (names: readonly (typeof seams)[number][]) =>
          yard(1, [], { Auk: [lines(names), []] }).visits.map((visit) => [visit.id, visit.days, visit.minutes]);
        const sorted = seams.filter((name) => order.includes(name));
        expect(told(order)).toEqual(told(sorted));
      },
    ),
    { numRuns: 60 },
  );
});

test('a further rig at the end of the line moves nobody', () => {
  const big = 'strip openings, rear\n seal openings, rear with Lap';
  const crewLine = '  crew 2 for 8 h each on mon to fri';
  const before = fleetOf(crewLine, { Auk: big, Brant: big });
  const after = fleetOf(crewLine, { Auk: big, Brant: big, Zander: big });
  expect(after.visits.filter(({ rig: name }) => name !== 'Zander')).toEqual(before.visits);
});
