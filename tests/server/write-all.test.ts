// Several files written together: all of them, or none.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { writeAll } from '../../server/write-all.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'rigseam-all-'));
  writeFileSync(join(folder, 'a.rig'), '\uFEFFone\r\n');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));
const at = (name: string) => join(folder, name);
const a = () => ({ path: at('a.rig'), before: 'one\r\n', after: 'two\r\n' });

test('files are changed and made, with their mark of byte order and new folders', () => {
  writeAll([a(), { path: at('new/deep/b.rig'), before: undefined, after: 'b\n' }]);
  expect(readFileSync(at('a.rig'), 'utf8')).toBe('\uFEFFtwo\r\n');
  expect(readFileSync(at('new/deep/b.rig'), 'utf8')).toBe('b\n');
});

test('where one cannot be written all stay as they were', () => {
  writeFileSync(at('file'), '');
  const changes = [
    a(),
    { path: at('b.rig'), before: undefined, after: 'b' },
    { path: at('file/c.rig'), before: undefined, after: 'c' },
  ];
  expect(() => writeAll(changes)).toThrow();
  expect(readFileSync(at('a.rig'), 'utf8')).toBe('\uFEFFone\r\n');
  expect(existsSync(at('b.rig'))).toBe(false);
});

test('what somebody changed in the meantime is left alone, and so is what is no text', () => {
  expect(() => writeAll([{ ...a(), before: 'other' }])).toThrow('has changed in the meantime');
  writeFileSync(at('b.rig'), Buffer.from([0xff, 0xfe, 0x00]));
  expect(() => writeAll([a(), { path: at('b.rig'), before: 'x', after: 'y' }])).toThrow('no plain UTF-8 text');
  expect(readFileSync(at('a.rig'), 'utf8')).toBe('\uFEFFone\r\n');
});
