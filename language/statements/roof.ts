// What may stand in the description of a roof: the block of a model, and the same lines in a rig.
import { note, source } from './clauses.ts';
import { clause, may, must, needed, type RecordOf, row } from './row.ts';
import { date } from './slots/dates.ts';
import { by, list, range } from './slots/lists.ts';
import { bandBefore, count, length, period } from './slots/quantities.ts';
import { points, sideOf, size } from './slots/shapes.ts';
import { between, newName, oneOf, seam, surface } from './slots/words.ts';
import { longSides } from './words.ts';

/** What any item may carry. */
const itemClauses = {
  places: clause(
    'at',
    points,
    'Where its centre is: along from the front, across from the curb side; several places after `and`.',
  ),
  wide: clause('wide', length, 'The width of the band to be covered.'),
  length: clause('length', length, 'Its length, where that is not plain from its kind and size.'),
  bead: clause('bead', by(length), 'Width and height of its bead.'),
  surface: clause('of', surface, 'The surface of the part itself.'),
  between: clause('between', between, 'The two surfaces that meet in the seam.'),
  count: clause('count', count, 'How many alike.'),
  since: clause('since', date, 'When the part was fitted.'),
  until: clause('until', date, 'When the part was taken away.'),
  ...note,
  ...source,
};
const item = { class: 'item', key: 'name' } as const;

const roof = row('roof', {
  class: 'fact',
  key: 'word',
  help: 'The roof: along by across, and its membrane.',
  example: 'roof 28 ft by 8 ft 2 in epdm',
  places: { size: must(by(length)), surface: may(surface) },
  clauses: { since: clause('since', date, 'When the membrane was laid.'), ...note, ...source },
});
const falls = row('falls', {
  class: 'fact',
  key: 'word',
  help: 'Where water runs: decides the lay order where the wind does not.',
  example: 'falls to edges',
  places: {},
  clauses: {
    to: needed(
      'to',
      oneOf('the side that water runs to', ['edges', 'rear', 'front', 'curbside', 'roadside']),
      'Where water runs.',
    ),
    ...note,
  },
});
const edge = row('edge', {
  ...item,
  help: 'A side edge: it runs the length of the roof.',
  example: 'edge curbside, roadside',
  places: { names: must(list(oneOf('a long side', longSides))), wideBefore: may(bandBefore) },
  clauses: itemClauses,
});
const cap = row('cap', {
  ...item,
  help: 'The joint between the roof and the front or rear cap: it runs the width of the roof.',
  example: 'cap front 5 in wide',
  places: { name: must(oneOf('`front` or `rear`', ['front', 'rear'])), wideBefore: may(bandBefore) },
  clauses: itemClauses,
});
const slide = row('slide', {
  ...item,
  help: 'The roof of a slide-out: its outer side and two ends are seams.',
  example: 'slide dinette 11 ft by 3 ft 6 in on roadside at 9 ft',
  places: { name: must(newName('dinette')), size: must(size) },
  clauses: { on: clause('on', sideOf, 'The side it slides out on.'), ...itemClauses },
});
const opening = row('opening', {
  ...item,
  help: 'A vent, skylight, pipe or other opening; the size is the outside of its flange.',
  example: 'opening bath-vent 16 in by 16 in at 18 ft, 2 ft of abs',
  places: { name: must(newName('bath-vent')), size: may(size) },
  clauses: {
    cutout: clause('cutout', size, 'The size of the hole, where the flange is given by its width.'),
    flange: clause('flange', length, 'The width of the flange around the hole.'),
    ...itemClauses,
  },
});
const mount = row('mount', {
  ...item,
  help: 'A foot, bracket or gland that is screwed to the roof.',
  example: 'mount ladder-feet 3 in by 4 in at 27 ft, 1 ft',
  places: { name: must(newName('ladder-feet')), size: must(size) },
  clauses: itemClauses,
});
const joint = row('joint', {
  ...item,
  help: 'Any other seam, by its length; `on wall curbside` puts it on a wall.',
  example: 'joint drip-rail 26 ft',
  places: { name: must(newName('drip-rail')), run: must(length) },
  clauses: { on: clause('on', sideOf, 'The side or the wall it is on.'), ...itemClauses },
});
const gasket = row('gasket', {
  ...item,
  help: 'A part on a gasket, such as an air conditioner: looked at, its bolts checked, never sealed or taped.',
  example: 'gasket air-con 14 in by 14 in at 12 ft, 4 ft',
  places: { name: must(newName('air-con')), size: may(size) },
  clauses: itemClauses,
});
const drain = row('drain', {
  ...item,
  help: 'A spout or weep hole: kept open, never sealed or taped.',
  example: 'drain spout-1 at 27 ft 9 in, 0 ft',
  places: { name: must(newName('spout-1')) },
  clauses: itemClauses,
});
const channel = row('channel', {
  ...item,
  help: 'An awning channel or gutter: kept open, never sealed or taped.',
  example: 'channel awning 18 ft on curbside',
  places: { name: must(newName('awning')), run: may(length) },
  clauses: { on: clause('on', sideOf, 'The side it is on.'), ...itemClauses },
});
const insert = row('insert', {
  ...item,
  help: 'The vinyl insert of a screwed moulding: renewed, never sealed or taped.',
  example: 'insert curb-insert 28 ft',
  places: { name: must(newName('curb-insert')), run: may(length) },
  clauses: { on: clause('on', sideOf, 'The side it is on.'), ...itemClauses },
});
const field = row('field', {
  ...item,
  help: 'The membrane itself as a place of findings and repairs.',
  example: 'field membrane',
  places: { name: must(newName('membrane')) },
  clauses: itemClauses,
});
const without = row('without', {
  class: 'fact',
  key: 'none',
  help: 'Drops inherited items.',
  example: 'without skylight',
  places: { names: must(list(seam)) },
  clauses: note,
});
const comesOff = row('comes-off', {
  class: 'fact',
  key: 'word',
  help: 'Items with a cover, shroud or cap that comes off before the flange can be reached.',
  example: 'comes-off bath-vent, skylight',
  places: { names: must(list(seam)) },
  clauses: { ...note, ...source },
});
const serviced = row('serviced', {
  class: 'fact',
  key: 'word',
  help: 'Items whose lid is opened for service: sealed, never taped.',
  example: 'serviced bath-vent',
  places: { names: must(list(seam)) },
  clauses: { ...note, ...source },
});
const partLife = row('part-life', {
  class: 'fact',
  key: 'name',
  help: 'How long a part lasts before it is replaced.',
  example: 'part-life skylight 8 years to 12 years',
  places: { name: must(seam), life: must(range(period)) },
  clauses: source,
});

export const roofRows = [
  roof,
  falls,
  edge,
  cap,
  slide,
  opening,
  mount,
  joint,
  gasket,
  drain,
  channel,
  insert,
  field,
  without,
  comesOff,
  serviced,
  partLife,
] as const;

const itemRows = [edge, cap, slide, opening, mount, joint, gasket, drain, channel, insert, field] as const;
/** The words whose lines give an item. */
export const itemWords: ReadonlySet<string> = new Set(itemRows.map((one) => one.word));

export type RoofStatement = RecordOf<(typeof roofRows)[number]>;
export type ItemStatement = RecordOf<(typeof itemRows)[number]>;
export type ItemKind = ItemStatement['word'];
