import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { estimateOf } from '../../language/estimate/index.ts';
import { checkFile } from '../../language/rules/check.ts';
import { scheduleOfFleet, scheduleOfRig } from '../../language/schedule/index.ts';
import { projectOf, readFolder } from '../project/workspace.ts';

// The two examples that people meet first: they must be good practice, and everything must come out of them.

const dates = { asOf: '2026-11-25', today: '2026-11-25' };

for (const name of ['single', 'fleet']) {
  const folder = fileURLToPath(new URL(`../../examples/${name}`, import.meta.url));
  const texts = readFolder(folder);
  const project = projectOf(texts);
  const views = Object.keys(texts).flatMap((path) => project.rigs(path).filter(({ rig }) => rig.kind === 'rig'));

  describe(`examples/${name}`, () => {
    it('has no error, and at most a few things to be said of it', () => {
      const findings = Object.keys(texts).flatMap((path) =>
        checkFile(project, path, dates, (file) => existsSync(join(folder, file))),
      );
      const shown = findings.map((f) => `${f.severity} ${f.rule} ${f.file} ${f.message}`);
      expect(shown.filter((line) => line.startsWith('error'))).toEqual([]);
      expect(shown.length, shown.join('\n')).toBeLessThanOrEqual(6);
    });

    it('gives each rig with plans a whole estimate in one currency', () => {
      for (const view of views) {
        const estimate = estimateOf(view, dates);
        const open = estimate.questions.filter(({ rule }) => rule !== 'unknown-underneath');
        expect(open, view.rig.name).toEqual([]);
        expect(estimate.totals.total?.money.currency, view.rig.name).toBe(name === 'single' ? 'USD' : 'EUR');
        for (const { buy } of estimate.purchases) for (const line of buy) expect(line.cost).toBeDefined();
      }
    });

    it('finds a day for everything', () => {
      for (const view of views) expect(scheduleOfRig(view, dates).unplaced, view.rig.name).toEqual([]);
      for (const path of Object.keys(texts)) {
        for (const { fleet, views: all } of project.fleets(path)) {
          expect(all.length).toBeGreaterThanOrEqual(8);
          expect(scheduleOfFleet(fleet, all, dates).unplaced).toEqual([]);
        }
      }
    });

    it('names photos that are pictures', () => {
      for (const [path, text] of Object.entries(texts)) {
        for (const [, photo] of text.matchAll(/photo "([^"]+)"/g)) {
          const bytes = readFileSync(join(folder, path, '..', photo as string));
          expect([...bytes.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
        }
      }
    });
  });
}

it('the piece on the shelf of examples/single saves a roll', () => {
  const texts = readFolder(fileURLToPath(new URL('../../examples/single', import.meta.url)));
  const bought = (wren: string) => {
    const [view] = projectOf({ ...texts, 'wren.rig': wren }).rigs('wren.rig');
    if (!view) throw new Error('Wren is gone');
    const tape = estimateOf(view, dates).purchases.find(({ material }) => material === 'SeamStrip4');
    return tape?.buy.map(({ what, count }) => `${count} ${what}`);
  };
  const wren = texts['wren.rig'] as string;
  // By hand: rear 96, sofa 76 and 2 x 32, sides 2 x 228, front 2 x 96 in, each with its end laps: 884 in. The piece of
  // 336 in and a roll of 600 in, 6 in of it lost, hold them; two rolls are needed without the piece.
  expect(bought(wren)).toEqual(['1 roll of 50 ft']);
  expect(bought(wren.replace('SeamStrip4 28 ft, ', ''))).toEqual(['1 roll of 50 ft', '1 roll of 25 ft']);
});
