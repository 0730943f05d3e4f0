import { describe, expect, it } from 'vitest';
import { folder, pageOf, pagesOf } from './books.ts';
import { attribute, textOf } from './sheets.ts';
import { strict } from './strict.ts';

const texts = folder('fleet');
const pageOn = (asOf: string) => pageOf('Highmeadow.morning.html', pagesOf(texts, { asOf, today: '2026-11-25' }));

describe('the page of the morning', () => {
  it('holds back the rig whose leak is open, in words and hatched', () => {
    const all = strict('morning', pageOn('2026-08-02'));
    const held = all.find((one) => attribute(one, 'class') === 'held')!;
    expect(textOf(held)).toContain('DO NOT DISPATCH');
    expect(textOf(held)).toMatch(/16 Heath.*wet.*dome/);
    expect(textOf(all.find(({ tagName }) => tagName === 'style')!)).toContain('repeating-linear-gradient');
  });

  it('speaks of the first day with work and says so', () => {
    const text = textOf(strict('morning', pageOn('2026-08-02')).find(({ tagName }) => tagName === 'main')!);
    expect(text).toMatch(/As of 2026-08-02: \d{4}-\d\d-\d\d is the first day/);
  });

  it('has its rows in order of time, each with room for names, initials and a reason', () => {
    const all = strict('morning', pageOn('2026-08-02'));
    const rows = all.find((one) => attribute(one, 'class') === 'rows')!;
    const times = [...textOf(rows).matchAll(/(\d\d:\d\d)–/g)].map(([, time]) => time);
    expect(times.length).toBeGreaterThan(3);
    expect(times).toEqual([...times].sort());
    const labels = all.flatMap((one) => attribute(one, 'aria-label') ?? []);
    for (const what of ['initials', 'held because', 'name 2'])
      expect(labels.some((label) => label.includes(what))).toBe(true);
  });

  it('is landscape and the same each time', () => {
    expect(pageOn('2026-08-02')).toBe(pageOn('2026-08-02'));
    expect(pageOn('2026-08-02')).toContain('size:landscape');
  });
});
