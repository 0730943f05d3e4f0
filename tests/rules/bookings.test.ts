import { describe, expect, it } from 'vitest';
import { createProject } from '../../language/resolve/project.ts';
import { checkFile } from '../../language/rules/check.ts';
import { findingsThatStopWriting } from '../../language/rules/writable.ts';
import { filesOf, projectOf, today } from '../project/workspace.ts';
import { found, mended, said, under } from './asked.ts';

const roof = 'roof 28 ft by 8 ft epdm';
const yard = (rows: string, more: Readonly<Record<string, string>> = {}, file = 'bookings.csv') => ({
  'yard.rig': `fleet Yard {\n  rigs      "rigs/*.rig"\n  bookings  from "${file}"\n}\n`,
  'rigs/heron.rig': `rig Heron {\n  ${roof}\n  unit "1042"\n  vin "1M8GDM9AXKP042788"\n}\n`,
  'rigs/teal.rig': `rig Teal {\n  ${roof}\n  unit "7"\n}\n`,
  [file]: rows,
  ...more,
});
const header = 'rig,first,last\n';
const bookedOf = (texts: Readonly<Record<string, string>>) =>
  projectOf(texts)
    .fleets('yard.rig')
    .flatMap(({ views }) =>
      views.map(({ rig, booked = [] }) => [rig.name, ...booked.map((one) => `${one.first}/${one.last}`)]),
    );
const errors = (texts: Readonly<Record<string, string>>) => found(texts).filter(({ severity }) => severity === 'error');

