// A page that stands for itself: no script, nothing fetched, one style.
import { renderToString } from 'preact-render-to-string';
import { planStyle } from '../roof/index.ts';
import { type Content, el } from './element.ts';
import { shown } from './shown.ts';
import { style } from './style.ts';

const policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

/** The whole text of a page with one heading of the first level. */
export function page(title: string, ...body: readonly Content[]): string {
  const html = el(
    'html',
    { lang: 'en' },
    el(
      'head',
      {},
      el('meta', { charset: 'utf-8' }),
      el('meta', { 'http-equiv': 'Content-Security-Policy', content: policy }),
      el('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      el('title', {}, shown(title)),
      el('style', {}, `${style}${planStyle}`),
    ),
    el('body', {}, el('main', {}, el('h1', {}, shown(title)), ...body)),
  );
  return `<!doctype html>\n${renderToString(html)}\n`;
}
