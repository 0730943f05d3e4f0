// Leaks and moisture: what comes first, and what comes after.
import { describe, expect, it } from 'vitest';
import { advice, on, one, texts } from './ask.ts';

const read = (day: string, percent: number) => `inspected ${day} { vent sound moisture ${percent} % }`;

describe('moisture', () => {
  it.each([
    [[12], 'sound'],
    [[15], 'sound'],
    [[16], 're-read'],
    [[19], 're-read'],
    [[20], 'find-source'],
    [[24], 'find-source'],
    [[25], 'open-up'],
    [[12, 15], 'sound'],
    [[11, 15], 'find-source'],
    [[22, 17], 're-read'],
    [[22, 14], 'sound'],
  ])('%j %% asks for %s', (percents, row) => {
    const lines = percents.map((percent, i) => read(`2026-05-0${i + 1}`, percent)).join('\n  ');
    expect(one('vent', lines).row).toBe(row);
  });

  it('tells the trend', () => {
    const { reasons } = one('vent', `${read('2026-05-01', 17)}\n  ${read('2026-05-10', 22)}`);
    expect(reasons[0]?.text).toBe('22 % was read on 2026-05-10, up 5 points from 17 % on 2026-05-01.');
    expect(reasons.at(-1)).toMatchObject({ kind: 'published' });
  });

  it('lets nothing be closed up, and says what comes afterwards', () => {
    const lines = 'inspected 2026-05-02 { curbside cracked moisture 22 % }';
    const found = one('curbside', lines);
    expect(found).toMatchObject({ row: 'find-source', afterwards: { row: 'cracked', action: 'recoat' } });
    expect(found.allowed[0]?.text).toBe(
      'Nothing is sealed or taped over it before a reading of 19 % or less; the last one was 22 %.',
    );
    expect(one('vent', 'inspected 2026-05-02 { vent open moisture 22 % }').allowed[0]?.what).toBe('closing it up');
  });

  it('ends with a drying and a low reading', () => {
    const wet = 'inspected 2026-05-02 { vent sound wet moisture 22 % }';
    expect(one('vent', `${wet}\n  dried 2026-05-10 vent moisture 21 %`).row).toBe('wet');
    expect(one('vent', `${wet}\n  dried 2026-05-10 vent moisture 13 %`).row).toBe('sound');
  });

  it('tells what another reading would change', () => {
    expect(one('vent', read('2026-05-02', 17)).wouldChange.join(' ')).toContain('A second reading below 16 %');
  });
});

describe('a leak', () => {
  const leaked = (day: string) => `leaked ${day} inside "over the shower" suspect vent`;
  const mended = (day: string) => `sealed ${day} vent with Lap`;

  it('is decided by the seam itself where that is plainly the way', () => {
    const found = one('vent', `inspected 2026-05-02 { vent cracked }\n  ${leaked('2026-05-10')}`);
    expect(found).toMatchObject({ row: 'cracked', action: 'recoat', interim: { row: 'cover-leak' } });
    expect(texts(found.reasons)).toContain('Water came in on 2026-05-10');
    // Its own 30 days end on 1 June, the 7 days of the leak on 17 May.
    expect(found.by?.date).toBe('2026-05-17');
  });

  it('is tested with water the second time, and handed over the third time', () => {
    const twice = [leaked('2026-03-01'), mended('2026-03-05'), leaked('2026-04-01')].join('\n  ');
    expect(one('vent', twice)).toMatchObject({ row: 'leak-second', action: 'look again' });
    const thrice = [twice, mended('2026-04-05'), leaked('2026-05-01')].join('\n  ');
    expect(one('vent', thrice)).toMatchObject({ row: 'leak-third', action: 'call a professional' });
    expect(one('vent', `${thrice}\n  ${mended('2026-05-05')}`)).toMatchObject({ row: 'leak-repaired' });
  });

  it('is closed by a look on a later day that finds it sound', () => {
    const lines = [leaked('2026-05-01'), mended('2026-05-05')].join('\n  ');
    expect(one('vent', lines).row).toBe('leak-repaired');
    expect(one('vent', `${lines}\n  inspected 2026-05-12 { vent sound }`).row).toBe('sound');
  });

  it('without a suspect is advice on the roof as a whole', () => {
    const [first] = advice('inspected 2026-05-02 { rest sound }\n  leaked 2026-05-10 inside "over the bed"');
    expect(first).toMatchObject({ row: 'leak', action: 'look again', by: { date: '2026-05-17' } });
    expect(first).not.toHaveProperty('item');
    expect(first?.reasons[0]?.text).toBe(
      'Water came in on 2026-05-10, seen inside: over the bed; no repair is recorded since.',
    );
    expect(first?.wouldChange[0]).toContain('`suspect NAME`');
  });

  it('of which the only suspect is gone is about the roof too', () => {
    const all = advice(`${leaked('2026-05-01')}\n  removed 2026-05-05 vent`);
    expect(all.filter(({ row }) => row === 'leak').map(({ item }) => item)).toEqual([undefined]);
  });

  it('never has a gasket or a drain sealed', () => {
    for (const item of ['air-con', 'spout', 'trim']) {
      const [found] = on(item, `leaked 2026-05-10 suspect ${item}`);
      expect(found?.excluded).toEqual([expect.objectContaining({ what: 'sealant and tape' })]);
      expect(found?.preparation).toBeUndefined();
      expect(['replace the part', 'touch up']).toContain(found?.action);
    }
  });
});

describe('what lets water in', () => {
  it('is covered at once and repaired before the rig leaves', () => {
    const open = 'inspected 2026-05-18 { vent open }';
    expect(one('vent', open)).toMatchObject({
      by: { date: '2026-05-25', status: 'soon' },
      interim: { by: { date: '2026-05-19', status: 'overdue' } },
    });
    const leaving = one('vent', `${open}\n  trip 2026-05-23 to 2026-05-30`);
    expect(leaving.by?.date).toBe('2026-05-22');
  });
  it('is repaired before the rig is laid up', () => {
    // Seven days would end on 25 May, inside storage.
    const stored = one('vent', 'inspected 2026-05-18 { vent open }\n  stored 2026-05-23 to 2026-08-30');
    expect(stored.by?.date).toBe('2026-05-22');
  });
  it('needs no second cover while one holds', () => {
    const covered = one('vent', 'inspected 2026-05-18 { vent open }\n  covered 2026-05-18 vent until 2026-05-22');
    expect(covered.interim).toBeUndefined();
    expect(covered.by?.date).toBe('2026-05-22');
    expect(texts(covered.reasons)).toContain('the cover does until 2026-05-22');
  });
});
