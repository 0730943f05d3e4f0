// What is planned: the same verbs, not yet in the past.
import { note, until } from './clauses.ts';
import { clause, may, must, type RecordOf, row } from './row.ts';
import { materials } from './slots/amounts.ts';
import { date } from './slots/dates.ts';
import { list } from './slots/lists.ts';
import { money } from './slots/quantities.ts';
import { targets } from './slots/targets.ts';
import { oneOf, person, text, textLike } from './slots/words.ts';

const when = {
  after: clause('after', date, 'Not before this day.'),
  before: clause('before', date, 'Done by this day.'),
  on: clause('on', date, 'On this very day.'),
  by: clause('by', person, 'Who is to do it.'),
  because: clause('because', text, 'Why.'),
  ...note,
};
const withMaterials = {
  materials: clause(
    'with',
    materials,
    'The materials to be used; a cleaner or a primer stands before tape or sealant.',
  ),
};

function plan<const W extends string>(word: W, help: string, example: string) {
  return row(word, {
    class: 'plan',
    help,
    example,
    places: { targets: may(targets) },
    clauses: { ...withMaterials, ...when },
  });
}

const inspect = plan('inspect', 'An inspection to be made.', 'inspect before 2026-12-31');
const wash = plan('wash', 'The roof is to be washed.', 'wash with MildWash after 2027-04-15');
const dry = plan('dry', 'A place is to be dried out.', 'dry bath-vent before 2026-06-20');
const cover = plan('cover', 'A temporary cover is to be put on.', 'cover bath-vent before 2026-06-12');
const strip = plan('strip', 'Sealant or tape is to be taken off.', 'strip skylight after 2027-04-15');
const seal = plan('seal', 'Sealant is to be put on.', 'seal openings with GreyLap');
const tape = plan('tape', 'Seam tape is to be laid.', 'tape front with EdgeTape4 after 2027-04-15');
const replace = plan('replace', 'A part is to be replaced.', 'replace skylight after 2027-04-15');
const rebed = plan('rebed', 'A part is to be taken off and bedded anew.', 'rebed skylight');
const coat = plan('coat', 'The roof is to be coated.', 'coat with RoofCoat');
const patch = plan('patch', 'A patch is to be put on.', 'patch membrane with EdgeTape4');
const tighten = plan('tighten', 'Bolts or screws are to be tightened.', 'tighten air-con');

const quote = row('quote', {
  class: 'plan',
  help: "A shop's price for a job.",
  example: 'quote "shop A" 1450 USD for recoat until 2027-03-31',
  places: { from: must(textLike('"shop A"')), price: must(money) },
  clauses: {
    job: clause(
      'for',
      list(oneOf('a job', ['recoat', 'tape', 'strip', 'reseal', 'reroof', 'inspection', 'repair'])),
      'The job that was priced.',
    ),
    until: until('Until when it holds.'),
    ...note,
  },
});

export const planRows = [inspect, wash, dry, cover, strip, seal, tape, replace, rebed, coat, patch, tighten] as const;
export const quoteRow = quote;

/** A plan: `inspect`, `tape` … with its targets and materials. */
export type PlanStatement = RecordOf<(typeof planRows)[number]>;
export type QuoteStatement = RecordOf<typeof quote>;
