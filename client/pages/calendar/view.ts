// What the page shows: the month with its tools and legend, the day that is chosen, and what was overdue before.
import type { VNode } from 'preact';
import type { ShowCalendar } from '../../calendar/messages.ts';
import { el } from '../element.ts';
import { dayName, kindWords, type MonthActions, monthGrid, monthName, type Numbered, short } from './month.ts';

/** What a person has chosen on the page. */
export interface Chosen {
  readonly month: string;
  readonly day: string;
  /** Empty for all rigs. */
  readonly rig: string;
}

export interface Actions extends MonthActions {
  turn(by: number): void;
  today(): void;
  only(rig: string): void;
  go(entry: number): void;
}

export function view({ of, calendar, note }: ShowCalendar, chosen: Chosen, actions: Actions): VNode {
  const title = el('h1', {}, `Calendar of ${calendar?.name ?? of.name}`);
  const said = note === '' ? undefined : el('p', { class: 'note', role: 'status' }, note);
  if (!calendar) return el('main', {}, title, said);
  const mine: Numbered[] = calendar.entries
    .map((entry, number) => ({ entry, number }))
    .filter(({ entry }) => chosen.rig === '' || entry.rig === undefined || entry.rig === chosen.rig);
  const byDay = new Map<string, Numbered[]>();
  for (const one of mine)
    for (const day of one.entry.days) {
      const there = byDay.get(day);
      if (there) there.push(one);
      else byDay.set(day, [one]);
    }
  const at = calendar.months.findIndex(({ id }) => id === chosen.month);
  const overdue = mine.filter(({ entry }) => entry.kind === 'overdue').sort(byDate);
  return el(
    'main',
    {},
    title,
    el('p', {}, `As of ${dayName(calendar.asOf)}. ${summary(overdue.length, calendar.rigs.length, chosen.rig)}`),
    said,
    el(
      'div',
      { class: 'tools' },
      el('button', { type: 'button', disabled: at <= 0, onClick: () => actions.turn(-1) }, 'Earlier month'),
      el('p', { class: 'month', 'aria-live': 'polite' }, monthName(chosen.month)),
      el(
        'button',
        { type: 'button', disabled: at >= calendar.months.length - 1, onClick: () => actions.turn(1) },
        'Later month',
      ),
      el('button', { type: 'button', onClick: () => actions.today() }, 'To the as-of date'),
      calendar.rigs.length > 1 ? rigChoice(calendar.rigs, chosen.rig, actions) : undefined,
    ),
    monthGrid(calendar, chosen.month, chosen.day, (day) => byDay.get(day) ?? [], actions),
    el(
      'ul',
      { class: 'legend', 'aria-label': 'Legend' },
      ...Object.entries(kindWords).map(([kind, words]) => el('li', {}, el('i', { class: `mark ${kind}` }), words)),
    ),
    el('h2', { id: 'of-day' }, dayName(chosen.day)),
    list(byDay.get(chosen.day) ?? [], 'of-day', 'Nothing stands on this day.', actions),
    el('h2', { id: 'overdue' }, 'Overdue'),
    list(overdue, 'overdue', 'Nothing is overdue by the records.', actions),
  );
}

const byDate = (a: Numbered, b: Numbered) => (a.entry.date < b.entry.date ? -1 : a.entry.date > b.entry.date ? 1 : 0);

function summary(overdue: number, rigs: number, rig: string): string {
  const whose = rig !== '' ? rig : rigs === 1 ? 'one rig' : `${rigs} rigs`;
  return `${overdue === 0 ? 'Nothing' : overdue === 1 ? 'One thing' : `${overdue} things`} overdue on ${whose}.`;
}

const rigChoice = (rigs: readonly string[], rig: string, actions: Actions): VNode =>
  el(
    'label',
    {},
    'Show ',
    el(
      'select',
      { value: rig, onChange: (event: Event) => actions.only((event.currentTarget as HTMLSelectElement).value) },
      el('option', { value: '' }, 'all rigs'),
      ...rigs.map((name) => el('option', { value: name }, name)),
    ),
  );

function list(entries: readonly Numbered[], labelledBy: string, none: string, actions: Actions): VNode {
  if (entries.length === 0) return el('p', {}, none);
  return el(
    'ul',
    { class: 'entries', 'aria-labelledby': labelledBy },
    ...entries.map(({ entry, number }) =>
      el(
        'li',
        {},
        el(
          'button',
          { type: 'button', onClick: () => actions.go(number) },
          el('i', { class: `mark ${entry.kind}`, 'aria-hidden': 'true' }),
          el(
            'span',
            {},
            `${kindWords[entry.kind]}${labelledBy === 'overdue' ? ` since ${dayName(entry.date)}` : ''}: ${short(entry)}`,
            entry.why === undefined ? undefined : el('span', { class: 'why' }, entry.why),
          ),
        ),
      ),
    ),
  );
}
