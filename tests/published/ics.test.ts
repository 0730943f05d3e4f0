// The calendar read back by an independent reader (npm node-ical; where Debian's python3-icalendar is installed, by that too),
// and by the letter of RFC 5545.
import { execFileSync, spawnSync } from 'node:child_process';
import nodeIcal from 'node-ical';
import { describe, expect, it } from 'vitest';
import type { Schedule } from '../../language/schedule/index.ts';
import { paper, papers, papersOfText } from '../documents/examples.ts';

const schedule = (name: string): Schedule => JSON.parse(papers.get(`${name}.schedule.json`) as string).schedule;
/** Kinds of dues that say from when something holds. */
const begins: ReadonlySet<string> = new Set(['cover', 'tape-second-half']);
const ics = (name: string) => papers.get(`${name}.schedule.ics`) as string;
const day = (date: Date) =>
  `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, '0')}-${String(date.getDate()).padStart(2, '0')}`;
const dayAfter = (date: string) => new Date(Date.parse(`${date}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);

/** No line has more than 75 octets, and none begins or ends inside a character. */
const wholeLines = (text: string) =>
  text.split('\r\n').every((line) => Buffer.byteLength(line) <= 75 && Buffer.from(line).toString() === line);

const python = '/usr/bin/python3';
const hasPython = spawnSync(python, ['-c', 'import icalendar'], { stdio: 'ignore' }).status === 0;

interface Read {
  readonly type: string;
  readonly uid: string;
  readonly summary: string;
  readonly description: string;
  readonly start: Date;
  readonly end: Date;
  readonly due: Date;
}
const read = (text: string) => Object.values(nodeIcal.sync.parseICS(text)) as unknown as Read[];

describe.each(['Wren', 'Highmeadow', 'Dell'])('the calendar of %s', (name) => {
  it('has one all-day event a visit, its end exclusive', () => {
    const events = read(ics(name)).filter((one) => one.type === 'VEVENT');
    const { visits } = schedule(name);
    expect(events.map((event) => [day(event.start), day(event.end)]).sort()).toEqual(
      visits.map((visit) => [visit.days[0], dayAfter(visit.days.at(-1) as string)]).sort(),
    );
    for (const visit of visits) {
      const event = events.find((one) => day(one.start) === visit.days[0] && one.summary.startsWith(visit.rig));
      for (const task of visit.tasks) expect(event?.description).toContain(task.label);
    }
  });
  it('has a to-do for each date that falls due, done in time on its last day', () => {
    const todos = read(ics(name)).filter((one) => one.type === 'VTODO' && one.due);
    const dues = schedule(name).dues.filter(({ kind }) => !begins.has(kind));
    expect(todos.map((todo) => day(todo.due)).sort()).toEqual(dues.map((due) => dayAfter(due.date)).sort());
  });
  it('has a to-do that begins on the day from which something holds', () => {
    const starts = read(ics(name))
      .filter((one) => one.type === 'VTODO' && one.start)
      .map((todo) => [todo.summary, day(todo.start)].join(' '));
    const { dues, visits } = schedule(name);
    const expected = [
      ...dues.filter(({ kind }) => begins.has(kind)).map((due) => `${due.rig}: ${due.title} ${due.date}`),
      ...visits.flatMap(({ rig, clocks }) =>
        clocks.flatMap(({ clock, safeFrom }) => {
          if (clock === 'drive') return [`${rig}: may be driven ${safeFrom}`];
          return clock === 'cover' ? [`${rig}: may be covered with tape ${safeFrom}`] : [];
        }),
      ),
    ];
    expect(starts.sort()).toEqual(expected.sort());
  });
  it('brings every sentence back as the schedule has it', () => {
    const texts = read(ics(name)).map(({ description }) => description?.replaceAll('\\;', ';') ?? '');
    const { dues, visits } = schedule(name);
    for (const { because } of dues) expect(texts.some((text) => text.endsWith(because))).toBe(true);
    for (const sentence of visits.flatMap((visit) => visit.because))
      expect(
        texts.some((text) => text.split('\n').includes(sentence)),
        sentence,
      ).toBe(true);
  });
  it('ties to-dos to visits that are there', () => {
    const lines = ics(name).replaceAll('\r\n ', '').split('\r\n');
    const uids = new Set(lines.filter((line) => line.startsWith('UID:')).map((line) => line.slice(4)));
    const related = lines.filter((line) => line.startsWith('RELATED-TO:')).map((line) => line.slice(11));
    expect(related.length).toBeGreaterThan(0);
    expect(related.filter((uid) => !uids.has(uid))).toEqual([]);
  });
  it('asks nobody for an answer and depends on no zone', () => {
    expect(ics(name)).not.toMatch(/^METHOD|TZID|^DT(?:START|END):|^DUE:/m);
    expect(ics(name)).toMatch(/^PRODID:.*Rigseam/m);
  });
  it('has UIDs that are its own', () => {
    const uids =
      ics(name)
        .replaceAll('\r\n ', '')
        .match(/^UID:.*$/gm) ?? [];
    expect(new Set(uids).size).toBe(uids.length);
  });
  it('keeps to RFC 5545: CR LF, no line over 75 octets, no break inside a character', () => {
    const text = ics(name);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(wholeLines(text)).toBe(true);
    expect((text.match(/^DTSTAMP:20261125T000000Z\r$/gm) ?? []).length).toBe(
      (text.match(/^BEGIN:(?:VEVENT|VTODO)\r$/gm) ?? []).length,
    );
  });
});

describe('text that travels', () => {
  const words = 'Schönwetter; Öl, "дождь" \\ 屋根 🚐 '.repeat(6);
  const written = papersOfText(
    `rig Odd {\n  roof 6 m by 2 m epdm\n  cap rear\n  inspected 2026-10-01 {\n    rear open\n  }\n  quote "${words.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}" 100 EUR for recoat until 2027-01-31\n}\n`,
  );
  it('comes back as it was written, through folding and escaping', () => {
    const text = written.get('Odd.schedule.ics') as string;
    expect(wholeLines(text)).toBe(true);
    expect(Buffer.byteLength(words)).toBeGreaterThan(200);
    const todo = read(text).find((one) => one.description?.includes('Schönwetter'));
    // node-ical leaves the marks before semicolons and backslashes.
    expect(todo?.description.replaceAll('\\;', ';').replaceAll('\\\\', '\\')).toContain(words.trim());
  });
  it('is read alike by a second reader', (context) => {
    if (!hasPython) return context.skip('python3-icalendar is not installed: read by node-ical only');
    const told = secondReader(written.get('Odd.schedule.ics') as string);
    expect(told.some(({ description }) => description.includes(words.trim()))).toBe(true);
    for (const name of ['Wren', 'Highmeadow', 'Dell']) {
      const days = ({ visits, dues }: Schedule) => [
        ...visits.map((visit) => [visit.days[0], dayAfter(visit.days.at(-1) as string), '']),
        ...dues.filter(({ kind }) => !begins.has(kind)).map(({ date }) => ['', '', dayAfter(date)]),
      ];
      const read = secondReader(ics(name)).filter(({ end, due }) => end !== '' || due !== '');
      expect(read.map(({ start, end, due }) => [start, end, due]).sort()).toEqual(days(schedule(name)).sort());
    }
  });
});

interface Told {
  readonly start: string;
  readonly end: string;
  readonly due: string;
  readonly description: string;
}

/** Every event and to-do as Debian's python3-icalendar reads it. */
function secondReader(text: string): Told[] {
  const script = `import sys, json, icalendar
calendar = icalendar.Calendar.from_ical(sys.stdin.buffer.read())
day = lambda c, name: c.decoded(name).isoformat() if name in c else ''
print(json.dumps([{'start': day(c, 'DTSTART'), 'end': day(c, 'DTEND'), 'due': day(c, 'DUE'), 'description': str(c['DESCRIPTION'])}
  for c in calendar.walk() if c.name in ('VEVENT', 'VTO' + 'DO')]))`;
  return JSON.parse(execFileSync(python, ['-c', script], { input: text, encoding: 'utf8' }));
}

it('a fleet and a rig of it have no UID in common: in one calendar neither takes the place of the other', () => {
  const uids = (name: string) =>
    (paper(`${name}.schedule.ics`)
      .replaceAll('\r\n ', '')
      .match(/^UID:.*$/gm) ?? []) as readonly string[];
  const fleet = new Set(uids('Highmeadow'));
  expect(fleet.size).toBeGreaterThan(20);
  expect(uids('Dell').length).toBeGreaterThan(3);
  expect(uids('Dell').filter((uid) => fleet.has(uid))).toEqual([]);
});
