import { describe, expect, it } from 'vitest';
import { folder, pageOf, pagesOf } from './books.ts';
import { textOf } from './sheets.ts';
import { strict } from './strict.ts';

const mainOf = (name: string, text: string) => textOf(strict(name, text).find(({ tagName }) => tagName === 'main')!);
const wren = mainOf('Wren', pageOf('Wren.incident-1.html', pagesOf(folder('single'))));

const rig = (lines: string) => pagesOf({ 'a.rig': `rig R {\n  edge curbside\n  edge roadside\n${lines}\n}\n` });

describe('the file of a leak', () => {
  it('tells of finding, protection, drying, repair and closing', () => {
    for (const said of [
      'found on2025-08-23',
      'cupboard over the fridge, rain from the side',
      'Within a day.',
      'EPA 402-K-02-003',
      'It is of 2025-08-30, 7 days later.',
      'more than 48 hours after the leak',
      'Closed by the look of 2025-09-27',
    ])
      expect(wren).toContain(said);
  });

  it('lists plainly what is missing', () => {
    expect(wren).toMatch(/the time of dayMISSING/);
    expect(wren).toMatch(/photo after the repairMISSING/);
    expect(wren).toMatch(/photo of the damage, before the end of the repairrecorded1, 2025-08-24/);
    expect(wren).toMatch(/invoices and other papersMISSING/);
  });

  it('knows hours where times are written, and says so where dates do not tell', () => {
    const times = (dried: string) =>
      mainOf(
        'R',
        pageOf(
          'R.incident-1.html',
          rig(`  leaked 2026-06-01 10:00 suspect curbside moisture 30 %\n  dried ${dried} curbside moisture 12 %`),
        ),
      );
    expect(times('2026-06-03 09:00')).toContain('is recorded within 48 hours.');
    expect(times('2026-06-03 10:30')).toContain('more than 48 hours after');
    expect(times('2026-06-03')).toContain('the dates do not tell');
  });

  it('stays open without a later look, and points to the same leak before', () => {
    const pages = rig(
      [
        '  leaked 2025-06-01 inside "hall" suspect curbside',
        '  sealed 2025-06-03 curbside',
        '  inspected 2025-07-01 { all sound }',
        '  leaked 2026-06-01 inside "Hall" suspect roadside',
        '  sealed 2026-06-02 roadside',
      ].join('\n'),
    );
    const [first, second] = [1, 2].map((n) => mainOf(`${n}`, pageOf(`R.incident-${n}.html`, pages)));
    expect(first).toContain('Closed by the look of 2025-07-01');
    expect(first).not.toContain('2026-06-02');
    expect(second).toContain('OPEN.');
    expect(second).toContain('incident 1');
    expect(second).toContain('no temporary cover is recorded');
  });
});
