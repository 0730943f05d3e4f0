// What every page that carries typed text has to keep.
import { expect } from 'vitest';
import { attribute, html } from './sheets.ts';

const tagged = (from: ReturnType<typeof html>['all'], tag: string) => from.filter(({ tagName }) => tagName === tag);

/** Form, safety and order of a page that carries typed text. */
export function strict(name: string, text: string): ReturnType<typeof html>['all'] {
  const page = html(text);
  expect(page.errors, name).toEqual([]);
  for (const tag of ['script', 'link', 'iframe', 'object', 'embed', 'base', 'form'])
    expect(tagged(page.all, tag), name).toEqual([]);
  expect(tagged(page.all, 'h1'), name).toHaveLength(1);
  expect(tagged(page.all, 'style'), name).toHaveLength(1);
  const levels = page.all.flatMap(({ tagName }) => (/^h\d$/.test(tagName) ? [Number(tagName[1])] : []));
  for (const [i, level] of levels.entries()) expect(level - (levels[i - 1] ?? 0), name).toBeLessThanOrEqual(1);
  const policy = tagged(page.all, 'meta').find((one) => attribute(one, 'http-equiv') === 'Content-Security-Policy');
  expect(attribute(policy!, 'content')).toBe(
    "default-src 'none'; style-src 'unsafe-inline'; img-src 'self' data: file:",
  );
  expect(attribute(tagged(page.all, 'html')[0]!, 'lang')).toBe('en');
  expect(attribute(tagged(page.all, 'meta')[0]!, 'charset')).toBe('utf-8');
  for (const head of tagged(page.all, 'th')) expect(attribute(head, 'scope'), name).toMatch(/^(col|row)$/);
  for (const { attrs } of page.all) {
    for (const { name: attr, value } of attrs) {
      expect(attr).not.toMatch(/^(on.*|style|srcdoc)$/);
      if (attr === 'href' || attr === 'src') expect(value).not.toMatch(/^[a-z][a-z0-9+.-]*:|^\/|(^|\/)\.\.(\/|$)/i);
    }
  }
  const ids = page.all.flatMap((one) => attribute(one, 'id') ?? []);
  expect(new Set(ids).size, name).toBe(ids.length);
  for (const link of tagged(page.all, 'a')) {
    const href = attribute(link, 'href')!;
    if (href.startsWith('#')) expect(ids, name).toContain(href.slice(1));
  }
  for (const image of tagged(page.all, 'img')) {
    expect(attribute(image, 'alt'), name).toMatch(/./);
    expect(attribute(image, 'loading')).toBe('lazy');
  }
  return page.all;
}
