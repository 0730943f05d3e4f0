// Clauses that many statements share.
import { clause } from './row.ts';
import { date } from './slots/dates.ts';
import { list } from './slots/lists.ts';
import { effort, money, percent, temperature } from './slots/quantities.ts';
import { pathLike, person, text, textLike } from './slots/words.ts';

/** Where a figure comes from; the built-in library says it of each of its own. */
export const source = { source: clause('source', text, 'Where the figure comes from, such as the label.') };

export const note = { note: clause('note', text, 'Anything worth keeping.') };

/** What any dated record may carry. */
export const evidence = {
  ...note,
  by: clause('by', person, 'Who did it or saw it; of a strike, what struck.'),
  photos: clause('photo', list(pathLike('"bath-vent-1.jpg"')), 'Pictures, by their path beside the file.'),
  took: clause('took', effort, 'The hours it took.'),
  paid: clause('paid', money, 'What was paid for it.'),
  papers: clause('paper', list(pathLike('"invoice.pdf"')), 'Invoices and other papers, by their path beside the file.'),
  lot: clause('lot', textLike('"K2231"'), 'The lot number on the tube or roll.'),
  air: clause('air', temperature, 'The temperature of the air.'),
  surfaceTemperature: clause('surface', temperature, 'The temperature of the surface.'),
  humidity: clause('humidity', percent, 'The relative humidity of the air.'),
};

export const until = (help: string) => clause('until', date, help);
