import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Answer, type Ask, deliver, type Folder } from '../../language/documents/delivery.ts';
import { fingerprint, readRecord, readWriting, recordFileName } from '../../language/documents/written.ts';

/** A folder in memory; what a test puts on it and looks at is text. */
interface Shelf extends Folder {
  readonly files: Map<string, string>;
  readonly writes: string[];
}

function shelf(initial: Record<string, string> = {}): Shelf {
  const files = new Map(Object.entries(initial));
  const writes: string[] = [];
  return {
    files,
    writes,
    read: async (name) => {
      const text = files.get(name);
      return text === undefined ? undefined : new TextEncoder().encode(text);
    },
    write: async (name, bytes) => {
      writes.push(name);
      files.set(name, new TextDecoder().decode(bytes));
    },
  };
}

const answer =
  (what: Answer): Ask =>
  async (edited) =>
    new Map(edited.map((name) => [name, what]));
const neverAsked: Ask = async (edited) => {
  throw new Error(`asked about ${edited.join(', ')}`);
};
const v1 = [
  { name: 'Heron.estimate.md', text: 'estimate 1\n' },
  { name: 'Heron.schedule.md', text: 'schedule 1\n' },
];
const v2 = v1.map((file) => ({ ...file, text: file.text.replace('1', '2') }));

/** A folder with the first version in it, the estimate edited by a person. */
async function edited(): Promise<Shelf> {
  const folder = shelf();
  await deliver(v1, folder, neverAsked);
  folder.files.set('Heron.estimate.md', 'estimate 1, mine\n');
  folder.writes.length = 0;
  return folder;
}

