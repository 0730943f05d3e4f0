// The work of the day in order of time: what the crew reads, and the boxes that become tomorrow's records.
import type { DayPlan, DayRow } from '../../schedule/day-plan.ts';
import { listing, paragraph } from '../book/facts.ts';
import { type Content, type Element, el } from '../sheets/element.ts';
import { blank, clock, tick, typed } from '../sheets/marks.ts';
import { shown } from '../sheets/shown.ts';

const heads = [
  'time',
  'unit, place',
  'back / leaves',
  'job',
  'who',
  'kit bag',
  'finish by',
  'drive-ok at',
  'done, initials, held because',
] as const;

export function rowsOf({ rows }: DayPlan): Element {
  return el(
    'div',
    { class: 'rows' },
    listing('Work in order of time', heads, rows.map(cells), 'none is planned for this day.'),
  );
}

function cells(row: DayRow, index: number): readonly Content[] {
  const [number, days] = row.day;
  const slides = row.slidesOut.length === 0 ? '' : `slides out: ${row.slidesOut.map(shown).join(', ')}`;
  const blocks = row.blocks ?? [];
  const parts = blocks.length > 1 ? blocks.map(({ begin, end }) => `${begin}–${end}`) : [];
  return [
    [
      el('span', { class: 'nowrap' }, `${row.begin}–${row.end}`),
      parts.length > 0 ? paragraph(el('span', { class: 'small' }, `on it ${parts.join(', ')}`)) : null,
    ],
    [
      el('b', {}, unitOf(row)),
      row.crew === undefined ? null : paragraph('crew ', typed(row.crew)),
      paragraph(typed(row.place), row.place === 'yard' ? [', row ', blank(`${row.rig}, row in the yard`)] : ''),
      slides === '' ? null : paragraph(slides),
    ],
    [paragraph(row.returned ?? '–'), paragraph(row.leaves ?? 'not booked')],
    [
      paragraph(el('b', {}, shown(row.job)), days > 1 ? ` (day ${number} of ${days})` : ''),
      ...row.notes.map((note) => paragraph(shown(note))),
    ],
    Array.from({ length: Math.max(2, row.people) }, (_, i) => [blank(`${row.rig}, name ${i + 1}`, 'middle'), ' ']),
    [`no. ${index + 1}`, ...row.kit.map(({ text }) => paragraph(el('span', { class: 'small' }, shown(text))))],
    [el('b', {}, row.finishBy.time), el('span', { class: 'small' }, ` ${shown(row.finishBy.because)}`)],
    driveCell(row),
    [
      paragraph(tick(`${row.rig}, done`), ' done ', blank(`${row.rig}, initials`)),
      paragraph('held: ', blank(`${row.rig}, held because`, 'long')),
    ],
  ];
}

/** The clock is filled in when the gun is put down: the plan only says where it would end. */
function driveCell({ driveOk, rig }: DayRow): Content {
  if (!driveOk) return 'no clock';
  const runs = driveOk.after.replace('done __:__', '').trim();
  return [
    paragraph('done ', clock(`${rig}, done at`), ` ${shown(runs)} =`),
    paragraph(clock(`${rig}, may be driven from`), ' on ', blank(`${rig}, day`)),
    paragraph(el('span', { class: 'small' }, `as planned: not before ${driveOk.notBefore}, from ${driveOk.safeFrom}`)),
  ];
}

export const unitOf = ({ rig, unit }: { readonly rig: string; readonly unit?: string | undefined }): Content =>
  unit === undefined ? typed(rig) : [typed(unit), ' ', typed(rig)];
