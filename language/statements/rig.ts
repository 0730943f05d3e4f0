// What may stand in the block of a rig or a model.
import { note } from './clauses.ts';
import { pastRows } from './past.ts';
import { planRows, quoteRow } from './plans.ts';
import { roofRows } from './roof.ts';
import { blockTable, clause, must, needed, type RecordOf, row } from './row.ts';
import { amount, stock } from './slots/amounts.ts';
import { date } from './slots/dates.ts';
import { list } from './slots/lists.ts';
import { money } from './slots/quantities.ts';
import { groupName, material, newName, pathLike, ruleName, seam, text, textLike } from './slots/words.ts';

const fact = { class: 'fact', key: 'word' } as const;

const unit = row('unit', {
  ...fact,
  help: 'The number or name by which the yard knows the rig.',
  example: 'unit "1042"',
  places: { text: must(textLike('"1042"')) },
  clauses: note,
});
const vin = row('vin', {
  ...fact,
  help: 'The vehicle identification number.',
  example: 'vin "1M8GDM9AXKP042788"',
  places: { text: must(textLike('"1M8GDM9AXKP042788"')) },
  clauses: note,
});
const built = row('built', {
  ...fact,
  help: 'When it was built.',
  example: 'built 2016-03',
  places: { date: must(date) },
  clauses: note,
});
const inService = row('in-service', {
  ...fact,
  help: 'When it was first sold or used.',
  example: 'in-service 2016-05-20',
  places: { date: must(date) },
  clauses: note,
});
const acquired = row('acquired', {
  ...fact,
  help: 'When it was bought by its keeper.',
  example: 'acquired 2021-04-10',
  places: { date: must(date) },
  clauses: note,
});
const keptUntil = row('kept-until', {
  ...fact,
  help: 'How long it is to be kept.',
  example: 'kept-until 2036-12-31',
  places: { date: must(date) },
  clauses: note,
});
const dayRate = row('day-rate', {
  ...fact,
  help: 'What a day off the road costs.',
  example: 'day-rate 140 USD',
  places: { price: must(money) },
  clauses: note,
});
const factory = row('factory', {
  ...fact,
  help: 'The sealant that the seams left the factory with; it counts as the first coat.',
  example: 'factory GreyLap',
  places: { material: must(material) },
  clauses: note,
});
const records = row('records', {
  ...fact,
  help: "The rig's history in other files, by pattern.",
  example: 'records "heron/*.rig"',
  places: { patterns: must(list(pathLike('"heron/*.rig"'))) },
});
const formerly = row('formerly', {
  class: 'fact',
  key: 'none',
  help: 'A former name: of the rig, or of a seam with `to` and its name now.',
  example: 'formerly vent-1 to bath-vent',
  places: { name: must(newName('vent-1')) },
  clauses: { now: clause('to', seam, 'The name now.') },
});
const accept = row('accept', {
  class: 'plan',
  help: 'Silences one rule, for a while and for a written reason.',
  example: 'accept look-hard-due until 2027-04-15 because "whole roof is planned for spring"',
  places: { rule: must(ruleName) },
  clauses: {
    on: clause('on', list(seam), 'The items for which it is silenced.'),
    until: needed('until', date, 'Until when.'),
    because: needed('because', text, 'Why.'),
  },
});

const group = row('group', {
  ...fact,
  help: 'The group that it belongs to: it is under the policy of the group where none of its own is written, and a yard may serve the whole group.',
  example: 'group Coastal',
  places: { group: must(groupName) },
  clauses: note,
});

const bought = row('bought', {
  class: 'record',
  help: 'Material that was bought.',
  example: 'bought 2026-03-01 EdgeTape4 2 rolls of 50 ft at 61.00 USD from "shop B"',
  places: { date: must(date), material: must(material), amount: must(amount) },
  clauses: {
    price: clause('at', money, 'What it cost.'),
    from: clause('from', textLike('"shop B"'), 'Where it was bought.'),
    lot: clause('lot', textLike('"T118"'), 'Its lot number.'),
    bestBefore: clause('best-before', date, 'Its best-before date.'),
    ...note,
  },
});
const onHand = row('on-hand', {
  class: 'fact',
  key: 'none',
  help: 'What lies on the shelf; each length is one piece.',
  example: 'on-hand EdgeTape4 18 ft, GreyLap 5 cartridges',
  places: { stock: must(stock) },
  clauses: note,
});

export const stockRows = [bought, onHand] as const;
const groupNote = row('note', {
  ...fact,
  help: 'Anything worth keeping.',
  example: 'note "salt air, washed twice as often"',
  places: { text: must(text) },
});
/** In the block of a group. */
export const groupTable = blockTable('group', [groupNote]);

const identityRows = [
  group,
  unit,
  vin,
  built,
  inService,
  acquired,
  keptUntil,
  dayRate,
  factory,
  records,
  formerly,
  accept,
  quoteRow,
] as const;

/** A model describes a roof and may say what the factory used, and to which group rigs like it belong. */
export const modelTable = blockTable('model', [...roofRows, factory, group]);
export const rigTable = blockTable('rig', [...roofRows, ...identityRows, ...pastRows, ...planRows, ...stockRows]);

export type GroupStatement = RecordOf<typeof groupNote>;
export type IdentityStatement = RecordOf<(typeof identityRows)[number]>;
export type StockStatement = RecordOf<(typeof stockRows)[number]>;
