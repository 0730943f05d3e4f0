// The script of the page: draws what the extension tells, and tells the extension what a person does.
import { render } from 'preact';
import type { FromCalendar, ShowCalendar } from '../../calendar/messages.ts';
import { dayAfterKey } from './month.ts';
import { type Actions, type Chosen, view } from './view.ts';

declare function acquireVsCodeApi(): {
  postMessage(message: FromCalendar): void;
  setState(state: ShowCalendar['of']): void;
};

const editor = acquireVsCodeApi();
const page = document.getElementById('page') as HTMLElement;
let shown: ShowCalendar | undefined;
let chosen: Chosen = { month: '', day: '', rig: '' };

const dateIn = (month: string, day: number) => `${month}-${String(day).padStart(2, '0')}`;

function choose(next: Partial<Chosen>, focus = false): void {
  chosen = { ...chosen, ...next };
  draw();
  if (focus) document.getElementById(`day-${chosen.day}`)?.focus();
}

/** Goes so many months on, as far as there are months; the day stays where the month has it. */
function turn(by: number, focus = false): void {
  const months = shown?.calendar?.months ?? [];
  const at = months.findIndex(({ id }) => id === chosen.month);
  const next = months[at + by];
  if (!next) return;
  choose({ month: next.id, day: dateIn(next.id, Math.min(Number(chosen.day.slice(8)), next.days)) }, focus);
}

/** Goes to a day of the month shown, or over its ends into its neighbours. */
function moveTo(day: number): void {
  const months = shown?.calendar?.months ?? [];
  const at = months.findIndex(({ id }) => id === chosen.month);
  const month = months[at];
  if (!month) return;
  if (day >= 1 && day <= month.days) {
    choose({ day: dateIn(month.id, day) }, true);
    return;
  }
  const next = months[day < 1 ? at - 1 : at + 1];
  if (next) choose({ month: next.id, day: dateIn(next.id, day < 1 ? next.days + day : day - month.days) }, true);
}

const actions: Actions = {
  select: (day) => choose({ day }, true),
  turn: (by) => turn(by),
  today() {
    const asOf = shown?.calendar?.asOf;
    if (asOf) choose({ month: asOf.slice(0, 7), day: asOf }, true);
  },
  only: (rig) => choose({ rig }),
  go: (entry) => editor.postMessage({ kind: 'go', entry }),
  key(event, day) {
    const month = shown?.calendar?.months.find(({ id }) => id === chosen.month);
    const moved = dayAfterKey(event.key, day);
    if (moved !== undefined) moveTo(moved);
    else if (event.key === 'Home') moveTo(1);
    else if (event.key === 'End') moveTo(month?.days ?? day);
    else if (event.key === 'PageUp') turn(-1, true);
    else if (event.key === 'PageDown') turn(1, true);
    else if (event.key === 'Enter' || event.key === ' ') choose({ day: dateIn(chosen.month, day) }, true);
    else return;
    event.preventDefault();
  },
};

function draw(): void {
  if (shown) render(view(shown, chosen, actions), page);
}

window.addEventListener('message', ({ data }: MessageEvent<ShowCalendar>) => {
  if (data.kind !== 'show') return;
  shown = data;
  const { calendar } = data;
  if (calendar && !calendar.months.some(({ id }) => id === chosen.month))
    chosen = { ...chosen, month: calendar.asOf.slice(0, 7), day: calendar.asOf };
  if (calendar && chosen.rig !== '' && !calendar.rigs.includes(chosen.rig)) chosen = { ...chosen, rig: '' };
  draw();
  editor.setState(data.of);
});
editor.postMessage({ kind: 'ready' });
