// What a material bonds to, by the surface under it, and when it may be applied.
import { source } from './clauses.ts';
import { must, row } from './row.ts';
import { list, range } from './slots/lists.ts';
import { temperature } from './slots/quantities.ts';
import { surface } from './slots/words.ts';

const bondsTo = row('bonds-to', {
  class: 'fact',
  key: 'list',
  help: 'The surfaces that this material bonds to as they are meant to be prepared.',
  example: 'bonds-to epdm, aluminium',
  places: { surfaces: must(list(surface)) },
  clauses: source,
});
export const byLabel = row('by-label', {
  class: 'fact',
  key: 'list',
  help: 'Surfaces for which only the label of the product can say yes.',
  example: 'by-label tpo',
  places: { surfaces: must(list(surface)) },
  clauses: source,
});
export const testPatch = row('test-patch', {
  class: 'fact',
  key: 'list',
  help: 'Surfaces on which a test patch comes first.',
  example: 'test-patch pp',
  places: { surfaces: must(list(surface)) },
  clauses: source,
});
export const neverOn = row('never-on', {
  class: 'fact',
  key: 'list',
  help: 'Surfaces on which this material must not be used.',
  example: 'never-on silicone',
  places: { surfaces: must(list(surface)) },
  clauses: source,
});
export const bonding = [bondsTo, byLabel, testPatch, neverOn] as const;

export const apply = row('apply', {
  class: 'fact',
  key: 'word',
  help: 'The temperatures of the air between which it is applied.',
  example: 'apply 50 F to 100 F',
  places: { air: must(range(temperature)) },
  clauses: source,
});
export const surfaceLimit = row('surface-up-to', {
  class: 'fact',
  key: 'word',
  help: 'The hottest surface on which it is applied.',
  example: 'surface-up-to 120 F',
  places: { limit: must(temperature) },
  clauses: source,
});
