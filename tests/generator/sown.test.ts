// Of a generated workspace the checker says nothing; of one with mistakes sown into it just those, each on its line.
import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { check } from '../../server/cli/check.ts';
import { asked } from '../../server/cli/paths.ts';
import { fleetMistakes, mistakes } from './mistakes.ts';
import { writeTexts } from './on-disk.ts';
import { type Expected, sownWorkspace } from './sown.ts';
import { asOf, workspaceOf } from './workspace.ts';

vi.setConfig({ testTimeout: 60_000 });

let folder: string;
beforeEach(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'rigseam-sown-')));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const dates = { asOf, today: asOf };
const inOrder = (all: readonly Expected[]) => all.map(({ file, line, rule }) => `${file}:${line} ${rule}`).sort();

/** What is said of texts on a disk, of whatever severity. */
function said(texts: Iterable<readonly [string, string]>): Expected[] {
  writeTexts(folder, texts);
  return check(asked([folder], folder), dates).findings.map(({ file, range, rule }) => ({
    file,
    line: range.start.line + 1,
    rule,
  }));
}

it('a clean workspace is wholly silent', () => {
  expect(said(workspaceOf({ rigs: 150, seed: 4 }))).toEqual([]);
});

const seeds = [1, 2, 3];
it.each(seeds)('every sown mistake is found at its line, and nothing else, seed %i', (seed) => {
  const { texts, expected } = sownWorkspace({ rigs: 200, depot: 20, seed }, 4);
  expect(expected.length).toBeGreaterThanOrEqual(50);
  expect(inOrder(said(texts))).toEqual(inOrder(expected));
});

it('all kinds of mistakes come', () => {
  const sown = seeds.flatMap((seed) =>
    sownWorkspace({ rigs: 200, depot: 20, seed }, 4).expected.map(({ rule }) => rule),
  );
  expect([...new Set(sown)].sort()).toEqual(
    [...new Set([...mistakes, ...fleetMistakes].map(({ rule }) => rule))].sort(),
  );
});

it('a seed always gives the same texts, another seed others', () => {
  const texts = (seed: number) => [...workspaceOf({ rigs: 20, seed })];
  expect(texts(7)).toEqual(texts(7));
  expect(texts(8)).not.toEqual(texts(7));
});