describe('deliver', () => {
  it('writes into an empty folder and remembers what it wrote', async () => {
    const folder = shelf();
    expect(await deliver(v1, folder, neverAsked)).toEqual({
      written: ['Heron.estimate.md', 'Heron.schedule.md'],
      unchanged: [],
      kept: [],
    });
    expect(readRecord(folder.files.get(recordFileName))).toEqual({
      'Heron.estimate.md': await fingerprint({ name: '', text: 'estimate 1\n' }),
      'Heron.schedule.md': await fingerprint({ name: '', text: 'schedule 1\n' }),
    });
  });

  it('touches nothing when nothing changed', async () => {
    const folder = shelf();
    await deliver(v1, folder, neverAsked);
    folder.writes.length = 0;
    expect((await deliver(v1, folder, neverAsked))?.unchanged).toHaveLength(2);
    expect(folder.writes).toEqual([]);
  });

  it('replaces its own files without asking', async () => {
    const folder = shelf();
    await deliver(v1, folder, neverAsked);
    expect((await deliver(v2, folder, neverAsked))?.written).toHaveLength(2);
    expect(folder.files.get('Heron.estimate.md')).toBe('estimate 2\n');
  });

  it('asks only about what a person edited, and overwrites when told to', async () => {
    const folder = await edited();
    const asked: string[] = [];
    await deliver(v2, folder, async (names) => {
      asked.push(...names);
      return answer('overwrite')(names);
    });
    expect(asked).toEqual(['Heron.estimate.md']);
    expect(folder.files.get('Heron.estimate.md')).toBe('estimate 2\n');
    // Its own again: the next time nobody is asked.
    await deliver(v1, folder, neverAsked);
  });

  it('keeps an edited file, and asks again the next time', async () => {
    const folder = await edited();
    const delivery = await deliver(v2, folder, answer('keep'));
    expect(delivery).toEqual({ written: ['Heron.schedule.md'], unchanged: [], kept: ['Heron.estimate.md'] });
    expect(folder.files.get('Heron.estimate.md')).toBe('estimate 1, mine\n');
    await expect(deliver(v2, folder, neverAsked)).rejects.toThrow('asked about Heron.estimate.md');
  });

  it('keeps a file about which no answer came', async () => {
    const folder = await edited();
    expect((await deliver(v2, folder, async () => new Map()))?.kept).toEqual(['Heron.estimate.md']);
  });

  it('writes beside an edited file, and never over an edited file beside it', async () => {
    const folder = await edited();
    await deliver(v2, folder, answer('beside'));
    expect(folder.files.get('Heron.estimate.new.md')).toBe('estimate 2\n');
    folder.files.set('Heron.estimate.new.md', 'merged by hand\n');
    const delivery = await deliver(v2, folder, answer('beside'));
    expect(delivery?.written).toEqual(['Heron.estimate.new2.md']);
    expect(folder.files.get('Heron.estimate.md')).toBe('estimate 1, mine\n');
    expect(folder.files.get('Heron.estimate.new.md')).toBe('merged by hand\n');
  });

  it('writes nothing at all when called off', async () => {
    const folder = await edited();
    expect(await deliver(v2, folder, async () => undefined)).toBeUndefined();
    expect(folder.writes).toEqual([]);
  });

  it('remembers what it wrote before the disk failed', async () => {
    const folder = shelf();
    const full: Folder = {
      ...folder,
      write: async (name, bytes) => {
        if (name === 'Heron.schedule.md') throw new Error('no space left');
        await folder.write(name, bytes);
      },
    };
    await expect(deliver(v1, full, neverAsked)).rejects.toThrow('no space left');
    expect(Object.keys(readRecord(folder.files.get(recordFileName)))).toEqual(['Heron.estimate.md']);
    await deliver(v2, folder, neverAsked);
  });

  it('knows its own after it was cut off between any two writes, and forgets what it began once that is settled', async () => {
    const v3 = v1.map((file) => ({ ...file, text: file.text.replace('1', '3') }));
    for (let writes = 0; writes <= 4; writes++) {
      const folder = shelf();
      await deliver(v1, folder, neverAsked);
      let left = writes;
      const killed: Folder = {
        ...folder,
        write: (name, bytes) => (left-- > 0 ? folder.write(name, bytes) : Promise.reject(new Error('killed'))),
      };
      await deliver(v2, killed, neverAsked).catch(() => undefined);
      expect((await deliver(v3, folder, neverAsked))?.written).toEqual(v3.map(({ name }) => name));
      expect(readWriting(folder.files.get(recordFileName))).toEqual({});
    }
  });

  it('still asks about what a person edited after it was cut off', async () => {
    const folder = shelf();
    await deliver(v1, folder, neverAsked);
    let left = 1;
    const killed: Folder = {
      ...folder,
      write: (name, bytes) => (left-- > 0 ? folder.write(name, bytes) : Promise.reject(new Error('killed'))),
    };
    await deliver(v2, killed, neverAsked).catch(() => undefined);
    folder.files.set('Heron.estimate.md', 'mine\n');
    expect((await deliver(v2, folder, answer('keep')))?.kept).toEqual(['Heron.estimate.md']);
    expect(folder.files.get('Heron.estimate.md')).toBe('mine\n');
  });

  it('never loses a text that a person wrote, unless told to overwrite', async () => {
    const step = fc.oneof(
      fc.record({ kind: fc.constant('edit' as const), text: fc.string({ maxLength: 3 }) }),
      fc.record({
        kind: fc.constant('deliver' as const),
        text: fc.string({ maxLength: 3 }),
        answer: fc.constantFrom<Answer>('keep', 'beside'),
      }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 12 }), async (steps) => {
        const folder = shelf();
        const ours = new Set<string>();
        for (const each of steps) {
          if (each.kind === 'edit') {
            folder.files.set('a.md', `person ${each.text}`);
          } else {
            const before = folder.files.get('a.md');
            await deliver([{ name: 'a.md', text: each.text }], folder, answer(each.answer));
            if (before !== undefined && !ours.has(before)) expect(folder.files.get('a.md')).toBe(before);
            ours.add(each.text);
          }
        }
      }),
      { numRuns: 200 },
    );
  });
});
