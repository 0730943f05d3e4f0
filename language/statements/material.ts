// What may stand in the block of a material.
import { apply, bonding, byLabel, neverOn, surfaceLimit, testPatch } from './bonding.ts';
import { source } from './clauses.ts';
import { blockTable, clause, may, must, type RecordOf, row } from './row.ts';
import { counted } from './slots/counted.ts';
import { after, by, either, list, range, threePoints } from './slots/lists.ts';
import { count, coverage, duration, length, money, period, volume } from './slots/quantities.ts';
import { oneOf, surface } from './slots/words.ts';
import { families, grades, sections, solvents } from './words.ts';

const price = { price: clause('at', money, 'The price of one.') };
const clock = <const W extends string>(word: W, help: string, example: string) =>
  row(word, {
    class: 'fact',
    key: 'word',
    help,
    example,
    places: { span: must(range(duration, true)) },
    clauses: source,
  });

// Clocks: how long after the work something may happen.
const clocks = [
  clock('skin', 'The time until a skin has formed.', 'skin 1 h to 4 h'),
  clock('rain', 'The time until rain does no harm.', 'rain 2 h to 6 h'),
  clock('drive', 'The time until the rig may be driven.', 'drive 12 h to 24 h'),
  clock('wash', 'The time until the roof may be washed.', 'wash 7 days'),
] as const;
const cover = row('cover', {
  class: 'fact',
  key: 'word',
  help: 'The time until tape may go over it: before the low figure it must not, between the two it had better not; `never` for a material that takes no tape.',
  example: 'cover 30 days to 60 days',
  places: { span: must(either(range(duration, true), oneOf('`never`', ['never']))) },
  clauses: source,
});

const container = row('container', {
  class: 'fact',
  key: 'value',
  help: 'A container on sale and its price.',
  example: 'container 1 qt at 24 USD',
  places: { volume: must(volume) },
  clauses: { ...price, ...source },
});
const covers = row('covers', {
  class: 'fact',
  key: 'word',
  help: 'The area that a volume covers in one pass.',
  example: 'covers 100 sq-ft per gal',
  places: { coverage: must(coverage) },
  clauses: source,
});
const passes = row('passes', {
  class: 'fact',
  key: 'word',
  help: 'How many passes or coats are given.',
  example: 'passes 2',
  places: { count: must(count) },
  clauses: source,
});
const family = row('family', {
  class: 'fact',
  key: 'word',
  help: 'What cures it: decides which clocks and surfaces are taken from the built-in library where the label is silent.',
  example: 'family solvent-lap',
  places: { family: must(oneOf('a family', families)) },
  clauses: source,
});
export const life = row('life', {
  class: 'fact',
  key: 'value',
  help: 'How long it lasts: least, likely, most.',
  example: 'life 8 years, 15 years, 25 years',
  places: { life: must(threePoints(period)) },
  clauses: { on: clause('on', list(surface), 'The surfaces for which this holds.'), ...source },
});
const lookHard = row('look-hard', {
  class: 'fact',
  key: 'word',
  help: 'How long after the work the bead is looked at hard; a sound finding moves the date on.',
  example: 'look-hard every 18 months',
  places: { every: must(after(['every'], period)) },
  clauses: source,
});

const width = row('width', {
  class: 'fact',
  key: 'word',
  help: 'The width of the tape.',
  example: 'width 4 in',
  places: { width: must(length) },
  clauses: source,
});
const roll = row('roll', {
  class: 'fact',
  key: 'value',
  help: 'A roll on sale: its length and its price.',
  example: 'roll 50 ft at 61.00 USD',
  places: { length: must(length) },
  clauses: { ...price, ...source },
});
const endLap = row('end-lap', {
  class: 'fact',
  key: 'word',
  help: 'How far a piece laps past its end onto what it meets.',
  example: 'end-lap 2 in',
  places: { length: must(length) },
  clauses: source,
});
const sideLap = row('side-lap', {
  class: 'fact',
  key: 'word',
  help: 'How far strips that lie side by side lap each other.',
  example: 'side-lap 1 in',
  places: { length: must(length) },
  clauses: source,
});

