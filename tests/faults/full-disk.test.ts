// A disk that is full: said so, with the path; the papers that stood there still do, and once there is room the next run is right.
import { execFileSync, spawnSync } from 'node:child_process';
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, expect, it, vi } from 'vitest';
import { recordFileName } from '../../language/documents/written.ts';
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
beforeEach(() => {
  for (const name of readdirSync(commandLine.folder)) rmSync(path(name), { recursive: true });
  writeTexts(path('in'), workspaceOf({ rigs: 2, seed: 2 }));
});

const later = '2026-12-10';
const write = (day: string) => `rigseam write in --out small/out --today ${day}`;

/** A disk of its own for the length of a script, where this system lets one be made without asking. */
const own = ['unshare', '-Urm'] as const;
const ownDisk =
  spawnSync(own[0], [own[1], 'sh', '-c', 'mount -t tmpfs -o size=64k none /mnt'], { stdio: 'ignore' }).status === 0;

/**
 * Runs a script in which `small` is a disk and `short` runs a command while no room is left on it. Where no disk can be made,
 * no file that it writes may grow beyond a few kilobytes: the same failure in the midst of a file.
 */
function onSmallDisk(script: string) {
  const short = ownDisk
    ? `mount -t tmpfs -o size=4m none small
       short() { dd if=/dev/zero of=small/.ballast bs=1k >/dev/null 2>&1; "$@"; code=$?; rm small/.ballast; return $code; }`
    : `short() { (trap '' XFSZ; ulimit -S -f 4; "$@"); }`;
  const text = `rigseam() { "${process.execPath}" "${commandLine.bundle}" "$@"; }\nmkdir small\n${short}\n${script}\ncp -a small/out kept`;
  const how = ownDisk ? [...own, 'bash', '-c', text] : ['bash', '-c', text];
  return spawnSync(how[0] as string, how.slice(1), { cwd: commandLine.folder, encoding: 'utf8' });
}

const reason = ownDisk ? 'the disk is full' : 'the file would be larger than is allowed here';

it('says so, keeps every paper whole, and is right once there is room', () => {
  execFileSync(process.execPath, [commandLine.bundle, 'write', 'in', '--out', 'old', '--today', asOf], {
    cwd: commandLine.folder,
  });
  execFileSync(process.execPath, [commandLine.bundle, 'write', 'in', '--out', 'new', '--today', later], {
    cwd: commandLine.folder,
  });
  const [old, next] = [filesIn(path('old')), filesIn(path('new'))];
  const { stdout, stderr } = onSmallDisk(
    `${write(asOf)} >first.txt; short ${write(later)} 2>failed.txt; echo "exit $?"; cp -a small/out after; ${write(later)} >last.txt; echo "exit $?"`,
  );
  expect([stdout, stderr]).toEqual(['exit 2\nexit 0\n', '']);
  const said = filesIn(commandLine.folder).get('failed.txt');
  expect(said).toMatch(new RegExp(`^rigseam: \`.*/small/out/[^\`]+\` could not be written: ${reason}\\.\n$`));
  const after = filesIn(path('after'));
  expect([...after.keys()]).toEqual([...old.keys()]);
  for (const [name, text] of after)
    if (name !== recordFileName) expect([old.get(name), next.get(name)], name).toContain(text);
  const kept = filesIn(path('kept'));
  expect([...kept.keys()]).toEqual([...next.keys()]);
  for (const [name, text] of kept) if (name !== recordFileName) expect(text, name).toBe(next.get(name));
});

it('does not concern a check that keeps what it finds there', () => {
  const check = `rigseam check in --today ${asOf} --cache small/out`;
  const { stdout, stderr } = onSmallDisk(
    `mkdir small/out; short ${check}; echo "exit $?"; ${check} && ${check}; echo "exit $?"`,
  );
  expect(stdout.match(/nothing found/g)).toHaveLength(3);
  expect(stdout.match(/exit 0/g)).toHaveLength(2);
  expect(stderr).toMatch(/^[^\n]*could not be kept[^\n]*\n$/);
});
