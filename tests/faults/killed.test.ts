// Killed in the midst of writing: no half file is left, what is left beside disturbs nobody, and the next run is right.
import { mkdirSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { recordFileName } from '../../language/documents/written.ts';
import { writeTexts } from '../generator/on-disk.ts';
import { sownWorkspace } from '../generator/sown.ts';
import { asOf, workspaceOf } from '../generator/workspace.ts';
import { type CommandLine, filesIn, startCommandLine } from './command-line.ts';

vi.setConfig({ testTimeout: 180_000 });

let commandLine: CommandLine;
beforeAll(() => {
  commandLine = startCommandLine();
});
afterAll(() => commandLine.end());

const path = (...names: string[]) => join(commandLine.folder, ...names);
const fresh = () => {
  for (const name of readdirSync(commandLine.folder)) rmSync(path(name), { recursive: true });
};
beforeEach(fresh);

const unfinished = (names: Iterable<string>) => [...names].filter((name) => name.endsWith('.tmp'));

/**
 * Runs something at different moments of a run, told by how much has happened until then, until it has been in the midst of
 * it at least once; it says whether it was.
 */
async function atMoments(one: (moment: number) => Promise<boolean>): Promise<void> {
  let midst = false;
  for (const moment of [3, 20, 6, 10, 4, 14, 5, 8]) {
    if (midst && moment !== 20) break;
    midst = (await one(moment)) || midst;
  }
  // Else nothing was seen.
  expect(midst).toBe(true);
}

describe('papers', () => {
  const rigs = { rigs: 3, seed: 3, depot: 3 };
  const write = (today = asOf) => ['write', 'in', '--out', 'out', '--today', today];

  it('are the old ones or the new ones, each whole, and the next run knows them for its own', async () => {
    writeTexts(path('in'), workspaceOf(rigs));
    commandLine.run(write());
    const before = filesIn(path('out'));
    // Another day: almost every paper gets another text.
    const later = '2026-12-10';
    commandLine.run(write(later));
    const after = filesIn(path('out'));
    const changed = [...after].filter(([name, text]) => before.get(name) !== text).map(([name]) => name);
    expect(changed.length).toBeGreaterThan(10);

    await atMoments(async (moment) => {
      rmSync(path('out'), { recursive: true });
      writeTexts(path('out'), []);
      mkdirSync(path('out'));
      for (const [name, text] of before) writeFileSync(path('out', name), text, 'latin1');
      await commandLine.killed(write(later), path('out'), moment);
      const left = filesIn(path('out'));
      for (const [name, text] of left) {
        if (name === recordFileName || name.endsWith('.tmp')) continue;
        expect([before.get(name), after.get(name)], name).toContain(text);
      }
      const done = changed.filter((name) => left.get(name) === after.get(name)).length;
      const midst = done > 0 && done < changed.length;
      // A third day: whatever the kill left, old or new, is ours and is replaced; nothing is put beside it.
      const next = commandLine.run(write('2026-12-20'));
      expect(next).toMatchObject({ status: 0, stderr: '' });
      expect(next.stdout).not.toContain('kept');
      const now = filesIn(path('out'));
      expect([...now.keys()].filter((name) => name.includes('.new'))).toEqual([]);
      expect([...now.keys()].filter((name) => !name.endsWith('.tmp'))).toEqual([...after.keys()]);
      return midst;
    });
  });

  it('sweeps away what was left long ago, and nothing that is new or not its own', () => {
    writeTexts(path('in'), workspaceOf({ rigs: 1, seed: 3 }));
    writeTexts(path('out'), [
      ['.rigseam-1-0.tmp', 'half'],
      ['.rigseam-2-0.tmp', 'being written'],
      ['.other.tmp', 'of another program'],
    ]);
    const yesterday = Date.now() / 1000 - 86_400;
    for (const name of ['.rigseam-1-0.tmp', '.other.tmp']) utimesSync(path('out', name), yesterday, yesterday);
    commandLine.run(write());
    expect(unfinished(filesIn(path('out')).keys())).toEqual(['.other.tmp', '.rigseam-2-0.tmp']);
  });
});

describe('rig files that are brought into form', () => {
  it('are the old ones or the new ones, and what is left is no rig file', async () => {
    const texts = new Map(
      [...workspaceOf({ rigs: 30, seed: 5 })].map(([name, text]) => [name, text.replaceAll('\n  ', '\n     ')]),
    );
    const format = ['format', 'in'];
    writeTexts(path('in'), texts);
    commandLine.run(format);
    const formed = filesIn(path('in'));
    const names = [...formed.keys()];
    await atMoments(async (moment) => {
      rmSync(path('in'), { recursive: true });
      writeTexts(path('in'), texts);
      await commandLine.killed(format, path('in'), moment);
      const left = filesIn(path('in'));
      expect([...left.keys()].filter((name) => name.endsWith('.rig'))).toEqual(names);
      for (const name of names) expect([texts.get(name), formed.get(name)], name).toContain(left.get(name));
      const done = names.filter((name) => left.get(name) === formed.get(name)).length;
      const midst = done > 0 && done < names.length;
      expect(commandLine.run(format).status).toBe(0);
      const now = filesIn(path('in'));
      for (const name of names) expect(now.get(name), name).toBe(formed.get(name));
      expect(commandLine.run(['check', 'in', '--today', asOf]).stdout).toContain(`${names.length} files checked`);
      return midst;
    });
  });
});

it('what a check keeps is believed only where it is whole', async () => {
  const { texts, expected } = sownWorkspace({ rigs: 30, seed: 8, depot: 10 }, 5);
  writeTexts(path('in'), texts);
  const check = (more: readonly string[] = []) => ['check', 'in', '--today', asOf, '--format', 'compact', ...more];
  const fresh = commandLine.run(check());
  expect(fresh.stdout.trim().split('\n').length).toBeGreaterThanOrEqual(expected.length);
  const kept = check(['--cache', path('cache')]);
  for (const moment of [1, 3, 5]) {
    rmSync(path('cache'), { recursive: true, force: true });
    mkdirSync(path('cache'));
    await commandLine.killed(kept, path('cache'), moment);
    // Once from what the kill left, once from what this left.
    expect(commandLine.run(kept)).toEqual(fresh);
    expect(commandLine.run(kept)).toEqual(fresh);
  }
});
