import { describe, expect, it } from 'vitest';
import { of, one } from './ask.ts';

const found = (word: string, day = '2026-06-10') => `  inspected ${day} { vent ${word} }\n`;
const followUp = (lines: string, asOf = '2026-06-10') => one('follow-up', lines, asOf, 'vent');

describe('the follow-up of a finding', () => {
  it.each([
    ['hairline', '2026-12-10'],
    ['cracked', '2026-07-10'],
    ['lifting', '2026-06-17'],
    ['open', '2026-06-11'],
    ['torn', '2026-06-11'],
  ])('%s: %s', (word, date) => {
    expect(followUp(found(word))).toMatchObject({ date, sourceEvent: { file: 'a.rig' } });
  });
  it.each(['sound', 'chalky'])('%s has none', (word) => {
    expect(of('follow-up', found(word), '2026-06-10', 'vent')).toEqual([]);
  });

  it('of lifting and open is before the rig next leaves, on a trip or a booking', () => {
    const trip = '  trip 2026-06-13 to 2026-06-20\n';
    expect(followUp(found('lifting') + trip)).toMatchObject({ date: '2026-06-12' });
    expect(followUp(found('lifting') + trip).because).toContain('before the rig leaves on 2026-06-13');
    expect(followUp(found('cracked') + trip).date).toBe('2026-07-10');
    const gone = followUp(found('lifting') + trip, '2026-06-15');
    expect(gone).toMatchObject({ date: '2026-06-12', status: 'overdue', days: -3 });
  });

  it('counts from the first finding at that level, and a graver one later puts nothing off', () => {
    const lines = found('cracked', '2026-04-01') + found('cracked', '2026-04-20');
    expect(followUp(lines, '2026-04-20').date).toBe('2026-05-01');
    expect(followUp(lines + found('lifting', '2026-04-29'), '2026-04-29').date).toBe('2026-05-01');
    expect(followUp(found('cracked', '2026-04-01') + found('lifting', '2026-04-02'), '2026-04-03').date).toBe(
      '2026-04-09',
    );
  });

  it('of hairlines is another look, so that it counts from the last', () => {
    expect(followUp(found('hairline', '2026-01-31') + found('hairline', '2026-06-10')).date).toBe('2026-12-10');
    expect(followUp(found('hairline', '2025-08-31'), '2025-09-01').date).toBe('2026-02-28');
  });

  it('ends by a repair or a better finding', () => {
    expect(of('follow-up', `${found('open')}  sealed 2026-06-11 vent with Lap`, '2026-06-12', 'vent')).toEqual([]);
    expect(of('follow-up', found('open') + found('sound', '2026-06-12'), '2026-06-12', 'vent')).toEqual([]);
    expect(of('follow-up', `${found('open')}  removed 2026-06-11 vent`, '2026-06-12', 'vent')).toEqual([]);
  });

  it('of one item has a due for each condition on it, the earliest of its stretches', () => {
    const lines = `  inspected 2026-06-10 {
    curbside hairline from 0 ft to 3 ft
    curbside hairline from 6 ft to 9 ft
    curbside lifting from 20 ft to 21 ft
  }`;
    expect(of('follow-up', lines, '2026-06-10', 'curbside').map((due) => due.word)).toEqual(['lifting', 'hairline']);
  });

  it('of a seam with all its coats is to strip it', () => {
    const three = ['2022', '2023', '2024'].map((year) => `  sealed ${year}-05-01 vent with Lap\n`).join('');
    expect(one('strip', three + found('cracked'), '2026-06-10').date).toBe('2026-07-10');
    expect(one('strip', three + found('cracked'), '2026-06-10').because).toContain('4 coats lie on it of at most 4');
    expect(of('strip', three + found('hairline'), '2026-06-10')).toEqual([]);
    expect(of('strip', found('cracked'), '2026-06-10')).toEqual([]);
    const unknown = `  found 2021-05-01 all with unknown\n${found('cracked')}`;
    expect(one('strip', unknown, '2026-06-10').because).toContain('unknown');
  });
});

describe('damp', () => {
  it('wet is looked at again within 14 days, also after a sealing over it', () => {
    const lines = `${found('wet')}  sealed 2026-06-11 vent with Lap\n`;
    expect(one('follow-up', lines, '2026-06-12', 'wet')).toMatchObject({ item: 'vent', date: '2026-06-24' });
    expect(of('follow-up', `${lines}  dried 2026-06-20 vent moisture 12 %`, '2026-06-21', 'wet')).toEqual([]);
  });
  it.each([
    ['15 %', undefined, undefined],
    ['16 %', 're-read', '2026-06-24'],
    ['20 %', 'find-source', '2026-06-17'],
    ['26 %', 'open-up', '2026-06-17'],
  ])('a reading of %s asks for %s', (reading, word, date) => {
    const asked = of('re-read', found(`sound moisture ${reading}`), '2026-06-10');
    expect(asked.map((due) => [due.word, due.date])).toEqual(word === undefined ? [] : [[word, date]]);
  });
  it('never says that a place is dry', () => {
    const all = of('re-read', found('sound moisture 16 %'), '2026-06-10').concat(
      of('follow-up', found('wet'), '2026-06-10'),
    );
    for (const due of all) expect(due.because).not.toMatch(/\bis dry\b/);
  });
});

describe('a temporary cover', () => {
  it('expires, and goes with the repair', () => {
    const covered = '  covered 2026-06-11 vent until 2026-06-25\n';
    expect(one('temporary-cover', covered, '2026-06-26')).toMatchObject({
      item: 'vent',
      date: '2026-06-25',
      status: 'overdue',
      days: -1,
    });
    expect(of('temporary-cover', `${covered}  sealed 2026-06-20 vent with Lap`, '2026-06-26')).toEqual([]);
  });
});

describe('a leak', () => {
  const leak = '  leaked 2026-06-11 inside "over the shower" suspect vent\n';
  it('is followed up within 7 days or before the rig leaves', () => {
    expect(one('follow-up', leak, '2026-06-12', 'leak')).toMatchObject({ item: 'vent', date: '2026-06-18' });
    expect(one('follow-up', `${leak}  trip 2026-06-14 to 2026-06-20`, '2026-06-12', 'leak').date).toBe('2026-06-13');
  });
  it('that was repaired is looked at again, until a look finds it sound and dry', () => {
    const sealed = `${leak}  sealed 2026-06-15 vent with Lap\n`;
    expect(of('follow-up', sealed, '2026-06-16', 'leak')).toEqual([]);
    expect(one('leak-look', sealed, '2026-06-16')).toMatchObject({ item: 'vent', date: '2026-07-15' });
    expect(one('leak-look', `${sealed}  inspected 2026-06-20 { vent hairline }`, '2026-06-21').date).toBe('2026-07-15');
    expect(of('leak-look', `${sealed}  inspected 2026-06-20 { vent sound }`, '2026-06-21')).toEqual([]);
  });
  it('says that it came back', () => {
    const again = `${leak}  sealed 2026-06-15 vent with Lap\n  inspected 2026-06-20 { vent sound }\n  leaked 2026-09-01 suspect vent`;
    expect(one('follow-up', again, '2026-09-02', 'leak').because).toContain('second time');
  });
});
