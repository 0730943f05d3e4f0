import { describe, expect, test } from 'vitest';
import { readBookings } from '../../language/tables/bookings.ts';

const rowsOf = (path: string, text: string) =>
  readBookings(path, text).rows.map(({ labels, first, last, line }) => [labels.join('|'), first, last, line]);
const problemsOf = (path: string, text: string) =>
  readBookings(path, text).problems.map(({ line, message, at }) => [line, text.slice(...at), message]);
const csv = (text: string) => rowsOf('b.csv', text);

describe('bookings in a table', () => {
  test('have their columns in any order and case', () => {
    expect(csv('Last;WHO;First;Note;Rig\n2027-06-24;R. Adeyemi;2027-06-10;"a;b";Heron\n')).toEqual([
      ['Heron', '2027-06-10', '2027-06-24', 2],
    ]);
  });

  test('name the rig by its unit or its VIN where the row has no name', () => {
    expect(
      csv(
        'rig,unit,vin,first,last\n,1042,,2027-06-10,2027-06-10\n,,1M8GDM9AXKP042788,2027-06-10 09:00,2027-06-11T00:00:00\n',
      ),
    ).toEqual([
      ['1042', '2027-06-10', '2027-06-10', 2],
      ['1M8GDM9AXKP042788', '2027-06-10', '2027-06-11', 3],
    ]);
  });

  test.each([
    ['Heron,2027-02-30,2027-03-02', '2027-02-30', '`2027-02-30` is no day of the calendar.'],
    [
      'Heron,10/06/2027,2027-03-02',
      '10/06/2027',
      'A day is written as year, month, day, such as 2027-06-10; `10/06/2027` is none.',
    ],
    ['Heron,2027-03-02,2027-03-01', '2027-03-01', 'The last day, 2027-03-01, is before the first, 2027-03-02.'],
    ['Heron,2027-03-02,', '', 'A day is missing here, such as 2027-06-10.'],
    [',2027-03-02,2027-03-03', '', 'No rig is named in this row.'],
    ['Heron,2027-03-02', 'Heron,2027-03-02', 'This row has 2 of 3 cells: a column is missing.'],
    [
      'Heron,2027-03-02,2027-03-02,late',
      'late',
      'This row has 4 cells, and the header 3: a cell that holds `,` stands in quotes.',
    ],
    [
      'Heron,2027-03-02,"2027-03-03',
      'Heron,2027-03-02,"2027-03-03',
      'A cell begins with `"` and never ends: a `"` is missing.',
    ],
  ])('say what is wrong with a row, and where: %s', (row, at, message) => {
    expect(problemsOf('b.csv', `rig,first,last\n${row}\n`)).toEqual([[2, at, message]]);
  });

  test('leave out bad rows and count the good ones', () => {
    const file = readBookings('b.csv', 'rig,first,last\nHeron,x,y\nHeron,2027-03-02,2027-03-02\n');
    expect([file.count, file.rows.length, file.problems.length]).toEqual([2, 1, 1]);
  });

  test.each([
    ['', 'This table is empty.'],
    ['Heron,2027-06-10,2027-06-24\n', 'The first row names no column `rig` or `unit` or `vin`, `first`, `last`.'],
    ['rig,first,las\n', 'No column is called `las`; did you mean `last`?'],
    ['rig,first,last,Rig\n', 'Two columns are called `rig`: only the first is read.'],
  ])('need a header: %j', (text, message) => {
    expect(problemsOf('b.csv', text)[0]?.[2]).toContain(message);
  });
});

const event = (...lines: readonly string[]) => ['BEGIN:VEVENT', ...lines, 'END:VEVENT'].join('\r\n');
const calendar = (...parts: readonly string[]) =>
  ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//yard//EN', ...parts, 'END:VCALENDAR', ''].join('\r\n');
const ics = (...lines: readonly string[]) =>
  rowsOf('b.ics', calendar(event('UID:1', ...lines))).map(([rig, first, last]) => [rig, first, last]);
const spans = (...lines: readonly string[]) =>
  ics('SUMMARY:Heron', ...lines).map(([, first, last]) => (first === last ? first : `${first}/${last}`));

