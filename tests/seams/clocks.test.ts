import { describe, expect, it } from 'vitest';
import { allowedAt, clockEnds, clocksOf, coldNote, coverAllowed } from '../../language/seams/index.ts';
import { readDuration } from '../../language/values/period.ts';
import { certain, quantityFrom } from '../../language/values/quantity.ts';
import { stretch, viewOf } from './view.ts';

const duration = (text: string) => certain(readDuration(quantityFrom(text) ?? { terms: [] }));
const ends = (start: { last: string; time?: string }, low: string, high = low) =>
  clockEnds(start, { low: duration(low), high: duration(high) });

describe('the ends of a clock', () => {
  it('by days are the first days that the figures allow', () => {
    expect(ends({ last: '2026-04-01' }, '30 days', '60 days')).toEqual({
      earliest: { date: '2026-05-01' },
      safe: { date: '2026-05-31' },
    });
  });
  it('by months stay at the end of a short month', () => {
    expect(ends({ last: '2026-01-31' }, '1 month').safe).toEqual({ date: '2026-02-28' });
  });
  it('by hours run from the time of day (gunned 09:40, leave after 15:40)', () => {
    expect(ends({ last: '2026-07-05', time: '09:40' }, '6 h').safe).toEqual({ date: '2026-07-05', time: '15:40' });
    expect(ends({ last: '2026-07-05', time: '20:00' }, '12 h', '24 h')).toEqual({
      earliest: { date: '2026-07-06', time: '08:00' },
      safe: { date: '2026-07-06', time: '20:00' },
    });
  });
  it('by hours without a time of day run from the end of the day', () => {
    expect(ends({ last: '2026-07-05' }, '12 h', '24 h')).toEqual({
      earliest: { date: '2026-07-06', time: '12:00' },
      safe: { date: '2026-07-07' },
    });
    expect(ends({ last: '2026-07-05' }, '0 h').safe).toEqual({ date: '2026-07-05' });
  });
  it('a day without a time is all of that day', () => {
    const drive = ends({ last: '2026-07-05', time: '09:40' }, '12 h', '24 h');
    expect(['2026-07-05', '2026-07-06', '2026-07-07'].map((date) => allowedAt(drive, { date }))).toEqual([
      'not yet',
      'not yet',
      'yes',
    ]);
    const times = ['2026-07-05 21:39', '2026-07-05 21:40', '2026-07-06 09:39', '2026-07-06 09:40'];
    expect(times.map((text) => allowedAt(drive, { date: text.slice(0, 10), time: text.slice(11) }))).toEqual([
      'no',
      'not yet',
      'not yet',
      'yes',
    ]);
  });
});

describe('tape over what lies there', () => {
  const { material } = viewOf('');
  const ask = (lines: string, date: string, facts?: string) =>
    coverAllowed(stretch(lines, 'vent', date, facts), { date }, material);

  it('20 days after solvent-borne sealant (30 to 60 days) is no, first allowed 30 days after it', () => {
    const answer = ask('  sealed 2026-04-01 vent with Lap', '2026-04-21');
    expect(answer).toMatchObject({
      level: 'no',
      from: { notYet: '2026-05-01', yes: '2026-05-31' },
      layer: { material: 'Lap' },
    });
  });
  it.each([
    ['2026-04-30', 'no'],
    ['2026-05-01', 'not yet'],
    ['2026-05-30', 'not yet'],
    ['2026-05-31', 'yes'],
  ])('on %s it is %s', (date, level) => {
    expect(ask('  sealed 2026-04-01 vent with Lap', date).level).toBe(level);
  });
  it('counts a rough day from its last', () => {
    expect(ask('  sealed 2026-04 vent with Lap', '2026-05-15')).toMatchObject({
      level: 'no',
      from: { notYet: '2026-05-30' },
    });
  });
  it('a fast coat does not cure the slow one under it', () => {
    const lines = '  sealed 2026-04-01 vent with Lap\n  sealed 2026-04-02 vent with Quick';
    expect(ask(lines, '2026-04-20')).toMatchObject({ level: 'no', layer: { material: 'Lap' } });
    expect(ask(lines, '2026-06-01').level).toBe('yes');
  });
  it('is never over silicone, unknown over what nobody knows, yes where it is bare or taped', () => {
    expect(ask('  sealed 2026-04-01 vent with Sil', '2026-12-01').level).toBe('never');
    expect(ask('  found 2026-04-01 all with unknown', '2026-12-01').level).toBe('unknown');
    expect(ask('', '2026-12-01', '').level).toBe('unknown');
    expect(ask('', '2026-12-01').level).toBe('yes');
    expect(ask('  stripped 2026-04-01 vent', '2026-04-01').level).toBe('yes');
    expect(ask('  sealed 2026-01-01 vent with Sil\n  taped 2026-04-01 vent with Strip', '2026-04-02').level).toBe(
      'yes',
    );
  });
});

describe('the clocks of a record', () => {
  const view = viewOf('  sealed 2026-04-01 09:40 vent with Lap air 52 F\n  sealed 2026-05-01 vent with Lap air 71 F');
  const [cold, mild] = view.rig.events;
  const lap = view.material('Lap')!;

  it('are those of its material, each with its origin; the built-in library fills in', () => {
    const clocks = clocksOf(cold!, lap);
    expect(clocks.map((clock) => clock.name)).toEqual(['skin', 'rain', 'drive', 'wash', 'cover']);
    expect(clocks.find((clock) => clock.name === 'drive')).toMatchObject({
      figure: { origin: { kind: 'record' } },
      ends: { earliest: { time: '21:40' }, safe: { date: '2026-04-02', time: '09:40' } },
    });
    expect(clocks.find((clock) => clock.name === 'skin')?.figure.origin.kind).toBe('from memory');
  });

  it('double for 18 F below the middle of the range: a note, the figures stay', () => {
    expect(coldNote(cold!, lap)).toMatchObject({ factor: 2, kind: 'from memory' });
    expect(coldNote(mild!, lap)).toBeUndefined();
  });
});
