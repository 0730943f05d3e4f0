import { existsSync, mkdirSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { ShowCalendar } from '../../client/calendar/messages.ts';
import { calendarStyle } from '../../client/calendar/style.ts';
import { monthsOf } from '../../language/documents/month/index.ts';
import { dates, fleet as texts } from '../documents/examples.ts';
import { projectOf } from '../project/workspace.ts';
import { browserPath, openPage, type Shown, startBrowser, themes } from './page.ts';

const pictures = 'tests/artefacts/calendar-page';
const hasBrowser = existsSync(browserPath);

function shownCalendar(): ShowCalendar {
  const project = projectOf(texts);
  const path = Object.keys(texts).find((one) => project.fleets(one).length > 0) as string;
  const [found] = project.fleets(path);
  const { entries, ...rest } = monthsOf({ kind: 'fleet', fleet: found!.fleet, views: found!.views }, dates);
  const place = { uri: 'file:///a.rig', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } } };
  return {
    kind: 'show',
    of: { uri: 'file:///a.rig', name: rest.name },
    calendar: { ...rest, entries: entries.map(({ file, at, ...entry }) => ({ ...entry, place })) },
    note: '',
  };
}

describe('the page of a calendar', () => {
  let browser: Browser | undefined;
  let script: string;
  let shown: Shown;
  const message = shownCalendar();
  beforeAll(async () => {
    mkdirSync(pictures, { recursive: true });
    if (hasBrowser) ({ browser, script } = await startBrowser('calendar'));
  });
  afterAll(() => browser?.close());
  beforeEach((context) => {
    if (!hasBrowser) context.skip(`${browserPath} is not there: the page was looked at in the real editor only`);
  });
  afterEach(async () => {
    if (!hasBrowser) return;
    expect(shown.complaints).toEqual([]);
    await shown.page.close();
  });
  const open = async (width = 900) => {
    shown = await openPage(browser as Browser, { script, style: calendarStyle }, width);
    await shown.theme('light');
    await shown.tell(message);
    return shown.page;
  };
  const focused = () => shown.page.evaluate<string>('document.activeElement.id || document.activeElement.textContent');

  for (const theme of Object.keys(themes) as (keyof typeof themes)[]) {
    // 450 pixels are a panel of 900 at 200 %; 320 the narrowest that a page must stand.
    for (const width of [900, 450, 320]) {
      it(`is accessible: ${theme}, ${width} pixels`, async () => {
        const page = await open(width);
        await shown.theme(theme);
        await page.screenshot({ path: `${pictures}/${theme}-${width}.png`, fullPage: true });
        expect(await shown.violations()).toEqual([]);
        expect(await page.evaluate('document.documentElement.scrollWidth <= window.innerWidth')).toBe(true);
      });
    }
  }

  it('is walked by keyboard over the ends of a month, one tab stop for all days', async () => {
    const page = await open();
    expect(await page.locator('td [tabindex="0"]').count()).toBe(1);
    await page.locator('#day-2026-11-25').focus();
    await page.keyboard.press('ArrowDown');
    expect(await focused()).toBe('day-2026-12-02');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    expect(await focused()).toBe('day-2026-11-30');
    await page.keyboard.press('Home');
    expect(await focused()).toBe('day-2026-11-01');
    await page.keyboard.press('PageUp');
    expect(await focused()).toBe('day-2026-10-01');
    await page.keyboard.press('PageUp'); // there is no earlier month
    await page.keyboard.press('ArrowUp');
    expect(await focused()).toBe('day-2026-10-01');
    await page.keyboard.press('End');
    expect(await focused()).toBe('day-2026-10-31');
    await page.keyboard.press('PageDown'); // November has no 31st
    expect(await focused()).toBe('day-2026-11-30');
  });

  it('lists the chosen day and leads to the line of an entry', async () => {
    const page = await open();
    const number = message.calendar?.entries.findIndex(
      ({ kind, days }) => kind === 'visit' && days.length > 0,
    ) as number;
    const entry = message.calendar?.entries[number];
    const day = entry?.days[0] as string;
    while ((await page.locator(`#day-${day}`).count()) === 0) await page.getByText('Later month').click();
    await page.locator(`#day-${day}`).click();
    const button = page
      .locator('.entries')
      .first()
      .getByRole('button', { name: entry?.says as string })
      .first();
    await button.click();
    expect(await shown.told()).toContainEqual({ kind: 'go', entry: number });
  });

  it('can be narrowed to one rig, and keeps month and day over an update', async () => {
    const page = await open();
    const rig = message.calendar?.rigs[0] as string;
    await page.locator('select').selectOption(rig);
    const others = message.calendar?.rigs.filter((name) => name !== rig) as string[];
    const said = await page.locator('.entries').allTextContents();
    for (const other of others) expect(said.join()).not.toContain(`${other}: `);
    await page.locator('#day-2026-11-25').focus();
    await page.keyboard.press('PageDown');
    await shown.tell(message);
    expect(await page.locator('.month').textContent()).toBe('December 2026');
    expect(await focused()).toBe('day-2026-12-25');
    expect(await page.locator('select').inputValue()).toBe(rig);
  });

  it('says why there is nothing to show', async () => {
    const page = await open();
    await shown.tell({ kind: 'show', of: message.of, note: 'The file has no rig or fleet `Shore` now.' });
    expect(await page.locator('[role=status]').textContent()).toContain('no rig or fleet');
  });
});
