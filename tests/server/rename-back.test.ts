// Every name of the examples gets a fresh one and its own back: the texts are the same, and in between nothing else is found.
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { settingsSchema } from '../../language/protocol/index.ts';
import { linesOfText } from '../../language/records/file.ts';
import { abilities } from '../../server/abilities.ts';
import type { Disk } from '../../server/disk.ts';
import type { Features } from '../../server/features/here.ts';
import { meantBy } from '../../server/names/meant.ts';
import { mentionsIn } from '../../server/names/mentions.ts';
import { refusalOf } from '../../server/names/new-name.ts';
import { renaming, withName } from '../../server/names/rename.ts';
import { filesKnown } from '../../server/names/search.ts';
import { createSession } from '../../server/session.ts';
import { testClock } from './editor.ts';

const folder = join(import.meta.dirname, '../../examples');
const texts = (name: string) =>
  new Map(
    readdirSync(join(folder, name), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && entry.name.endsWith('.rig'))
      .map((entry): [string, string] => {
        const path = join(entry.parentPath, entry.name);
        return [`/w/${relative(join(folder, name), path)}`, readFileSync(path, 'utf8')];
      }),
  );

/** A session over texts in memory, all of them checked. */
function featuresOver(files: ReadonlyMap<string, string>): Features {
  const paths = [...files.keys()].sort();
  const disk: Disk = {
    read: (path) => files.get(path),
    exists: (path) => files.has(path),
    rootOf: () => '/w',
    *walk(below) {
      yield paths.filter((path) => path.startsWith(`${below}/`));
    },
  };
  const session = createSession(testClock(), disk, settingsSchema.parse({}), (path, error) => {
    throw new Error(`${path}: ${String(error)}`);
  });
  session.setFolders(['/w']);
  for (const _step of session.discover());
  for (const path of [...session.stale]) session.check(path);
  return { session, open: { of: () => undefined }, can: abilities() };
}

const findingsOf = ({ session }: Features) =>
  session.workspace
    .checkedFiles()
    .sort()
    .flatMap((file) =>
      session.workspace.findingsIn(file).map(({ rule, severity, message }) => `${file} ${rule} ${severity} ${message}`),
    );

describe.each(['single', 'fleet'])('in the example %s', (name) => {
  const files = texts(name);
  const features = featuresOver(files);
  const { session } = features;
  const known = filesKnown(features, []);
  const names = [...files].flatMap(([file, text]) =>
    [...mentionsIn(linesOfText(text).lines)].flatMap((mention) => {
      const meant = meantBy(session, file, mention, known);
      return meant && meant.name === mention.name && !refusalOf(meant) ? [{ file, meant }] : [];
    }),
  );

  test('there is something to rename', () => expect(names.length).toBeGreaterThan(40));

  test('there and back gives the same text, and the same findings in between', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.stringMatching(/^[A-Z][a-z]{2,9}-[a-z]{3}q$/),
        ({ file, meant }, fresh) => {
          const there = renaming(features, file, meant, fresh);
          if (typeof there === 'string') throw new Error(`${meant.name} to ${fresh}: ${there}`);
          const next = new Map(files);
          for (const [path, spans] of there.places) next.set(path, withName(files.get(path) ?? '', spans, fresh));
          expect(next).not.toEqual(files);
          const after = featuresOver(next);
          const spelt = (text: string) => text.replaceAll(fresh, meant.name);
          const found = findingsOf(after).map((finding) => spelt(finding));
          expect(found.sort()).toEqual(findingsOf(features).sort());

          const moved = [...mentionsIn(linesOfText(next.get(file) ?? '').lines)]
            .map((mention) => meantBy(after.session, file, mention, known))
            .find((one) => one?.name === fresh && one.kind === meant.kind);
          if (!moved) throw new Error(`${fresh} is not found again`);
          const back = renaming(after, file, moved, meant.name);
          if (typeof back === 'string') throw new Error(`${fresh} back to ${meant.name}: ${back}`);
          for (const [path, spans] of back.places) next.set(path, withName(next.get(path) ?? '', spans, meant.name));
          expect(next).toEqual(files);
        },
      ),
      { numRuns: 25 },
    );
  });
});
