// What may stand at the top of a file: the head of the statement table.
import { fleetTable } from './fleet.ts';
import { cleanerTable, coatingTable, primerTable, sealantTable, tapeTable } from './material.ts';
import { historyTable } from './past.ts';
import { policyTable } from './policy.ts';
import { groupTable, modelTable, rigTable } from './rig.ts';
import { type BlockTable, blockTable, clause, must, row } from './row.ts';
import { base, newName, pathLike, policyName } from './slots/words.ts';
import { surfaceTable } from './surface.ts';

const like = { like: clause('like', base, 'Takes over the description of another of its kind.') };
const under = { under: clause('under', policyName, 'The policy that holds.') };

function declaration<const W extends string>(
  word: W,
  help: string,
  example: string,
  name: string,
  block: BlockTable,
  clauses = {},
) {
  return row(word, {
    class: 'declaration',
    key: 'name',
    help,
    example,
    places: { name: must(newName(name)) },
    clauses,
    block,
  });
}

const use = row('use', {
  class: 'declaration',
  help: 'Makes the names of another file visible here.',
  example: 'use "../yard/materials.rig"',
  places: { path: must(pathLike('"../yard/materials.rig"')) },
});

export const fileTable = blockTable('file', [
  use,
  declaration('tape', 'A seam tape.', 'tape EdgeTape4 { width 4 in }', 'EdgeTape4', tapeTable, like),
  declaration('sealant', 'A sealant.', 'sealant GreyLap { family solvent-lap }', 'GreyLap', sealantTable, like),
  declaration('primer', 'A primer.', 'primer EdgePrimer { covers 100 sq-ft per gal }', 'EdgePrimer', primerTable, like),
  declaration('cleaner', 'A cleaner.', 'cleaner MildWash { covers 400 sq-ft per gal }', 'MildWash', cleanerTable, like),
  declaration(
    'coating',
    'A coating for the whole roof.',
    'coating RoofCoat { family acrylic }',
    'RoofCoat',
    coatingTable,
    like,
  ),
  declaration(
    'surface',
    'A surface that materials lie on.',
    'surface epdm { group rubber }',
    'epdm',
    surfaceTable,
    like,
  ),
  declaration(
    'policy',
    'How a shop works and what it counts with.',
    'policy Yard { inspect every 6 months }',
    'Yard',
    policyTable,
    like,
  ),
  declaration(
    'group',
    'Rigs that have a policy in common.',
    'group Coastal under SaltAir',
    'Coastal',
    groupTable,
    under,
  ),
  declaration(
    'model',
    'The roof that several rigs have.',
    'model Alder28 { roof 28 ft by 8 ft 2 in epdm }',
    'Alder28',
    modelTable,
    like,
  ),
  declaration(
    'rig',
    'A rig: its roof, its identity, its records, its plans.',
    'rig Heron like Alder28 under Yard',
    'Heron',
    rigTable,
    { ...like, ...under },
  ),
  declaration(
    'history',
    'Records of a rig in another file.',
    'history Heron { washed 2026-04-17 }',
    'Heron',
    historyTable,
  ),
  declaration(
    'fleet',
    'Rigs that share a crew and a calendar.',
    'fleet Saltmarsh under Yard { rigs "../rigs/*.rig" }',
    'Saltmarsh',
    fleetTable,
    under,
  ),
]);

/** What a declaration declares. */
export const declarationKinds = [
  'tape',
  'sealant',
  'primer',
  'cleaner',
  'coating',
  'surface',
  'policy',
  'group',
  'model',
  'rig',
  'history',
  'fleet',
] as const;
export type DeclarationKind = (typeof declarationKinds)[number];
export const materialKinds = ['tape', 'sealant', 'primer', 'cleaner', 'coating'] as const;
export type MaterialKind = (typeof materialKinds)[number];
