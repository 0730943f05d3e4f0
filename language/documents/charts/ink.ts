// Lines and letters of charts. Paper is white on every screen; no meaning hangs on colour alone.
import { renderToString } from 'preact-render-to-string';
import { type Content, type Element, el } from '../sheets/element.ts';
import { at } from './scale.ts';

export const letters = 13;
/** Widths of letters are guessed, on the generous side. */
export const wideAs = (text: string): number => [...text].length * letters * 0.56;

export interface Stroke {
  readonly colour: string;
  readonly dash: string;
}

/** Told apart by their dashes in black and white too. */
const strokes: readonly Stroke[] = [
  { colour: '#111111', dash: 'none' },
  { colour: '#0b4f8a', dash: '9 4' },
  { colour: '#8a3200', dash: '2 4' },
  { colour: '#1d5c2f', dash: '12 4 2 4' },
  { colour: '#5a2a86', dash: '6 3 2 3 2 3' },
  { colour: '#6b5600', dash: '18 6' },
];
export const strokeOf = (i: number): Stroke => strokes[i % strokes.length] as Stroke;

export const words = (
  x: number,
  y: number,
  text: string,
  more: Readonly<Record<string, string | number>> = {},
): Element => el('text', { x: at(x), y: at(y), fill: '#111111', 'font-size': letters, ...more }, text);

export function line(
  from: readonly [number, number],
  to: readonly [number, number],
  more: Readonly<Record<string, string | number>> = {},
): Element {
  const ends = { x1: at(from[0]), y1: at(from[1]), x2: at(to[0]), y2: at(to[1]) };
  return el('line', { ...ends, stroke: '#111111', 'stroke-width': 1, ...more });
}

export interface Frame {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly description: string;
}

/** A picture with its name and what it tells in words. */
export function picture({ id, width, height, title, description }: Frame, ...inside: Content[]): Element {
  const root = {
    xmlns: 'http://www.w3.org/2000/svg',
    viewBox: `0 0 ${at(width)} ${at(height)}`,
    width: at(width),
    height: at(height),
    class: 'chart',
    role: 'img',
    'aria-labelledby': `${id}-title ${id}-desc`,
    'font-family': 'system-ui, sans-serif',
  };
  return el(
    'svg',
    root,
    el('title', { id: `${id}-title` }, title),
    el('desc', { id: `${id}-desc` }, description),
    el('rect', { width: at(width), height: at(height), fill: '#ffffff' }),
    ...inside,
  );
}

/** The picture as a file of its own. Markup forbids the end of a section in plain text, and the renderer leaves it alone. */
export const fileOf = (drawn: Element): string => `${renderToString(drawn).replaceAll(']]>', ']]&gt;')}\n`;