describe('bookings from a file', () => {
  it('book the days that lines of the fleet would', () => {
    const texts = yard(
      `${header}Heron,2027-06-10,2027-06-24\n1042,2027-07-01,2027-07-02\n1M8GDM9AXKP042788,2027-08-01,2027-08-02\n7,2027-06-01,2027-06-01\n`,
    );
    expect(bookedOf(texts)).toEqual([
      ['Heron', '2027-06-10/2027-06-24', '2027-07-01/2027-07-02', '2027-08-01/2027-08-02'],
      ['Teal', '2027-06-01/2027-06-01'],
    ]);
    expect(errors(texts)).toEqual([]);
  });

  it('that cannot be read at all are not told as one row of many', () => {
    const rows = 'Heron,2027-06-10,2027-06-24\nTeal,2027-06-10,2027-06-24\nHeron,2027-07-10,2027-07-24\n';
    const sum = errors(yard(rows)).find(({ rule }) => rule === 'bookings-left-out');
    expect(sum?.message).toBe('`bookings.csv` cannot be read: what it books counts as free. Mend that file.');
  });

  it('count where a column stands twice, and the sum does not say that they are left out', () => {
    const texts = yard('rig,rig,first,last\nHeron,Teal,2027-06-10,2027-06-24\n');
    expect(bookedOf(texts)).toEqual([['Heron', '2027-06-10/2027-06-24'], ['Teal']]);
    expect(errors(texts).map(({ rule }) => rule)).toEqual(['booking-unreadable']);
  });

  it('come from a calendar as well', () => {
    const event =
      'BEGIN:VEVENT\nUID:1\nLOCATION:elsewhere\nSUMMARY:1042\nDTSTART;VALUE=DATE:20270610\nDTEND;VALUE=DATE:20270612\nEND:VEVENT\n';
    const texts = yard(`BEGIN:VCALENDAR\n${event}END:VCALENDAR\n`, {}, 'bookings.ics');
    expect(bookedOf(texts)).toEqual([['Heron', '2027-06-10/2027-06-11'], ['Teal']]);
  });

  it('say at the row what is wrong, and in the fleet how many there are', () => {
    const texts = yard(`${header}Hern,2027-06-10,2027-06-24\nTeal,2027-06-31,2027-07-01\nTeal,2027-07-01,2027-07-02\n`);
    expect(bookedOf(texts)).toEqual([['Heron'], ['Teal', '2027-07-01/2027-07-02']]);
    const [first, second, sum] = errors(texts);
    expect(first).toMatchObject({ rule: 'booked-unknown', file: 'bookings.csv' });
    expect(first?.message).toBe('Row 2: No rig of Yard is called `Hern`. Did you mean `Heron`?');
    expect(under(texts['bookings.csv'] as string, first!)).toBe('Hern');
    expect(second).toMatchObject({ rule: 'booking-unreadable', file: 'bookings.csv' });
    expect(under(texts['bookings.csv'] as string, second!)).toBe('2027-06-31');
    expect(sum).toMatchObject({
      rule: 'bookings-left-out',
      file: 'yard.rig',
      related: [{ file: 'bookings.csv', at: first?.at }],
    });
    expect(sum?.message).toContain('2 of 3 rows of `bookings.csv` cannot be read');
    expect(under(texts['yard.rig'], sum!)).toContain('"bookings.csv"');
  });

  it('that overlap are told at the later row', () => {
    const texts = yard(
      `${header}Heron,2027-06-20,2027-06-24\nHeron,2027-06-01,2027-06-21\nHeron,2027-06-24,2027-06-25\n`,
    );
    const [one, ...more] = said('bookings-overlap', texts);
    expect(more).toEqual([]);
    expect(under(texts['bookings.csv'] as string, one!)).toBe('Heron,2027-06-20,2027-06-24');
    expect(one?.related).toMatchObject([{ file: 'bookings.csv' }]);
    expect(under(texts['bookings.csv'] as string, one!.related![0]!)).toBe('Heron,2027-06-01,2027-06-21');
    expect(one?.severity).toBe('warning');
  });

  it('are an error where the file is not there, mended to the nearest name', () => {
    const texts = { ...yard(''), 'yard.rig': yard('')['yard.rig'].replace('bookings.csv', 'bokings.csv') };
    const project = createProject({ ...filesOf(texts), beside: () => ['bookings.csv', 'photo.jpg'] });
    const [finding] = checkFile(project, 'yard.rig', { asOf: today, today }).filter(
      ({ rule }) => rule === 'bookings-missing',
    );
    expect(mended(texts['yard.rig'], finding!)).toBe(yard('')['yard.rig']);
    expect(said('bookings-missing', texts)[0]?.message).toContain('There is no file `bokings.csv`');
    expect(said('bookings-missing', yard('', {}, 'bookings.xlsx'))[0]?.message).toContain('is neither');
  });

  it('are read anew when their text changes', () => {
    const texts: Record<string, string> = yard(`${header}Heron,2027-06-10,2027-06-24\n`);
    const project = projectOf(texts);
    const days = () => project.fleets('yard.rig')[0]?.views[0]?.booked?.map(({ first }) => first);
    expect(days()).toEqual(['2027-06-10']);
    texts['bookings.csv'] = `${header}Heron,2027-06-11,2027-06-24\n`;
    project.changed(['bookings.csv']);
    expect(days()).toEqual(['2027-06-11']);
    expect(project.dependsOn('yard.rig')).toContain('bookings.csv');
  });

  it('are quick: ten thousand of a thousand rigs', () => {
    const rigs = Array.from({ length: 1000 }, (_, i) => `rig R${i} { ${roof} unit "${i}" }\n`).join('');
    const rows = Array.from(
      { length: 10_000 },
      (_, i) =>
        `${i % 2 ? 'R' : ''}${i % 1000},20${30 + Math.floor(i / 1000)}-06-10,20${30 + Math.floor(i / 1000)}-06-12\n`,
    );
    const texts = {
      'yard.rig': `fleet Yard {\n  rigs "all.rig"\n  bookings from "b.csv"\n}\n`,
      'all.rig': rigs,
      'b.csv': header + rows.join(''),
    };
    const project = projectOf(texts);
    project.fleetFrames('yard.rig');
    const members = Array.from({ length: 1000 }, (_, i) => i);
    project.changed(['b.csv']);
    const start = performance.now();
    const [frame] = project.fleetFrames('yard.rig');
    expect(frame?.fleet.tables?.[0]?.read?.rows).toHaveLength(members.length * 10);
    expect(performance.now() - start).toBeLessThan(1000);
    expect(said('bookings-left-out', texts)).toEqual([]);
  });
});

it('of a file that is named twice count once', () => {
  const texts = yard(`${header}Heron,2027-06-10,2027-06-24\n`);
  const twice = {
    ...texts,
    'yard.rig': texts['yard.rig'].replace('bookings  from', 'bookings  from "./bookings.csv"\n  bookings  from'),
  };
  expect(bookedOf(twice)).toEqual([['Heron', '2027-06-10/2027-06-24'], ['Teal']]);
  expect(found(twice).map(({ rule }) => rule)).toEqual(['bookings-twice']);
});

it('let papers be written, unless days that are booked are not known', () => {
  const stop = (texts: Readonly<Record<string, string>>) =>
    findingsThatStopWriting(projectOf(texts), 'yard.rig', { asOf: today, today }).map(({ rule, file }) => [rule, file]);
  expect(stop(yard(`${header}Heron,2027-06-10,2027-06-24\nHern,2027-06-10,2027-06-24\n`))).toEqual([]);
  expect(stop(yard(`${header}Heron,2027-06-31,2027-07-24\n`))).toEqual([['booking-unreadable', 'bookings.csv']]);
  const { 'bookings.csv': _, ...without } = yard('');
  expect(stop(without)).toEqual([['bookings-missing', 'yard.rig']]);
});
