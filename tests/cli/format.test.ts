// `rigseam format` on a disk.
import {
  chmodSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { formatFiles, formatText } from '../../server/cli/format.ts';
import { asked } from '../../server/cli/paths.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'rigseam-format-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const put = (name: string, text: string | Uint8Array) => {
  mkdirSync(join(folder, name, '..'), { recursive: true });
  writeFileSync(join(folder, name), text);
};
const get = (name: string) => readFileSync(join(folder, name), 'utf8');
const run = (check = false) => formatFiles(asked([folder], folder), { check });

const ragged = 'rig Teal {\nunit "1"\n}\n';
const inForm = 'rig Teal {\n  unit         "1"\n}\n';

describe('rigseam format', () => {
  it('writes what changes, lists it, and leaves the rest untouched', () => {
    put('a.rig', ragged);
    put('b/b.rig', inForm);
    const before = statSync(join(folder, 'b/b.rig')).mtimeMs;
    const result = run();
    expect(result).toMatchObject({ changed: ['a.rig'], damaged: false });
    expect(result.text).toBe('changed  a.rig\n2 files: 1 changed.\n');
    expect(get('a.rig')).toBe(inForm);
    expect(statSync(join(folder, 'b/b.rig')).mtimeMs).toBe(before);
    expect(run().changed).toEqual([]);
    expect(readdirSync(folder).sort()).toEqual(['a.rig', 'b']);
  });

  it('--check writes nothing', () => {
    put('a.rig', ragged);
    expect(run(true)).toMatchObject({ changed: ['a.rig'], text: 'would change  a.rig\n1 file: 1 would change.\n' });
    expect(get('a.rig')).toBe(ragged);
  });

  it('keeps the mode, a link, the mark of byte order and the line ends', () => {
    put('a.rig', `\ufeff${ragged.replaceAll('\n', '\r\n')}`);
    chmodSync(join(folder, 'a.rig'), 0o640);
    mkdirSync(join(folder, 'links'));
    symlinkSync(join(folder, 'a.rig'), join(folder, 'links/l.rig'));
    formatFiles(asked([join(folder, 'links/l.rig')], folder), { check: false });
    expect(lstatSync(join(folder, 'links/l.rig')).isSymbolicLink()).toBe(true);
    expect(get('a.rig')).toBe(`\ufeff${inForm.replaceAll('\n', '\r\n')}`);
    expect(statSync(join(folder, 'a.rig')).mode & 0o777).toBe(0o640);
  });

  it('names what is damaged, with its place', () => {
    put('a.rig', 'rig Teal {\nunit "1"\n  sealled  2026-04-20\n}\n');
    const result = run();
    expect(result.damaged).toBe(true);
    expect(result.text).toContain('a.rig:3:3  left as it stands: Not all of this line is understood.\n');
    expect(get('a.rig')).toBe('rig Teal {\n  unit         "1"\n  sealled  2026-04-20\n}\n');
  });

  it('does not touch bytes that are no text', () => {
    const bytes = Uint8Array.from([0x72, 0x69, 0x67, 0x20, 0xe9, 0x0a]);
    put('a.rig', bytes);
    expect(() => run()).toThrow('a.rig is no plain UTF-8 text');
    expect(Uint8Array.from(readFileSync(join(folder, 'a.rig')))).toEqual(bytes);
  });

  it('formats a text that comes in', () => {
    expect(formatText(Buffer.from(ragged))).toEqual({ text: inForm, changed: true, left: [] });
    expect(formatText(Buffer.from('rig {\n')).left).toEqual([
      '-:1:1  left as it stands: This block is not closed: a `}` is missing at the end of the file.',
    ]);
  });
});
