// Elements of the picture: lines, boxes, texts. Fills and strokes stand in attributes, so that every program that reads SVG
// shows them; the style only turns them for dark backgrounds.
import { type Content, type Element, el } from '../sheets/element.ts';
import type { Class } from './classes.ts';
import { letters } from './labels.ts';
import { type Box, n } from './paper.ts';

export type Drawn = Element;

/** Ink on dark backgrounds turns light; paper is always white, and a dark screen shows dark paper. */
export const planStyle =
  '@media screen and (prefers-color-scheme:dark){.roof-ink{fill:#f2f2f2}.roof-line{stroke:#f2f2f2}.roof-paper{fill:#1d1f21}.roof-water{stroke:#7fb4e0}}';

export const group = (attributes: Record<string, string | number>, ...children: Content[]): Drawn =>
  el('g', attributes, ...children);

export function text(x: number, y: number, words: string, more: Record<string, string | number> = {}): Drawn {
  return el('text', { class: 'roof-ink', x: n(x), y: n(y), fill: '#111111', 'font-size': letters, ...more }, words);
}

export function box({ x, y, w, h: high }: Box, more: Record<string, string | number> = {}): Drawn {
  return el('rect', { x: n(x), y: n(y), width: n(w), height: n(high), ...more });
}

export function path(d: string, more: Record<string, string | number> = {}): Drawn {
  return el('path', { class: 'roof-line', d, fill: 'none', stroke: '#111111', 'stroke-width': 0.25, ...more });
}

/** The tiles of the classes, named within the picture. */
export function patterns(classes: readonly Class[], id: string): Drawn {
  return el(
    'defs',
    {},
    ...classes.map((one) =>
      el(
        'pattern',
        { id: `${id}-${one.id}`, width: 2, height: 2, patternUnits: 'userSpaceOnUse' },
        el('rect', { class: tileOf(one), width: 2, height: 2, fill: one.colour }),
        one.marks && one.stroke
          ? el('path', {
              class: 'roof-mark',
              d: one.marks,
              fill: 'none',
              stroke: '#111111',
              'stroke-width': one.stroke,
              'stroke-linecap': 'square',
            })
          : null,
      ),
    ),
  );
}

/** A page with colours of its own needs to know which tiles are nothing but ink, or nothing but paper. */
const tileOf = ({ colour }: Class): string =>
  `roof-tile${colour === '#111111' ? ' roof-solid' : colour === '#ffffff' ? ' roof-blank' : ''}`;

export const fillOf = (one: Class, id: string): string => `url(#${id}-${one.id})`;
