// A rig's part of the schedule of its fleet, and what the rig's own schedule says of it.
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { textDocumentsOf } from '../../language/documents/index.ts';
import { papersOf } from '../../language/documents/papers.ts';
import { fleetsThatList } from '../../language/resolve/listed-by.ts';
import { projectOf } from '../project/workspace.ts';
import { materials, rig } from '../schedule/yard.ts';

const dates = { asOf: '2027-05-02', today: '2027-05-02' };
const work = 'strip openings\n seal openings with Lap before 2027-08-01';
const texts = {
  'yard.rig': `use "materials.rig"\nfleet Yard under Home {\n rigs "rigs/*.rig"\n crew 1 for 8 h each on mon to fri\n booked Auk 2027-05-03 to 2027-05-20\n}\n`,
  'materials.rig': materials,
  'rigs/auk.rig': `use "../materials.rig"\n${rig('Auk', work)}`,
  'rigs/brant.rig': `use "../materials.rig"\n${rig('Brant', `${work}\n inspect after 2027-09-01`)}`,
  'rigs/curlew.rig': `use "../materials.rig"\n${rig('Curlew', 'inspect after 2027-09-01')}`,
  'rigs/dunlin.rig': `use "../materials.rig"\n${rig('Dunlin', '')}`,
};
const project = projectOf(texts);
const [found] = project.fleets('yard.rig');
if (!found) throw new Error('no fleet');
const subject = { kind: 'fleet', fleet: found.fleet, views: found.views } as const;
const papers = new Map(textDocumentsOf(subject, dates).map(({ name, text }) => [name, text]));
const { schedule } = papersOf(subject, dates).schedule;

/** The components of a calendar by their UID. */
function calendar(name: string): ReadonlyMap<string, string> {
  const root = new ICAL.Component(ICAL.parse(papers.get(name) as string));
  return new Map(
    root.getAllSubcomponents().map((part) => [part.getFirstPropertyValue('uid') as string, part.toString()]),
  );
}

describe('the part of a rig', () => {
  test('is written of the rigs whose next visit comes soon, and of no other', () => {
    const soon = new Set(schedule.visits.filter(({ days }) => days[0]! <= '2027-06-01').map((visit) => visit.rig));
    expect([...soon].sort()).toEqual(['Auk', 'Brant']);
    const parts = [...papers.keys()].filter((name) => /^\w+\.Yard\.schedule\./.test(name));
    expect(parts.sort()).toEqual(
      [...soon].flatMap((name) => [`${name}.Yard.schedule.ics`, `${name}.Yard.schedule.md`]).sort(),
    );
  });
  test('has each of its visits on the days of the fleet, later ones too, and nothing of another rig', () => {
    const visits = schedule.visits.filter((visit) => visit.rig === 'Brant');
    expect(visits.length).toBe(2);
    const text = papers.get('Brant.Yard.schedule.md') as string;
    for (const { days } of visits) expect(text).toContain(`## ${days[0]}`);
    expect(text.match(/^## 2027/gm)).toHaveLength(2);
    expect(text).not.toMatch(/Auk|Curlew/);
    expect(text).toContain(
      'This is its part of `Yard.schedule.md`, with the bookings, bays and crew of Yard: it counts',
    );
  });
  test('knows the bookings, which the rig alone does not', () => {
    const [alone] = project.rigs('rigs/auk.rig');
    const own = papersOf({ kind: 'rig', view: alone! }, dates).schedule.schedule.visits[0]!;
    expect(own.days[0]! < '2027-05-21').toBe(true);
    expect(papers.get('Auk.Yard.schedule.md')).toContain('## 2027-05-21');
  });
  test('has the events of the calendar of the fleet, to the byte, under the same names', () => {
    const whole = calendar('Yard.schedule.ics');
    for (const name of ['Auk', 'Brant']) {
      const part = calendar(`${name}.Yard.schedule.ics`);
      expect(part.size).toBeGreaterThan(0);
      for (const [uid, text] of part) expect(whole.get(uid), uid).toBe(text);
      const mine = [...whole.keys()].filter((uid) => uid.includes(`/${name}/`));
      expect([...part.keys()].sort()).toEqual(mine.sort());
    }
  });
});

describe('the rig’s own schedule', () => {
  const [view] = project.rigs('rigs/auk.rig');
  const own = (fleets?: readonly string[]) =>
    new Map(
      textDocumentsOf({ kind: 'rig', view: view! }, dates, fleets ? { fleets } : {}).map(({ name, text }) => [
        name,
        text,
      ]),
    );
  const named = own(['Yard']);
  test('names the one that counts in one line, and on the calendar', () => {
    const lines = (named.get('Auk.schedule.md') as string).split('\n').filter((line) => line.includes('Yard'));
    expect(lines).toHaveLength(1);
    expect(lines[0]).toContain('`Yard.schedule.md`');
    expect(lines[0]).toContain('`Auk.Yard.schedule.md`');
    const root = new ICAL.Component(ICAL.parse(named.get('Auk.schedule.ics') as string));
    expect(root.getFirstPropertyValue('description')).toContain('Yard.schedule.ics');
    expect(JSON.parse(named.get('Auk.schedule.json') as string).fleets).toEqual(['Yard']);
  });
  test('has the same days with it and without: nothing else of the fleet counts', () => {
    const plain = own();
    expect(plain.get('Auk.schedule.md')).toContain('It speaks of this rig alone');
    expect(plain.get('Auk.schedule.csv')).toBe(named.get('Auk.schedule.csv'));
    expect(JSON.parse(plain.get('Auk.schedule.json') as string)).toEqual({
      ...JSON.parse(named.get('Auk.schedule.json') as string),
      fleets: undefined,
    });
  });
  test('the fleets that list a file are found by their patterns', () => {
    const files = Object.keys(texts);
    expect(fleetsThatList('rigs/auk.rig', files, project.records)).toEqual(['Yard']);
    expect(fleetsThatList('materials.rig', files, project.records)).toEqual([]);
    expect(fleetsThatList('rigs/auk.rig', ['rigs/auk.rig'], project.records)).toEqual([]);
  });
});
