// What happened: verbs in the past tense, each with its date.
import { evidence, until } from './clauses.ts';
import { blockTable, type Clause, clause, may, must, type RecordOf, row } from './row.ts';
import { materials } from './slots/amounts.ts';
import { date } from './slots/dates.ts';
import { list, range } from './slots/lists.ts';
import { length, percent } from './slots/quantities.ts';
import { seen, targets } from './slots/targets.ts';
import { seam, text } from './slots/words.ts';

const moisture = {
  moisture: clause(
    'moisture',
    percent,
    'The reading of a moisture meter, inside below the seam unless `inside` says where.',
  ),
};
const inside = { inside: clause('inside', text, 'Where it was seen inside.') };
const withMaterials = {
  materials: clause('with', materials, 'The materials, each with the amount used if it is known.'),
};
const suspect = { suspects: clause('suspect', list(seam), 'Where the water may come in.') };

/** A line of findings: places, what was seen there, and the stretch, reading and pictures that belong to it. */
const finding = row('', {
  class: 'finding',
  help: 'What was seen at a seam or an item: a condition from best to worst (sound, chalky, hairline, cracked, lifting, open), a defect, `wet`, `not-seen`.',
  example: 'bath-vent cracked photo "bath-vent-1.jpg"',
  places: { targets: must(targets), seen: must(seen) },
  clauses: {
    stretch: clause('from', range(length), 'The part of the seam that is meant.'),
    ...moisture,
    ...inside,
    ...withMaterials,
    photos: evidence.photos,
    note: evidence.note,
  },
});
export const findingTable = blockTable('findings', [], finding);

function past<const W extends string, C extends Readonly<Record<string, Clause>> = Record<never, never>>(
  word: W,
  help: string,
  example: string,
  clauses: C = {} as C,
) {
  return row(word, {
    class: 'record',
    help,
    example,
    places: { date: must(date), targets: may(targets) },
    clauses: { ...evidence, ...clauses },
  });
}
function look<const W extends string>(word: W, help: string, example: string) {
  return row(word, {
    class: 'record',
    help,
    example,
    places: { date: must(date), targets: may(targets) },
    clauses: { ...evidence, ...moisture, ...inside, ...withMaterials },
    block: findingTable,
  });
}

const found = look(
  'found',
  'The state in which the rig was found, such as on the day of purchase.',
  'found 2021-04-10 all with unknown',
);
const inspected = look(
  'inspected',
  'An inspection and its findings.',
  'inspected 2026-04-18 by "R. Adeyemi" { rest sound }',
);
const struck = past(
  'struck',
  'Something hit the roof, or it may have been strained.',
  'struck 2026-05-02 front by branch',
  inside,
);
const leaked = past('leaked', 'Water came in.', 'leaked 2026-06-11 inside "over the shower" suspect bath-vent', {
  ...inside,
  ...suspect,
  ...moisture,
});
const washed = past('washed', 'The roof was washed.', 'washed 2026-04-17', withMaterials);
const dried = past('dried', 'A place was dried out.', 'dried 2026-06-20 bath-vent moisture 14 %', {
  ...moisture,
  ...inside,
});
const covered = past(
  'covered',
  'A temporary cover was put on; it expires.',
  'covered 2026-06-11 bath-vent until 2026-06-25',
  { ...withMaterials, until: until('Until when it will do.') },
);
const tightened = past('tightened', 'Bolts or screws were tightened.', 'tightened 2026-04-18 air-con');
const patched = past('patched', 'A patch was put on.', 'patched 2026-04-18 membrane with EdgeTape4', withMaterials);
const coated = past(
  'coated',
  'The roof was coated: its surface is the coating from then on.',
  'coated 2026-04-18 with RoofCoat',
  withMaterials,
);
const stripped = past('stripped', 'The sealant or tape was taken off.', 'stripped 2026-04-20 bath-vent');
const replaced = past(
  'replaced',
  'A new part was put in: bare until it is sealed.',
  'replaced 2026-04-20 bath-vent',
  withMaterials,
);
const rebedded = past(
  'rebedded',
  'A part was taken off and bedded anew: bare until it is sealed.',
  'rebedded 2026-04-20 skylight with BedPutty',
  withMaterials,
);
const primed = past('primed', 'A primer was put on.', 'primed 2026-04-20 front with EdgePrimer', withMaterials);
const sealed = past(
  'sealed',
  'Sealant was put on: one coat more.',
  'sealed 2026-04-20 bath-vent with GreyLap used 2 cartridges',
  withMaterials,
);
const taped = past(
  'taped',
  'Seam tape was laid.',
  'taped 2026-07-05 curbside from 0 ft to 14 ft with EdgeTape4',
  withMaterials,
);
const removed = past('removed', 'A part was taken away for good.', 'removed 2026-07-05 antenna');

const stored = row('stored', {
  class: 'record',
  help: 'The rig was or will be laid up; nothing falls due inside.',
  example: 'stored 2026-11-01 to 2027-03-31',
  places: { days: must(range(date)) },
  clauses: { note: evidence.note, by: evidence.by },
});
const trip = row('trip', {
  class: 'record',
  help: 'The rig is away; work is done before or after.',
  example: 'trip 2026-06-12 to 2026-06-20',
  places: { days: must(range(date)) },
  clauses: { note: evidence.note },
});

export const pastRows = [
  found,
  inspected,
  struck,
  leaked,
  washed,
  dried,
  covered,
  tightened,
  patched,
  coated,
  stripped,
  replaced,
  rebedded,
  primed,
  sealed,
  taped,
  removed,
  stored,
  trip,
] as const;
export const historyTable = blockTable('history', pastRows);

export type PastStatement = RecordOf<(typeof pastRows)[number]>;
export type Finding = RecordOf<typeof finding>;
