import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bytesOf, toBase64 } from '../../language/documents/bytes.ts';
import { type Answer, type Ask, deliver, type Folder } from '../../language/documents/delivery.ts';

// Files of bytes, such as a workbook, on their way to the disk: the same promise as for texts.

const answer =
  (what: Answer): Ask =>
  async (edited) =>
    new Map(edited.map((name) => [name, what]));
const neverAsked: Ask = async (edited) => {
  throw new Error(`asked about ${edited.join(', ')}`);
};

function shelf(): Folder & { readonly files: Map<string, Uint8Array> } {
  const files = new Map<string, Uint8Array>();
  return {
    files,
    read: async (name) => files.get(name),
    write: async (name, bytes) => {
      files.set(name, bytes);
    },
  };
}

const name = 'Heron.estimate.xlsx';
const workbook = (...bytes: readonly number[]) => [{ name, base64: toBase64(Uint8Array.from([0x50, 0x4b, ...bytes])) }];

describe('bytes', () => {
  it('are Base64 as Node writes it, and come back as they were', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 20_000 }), (bytes) => {
        const base64 = toBase64(bytes);
        expect(base64).toBe(Buffer.from(bytes).toString('base64'));
        expect(Buffer.from(bytesOf({ name, base64 })).equals(Buffer.from(bytes))).toBe(true);
      }),
      { numRuns: 50 },
    );
  });
});

describe('deliver, for bytes', () => {
  it('writes them as they are, replaces its own, and lets be what has not changed', async () => {
    const folder = shelf();
    await deliver(workbook(0, 0xff, 0x0d, 0x0a), folder, neverAsked);
    expect([...(folder.files.get(name) ?? [])]).toEqual([0x50, 0x4b, 0, 0xff, 0x0d, 0x0a]);
    expect((await deliver(workbook(0, 0xff, 0x0d, 0x0a), folder, neverAsked))?.unchanged).toEqual([name]);
    expect((await deliver(workbook(1), folder, neverAsked))?.written).toEqual([name]);
  });

  it('asks about a workbook that a person saved, and writes beside it', async () => {
    const folder = shelf();
    await deliver(workbook(0x0a), folder, neverAsked);
    // What would be no edit of a text: other bytes, so a person saved it.
    const saved = Uint8Array.from([0x50, 0x4b, 0x0d, 0x0a]);
    folder.files.set(name, saved);
    await expect(deliver(workbook(1), folder, neverAsked)).rejects.toThrow(`asked about ${name}`);
    expect((await deliver(workbook(1), folder, answer('keep')))?.kept).toEqual([name]);
    expect((await deliver(workbook(1), folder, answer('beside')))?.written).toEqual(['Heron.estimate.new.xlsx']);
    expect(folder.files.get(name)).toBe(saved);
  });
});
