// A page that stands for itself: no script, nothing fetched, one style.
import { renderToString } from 'preact-render-to-string';
import { planStyle } from '../roof/index.ts';
import { type Content, el } from './element.ts';
import { shown } from './shown.ts';
import { style } from './style.ts';

/** What a page may show beside its own text: pictures that lie beside it, or none but those within it. */
const pictures = { beside: "'self' data: file:", within: 'data:' } as const;

/** The whole text of a page with one heading of the first level. */
export function page(title: string, ...body: readonly Content[]): string {
  return pageWith({ title, body });
}

/** The same with pictures beside it, or with style that this kind of page alone needs. */
export function pageWith({
  title,
  body,
  shows = 'within',
  more = '',
}: {
  readonly title: string;
  readonly body: readonly Content[];
  readonly shows?: keyof typeof pictures;
  readonly more?: string;
}): string {
  const content = `default-src 'none'; style-src 'unsafe-inline'; img-src ${pictures[shows]}`;
  const html = el(
    'html',
    { lang: 'en' },
    el(
      'head',
      {},
      el('meta', { charset: 'utf-8' }),
      el('meta', { 'http-equiv': 'Content-Security-Policy', content }),
      el('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      el('title', {}, shown(title)),
      el('style', {}, `${style}${planStyle}${more}`),
    ),
    el('body', {}, el('main', {}, el('h1', {}, shown(title)), ...body)),
  );
  return `<!doctype html>\n${renderToString(html)}\n`;
}
