// Five thousand files where a process may have 256 open: checked, written and served as ever.
import { spawn } from 'node:child_process';
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import {
  createProtocolConnection,
  DiagnosticSeverity,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { writeTexts } from '../generator/on-disk.ts';
import { startEditor } from '../server/editor.ts';
import { type CommandLine, startCommandLine } from './command-line.ts';

vi.setConfig({ testTimeout: 180_000 });

const count = 5000;
const name = (i: number) => `Rig${String(i).padStart(4, '0')}`;
const rig = (i: number) =>
  `rig ${name(i)} {\n  roof  20 ft by 8 ft  epdm\n  cap   ${i % 500 === 499 ? 'frnt' : 'front'}  wide 4 in\n}\n`;
const texts = Object.fromEntries(
  Array.from({ length: count }, (_, i) => [`yards/${i % 50}/${name(i)}.rig`, rig(i)] as const),
);
const wrong = Object.keys(texts).filter((path) => texts[path]?.includes('frnt'));

let commandLine: CommandLine;
beforeAll(() => {
  commandLine = startCommandLine();
  writeTexts(commandLine.folder, Object.entries(texts));
});
afterAll(() => commandLine.end());

const few = 'ulimit -n 256';

it('check finds what there is to find, with what it kept and without', () => {
  for (const more of ['', '--cache cache', '--cache cache']) {
    const { status, stdout, stderr } = commandLine.shell(
      `${few}; rigseam check . --today 2026-11-25 --format json ${more}`,
    );
    expect([status, stderr]).toEqual([1, '']);
    const { files, findings } = JSON.parse(stdout) as { files: number; findings: { file: string; severity: string }[] };
    expect(files).toBe(count);
    expect(findings.filter(({ severity }) => severity === 'error').map(({ file }) => file)).toEqual(wrong.sort());
  }
});

it('write writes hundreds of papers, and reads them again before it replaces them', () => {
  const some = Array.from({ length: 60 }, (_, i) => name(i)).join(' ');
  const write = (day: string) =>
    commandLine.shell(`${few}; rigseam write yards --out papers --today ${day} --json --name ${some}`);
  for (const day of ['2026-11-25', '2026-12-10']) {
    const { status, stdout, stderr } = write(day);
    expect([status, stderr]).toEqual([0, '']);
    expect(JSON.parse(stdout).kept).toEqual([]);
  }
  expect(readdirSync(join(commandLine.folder, 'papers')).length).toBeGreaterThan(256);
});

it('the server of an editor tells of every file', async () => {
  const editor = await startEditor({
    files: texts,
    connect: () => {
      const child = spawn('bash', ['-c', `${few}; exec "$0" "$1" --stdio`, process.execPath, commandLine.server], {
        stdio: ['pipe', 'pipe', 'inherit'],
      });
      const connection = createProtocolConnection(
        new StreamMessageReader(child.stdout),
        new StreamMessageWriter(child.stdin),
      );
      return { connection, stop: () => void child.kill() };
    },
  });
  try {
    const told = () =>
      wrong.filter((path) => editor.diagnostics(path).some(({ severity }) => severity === DiagnosticSeverity.Error));
    const end = Date.now() + 120_000;
    while (told().length < wrong.length && Date.now() < end) await new Promise((done) => setTimeout(done, 100));
    expect(told()).toEqual(wrong);
  } finally {
    await editor.stop();
    rmSync(editor.folder, { recursive: true, force: true });
  }
});
