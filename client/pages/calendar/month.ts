// The grid of one month: a row for each week from Monday, one tab stop that the arrow keys move.
import type { VNode } from 'preact';
import type { Calendar, CalendarEntry } from '../../../language/protocol/index.ts';
import { el } from '../element.ts';

export const weekdays = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;
const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** `2026-12` as `December 2026`. */
export const monthName = (id: string): string => `${months[Number(id.slice(5, 7)) - 1]} ${id.slice(0, 4)}`;
/** `2026-12-08` as `8 December 2026`. */
export const dayName = (day: string): string => `${Number(day.slice(8))} ${monthName(day.slice(0, 7))}`;

export const kindWords: Readonly<Record<CalendarEntry['kind'], string>> = {
  overdue: 'overdue',
  due: 'due',
  visit: 'planned work',
  booked: 'booked out',
  closed: 'shop closed',
};

export interface Numbered {
  readonly entry: CalendarEntry;
  /** Its number in the calendar. */
  readonly number: number;
}

export const short = ({ rig, says }: CalendarEntry): string => (rig === undefined ? says : `${rig}: ${says}`);

/** Where a key leads from a day of a month; undefined for a key that does not move. A day outside the month is another month's. */
export function dayAfterKey(key: string, day: number): number | undefined {
  const steps: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -7, ArrowDown: 7 };
  const step = steps[key];
  return step === undefined ? undefined : day + step;
}

export interface MonthActions {
  select(day: string): void;
  key(event: KeyboardEvent, day: number): void;
}

/** How many entries a day shows by name. */
const named = 3;

export function monthGrid(
  { asOf, months: all }: Calendar,
  id: string,
  selected: string,
  entriesOn: (day: string) => readonly Numbered[],
  actions: MonthActions,
): VNode {
  const month = all.find((one) => one.id === id) as Calendar['months'][number];
  const cells: (number | undefined)[] = [
    ...Array.from({ length: month.startsOn - 1 }, () => undefined),
    ...Array.from({ length: month.days }, (_, i) => i + 1),
  ];
  while (cells.length % 7 !== 0) cells.push(undefined);
  const cell = (day: number | undefined): VNode => {
    if (day === undefined) return el('td', { class: 'empty', role: 'gridcell' });
    const date = `${id}-${String(day).padStart(2, '0')}`;
    const entries = entriesOn(date);
    const isSelected = date === selected;
    const counted =
      entries.length === 0 ? 'nothing' : `${entries.length} ${entries.length === 1 ? 'entry' : 'entries'}`;
    return el(
      'td',
      { role: 'gridcell', class: date === asOf ? 'today' : '', 'aria-selected': String(isSelected) },
      el(
        'div',
        {
          id: `day-${date}`,
          role: 'button',
          tabIndex: isSelected ? 0 : -1,
          onClick: () => actions.select(date),
          onKeyDown: (event: KeyboardEvent) => actions.key(event, day),
        },
        el('span', { class: 'hidden' }, `${dayName(date)}${date === asOf ? ', the as-of date' : ''}: ${counted} `),
        el('span', { class: 'day', 'aria-hidden': 'true' }, String(day)),
        ...entries.slice(0, named).map(({ entry }) => chip(entry)),
        entries.length > named ? el('div', { class: 'chip' }, `and ${entries.length - named} more`) : undefined,
      ),
    );
  };
  const weeks: VNode[] = [];
  for (let i = 0; i < cells.length; i += 7) weeks.push(el('tr', { role: 'row' }, ...cells.slice(i, i + 7).map(cell)));
  return el(
    'table',
    { role: 'grid', 'aria-label': monthName(id) },
    el(
      'thead',
      {},
      el(
        'tr',
        { role: 'row' },
        ...weekdays.map((name) => el('th', { scope: 'col', role: 'columnheader', abbr: name }, name)),
      ),
    ),
    el('tbody', {}, ...weeks),
  );
}

const chip = (entry: CalendarEntry): VNode =>
  el(
    'div',
    { class: 'chip', title: short(entry) },
    el('i', { class: `mark ${entry.kind}`, 'aria-hidden': 'true' }),
    el('span', {}, short(entry)),
  );
