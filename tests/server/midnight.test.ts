// At midnight, or with another as-of date, only what a date can change is checked again.
import { expect, test } from 'vitest';
import { settingsSchema } from '../../language/protocol/index.ts';
import { mirrorDisk } from '../../server/disk-mirror.ts';
import { createSession } from '../../server/session.ts';
import { readFolder } from '../project/workspace.ts';

test('rigs, fleets and policies are, materials and histories are not', () => {
  const mirror = mirrorDisk();
  const texts = Object.entries(readFolder('examples/fleet')).map(([path, text]) => [`/yard/${path}`, text] as const);
  mirror.put(texts, []);
  let today = '2026-11-25';
  const clock = { today: () => today, onNewDay: () => () => undefined };
  const session = createSession(clock, mirror, settingsSchema.parse({}), (_, error) => {
    throw error;
  });
  session.setFolders(['/yard']);
  for (const _ of session.discover());
  while (session.stale.size > 0) for (const path of [...session.stale]) session.check(path);

  today = '2027-05-01';
  session.newDay();
  const dated = /^(rig|model|fleet|policy|group) /m;
  expect([...session.stale].sort()).toEqual(texts.flatMap(([path, text]) => (dated.test(text) ? [path] : [])).sort());
  expect(session.stale.size).toBeLessThan(texts.length);
  while (session.stale.size > 0) for (const path of [...session.stale]) session.check(path);
  expect(session.workspace.findingsIn('/yard/rigs/fell.rig').map(({ rule }) => rule)).toContain('inspection-overdue');
});
