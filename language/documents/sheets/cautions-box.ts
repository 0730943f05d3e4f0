// The cautions as a framed list: at most seven, the deadliest first, and who comes before all of them.
import { cautionsFor, type Dangers, deferral } from '../cautions.ts';
import { type Element, el } from './element.ts';

export function cautionsBox(dangers: Dangers): Element {
  return el(
    'section',
    { class: 'cautions' },
    el('h3', {}, 'Before anybody goes up'),
    el('ol', {}, ...cautionsFor(dangers).map(({ text }) => el('li', {}, text))),
    el('p', { class: 'small' }, deferral),
  );
}
