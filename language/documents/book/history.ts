// The service book of a rig: for a buyer, an insurer, a maker.
import { planOf } from '../roof/index.ts';
import { type Content, type Element, el } from '../sheets/element.ts';
import { typed } from '../sheets/marks.ts';
import { shown } from '../sheets/shown.ts';
import { type Account, evidenceOf, readingsOf, type Told } from './account.ts';
import { listing, paragraph } from './facts.ts';
import { incidentFile } from './file-names.ts';
import { coverage, identity, openFindings } from './identity.ts';
import { boughtRows, materialRows, paidRows, paperRows, yearRows } from './ledger.ts';
import { bookPage } from './page.ts';
import { readingRows } from './readings.ts';
import { anchorOf, readingHeads, seamLeaf } from './seam-leaf.ts';
import { dateOf, placesOf, rowHeads, rowOf } from './telling.ts';

/** The whole text of `NAME.history.html`. */
export function historyBook(account: Account): string {
  const { view, state, asOf } = account;
  const seams = [...state.seams.values()];
  return bookPage(`Service book: ${view.rig.name}`, [
    paragraph(
      `As of ${asOf}, computed from what was recorded until then. What is not written down is said to be so. A record is no proof: see `,
      el('a', { href: '#belief' }, 'how far to believe it'),
      '.',
    ),
    contents(seams.map(({ item }) => item.name)),
    ...identity(account),
    ...coverage(account),
    ...stillOpen(account),
    ...wholeRoof(account),
    ...money(account),
    el('h2', { id: 'seams', class: 'leaf' }, 'Seam by seam'),
    paragraph(
      'From the front of the record to its end. Layers are told from the bottom up; lengths run from the beginning of the seam.',
    ),
    ...seams.map((seam, i) => seamLeaf(seam, i, account)),
  ]);
}

function contents(names: readonly string[]): Element {
  const parts: readonly (readonly [string, string])[] = [
    ['identity', 'Which rig this is'],
    ['coverage', 'What the records cover, and what not'],
    ['belief', 'How far to believe it'],
    ['open', 'What is open, and what falls due'],
    ['roof', 'The roof as a whole'],
    ['readings', 'Readings over time'],
    ['materials', 'Materials and costs'],
    ['seams', 'Seam by seam'],
  ];
  const link = (anchor: string, text: Content) => el('li', {}, el('a', { href: `#${anchor}` }, text));
  return el(
    'nav',
    { 'aria-label': 'Contents' },
    el('h2', {}, 'Contents'),
    el(
      'ul',
      { class: 'contents' },
      ...parts.map(([anchor, text]) => link(anchor, text)),
      ...names.map((name, i) => link(anchorOf(i), typed(name))),
    ),
  );
}

function stillOpen(account: Account): readonly Element[] {
  const { dues } = account.papers.schedule.schedule;
  const late = { 'not-due': 'later', soon: 'soon', due: 'due', overdue: 'OVERDUE' } as const;
  const rows = [...dues]
    .filter(({ rig }) => rig === account.view.rig.name)
    .sort((a, b) => (a.date === b.date ? 0 : a.date < b.date ? -1 : 1))
    .map((due): readonly Content[] => [due.date, late[due.status], shown(due.title), shown(due.because)]);
  return [
    el('h2', { id: 'open', class: 'leaf' }, 'What is open, and what falls due'),
    listing(
      'Findings that no record settles, the gravest first',
      ['where', 'finding', 'recorded', 'part'],
      openFindings(account),
      'none is recorded. That nothing is written down does not mean that nothing is there.',
    ),
    el(
      'div',
      { class: 'dated' },
      listing('What falls due', ['date', 'status', 'what', 'why'], rows, 'nothing that the records tell of.'),
    ),
  ];
}

const whole: ReadonlySet<string> = new Set(['washed', 'struck', 'leaked', 'coated', 'found']);

function wholeRoof(account: Account): readonly Element[] {
  const { events, state, view, system } = account;
  const told = events.filter(
    (event) => whole.has(event.record.word) || (event.places.length === 0 && event.findings.length === 0),
  );
  const rows = told.map((event) => {
    const cells = rowOf({ event, places: [], lines: [] } satisfies Told, account, '');
    return [cells[0], [cells[1], paragraph(placesOf(event, system))], cells[2], cells[3]];
  });
  const looks = events.filter(({ record }) => record.word === 'inspected');
  const leaks = state.leaks.map((leak, i): readonly Content[] => {
    const file = incidentFile(view.rig.name, i);
    return [
      dateOf(leak.event),
      leak.inside === undefined ? 'place not recorded' : typed(leak.inside),
      leak.suspects.map(shown).join(', ') || 'nobody suspected anything in writing',
      leak.closed ? `closed by the look of ${dateOf(leak.closed)}` : 'OPEN',
      el('a', { href: encodeURIComponent(file) }, shown(file)),
    ];
  });
  const trips = view.rig.stored.filter(({ first }) => first <= account.asOf);
  return [
    el('h2', { id: 'roof', class: 'leaf' }, 'The roof as a whole'),
    el('div', { class: 'plan' }, planOf(view, state, { inPage: true, id: 'book' })),
    listing('Leaks', ['date', 'inside', 'suspected', 'how it stands', 'file'], leaks, 'none is recorded.'),
    el(
      'div',
      { class: 'dated' },
      listing('Washes, blows, leaks, coatings, and how it was found', rowHeads, rows, 'nothing is recorded.'),
    ),
    el(
      'div',
      { class: 'dated' },
      listing(
        'Looks',
        ['date', 'by', 'lines of findings', 'photos'],
        looks.map((event) => [
          dateOf(event),
          byOf(event),
          String(event.findings.length),
          String(
            (evidenceOf(event)?.photos?.length ?? 0) +
              event.findings.reduce((n, { line }) => n + (line.photos?.length ?? 0), 0),
          ),
        ]),
        'none is recorded.',
      ),
    ),
    paragraph(
      el('b', {}, 'Laid up: '),
      trips.length === 0 ? 'nothing is recorded.' : trips.map(({ first, last }) => `${first} to ${last}`).join('; '),
    ),
    el('h3', { id: 'readings' }, 'Readings over time'),
    listing('Readings of the moisture meter', readingHeads, readingRows(readingsOf(events)), 'none is recorded.'),
    paragraph(
      'A low reading tells of its point on its day alone. Meters, modes and kinds of wood differ: the trend says more than the figure.',
    ),
  ];
}

function byOf(event: Account['events'][number]): Content {
  const by = evidenceOf(event)?.by;
  return by === undefined ? 'not recorded' : typed(by);
}

function money(account: Account): readonly Element[] {
  return [
    el('h2', { id: 'materials', class: 'leaf' }, 'Materials and costs'),
    listing('Materials used', ['material', 'date', 'for', 'amount', 'lot'], materialRows(account), 'none is recorded.'),
    listing(
      'Materials bought',
      ['date', 'material', 'amount', 'paid', 'from', 'lot'],
      boughtRows(account),
      'none is recorded.',
    ),
    listing(
      'Paid',
      ['date', 'for', 'amount', 'papers'],
      paidRows(account),
      'no payment is recorded; that does not mean that it cost nothing.',
    ),
    listing('Paid by year', ['year', 'sum', 'from'], yearRows(account), 'no payment is recorded.'),
    listing('Papers', ['date', 'file', 'for'], paperRows(account), 'none is recorded.'),
  ];
}
