// The cautions as a framed list: at most seven, the deadliest first, and who comes before all of them.
import { cautionsFor, type Dangers, deferral } from '../cautions.ts';
import { type Element, el } from './element.ts';

/** `heading`: its level in the page. */
export function cautionsBox(dangers: Dangers, heading: 'h2' | 'h3'): Element {
  return el(
    'section',
    { class: 'cautions' },
    el(heading, {}, 'Before anybody goes up'),
    el('ol', {}, ...cautionsFor(dangers).map(({ text }) => el('li', {}, text))),
    el('p', { class: 'small' }, deferral),
  );
}
