// What is filled in by hand: boxes to tick, blanks, ruled room; and tables.

import { type Content, type Element, el } from './element.ts';
import { shown } from './shown.ts';

/** A box to tick, with what it stands for as its accessible name. */
export const tick = (what: string): Element =>
  el('span', { class: 'tick', role: 'img', 'aria-label': `to tick: ${what}` });

/** A tick box and its word. */
export const choice = (word: string): Element => el('span', { class: 'choice' }, tick(word), ` ${word}`);

/** A blank to write in: short for a number, long for a name or a remark. */
export const blank = (what: string, size: 'short' | 'middle' | 'long' = 'short'): Element =>
  el('span', { class: `blank ${size}`, role: 'img', 'aria-label': `to fill in: ${what}` });

/** `__:__`, a time of day to fill in. */
export const clock = (what: string): Element =>
  el('span', { class: 'nowrap clock' }, blank(`${what}, hours`), ':', blank(`${what}, minutes`));

/** `____-__-__`, a date to fill in. */
export const day = (what: string): Element => blank(what, 'middle');

/** Room to write, so many lines high. */
export const room = (what: string, lines: number): Element =>
  el(
    'div',
    { class: 'room', role: 'img', 'aria-label': `room to write: ${what}` },
    ...Array.from({ length: lines }, () => el('div', {})),
  );

/** What a person typed, kept apart from the direction of what stands round it. */
export const typed = (text: string): Element => el('bdi', {}, shown(text));

/** A table; the first cell of each row is its head. Narrow screens show each cell under the head of its column. */
export function table(caption: string, heads: readonly string[], rows: readonly (readonly Content[])[]): Element {
  return el(
    'table',
    {},
    el('caption', {}, caption),
    el('thead', {}, el('tr', {}, ...heads.map((head) => el('th', { scope: 'col' }, head)))),
    el(
      'tbody',
      {},
      ...rows.map((cells) =>
        el(
          'tr',
          {},
          ...cells.map((cell, i) =>
            i === 0 ? el('th', { scope: 'row' }, cell) : el('td', { 'data-head': heads[i] ?? '' }, cell),
          ),
        ),
      ),
    ),
  );
}

export const list = (items: readonly Content[]): Element => el('ul', {}, ...items.map((item) => el('li', {}, item)));

/** A label and what is filled in beside it. */
export const field = (label: string, ...filled: Content[]): Element =>
  el('span', { class: 'field' }, `${label} `, ...filled);
