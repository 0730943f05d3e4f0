// The file of one leak: what an insurer, a buyer or whoever looks for it next wants to know.
import { type Leak, moistureLevels } from '../../seams/index.ts';
import { moneyText } from '../../values/display.ts';
import { type Content, type Element, el } from '../sheets/element.ts';
import { typed } from '../sheets/marks.ts';
import { shown } from '../sheets/shown.ts';
import { type Account, evidenceOf, type Told } from './account.ts';
import { checklist, firstLow } from './checklist.ts';
import { daysLater, elapsed, within } from './elapsed.ts';
import { facts, joined, listing, notRecorded, paragraph } from './facts.ts';
import { incidentFile } from './file-names.ts';
import { type Incident, incidentOf, type Photo } from './incident-facts.ts';
import { linked, pictured } from './links.ts';
import { bookPage } from './page.ts';
import { readingRows } from './readings.ts';
import { readingHeads } from './seam-leaf.ts';
import { amountsText, dateOf, materialsOf, rowHeads, rowOf, verbOf } from './telling.ts';

/** The whole text of `NAME.incident-N.html`; `index` counts the leaks from 0. */
export function incidentPage(leak: Leak, index: number, account: Account): string {
  const incident = incidentOf(leak, account);
  const { view, asOf } = account;
  return bookPage(`Incident ${index + 1}: leak of ${dateOf(leak.event)}, ${view.rig.name}`, [
    paragraph(
      `As of ${asOf}, computed from what was recorded until then. Nobody but who wrote the records vouches for them; what is not written down is said to be so. `,
      el('a', { href: encodeURIComponent(`${view.rig.name}.history.html`) }, 'Service book'),
      '.',
    ),
    ...foundSection(incident, account),
    ...protection(incident),
    ...drying(incident),
    ...repair(incident, account),
    ...pictures(incident, account),
    ...closing(incident),
    ...costs(incident, account),
    ...same(incident, account),
    el('h2', { class: 'leaf' }, 'All records in order of time'),
    el(
      'div',
      { class: 'dated' },
      listing(
        'From the leak on',
        rowHeads,
        incident.after.map((told) => rowWithItems(told, account)),
        'nothing is recorded.',
      ),
    ),
    el('h2', {}, 'Is it complete?'),
    paragraph('What is often asked for. Your own insurance tells what it wants, and by when.'),
    listing(
      'Asked for',
      ['what', 'in the records', 'detail'],
      checklist(incident).map(({ what, has, detail }) => [what, has === 'recorded' ? has : el('b', {}, has), detail]),
      '',
    ),
  ]);
}

function rowWithItems(told: Told, account: Account): readonly Content[] {
  const names = [...told.places, ...told.lines.flatMap(({ places }) => places)].map(({ item }) => shown(item));
  const row = rowOf(told, account, [...new Set(names)].join(', '));
  return [row[0], [row[1], names.length > 0 ? paragraph([...new Set(names)].join(', ')) : null], row[2], row[3]];
}

function foundSection({ leak }: Incident, { view }: Account): readonly Element[] {
  const record = evidenceOf(leak.event);
  const { unit, vin } = view.rig.identity;
  return [
    el('h2', {}, 'What was found'),
    facts([
      [
        'rig',
        [typed(view.rig.name), unit ? [', unit ', typed(unit.value)] : '', vin ? [', VIN ', typed(vin.value)] : ''],
      ],
      ['found on', dateOf(leak.event)],
      ['time of day', leak.event.time ?? notRecorded],
      ['by', record?.by === undefined ? notRecorded : typed(record.by)],
      ['inside', leak.inside === undefined ? notRecorded : typed(leak.inside)],
      ['suspected', leak.suspects.length > 0 ? joined(leak.suspects.map(typed)) : notRecorded],
      ['reading', record && 'moisture' in record && record.moisture ? record.moisture.text : notRecorded],
      ['air', record?.air?.text ?? notRecorded],
      ['humidity', record?.humidity?.text ?? notRecorded],
      ['weather, wind, in the note', record?.note === undefined ? notRecorded : typed(record.note)],
    ]),
  ];
}

function protection({ leak, protections }: Incident): readonly Element[] {
  const rows = protections.map((event): readonly Content[] => {
    const record = evidenceOf(event);
    const note = record?.note;
    const until = record && 'until' in record && record.until ? record.until.text : notRecorded;
    return [dateOf(event), daysLater(leak.event, event), until, note === undefined ? notRecorded : typed(note)];
  });
  const [first] = protections;
  const answer = first && (first.last === leak.event.last ? 'yes' : within(elapsed(leak.event, first), 24));
  const told = {
    yes: 'Within a day.',
    no: 'Later than a day.',
    open: 'Whether within 24 hours, the dates do not tell.',
  };
  return [
    el('h2', {}, 'What was done to protect'),
    listing('Covers', ['date', 'after the leak', 'meant until', 'how'], rows, 'none is recorded.'),
    ...(answer ? [paragraph(told[answer])] : []),
  ];
}

