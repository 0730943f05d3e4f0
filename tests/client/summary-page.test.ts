// The summary of a fleet in a browser: accessible, on one page of paper, readable on a phone.
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fleet as example, paper, papersOf } from '../documents/examples.ts';
import { fleetPapers, twoYards } from '../documents/fleets.ts';
import { manyRigs, textOf } from '../schedule/many.ts';
import { browserPath } from './page.ts';

const pictures = 'tests/artefacts/summary-page';
const hasBrowser = existsSync(browserPath);
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const on = (asOf: string) => paper('Highmeadow.summary.html', papersOf(example, { asOf, today: asOf }));
const texts: Readonly<Record<string, string>> = {
  autumn: on('2026-11-25'),
  summer: on('2026-08-02'),
  yards: fleetPapers({ 'a.rig': twoYards }, '2027-04-05', 'a.rig').texts.get('Yard.summary.html') as string,
  many: [...fleetPapers({ 'a.rig': textOf(manyRigs(60, 3)) }, '2027-05-10', 'a.rig').texts].find(([name]) =>
    name.endsWith('.summary.html'),
  )?.[1] as string,
};

/** CSS pixels of paper, at 96 an inch, and the share of a page that a text of that many pages has. */
const papers = { A4: [210, 297], Letter: [215.9, 279.4] } as const;

describe('the page of a summary', () => {
  let browser: Browser;
  beforeAll(async () => {
    mkdirSync(pictures, { recursive: true });
    if (hasBrowser)
      browser = await chromium.launch({
        executablePath: browserPath,
        args: ['--headless', '--no-sandbox', '--disable-gpu'],
      });
  });
  afterAll(() => browser?.close());
  const open = async (text: string, width: number, dark = false): Promise<Page> => {
    const page = await browser.newPage({
      viewport: { width, height: 900 },
      colorScheme: dark ? 'dark' : 'light',
      bypassCSP: true,
    });
    await page.setContent(text);
    return page;
  };

  for (const [name, text] of Object.entries(texts)) {
    for (const [width, dark] of [
      [390, false],
      [390, true],
      [1100, false],
      [1100, true],
    ] as const) {
      it(`is accessible and no wider than its window: ${name}, ${width} pixels, ${dark ? 'dark' : 'light'}`, async (context) => {
        if (!hasBrowser) return context.skip(`${browserPath} is not there`);
        const page = await open(text, width, dark);
        await page.screenshot({ path: `${pictures}/${name}-${width}${dark ? '-dark' : ''}.png`, fullPage: true });
        expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
        await page.evaluate('for (const one of document.querySelectorAll("details")) one.open = true');
        await page.evaluate(axe);
        const found = await page.evaluate<{ id: string; nodes: { html: string }[] }[]>(
          'axe.run(document).then(({ violations }) => violations)',
        );
        expect(found.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`))).toEqual([]);
        await page.close();
      });
    }
    for (const [format, [, high]] of Object.entries(papers)) {
      it(`is one page of ${format}: ${name}`, async (context) => {
        if (!hasBrowser) return context.skip(`${browserPath} is not there`);
        const page = await open(text, 1100);
        const pdf = await page.pdf({ format: format as 'A4', preferCSSPageSize: false, printBackground: true });
        expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
        const [wide] = papers[format as 'A4'];
        const mm = 96 / 25.4;
        await page.emulateMedia({ media: 'print' });
        await page.setViewportSize({ width: Math.floor((wide - 18) * mm), height: Math.floor((high - 18) * mm) });
        await page.screenshot({ path: `${pictures}/${name}-${format}.png`, fullPage: true });
        await page.close();
      });
    }
  }
});
