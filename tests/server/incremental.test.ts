// Whatever is typed, saved, renamed, deleted, checked out or configured: what is said then is what a fresh start says.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { settingsSchema } from '../../language/protocol/index.ts';
import type { Clock } from '../../server/clock.ts';
import { type Mirror, mirrorDisk } from '../../server/disk-mirror.ts';
import { createSession, type Session } from '../../server/session.ts';
import { readFolder } from '../project/workspace.ts';

const root = '/yard';
const start = Object.fromEntries(
  ['examples/fleet', 'tests/worked-example'].flatMap((folder) =>
    Object.entries(readFolder(folder)).map(([path, text]) => [`${folder.replace('/', '-')}/${path}`, text]),
  ),
);
// More rigs than a fleet checks on the way: it waits for them.
start['many/fleet.rig'] = `use "policy.rig"
fleet Gravel under Yard {
  rigs "*.rig"
  closed 2026-12-24 to 2027-01-03
  booked Rig3 2026-12-01 to 2027-04-20
  booked Rig3 2027-02-01 to 2027-02-09
  booked Rig40 2026-12-01 to 2026-12-20
  yard Quay {
    crew Ladder 2 for 8 h each on mon to thu
    skill Ladder seal, strip
    off Ladder 2027-03-01 to 2027-03-12
    closed 2027-04-01 to 2027-04-20
    serves Coastal, Rig1
  }
  yard Hill { serves Rig2 }
}
`;
start['many/policy.rig'] =
  'policy Yard {\n  season 03-01 to 11-15\n  due-soon 30 days\n}\npolicy Salt like Yard { inspect every 1 month }\ngroup Coastal under Salt\n';
for (let i = 0; i < 24; i++)
  start[`many/rig${i}.rig`] = `use "policy.rig"
rig Rig${i}${i % 4 === 1 ? '' : ' under Yard'} {
  ${i % 2 === 1 ? 'group Coastal' : ''}
  unit "${i % 20}"
  roof 20 ft by 8 ft epdm
  edge roadside
  found 2026-01-01 all with unknown
  inspected 2026-11-01 { roadside ${i % 3 === 0 ? 'open' : 'sound'} }
  tape roadside with EdgeTape after 2027-03-01 before 2027-04-1${i % 10}
}
`;
const paths = Object.keys(start);

/** Ways to change a text: each breaks or mends something that other files may depend on. */
const edits: readonly ((text: string) => string)[] = [
  (text) => text.replace(/^(tape|sealant|model|policy|group|rig|history|fleet) (\w+)/m, '$1 $2x'),
  (text) => text.replace(/^(tape|sealant|model|policy|group|rig|history|fleet) (\w+?)x*\b/m, '$1 $2'),
  (text) => text.replace(/^ +(opening|cap|edge) .*\n/m, ''),
  (text) =>
    `${text}\nrig Extra {\n  roof 20 ft by 8 ft epdm\n  edge roadside\n  found 2026-01-01 all with unknown\n}\n`,
  (text) => text.replace('}', ''),
  (text) => text.replace(/^ +group .*\n/m, ''),
  (text) => text.replace('group Coastal under Salt', 'group Coastal under Yard'),
  (text) => text.replace(/^use .*\n/m, ''),
  (text) => text.replace(/2026-(\d\d)/, '2025-$1'),
  (text) => text.replace(/(\d+) ft/, '$1'),
  () => '',
];

type Step =
  | { readonly kind: 'save' | 'type'; readonly file: number; readonly edit: number }
  | { readonly kind: 'open' | 'close' | 'delete' | 'restore'; readonly file: number }
  | { readonly kind: 'rename'; readonly file: number; readonly to: number }
  | { readonly kind: 'checkout'; readonly seed: number }
  | { readonly kind: 'asOf'; readonly date: string }
  | { readonly kind: 'midnight' }
  | { readonly kind: 'settle' };

const file = fc.nat(paths.length - 1);
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constantFrom('save' as const, 'type' as const),
      file,
      edit: fc.nat(edits.length - 1),
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constantFrom('open' as const, 'close' as const, 'delete' as const, 'restore' as const),
      file,
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('rename' as const), file, to: file }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('checkout' as const), seed: fc.nat(1000) }) },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('asOf' as const), date: fc.constantFrom('', '2026-06-01', '2027-05-01') }),
  },
  { weight: 1, arbitrary: fc.constant<Step>({ kind: 'midnight' }) },
  { weight: 2, arbitrary: fc.constant<Step>({ kind: 'settle' }) },
);

