// What the rig is, what the records cover, and how far they are to be believed.
import { relativeTo } from '../../resolve/paths.ts';
import { isThere } from '../../seams/index.ts';
import { lengthText } from '../../values/display.ts';
import { type Content, type Element, el } from '../sheets/element.ts';
import { list, typed } from '../sheets/marks.ts';
import { shown } from '../sheets/shown.ts';
import type { Account } from './account.ts';
import { facts, joined, notRecorded, paragraph } from './facts.ts';
import { dateOf } from './telling.ts';

const falls: Readonly<Record<string, string>> = { edges: 'to the edges' };

export function identity({ view: { rig }, system }: Account): readonly Element[] {
  const { identity: said, roof } = rig;
  const text = (value: string | undefined): Content => (value === undefined ? notRecorded : typed(value));
  const fall = rig.falls?.value;
  return [
    el('h2', { id: 'identity' }, 'Which rig this is'),
    facts([
      ['name in the records', typed(rig.name)],
      ['unit', text(said.unit?.value)],
      ['VIN', text(said.vin?.value)],
      ['like', rig.bases.length === 0 ? notRecorded : joined(rig.bases.map(typed))],
      ['built', text(said.built?.value.text)],
      ['in service', text(said.inService?.value.text)],
      ['with this keeper since', text(said.acquired?.value.text)],
      [
        'roof',
        roof
          ? `${lengthText(roof.along.nm, system)} along by ${lengthText(roof.across.nm, system)} across`
          : notRecorded,
      ],
      ['surface of the roof', text(roof?.surface)],
      ['water falls', text(fall === undefined ? undefined : (falls[fall] ?? `to the ${fall}`))],
      ["factory's sealant", text(rig.factory?.value)],
    ]),
    ...(rig.doc === undefined ? [] : [paragraph('The keeper says of it: ', typed(rig.doc))]),
  ];
}

/** Counts of what is recorded, and plainly what is not. */
export function coverage(account: Account): readonly Element[] {
  const { view, events, state, asOf, folder } = account;
  const { rig } = view;
  const there = [...state.seams.values()].filter((seam) => isThere(seam, asOf));
  const [first, last] = [events[0], events.at(-1)];
  const names = (all: readonly string[]) => (all.length === 0 ? 'none' : all.map(shown).join(', '));
  const of = (test: (seam: (typeof there)[number]) => boolean) => there.filter(test).map(({ item }) => item.name);
  const files = [...new Set([rig.file, ...events.map(({ file }) => file)])].map((file) => relativeTo(folder, file));
  const made = rig.identity.built?.value ?? rig.identity.inService?.value;
  const gap =
    made && first ? (first.first > made.last ? `from ${made.text} to ${dateOf(first)}` : 'none') : notRecorded;
  const unread = rig.unread.all || there.some((seam) => seam.unread);
  return [
    el('h2', { id: 'coverage' }, 'What the records cover, and what not'),
    facts([
      ['records', first && last ? `${events.length}, from ${dateOf(first)} to ${dateOf(last)}` : 'none'],
      [
        'looks recorded',
        String(events.filter((e) => e.record.word === 'inspected' || e.record.word === 'found').length),
      ],
      ['before the first record', gap],
      ['seams and items', String(there.length)],
      ['never looked at', names(of(({ stretches }) => stretches.every(({ looked }) => !looked)))],
      ['said not to have been seen', names(of(({ stretches }) => stretches.some(({ notSeen }) => notSeen)))],
      [
        'something on it not known',
        names(of(({ stretches }) => stretches.some(({ layers }) => layers.some(({ known }) => known !== 'named')))),
      ],
      ['lines that could not be read', unread ? 'yes: some are left out here, see the file' : 'none'],
      ['photos named', String(photosIn(account))],
      ['records without who', String(events.filter(({ record }) => !('by' in record && record.by)).length)],
    ]),
    el('h3', { id: 'belief' }, 'How far to believe it'),
    paragraph(
      'This book is computed from records that its keeper wrote. Nobody but who wrote them vouches for them: no line was checked against the roof. ',
      'A word such as sound tells what somebody saw on that day, not how it is today; it says nothing about water that nobody saw, about the strength of the roof, or about any warranty.',
    ),
    paragraph(
      'To check it: ask for the files below and for their version history (git log -p shows when each line was written and changed), for the photos and papers named here, and look at the roof, inside and outside, with a moisture meter.',
    ),
    list(files.map((file) => typed(file))),
  ];
}

const photosIn = ({ events }: Account): number =>
  events.reduce(
    (sum, { record, findings }) =>
      sum +
      (('photos' in record && record.photos?.length) || 0) +
      findings.reduce((inner, { line }) => inner + (line.photos?.length ?? 0), 0),
    0,
  );

/** Findings that nothing has settled, the worst first: what makes it look worse comes before what makes it look better. */
export function openFindings({ state, asOf, system }: Account): readonly (readonly Content[])[] {
  const rows: { rank: number; cells: readonly Content[] }[] = [];
  for (const leak of state.leaks) {
    if (leak.closed) continue;
    const inside = leak.inside === undefined ? 'place inside not recorded' : shown(leak.inside);
    rows.push({ rank: 9, cells: [joined(leak.suspects.map(typed)), 'leak, not closed', dateOf(leak.event), inside] });
  }
  for (const seam of state.seams.values()) {
    if (!isThere(seam, asOf)) continue;
    for (const stretch of seam.stretches) {
      const { condition, wet, notSeen, bare, temporary, from, to } = stretch;
      const part =
        seam.stretches.length > 1 && to !== undefined
          ? `from ${lengthText(from, system)} to ${lengthText(to, system)}`
          : '';
      const add = (rank: number, word: string, date: string) =>
        rows.push({ rank, cells: [typed(seam.item.name), word, date, part] });
      if (wet) add(8, 'wet', dateOf(wet.last));
      if (condition && condition.word !== 'sound' && condition.word !== 'renewed')
        add(severity[condition.word] ?? 1, condition.word, dateOf(condition.event));
      if (condition?.word === 'renewed') add(0, 'new work, not looked at since', dateOf(condition.event));
      if (bare) add(7, 'bare: nothing laid since', dateOf(bare));
      if (temporary) add(5, 'temporary cover', dateOf(temporary.event));
      if (notSeen) add(1, 'could not be seen', dateOf(notSeen.last));
    }
  }
  for (const { event, waiting } of state.strikes)
    if (waiting.length > 0)
      rows.push({ rank: 4, cells: [waiting.map(shown).join(', '), 'struck, not looked at since', dateOf(event), ''] });
  return rows.sort((a, b) => b.rank - a.rank).map(({ cells }) => cells);
}

const severity: Readonly<Record<string, number>> = { open: 7, lifting: 6, cracked: 5, hairline: 3, chalky: 2 };