const grade = row('grade', {
  class: 'fact',
  key: 'word',
  help: 'Self-levelling for flat seams, non-sag for upright ones.',
  example: 'grade self-levelling',
  places: { grade: must(oneOf('a grade', grades)) },
  clauses: source,
});
const cartridge = row('cartridge', {
  class: 'fact',
  key: 'value',
  help: 'A cartridge on sale: what it holds and its price.',
  example: 'cartridge 10.3 fl-oz at 9.75 USD',
  places: { volume: must(volume) },
  clauses: { ...price, ...source },
});
const caseOf = row('case', {
  class: 'fact',
  key: 'value',
  help: 'A case of cartridges and its price.',
  example: 'case 12 cartridges at 105 USD',
  places: { holds: must(counted) },
  clauses: { ...price, ...source },
});
const bead = row('bead', {
  class: 'fact',
  key: 'word',
  help: 'Width and height of the bead.',
  example: 'bead 1 in by 1/4 in',
  places: { size: must(by(length)), section: may(oneOf('a section', sections)) },
  clauses: source,
});
const coats = row('coats', {
  class: 'fact',
  key: 'word',
  help: 'How many coats may lie one on another before it must all come off; the factory bead counts.',
  example: 'coats at most 4',
  places: { most: must(after(['at', 'most'], count)) },
  clauses: source,
});

const neededOn = row('needed-on', {
  class: 'fact',
  key: 'word',
  help: 'The surfaces that need this primer before tape or sealant.',
  example: 'needed-on tpo',
  places: { surfaces: must(list(surface)) },
  clauses: source,
});
const flash = row('flash', {
  class: 'fact',
  key: 'word',
  help: 'The time until it has dried enough to work on.',
  example: 'flash 5 min to 30 min',
  places: { span: must(range(duration, true)) },
  clauses: source,
});
const solvent = row('solvent', {
  class: 'fact',
  key: 'word',
  help: 'What is in it: decides which surfaces it harms where the label is silent.',
  example: 'solvent isopropyl',
  places: { solvent: must(oneOf('a solvent', solvents)) },
  clauses: source,
});
const safeOn = row('safe-on', {
  class: 'fact',
  key: 'list',
  help: 'The surfaces that this cleaner does not harm.',
  example: 'safe-on epdm, tpo',
  places: { surfaces: must(list(surface)) },
  clauses: source,
});

export const tapeTable = blockTable('tape', [
  family,
  width,
  roll,
  life,
  ...bonding,
  apply,
  surfaceLimit,
  endLap,
  sideLap,
  ...clocks,
]);
export const sealantTable = blockTable('sealant', [
  family,
  grade,
  cartridge,
  caseOf,
  container,
  bead,
  coats,
  lookHard,
  life,
  ...clocks,
  cover,
  ...bonding,
  apply,
  surfaceLimit,
]);
export const primerTable = blockTable('primer', [
  family,
  container,
  covers,
  passes,
  neededOn,
  flash,
  ...bonding,
  apply,
]);
export const cleanerTable = blockTable('cleaner', [
  solvent,
  container,
  covers,
  passes,
  flash,
  safeOn,
  byLabel,
  testPatch,
  neverOn,
]);
export const coatingTable = blockTable('coating', [
  family,
  container,
  covers,
  passes,
  life,
  ...clocks,
  cover,
  ...bonding,
  apply,
  surfaceLimit,
]);

export type TapeStatement = RecordOf<typeof width | typeof roll | typeof endLap | typeof sideLap> | SharedStatement;
export type SealantStatement =
  | RecordOf<
      | typeof grade
      | typeof cartridge
      | typeof caseOf
      | typeof container
      | typeof bead
      | typeof coats
      | typeof lookHard
      | typeof cover
    >
  | SharedStatement;
export type PrimerStatement =
  | RecordOf<typeof container | typeof covers | typeof passes | typeof neededOn | typeof flash>
  | SharedStatement;
export type CleanerStatement =
  | RecordOf<typeof solvent | typeof container | typeof covers | typeof passes | typeof flash | typeof safeOn>
  | SharedStatement;
export type CoatingStatement =
  | RecordOf<typeof container | typeof covers | typeof passes | typeof cover>
  | SharedStatement;

type SharedStatement = RecordOf<
  typeof family | typeof life | (typeof bonding)[number] | typeof apply | typeof surfaceLimit | (typeof clocks)[number]
>;
/** Any statement of any material's block. */
export type MaterialStatement =
  | TapeStatement
  | SealantStatement
  | PrimerStatement
  | CleanerStatement
  | CoatingStatement;
