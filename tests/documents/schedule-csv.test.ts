import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { SchedulePaper } from '../../language/documents/papers.ts';
import { scheduleCsv } from '../../language/documents/schedule-csv.ts';
import { paper } from './examples.ts';

const rowsOf = (text: string) => Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
const schedule = (name: string) => JSON.parse(paper(`${name}.schedule.json`)) as SchedulePaper;

describe.each(['Wren', 'Highmeadow'])('the schedule of %s as CSV', (name) => {
  const whole = schedule(name);
  const text = scheduleCsv(whole);
  const { data, errors } = rowsOf(text);
  const of = (section: string) => data.filter((row) => row.section === section);

  it('keeps to RFC 4180', () => {
    expect(errors).toEqual([]);
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it('has a line for each visit, task, clock, due date and plan without a day', () => {
    const { visits, dues, unplaced } = whole.schedule;
    expect(of('visit').map(({ id, from, to }) => [id, from, to])).toEqual(
      visits.map(({ id, days }) => [id, days[0], days.at(-1)]),
    );
    expect(of('task').map(({ id, from }) => [id, from])).toEqual(
      visits.flatMap(({ tasks }) => tasks.map((task) => [task.id, task.date])),
    );
    expect(of('clock')).toHaveLength(visits.reduce((sum, { clocks }) => sum + clocks.length, 0));
    expect(of('due').map(({ id, from }) => [id, from])).toEqual(dues.map(({ id, date }) => [id, date]));
    expect(of('not placed').map(({ what }) => what)).toEqual(unplaced.map(({ title }) => title));
    expect(data.length).toBeGreaterThan(20);
  });

  it('has the minutes of the JSON, whole', () => {
    const minutes = whole.schedule.visits.flatMap(({ tasks }) => tasks.map((task) => Math.round(task.minutes)));
    expect(of('task').map((row) => Number(row.minutes))).toEqual(minutes);
  });
});

it('lets no text become a formula', () => {
  const whole = schedule('Wren');
  const [due] = whole.schedule.dues;
  const hostile = ['=1+2', '+1', '-1', '@x', '\tx', 'a=1'];
  const dues = hostile.map((title) => ({ ...due!, title }));
  const text = scheduleCsv({ ...whole, schedule: { ...whole.schedule, dues } });
  const shown = rowsOf(text).data.flatMap(({ section, what }) => (section === 'due' ? [what] : []));
  expect(shown).toEqual(hostile.map((title) => (title === 'a=1' ? title : `'${title}`)));
});