const fail = (path: string, error: unknown): never => {
  throw new Error(`${path} could not be checked`, { cause: error });
};

/** Does all that is waiting, as the server does between requests. */
function settle(session: Session): void {
  for (const _ of session.discover());
  while (session.stale.size > 0) for (const path of [...session.stale]) session.check(path);
  session.checkTogether();
}

const said = (session: Session, all: Iterable<string>) =>
  Object.fromEntries([...all].sort().map((path) => [path, session.workspace.findingsIn(path)]));

test('incremental equals from scratch', () => {
  fc.assert(
    fc.property(fc.array(step, { minLength: 3, maxLength: 14 }), (steps) => {
      const disk = new Map<string, string>(Object.entries(start).map(([path, text]) => [`${root}/${path}`, text]));
      const open = new Map<string, string>();
      const mirror = mirrorDisk();
      mirror.put(disk, []);
      let today = '2026-11-25';
      let asOf = '';
      const clock: Clock = { today: () => today, onNewDay: () => () => undefined };
      const settings = () => settingsSchema.parse({ asOf });
      const session = createSession(clock, mirror, settings(), fail);
      session.setFolders([root]);
      settle(session);

      const write = (written: readonly (readonly [string, string])[], gone: readonly string[] = []) => {
        for (const path of gone) disk.delete(path);
        for (const [path, text] of written) disk.set(path, text);
        tell(mirror, session, written, gone);
      };
      const nameOf = (index: number) => `${root}/${paths[index]}`;
      for (const one of steps) {
        if (one.kind === 'settle') settle(session);
        else if (one.kind === 'midnight') {
          today = today === '2026-11-25' ? '2026-12-26' : '2027-02-27';
          session.newDay();
        } else if (one.kind === 'asOf') {
          asOf = one.date;
          session.configure(settings());
        } else if (one.kind === 'checkout') {
          // Another branch: half of all files change, come or go at once.
          const written: [string, string][] = [];
          const gone: string[] = [];
          for (const [i, path] of paths.entries()) {
            const choice = (one.seed * 31 + i * 17) % 5;
            if (choice === 0 && disk.has(nameOf(i))) gone.push(nameOf(i));
            if (choice === 1) written.push([nameOf(i), start[path] as string]);
            if (choice === 2)
              written.push([
                nameOf(i),
                (edits[(one.seed + i) % edits.length] as (typeof edits)[number])(start[path] as string),
              ]);
          }
          write(written, gone);
        } else {
          const path = nameOf(one.file);
          const shown = open.get(path) ?? disk.get(path);
          if (one.kind === 'open' && !open.has(path) && shown !== undefined) {
            open.set(path, shown);
            session.opened(path, shown);
          } else if (one.kind === 'close' && open.delete(path)) session.closed(path);
          else if (one.kind === 'delete' && disk.has(path)) write([], [path]);
          else if (one.kind === 'restore') write([[path, start[paths[one.file] as string] as string]]);
          else if (one.kind === 'rename' && disk.has(path) && one.to !== one.file)
            write([[nameOf(one.to), disk.get(path) as string]], [path]);
          else if (one.kind === 'save' && disk.has(path))
            write([[path, (edits[one.edit] as (typeof edits)[number])(disk.get(path) as string)]]);
          else if (one.kind === 'type' && open.has(path)) {
            const text = (edits[one.edit] as (typeof edits)[number])(open.get(path) as string);
            open.set(path, text);
            session.edited(path, text);
          }
        }
      }
      settle(session);

      const fresh = mirrorDisk();
      fresh.put(disk, []);
      const again = createSession(clock, fresh, settings(), fail);
      for (const [path, text] of open) again.opened(path, text);
      again.setFolders([root]);
      settle(again);

      const all = new Set([...disk.keys(), ...open.keys(), ...paths.map((path) => `${root}/${path}`)]);
      expect(said(session, all)).toEqual(said(again, all));
      expect(session.tally()).toEqual(again.tally());
    }),
    { numRuns: 40 },
  );
}, 120_000);

function tell(
  mirror: Mirror,
  session: Session,
  written: readonly (readonly [string, string])[],
  gone: readonly string[],
) {
  for (const path of gone) mirror.drop(path);
  mirror.put(written, []);
  session.onDisk({ written: written.map(([path]) => path), gone });
}
