// What may stand in the block of a policy: how a shop works and what it counts with.
import { source } from './clauses.ts';
import { seasonRows } from './policy-season.ts';
import { yearRows } from './policy-years.ts';
import { blockTable, clause, must, needed, type RecordOf, row } from './row.ts';
import { date, season } from './slots/dates.ts';
import { after, either, threePoints } from './slots/lists.ts';
import { effort, length, moneyRate, percent, period, taskRate } from './slots/quantities.ts';
import { within } from './slots/targets.ts';
import { material, newName, oneOf, ruleName, text } from './slots/words.ts';
import { bandKinds, conditions, severities, tasks } from './words.ts';

const fact = { class: 'fact', key: 'word' } as const;

const inspect = row('inspect', {
  ...fact,
  help: 'How often every seam is looked at.',
  example: 'inspect every 6 months',
  places: { every: must(after(['every'], period)) },
  clauses: source,
});
const inspectLimit = row('inspect-limit', {
  ...fact,
  help: 'The longest gap between two inspections that is let pass without a warning.',
  example: 'inspect-limit 12 months',
  places: { limit: must(period) },
  clauses: source,
});
const dueSoon = row('due-soon', {
  ...fact,
  help: 'How long before its date something counts as due soon.',
  example: 'due-soon 30 days',
  places: { before: must(period) },
  clauses: source,
});
const followUp = row('follow-up', {
  ...fact,
  help: 'Within which time a finding is acted on; the whole list is replaced at once.',
  example: 'follow-up hairline within 6 months, cracked within 30 days, lifting within 7 days, open within 1 day',
  places: { list: must(within([...conditions.slice(1), 'not-seen', 'wet', 'leak'])) },
  clauses: source,
});
const lookAfter = row('look-after', {
  ...fact,
  help: 'Within which time the roof is looked at after an event.',
  example: 'look-after struck within 1 day, repaired-leak within 30 days',
  places: { list: must(within(['struck', 'stored', 'repaired-leak'])) },
  clauses: source,
});
const seasonRow = row('season', {
  ...fact,
  help: 'The days of the year on which roof work is planned.',
  example: 'season 04-15 to 10-15',
  places: { season: must(season) },
  clauses: source,
});
const currency = row('currency', {
  ...fact,
  help: 'The currency of estimates.',
  example: 'currency USD',
  places: { code: must(newName('USD')) },
  clauses: source,
});
const labour = row('labour', {
  ...fact,
  help: 'What an hour of work costs.',
  example: 'labour 48 USD per h',
  places: { rate: must(moneyRate) },
  clauses: source,
});
const tax = row('tax', {
  ...fact,
  help: 'The tax on materials or on all.',
  example: 'tax 6.5 % on materials',
  places: { percent: must(percent) },
  clauses: { on: needed('on', oneOf('`materials` or `all`', ['materials', 'all']), 'What is taxed.'), ...source },
});
const spare = row('spare', {
  ...fact,
  help: 'What is bought beyond the take-off, of sealant and liquids; tape has its roll waste.',
  example: 'spare 5 %',
  places: { percent: must(percent) },
  clauses: source,
});
const rollWaste = row('roll-waste', {
  ...fact,
  help: 'The length of a roll that is lost at its start.',
  example: 'roll-waste 6 in',
  places: { length: must(length) },
  clauses: source,
});
const margin = row('margin', {
  ...fact,
  help: 'How far tape reaches onto sound surface on each side of the band it covers.',
  example: 'margin 1 in',
  places: { length: must(length) },
  clauses: source,
});
const bite = row('bite', {
  ...fact,
  help: 'How far the tape of a frame reaches onto a flange.',
  example: 'bite 1 in',
  places: { length: must(length) },
  clauses: source,
});
const frame = row('frame', {
  ...fact,
  help: 'How a frame of tape closes its corners: all four pieces to the outer corner, or the flanks short under the others.',
  example: 'frame full-lap',
  places: { corners: must(oneOf('`full-lap` or `short-lap`', ['full-lap', 'short-lap'])) },
  clauses: source,
});
const beadLine = row('bead-line', {
  ...fact,
  help: 'Whether a bead is measured along the flange or along its own middle.',
  example: 'bead-line centre',
  places: { line: must(oneOf('`centre` or `flange`', ['centre', 'flange'])) },
  clauses: source,
});
const smother = row('smother', {
  ...fact,
  help: 'Mounts up to this size are covered whole with sealant; `none` for no mount.',
  example: 'smother 5 in',
  places: { upTo: must(either(length, oneOf('`none`', ['none']))) },
  clauses: source,
});
const splices = row('splices', {
  ...fact,
  help: 'Whether a piece that fits on a roll may be spliced to save money.',
  example: 'splices when-needed',
  places: { rule: must(oneOf('`when-needed` or `allowed`', ['when-needed', 'allowed'])) },
  clauses: source,
});
const band = row('band', {
  class: 'fact',
  key: 'name',
  help: 'The width of the band to be covered, where an item does not say.',
  example: 'band edge 2 in',
  places: { of: must(oneOf('a kind of seam', bandKinds)), width: must(length) },
  clauses: source,
});
const rate = row('rate', {
  class: 'fact',
  key: 'name',
  help: 'How much of a task one person does in an hour, or how long one takes: least, likely, most; `none` where it is part of another task.',
  example: 'rate lay 25 ft per h, 40 ft per h, 70 ft per h',
  places: { task: must(oneOf('a task', tasks)), value: must(either(threePoints(taskRate), oneOf('`none`', ['none']))) },
  clauses: source,
});
const washWith = row('wash-with', {
  ...fact,
  help: 'The cleaner for washing the roof.',
  example: 'wash-with MildWash',
  places: { material: must(material) },
  clauses: source,
});
const wipeWith = row('wipe-with', {
  ...fact,
  help: 'The cleaner for the wipe before tape or sealant.',
  example: 'wipe-with QuickWipe',
  places: { material: must(material) },
  clauses: source,
});
const curb = row('curb', {
  ...fact,
  help: 'On which side of travel the kerb is.',
  example: 'curb right',
  places: { side: must(oneOf('`left` or `right`', ['left', 'right'])) },
  clauses: source,
});
const units = row('units', {
  ...fact,
  help: 'The units in which figures are printed.',
  example: 'units us',
  places: { system: must(oneOf('`us` or `metric`', ['us', 'metric'])) },
  clauses: source,
});
const workday = row('workday', {
  ...fact,
  help: 'How many hours a day one person works on a roof.',
  example: 'workday 8 h',
  places: { hours: must(effort) },
  clauses: source,
});
const severity = row('severity', {
  class: 'fact',
  key: 'name',
  help: 'How grave a rule is taken here.',
  example: 'severity look-hard-due warning',
  places: { rule: must(ruleName), severity: must(oneOf('a severity', severities)) },
  clauses: { because: clause('because', text, 'Why.') },
});
const accept = row('accept', {
  class: 'fact',
  key: 'name',
  help: 'Silences one rule on all rigs under this policy, for a while and for a written reason.',
  example: 'accept look-hard-due until 2027-04-15 because "all roofs are planned for spring"',
  places: { rule: must(ruleName) },
  clauses: { until: needed('until', date, 'Until when.'), because: needed('because', text, 'Why.') },
});
const lead = row('lead', {
  class: 'fact',
  key: 'name',
  help: 'How long a material takes to come.',
  example: 'lead EdgeTape4 10 days',
  places: { material: must(material), period: must(period) },
  clauses: source,
});

export const policyTable = blockTable('policy', [
  inspect,
  inspectLimit,
  dueSoon,
  followUp,
  lookAfter,
  seasonRow,
  ...seasonRows,
  currency,
  labour,
  tax,
  ...yearRows,
  spare,
  rollWaste,
  margin,
  bite,
  frame,
  beadLine,
  smother,
  splices,
  band,
  rate,
  washWith,
  wipeWith,
  curb,
  units,
  workday,
  severity,
  accept,
  lead,
]);

export type PolicyStatement = RecordOf<
  | typeof inspect
  | typeof inspectLimit
  | typeof dueSoon
  | typeof followUp
  | typeof lookAfter
  | typeof seasonRow
  | (typeof seasonRows)[number]
  | typeof currency
  | typeof labour
  | typeof tax
  | (typeof yearRows)[number]
  | typeof spare
  | typeof rollWaste
  | typeof margin
  | typeof bite
  | typeof frame
  | typeof beadLine
  | typeof smother
  | typeof splices
  | typeof band
  | typeof rate
  | typeof washWith
  | typeof wipeWith
  | typeof curb
  | typeof units
  | typeof workday
  | typeof severity
  | typeof accept
  | typeof lead
>;