describe('bookings in a calendar', () => {
  test('name the rig in the place, the title or a category', () => {
    const day = 'DTSTART;VALUE=DATE:20270610';
    expect(ics('LOCATION:Heron', 'SUMMARY:Family trip', 'CATEGORIES:A,Teal', day)).toEqual([
      ['Heron|Family trip|A|Teal', '2027-06-10', '2027-06-10'],
    ]);
    expect(problemsOf('b.ics', calendar(event('UID:1', day)))[0]?.[2]).toContain('names no rig');
  });

  test('of whole days end on the day before', () => {
    expect(spans('DTSTART;VALUE=DATE:20270610', 'DTEND;VALUE=DATE:20270625')).toEqual(['2027-06-10/2027-06-24']);
    expect(spans('DTSTART;VALUE=DATE:20270610', 'DURATION:P3D')).toEqual(['2027-06-10/2027-06-12']);
    expect(spans('DTSTART;VALUE=DATE:20270610')).toEqual(['2027-06-10']);
  });

  test('with times touch the days of the zone in which they are written', () => {
    const zone = 'TZID=Pacific/Auckland';
    expect(spans(`DTSTART;${zone}:20270610T230000`, `DTEND;${zone}:20270612T010000`)).toEqual([
      '2027-06-10/2027-06-12',
    ]);
    expect(spans(`DTSTART;${zone}:20270610T090000`, `DTEND;${zone}:20270612T000000`)).toEqual([
      '2027-06-10/2027-06-11',
    ]);
    expect(spans('DTSTART:20270610T230000Z', 'DTEND:20270610T233000Z')).toEqual(['2027-06-10']);
  });

  test('repeat until their end, without the dates that are taken out', () => {
    expect(
      spans(
        'DTSTART;VALUE=DATE:20270604',
        'DTEND;VALUE=DATE:20270607',
        'RRULE:FREQ=WEEKLY;COUNT=3',
        'EXDATE;VALUE=DATE:20270611',
      ),
    ).toEqual(['2027-06-04/2027-06-06', '2027-06-18/2027-06-20']);
  });

  test('without an end are followed for thirty years', () => {
    const got = spans('DTSTART;VALUE=DATE:20370604', 'RRULE:FREQ=YEARLY');
    expect([got.length, got.at(-1)]).toEqual([31, '2067-06-04']);
  });

  test('keep to the last date of a rule that ends in universal time', () => {
    const text = calendar(
      'BEGIN:VTIMEZONE\r\nTZID:East\r\nBEGIN:STANDARD\r\nDTSTART:19700101T000000\r\nTZOFFSETFROM:+1200\r\nTZOFFSETTO:+1200\r\nEND:STANDARD\r\nEND:VTIMEZONE',
      event(
        'UID:1',
        'SUMMARY:Heron',
        'DTSTART;TZID=East:20270601T090000',
        'DTEND;TZID=East:20270601T100000',
        'RRULE:FREQ=DAILY;UNTIL=20270602T210000Z',
      ),
    );
    expect(rowsOf('b.ics', text).map(([, first]) => first)).toEqual(['2027-06-01', '2027-06-02', '2027-06-03']);
  });

  test('that were moved or called off stand where they are now', () => {
    const text = calendar(
      event('UID:1', 'SUMMARY:Heron', 'DTSTART;VALUE=DATE:20270604', 'RRULE:FREQ=WEEKLY;COUNT=3'),
      event('UID:1', 'RECURRENCE-ID;VALUE=DATE:20270611', 'SUMMARY:Heron', 'DTSTART;VALUE=DATE:20270613'),
      event(
        'UID:1',
        'RECURRENCE-ID;VALUE=DATE:20270618',
        'SUMMARY:Heron',
        'STATUS:CANCELLED',
        'DTSTART;VALUE=DATE:20270618',
      ),
      event('UID:2', 'SUMMARY:Teal', 'STATUS:CANCELLED', 'DTSTART;VALUE=DATE:20270613'),
    );
    expect(rowsOf('b.ics', text).map(([rig, first]) => [rig, first])).toEqual([
      ['Heron', '2027-06-04'],
      ['Heron', '2027-06-13'],
    ]);
  });

  test('go to another rig on a date that was changed so', () => {
    const text = calendar(
      event('UID:1', 'SUMMARY:Heron', 'DTSTART;VALUE=DATE:20270604', 'RRULE:FREQ=WEEKLY;COUNT=3'),
      event('UID:1', 'RECURRENCE-ID;VALUE=DATE:20270611', 'SUMMARY:Teal', 'DTSTART;VALUE=DATE:20270611'),
      event('UID:1', 'RECURRENCE-ID;VALUE=DATE:20270618', 'DTSTART;VALUE=DATE:20270619'),
    );
    expect(rowsOf('b.ics', text).map(([rig, first]) => [rig, first])).toEqual([
      ['Heron', '2027-06-04'],
      ['Teal', '2027-06-11'],
      ['Heron', '2027-06-19'],
    ]);
  });

  test.each([
    [
      event(
        'UID:1',
        'SUMMARY:Heron',
        'DTSTART:20270401T100000Z',
        'DTEND:20270403T100000Z',
        'RDATE;VALUE=PERIOD:20270501T100000Z/P2D',
      ),
      'not as a period',
    ],
    [event('UID:1', 'SUMMARY:Heron'), 'DTSTART'],
    [event('UID:1', 'SUMMARY:Heron', 'DTSTART;VALUE=DATE:20270230'), 'no day of the calendar'],
    [
      event('UID:1', 'SUMMARY:Heron', 'DTSTART;VALUE=DATE:20270610', 'DTEND;VALUE=DATE:20270601'),
      'ends before it begins',
    ],
    [event('UID:1', 'SUMMARY:Heron', 'DTSTART:nonsense'), ''],
    [event('UID:1', 'SUMMARY:Heron', 'DTSTART:20270610T100000', 'RRULE:FREQ=SECONDLY'), 'not more often'],
    [event('UID:1', 'SUMMARY:Heron', 'DTSTART;VALUE=DATE:20270210', 'RRULE:FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30'), ''],
    ['BEGIN:VEVENT\r\nUID:1\r\nSUMMARY:Heron', ''],
  ])('that cannot be read take no other with them: %j', (bad, says) => {
    const good = event('UID:9', 'SUMMARY:Teal', 'DTSTART;VALUE=DATE:20270610');
    const text = calendar(bad, good);
    expect(rowsOf('b.ics', text).map(([rig]) => rig)).toContain('Teal');
    const problems = problemsOf('b.ics', text);
    if (says !== '') expect(problems.map(([, , message]) => message).join()).toContain(says);
    for (const [line] of problems) expect(line).toBe(4);
  });

  test('are nothing where the file is no calendar', () => {
    expect(problemsOf('b.ics', 'rig,first,last\n')[0]?.[2]).toContain('no calendar');
  });
});

