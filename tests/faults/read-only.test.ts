// What may not be written or read: said with the path and the reason, and nothing is lost.
import { chmodSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { writeTexts } from '../generator/on-disk.ts';
import { asOf, workspaceOf } from '../generator/workspace.ts';
import { type CommandLine, filesIn, startCommandLine } from './command-line.ts';

vi.setConfig({ testTimeout: 60_000 });

let commandLine: CommandLine;
beforeAll(() => {
  commandLine = startCommandLine();
});
afterAll(() => commandLine.end());

const path = (...names: string[]) => join(commandLine.folder, ...names);
const closed: string[] = [];
/** Takes permissions away until the end of the test. */
const close = (mode: number, ...names: string[]) => {
  chmodSync(path(...names), mode);
  closed.push(path(...names));
};
beforeEach(() => {
  for (const name of readdirSync(commandLine.folder)) rmSync(path(name), { recursive: true });
  writeTexts(path('in'), workspaceOf({ rigs: 3, seed: 2 }));
});
afterEach(() => {
  for (const each of closed.splice(0)) chmodSync(each, 0o755);
});

// Permissions do not hold for the superuser, unless it gives up the right to override them.
const held = process.getuid?.() === 0 ? 'setpriv --bounding-set=-dac_override,-dac_read_search -- ' : '';
const run = (args: string) => commandLine.shell(`exec ${held}"${process.execPath}" "${commandLine.bundle}" ${args}`);
const write = (day = asOf) => `write in --out out --today ${day}`;

it('the tests themselves are held to permissions', () => {
  mkdirSync(path('out'));
  close(0o555, 'out');
  expect(commandLine.shell(`${held}touch out/a`).status).not.toBe(0);
});

describe('a folder that is read-only', () => {
  it('keeps its papers, and the reason is told', () => {
    commandLine.shell(`rigseam ${write()}`);
    const before = filesIn(path('out'));
    close(0o555, 'out');
    const { status, stdout, stderr } = run(write('2026-12-10'));
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/^rigseam: `.*\/out\/[^`]+` could not be written: you have no permission\.\n$/);
    expect(filesIn(path('out'))).toEqual(before);
    // What is as it was need not be written.
    expect(run(write())).toMatchObject({ status: 0, stderr: '' });
  });

  it('gets no folder for papers', () => {
    mkdirSync(path('shelf'));
    close(0o555, 'shelf');
    const { status, stderr } = run('write in --out shelf/out');
    expect(status).toBe(2);
    expect(stderr).toMatch(/`.*\/shelf\/out` could not be made: you have no permission\./);
  });

  it('keeps rig files as they are', () => {
    writeTexts(path('loose'), [['a.rig', 'rig A {\n      roof 20 ft by 8 ft epdm\n}\n']]);
    const before = filesIn(path('loose'));
    close(0o555, 'loose');
    const { status, stderr } = run('format loose');
    expect(status).toBe(2);
    expect(stderr).toMatch(/`.*\/loose\/a\.rig` could not be written: you have no permission\./);
    expect(filesIn(path('loose'))).toEqual(before);
  });

  it('is checked all the same, with nothing kept in it', () => {
    close(0o555, 'in');
    expect(run(`check in --today ${asOf}`)).toMatchObject({ status: 0, stderr: '' });
    const kept = run(`check in --today ${asOf} --cache in/cache`);
    expect(kept.status).toBe(0);
    expect(kept.stdout).toContain('nothing found');
    expect(kept.stderr).toMatch(/could not be kept in .*in\/cache/);
  });
});

it('a file that is read-only is not replaced', () => {
  writeTexts(path('loose'), [['a.rig', 'rig A {\n      roof 20 ft by 8 ft epdm\n}\n']]);
  const before = filesIn(path('loose'));
  close(0o444, 'loose', 'a.rig');
  expect(run('format loose')).toMatchObject({
    status: 2,
    stderr: expect.stringMatching(/a\.rig` could not be written/),
  });
  expect(filesIn(path('loose'))).toEqual(before);
});

describe('what may not be read', () => {
  it('is no file in which nothing was found', () => {
    writeFileSync(path('in', 'secret.rig'), 'rig Secret { cap frnt }\n');
    close(0o000, 'in', 'secret.rig');
    for (const command of [
      `check in --today ${asOf}`,
      `check in --today ${asOf} --cache cache`,
      'format in',
      write(),
    ]) {
      const { status, stderr } = run(command);
      expect(status, command).toBe(2);
      expect(stderr, command).toMatch(/secret\.rig` could not be read: you have no permission\./);
    }
  });

  it('is told of a folder, and the rest is checked', () => {
    mkdirSync(path('in', 'lost'));
    close(0o000, 'in', 'lost');
    const { status, stdout, stderr } = run(`check in --today ${asOf}`);
    expect(status).toBe(0);
    expect(stdout).toContain('nothing found');
    expect(stderr).toMatch(/^rigseam: `.*\/in\/lost` could not be read: you have no permission\. .*\n$/);
  });
});
