// What may stand in the block of a surface.
import { source } from './clauses.ts';
import { life } from './material.ts';
import { blockTable, must, needed, type RecordOf, row } from './row.ts';
import { oneOf, text } from './slots/words.ts';

const group = row('group', {
  class: 'fact',
  key: 'word',
  help: 'What kind of surface it is.',
  example: 'group thermoplastic',
  places: {
    group: must(
      oneOf('a group', [
        'rubber',
        'thermoplastic',
        'moulded',
        'metal',
        'plastic',
        'wood',
        'sealant',
        'coating',
        'tape',
        'unknown',
      ]),
    ),
  },
  clauses: source,
});
const caution = row('caution', {
  class: 'fact',
  key: 'word',
  help: 'What to beware of on this surface.',
  example: 'caution note "never walk on it"',
  places: {},
  clauses: { note: needed('note', text, 'The caution.'), ...source },
});
export const surfaceTable = blockTable('surface', [group, life, caution]);

export type SurfaceStatement = RecordOf<typeof group | typeof life | typeof caution>;
