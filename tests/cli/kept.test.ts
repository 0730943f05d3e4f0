// What was found before is told again only while it holds: whatever happens to the files or to what is kept, a check with a
// cache says what a check without one says.
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { checked, printed } from '../../server/cli/check.ts';
import { checkedWithKept } from '../../server/cli/check-kept.ts';
import { judging } from '../../server/cli/judging.ts';
import { asked, diskOf } from '../../server/cli/paths.ts';
import { readFolder } from '../project/workspace.ts';

const start = readFolder('examples/fleet');
const paths = Object.keys(start);
const dates = { asOf: '2026-11-25', today: '2026-11-25' };

let place: string;
let cache: string;
let script: string;
const put = (path: string, text: string) => {
  mkdirSync(dirname(join(place, path)), { recursive: true });
  writeFileSync(join(place, path), text);
};
beforeEach(() => {
  const folder = mkdtempSync(join(tmpdir(), 'rigseam-kept-'));
  [place, cache, script] = [join(folder, 'work'), join(folder, 'cache'), join(folder, 'program.js')];
  writeFileSync(script, 'one build');
  mkdirSync(join(place, '.git'), { recursive: true });
  for (const [path, text] of Object.entries(start)) put(path, text);
});
afterEach(() => rmSync(dirname(place), { recursive: true, force: true }));

/** The check with the cache: what it says, how many files it judged, and what it warned of. */
async function withCache(what = [place], on = dates) {
  const all = asked(what, place);
  const warnings: string[] = [];
  let count = 0;
  const result = await checkedWithKept(all, on, {
    folder: cache,
    script,
    warn: (message) => warnings.push(message),
    judge: async (some) => {
      count += some.length;
      return some.map(judging(diskOf(all), on).judge);
    },
  });
  return { said: printed(result), count, warnings };
}
const without = (what = [place], on = dates) => printed(checked(asked(what, place), on));

/** Makes a file older than the time within which two writings may look like one. */
const age = () => {
  const then = new Date(Date.now() - 10_000);
  for (const path of paths) utimesSync(join(place, path), then, then);
};

const edits: readonly ((text: string) => string)[] = [
  (text) => text.replace(/^ +(opening|cap|edge|inspected) .*\n/m, ''),
  (text) => text.replace('}', ''),
  (text) => text.replace(/^use .*\n/m, ''),
  (text) => text.replace(/2026-(\d\d)/, '2025-$1'),
  (text) => text.replace(/(\d) ft/, '$1'),
  () => '',
];
const step = fc.oneof(
  fc.record({ kind: fc.constant('edit' as const), file: fc.nat(paths.length - 1), edit: fc.nat(edits.length - 1) }),
  fc.record({ kind: fc.constant('delete' as const), file: fc.nat(paths.length - 1) }),
  fc.record({ kind: fc.constant('restore' as const), file: fc.nat(paths.length - 1) }),
  fc.record({ kind: fc.constant('copy' as const), file: fc.nat(paths.length - 1) }),
  fc.record({ kind: fc.constant('date' as const), day: fc.constantFrom('2026-11-25', '2027-05-01') }),
  fc.record({ kind: fc.constant('part' as const), file: fc.nat(paths.length - 1) }),
  fc.record({
    kind: fc.constant('damage' as const),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    cut: fc.boolean(),
  }),
);

describe('a check with a cache', () => {
  it('says what a check without one says, whatever happened', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 8 }), async (steps) => {
        rmSync(place, { recursive: true, force: true });
        mkdirSync(join(place, '.git'), { recursive: true });
        for (const [path, text] of Object.entries(start)) put(path, text);
        await withCache();
        let on = dates;
        for (const one of steps) {
          const path = 'file' in one ? (paths[one.file] as string) : '';
          if (one.kind === 'edit') {
            const text = readOr(join(place, path));
            if (text !== undefined) put(path, (edits[one.edit] as (text: string) => string)(text));
          } else if (one.kind === 'delete') rmSync(join(place, path), { force: true });
          else if (one.kind === 'restore') put(path, start[path] as string);
          else if (one.kind === 'copy') put(path.replace(/\.rig$/, '-copy.rig'), start[path] as string);
          else if (one.kind === 'date') on = { asOf: one.day, today: one.day };
          else if (one.kind === 'damage') damage(one.at, one.cut);
          const what =
            one.kind === 'part' && readOr(join(place, path)) !== undefined ? join(place, dirname(path)) : place;
          const { said, warnings } = await withCache([what], on);
          expect(said).toEqual(without([what], on));
          expect(warnings).toEqual([]);
        }
      }),
      { numRuns: 25 },
    );
  }, 120_000);

  it('judges nothing where nothing changed, and only what a change concerns', async () => {
    age();
    expect((await withCache()).count).toBe(paths.length);
    expect((await withCache()).count).toBe(0);
    const rig = paths.find((path) => path.endsWith('heath.rig')) as string;
    put(rig, `${start[rig]}\n# a word\n`);
    expect((await withCache()).count).toBe(1);
    const shared = paths.find((path) => path.endsWith('policy.rig')) as string;
    put(shared, `${start[shared]}\n# a word\n`);
    const users = paths.filter((path) => start[path]?.includes('policy.rig"'));
    expect((await withCache()).count).toBe(users.length + 1);
  });

  it('knows a file again that was only written anew', async () => {
    await withCache();
    for (const path of paths) put(path, start[path] as string);
    expect((await withCache()).count).toBe(0);
  });

  it('sees a change that leaves size and time as they were', async () => {
    age();
    await withCache();
    const rig = paths.find((path) => path.endsWith('heath.rig')) as string;
    const then = new Date(Date.now() - 10_000);
    put(rig, (start[rig] as string).replace('2026', '2025'));
    utimesSync(join(place, rig), then, then);
    expect((await withCache()).said).toEqual(without());
  });

  it('is of one build, and of one date', async () => {
    await withCache();
    expect((await withCache([place], { asOf: '2027-01-01', today: '2027-01-01' })).count).toBe(paths.length);
    writeFileSync(script, 'another build');
    expect((await withCache()).count).toBe(paths.length);
  });

  it('warns where nothing can be kept, and checks all the same', async () => {
    writeFileSync(cache, 'a file, and no folder');
    const { said, warnings } = await withCache();
    expect(said).toEqual(without());
    expect(warnings).toEqual([expect.stringContaining('could not be kept')]);
    expect(readFileSync(cache, 'utf8')).toBe('a file, and no folder');
  });

  it('keeps a few checks, and no drafts', async () => {
    for (let day = 1; day <= 12; day++) {
      const asOf = `2026-10-${String(day).padStart(2, '0')}`;
      await withCache([place], { asOf, today: asOf });
    }
    expect(readdirSync(cache)).toHaveLength(16);
  });
});

function readOr(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}

/** Cuts what is kept short, or writes another byte into it. */
function damage(at: number, cut: boolean): void {
  for (const name of readdirSync(cache)) {
    const bytes = readFileSync(join(cache, name));
    const place = Math.floor(at * (bytes.length - 1));
    if (cut) writeFileSync(join(cache, name), bytes.subarray(0, place));
    else {
      bytes[place] = (bytes[place] as number) ^ 1;
      writeFileSync(join(cache, name), bytes);
    }
  }
}