function drying(incident: Incident): readonly Element[] {
  const { leak, dryings, readings } = incident;
  const low = firstLow(incident);
  const span = low && elapsed(leak.event, low.event);
  const answer = span && within(span, 48);
  const level = `${moistureLevels.tooWet} % or less`;
  const told = {
    yes: `A reading of ${level} is recorded within 48 hours.`,
    no: `The first reading of ${level} is recorded more than 48 hours after the leak.`,
    open: `Whether the first reading of ${level} came within 48 hours, the dates do not tell.`,
  };
  return [
    el('h2', {}, 'Drying'),
    listing(
      'Drying recorded',
      ['date', 'after the leak', 'note'],
      dryings.map((event) => [dateOf(event), daysLater(leak.event, event), noteOf(event)]),
      'none is recorded.',
    ),
    listing('Readings of the moisture meter', readingHeads, readingRows(readings), 'none is recorded.'),
    paragraph(
      answer && low
        ? `${told[answer]} It is of ${dateOf(low.event)}, ${daysLater(leak.event, low.event)}.`
        : `No reading of ${level} is recorded since.`,
      ' Wet materials should be dried within 24 to 48 hours to keep mould from growing (EPA 402-K-02-003). A reading tells of its point alone.',
    ),
  ];
}

function noteOf(event: Incident['dryings'][number]): Content {
  const note = evidenceOf(event)?.note;
  return note === undefined ? notRecorded : typed(note);
}

function repair({ leak }: Incident, account: Account): readonly Element[] {
  const rows = leak.repairs.map(({ event, items }): readonly Content[] => {
    const record = evidenceOf(event);
    const materials = materialsOf(event).map((used) => [typed(used.name), ` ${amountsText(used) ?? ''}`.trimEnd()]);
    return [
      dateOf(event),
      `${verbOf(event)} ${items.map(shown).join(', ')}`,
      record?.by === undefined ? notRecorded : typed(record.by),
      materials.length > 0 ? joined(materials) : notRecorded,
      record?.lot === undefined ? notRecorded : typed(record.lot),
      [record?.air, record?.surfaceTemperature].every((one) => one === undefined)
        ? notRecorded
        : joined([
            ...(record?.air ? [`air ${record.air.text}`] : []),
            ...(record?.surfaceTemperature ? [`surface ${record.surfaceTemperature.text}`] : []),
          ]),
    ];
  });
  const heads = ['date', 'what', 'by', 'materials', 'lot', 'temperature'];
  return [el('h2', {}, 'Repair'), listing('Repairs', heads, rows, `none is recorded as of ${account.asOf}.`)];
}

function pictures({ photos }: Incident, { folder }: Account): readonly Element[] {
  const titles = { before: 'Before', during: 'During', after: 'After the last repair' } as const;
  const part = (when: Photo['when']): readonly Element[] => {
    const some = photos.filter((photo) => photo.when === when);
    return [
      el('h3', {}, titles[when]),
      some.length === 0
        ? paragraph('No photo is recorded.')
        : el(
            'div',
            {},
            ...some.map(({ path, event, shows }) =>
              pictured(path, event.file, folder, `${dateOf(event)}, ${shown(shows)}`),
            ),
          ),
    ];
  };
  return [el('h2', {}, 'Photos'), ...part('before'), ...part('during'), ...part('after')];
}

function closing({ leak, looks, lastRepair }: Incident): readonly Element[] {
  const later = lastRepair ? looks.filter(({ event }) => event.first > lastRepair.last) : [];
  const why = leak.closed
    ? `Closed by the look of ${dateOf(leak.closed)}: on a later day than the last repair it found what was mended sound, and nothing that was suspected wet. It can come back.`
    : lastRepair
      ? `Open: a repair is recorded, but no look on a later day that found everything mended sound and nothing wet${later.length > 0 ? ', though somebody looked' : ''}.`
      : 'Open: no repair is recorded.';
  return [
    el('h2', {}, 'How it stands'),
    el('div', { class: 'frame' }, paragraph(el('b', {}, leak.closed ? 'Closed. ' : 'OPEN. '), why)),
  ];
}

function costs({ after }: Incident, { folder }: Account): readonly Element[] {
  const rows = after.flatMap(({ event }): readonly (readonly Content[])[] => {
    const record = evidenceOf(event);
    if (!record?.paid && !record?.papers?.length && !record?.took) return [];
    const papers = record.papers ?? [];
    return [
      [
        dateOf(event),
        verbOf(event),
        record.took?.text ?? notRecorded,
        record.paid ? moneyText(record.paid) : notRecorded,
        papers.length > 0 ? joined(papers.map((paper) => linked(paper, event.file, folder))) : notRecorded,
      ],
    ];
  });
  return [
    el('h2', {}, 'Costs and papers'),
    listing(
      'Time, money, papers of the records of this leak',
      ['date', 'for', 'hours', 'paid', 'papers'],
      rows,
      'none is recorded.',
    ),
  ];
}

function same({ earlier, before, leak }: Incident, account: Account): readonly Element[] {
  const leaks = earlier.map(({ leak: one, index }): readonly Content[] => [
    dateOf(one.event),
    one.inside === undefined ? notRecorded : typed(one.inside),
    one.suspects.map(shown).join(', '),
    el('a', { href: encodeURIComponent(incidentFile(account.view.rig.name, index)) }, `incident ${index + 1}`),
  ]);
  return [
    el('h2', {}, 'The same before'),
    listing(
      'Earlier leaks at the same place or with the same suspect',
      ['date', 'inside', 'suspected', 'file'],
      leaks,
      'none is recorded.',
    ),
    el(
      'div',
      { class: 'dated' },
      listing(
        `What was found at ${leak.suspects.length > 0 ? 'the suspects' : 'what was mended'} before`,
        rowHeads,
        before.map((told) => rowWithItems(told, account)),
        'nothing worse than sound is recorded.',
      ),
    ),
  ];
}
