// The words of the language as plain lists, read off the statement table: for colours, completion and the reference page.
import { type Family, unitWords } from '../values/units.ts';
import { declarationKinds, fileTable } from './file.ts';
import { historyTable } from './past.ts';
import { planRows } from './plans.ts';
import type { BlockTable } from './row.ts';
import { clauseWords, conditions, days, defects, findingFlags, longSides, sets, sides, spellings } from './words.ts';

/** Every block kind of the language, each once, the file itself first. */
export function allTables(): BlockTable[] {
  const out = new Set<BlockTable>([fileTable]);
  for (const table of out)
    for (const row of table.names ? [...table.rows.values(), table.names] : table.rows.values())
      if (row.block) out.add(row.block);
  return [...out];
}

const families: readonly Family[] = [
  'length',
  'area',
  'volume',
  'period',
  'effort',
  'temperature',
  'percent',
  'counted',
];

export const vocabulary = {
  declarations: ['use', ...declarationKinds],
  statements: [...new Set(allTables().flatMap((table) => [...table.rows.keys()].flatMap(spellings)))],
  verbs: [...new Set([...historyTable.rows.keys(), ...planRows.map((row) => row.word)])],
  clauses: [...clauseWords],
  units: [...families.flatMap((family) => unitWords(family)), 'USD', 'EUR', 'GBP', 'CAD', 'AUD', 'NZD'],
  conditions: [...conditions, ...Object.keys(defects), ...findingFlags],
  sides: [...new Set([...sides, ...longSides])],
  surfaces: [
    'epdm',
    'tpo',
    'pvc',
    'fibreglass',
    'fiberglass',
    'aluminium',
    'aluminum',
    'painted-steel',
    'abs',
    'polycarbonate',
    'acrylic',
    'pp',
    'pe',
    'wood',
  ],
  sets: Object.keys(sets),
  days: [...days],
};