describe('days', () => {
  const daysOf = (...lines: readonly string[]) =>
    rowsOf('b.ics', calendar(event('UID:1', 'SUMMARY:Heron', ...lines))).map((row) => row.slice(1, 3).join('/'));

  test('may be written without saying that they are days', () => {
    expect(daysOf('DTSTART:20270401', 'DTEND:20270404')).toEqual(['2027-04-01/2027-04-03']);
    expect(daysOf('DTSTART;X-A=1:20270401')).toEqual(['2027-04-01/2027-04-01']);
  });

  test('of an event that has gone on for long are still there', () => {
    const days = daysOf('DTSTART;VALUE=DATE:19900501', 'RRULE:FREQ=YEARLY');
    expect(days).toContain('2027-05-01/2027-05-01');
  });
});

test('a file that is no UTF-8 says so, and nothing of it counts', () => {
  const latin = new TextDecoder().decode(
    Uint8Array.from(Buffer.from('rig,first,last\nDüll,2027-06-10,2027-06-24\n', 'latin1')),
  );
  for (const path of ['b.csv', 'b.ics']) {
    expect(rowsOf(path, latin)).toEqual([]);
    expect(problemsOf(path, latin)).toEqual([[2, expect.anything(), expect.stringContaining('UTF-8')]]);
  }
});
