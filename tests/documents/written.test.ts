import { describe, expect, it } from 'vitest';
import { besideName, decide, fingerprint, printRecord, readRecord } from '../../language/documents/written.ts';
import type { DocumentFile } from '../../language/protocol/index.ts';

const text = (of: string): DocumentFile => ({ name: 'a.md', text: of });
const bytes = (of: string): DocumentFile => ({ name: 'a.xlsx', base64: btoa(of) });
const stored = (of: string): Uint8Array => new TextEncoder().encode(of);

describe('fingerprint', () => {
  it('is SHA-256 of the UTF-8 text (FIPS 180-2, appendix B.1: "abc")', async () => {
    expect(await fingerprint(text('abc'))).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  it('is the same over bytes, where a line end is a byte like any other', async () => {
    expect(await fingerprint(bytes('abc'))).toBe(await fingerprint(text('abc')));
    expect(await fingerprint(bytes('a\r\n'))).not.toBe(await fingerprint(bytes('a\n')));
  });

  it('counts every line end as the same', async () => {
    const lf = await fingerprint(text('a\nb\n'));
    expect(await fingerprint(text('a\r\nb\r\n'))).toBe(lf);
    expect(await fingerprint(text('a\rb\r'))).toBe(lf);
    expect(await fingerprint(text('a\nb'))).not.toBe(lf);
  });
});

describe('decide', () => {
  const cases = [
    ['no file yet', undefined, undefined, 'create'],
    ['no file, though we wrote one', undefined, 'ours', 'create'],
    ['the same text', 'next', undefined, 'unchanged'],
    ['our last text', 'ours', 'ours', 'replace'],
    ['our last text with other line ends', 'ours\r\n', 'ours\n', 'replace'],
    ['our last text, edited', 'ours, and a note', 'ours', 'ask'],
    ['a text that we never wrote', 'theirs', undefined, 'ask'],
  ] as const;
  it.each(cases)('%s', async (_, existing, lastWritten, decision) => {
    const recorded = lastWritten === undefined ? undefined : await fingerprint(text(lastWritten));
    const there = existing === undefined ? undefined : stored(existing);
    expect(await decide(there, recorded, text('next'))).toBe(decision);
  });

  it('rewrites what differs from the next text only in line ends, without asking', async () => {
    expect(await decide(stored('a\nb\n'), undefined, text('a\r\nb\r\n'))).toBe('replace');
  });

  it('asks about a text to which a person added a mark of byte order', async () => {
    expect(await decide(stored('\ufeffours'), await fingerprint(text('ours')), text('next'))).toBe('ask');
  });

  it.each([
    ['the same bytes', 'PK next', 'PK old', 'unchanged'],
    ['our last bytes', 'PK old', 'PK old', 'replace'],
    ['our last bytes, saved by another program', 'PK saved', 'PK old', 'ask'],
    ['our last bytes with another line end in them', 'PK\r\n', 'PK\n', 'ask'],
    ['bytes that we never wrote', 'PK theirs', undefined, 'ask'],
  ] as const)('of bytes: %s', async (_, existing, lastWritten, decision) => {
    const recorded = lastWritten === undefined ? undefined : await fingerprint(bytes(lastWritten));
    expect(await decide(stored(existing), recorded, bytes('PK next'))).toBe(decision);
  });

  it('of bytes: line ends are no excuse', async () => {
    expect(await decide(stored('a\n'), undefined, bytes('a\r\n'))).toBe('ask');
  });
});

describe('the record', () => {
  const hash = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';

  it('reads back what it printed, names in order', () => {
    const text = printRecord({ 'b.md': hash, 'a.md': hash });
    expect(Object.keys(readRecord(text))).toEqual(['a.md', 'b.md']);
    expect(text.endsWith('}\n')).toBe(true);
  });

  it.each([
    ['absent', undefined],
    ['empty', ''],
    ['half a file', '{"version": 1, "files": {"a.md"'],
    ['a later version', `{"version": 2, "files": {"a.md": "${hash}"}}`],
    ['not a fingerprint', '{"version": 1, "files": {"a.md": "abc"}}'],
    ['a name that leaves the folder', `{"version": 1, "files": {"../a.md": "${hash}"}}`],
  ])('is empty when it is %s', (_, text) => {
    expect(readRecord(text)).toEqual({});
  });
});

describe('besideName', () => {
  it.each([
    ['Heron.estimate.md', 1, 'Heron.estimate.new.md'],
    ['Heron.estimate.md', 2, 'Heron.estimate.new2.md'],
    ['notes', 1, 'notes.new'],
  ])('%s, attempt %i', (name, attempt, expected) => {
    expect(besideName(name, attempt)).toBe(expected);
  });
});
