import { existsSync, mkdirSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Show } from '../../client/roof-plan/messages.ts';
import { style } from '../../client/roof-plan/style.ts';
import { roofView } from '../../language/documents/roof/index.ts';
import { rigState } from '../../language/seams/index.ts';
import { rigOf } from '../documents/sheets.ts';
import { browserPath, openPage, type Shown, startBrowser, themes } from './page.ts';

const text = `
policy P { follow-up cracked within 2 weeks }
rig Plover under P {
  roof 30 ft by 8 ft epdm
  falls to edges
  edge curbside, roadside
  cap front
  slide lounge 10 ft by 3 ft on roadside at 12 ft
  opening hatch 20 in by 14 in at 20 ft, 3 ft
  opening pipe round 6 in at 5 ft, 6 ft
  mount panel-feet-of-the-front-row 2 in by 3 in at 9 ft, 2 ft and 13 ft, 2 ft and 9 ft, 5 ft
  joint corner 6 ft on wall rear
  inspected 2026-10-04 {
    curbside hairline from 6 ft to 9 ft
    roadside cracked
    hatch lifting wet
    pipe open
    lounge not-seen
    rest sound
  }
}
`;
const planOf = (from: string) => {
  const view = rigOf(from);
  return { ...roofView(view, rigState(view, '2026-11-25')), unread: false };
};
const show = (more: Partial<Show> = {}): Show => ({
  kind: 'show',
  rig: { uri: 'file:///a.rig', name: 'Plover' },
  plan: planOf(text),
  by: 'condition',
  note: '',
  lit: [],
  ...more,
});
const pictures = 'tests/artefacts/roof-page';

const hasBrowser = existsSync(browserPath);
const absent = `${browserPath} is not there: the page was looked at in the real editor only`;

describe('the page of a roof plan', () => {
  let browser: Browser | undefined;
  let script: string;
  let shown: Shown;
  beforeAll(async () => {
    mkdirSync(pictures, { recursive: true });
    if (hasBrowser) ({ browser, script } = await startBrowser('roof-plan'));
  });
  afterAll(() => browser?.close());
  beforeEach((context) => {
    if (!hasBrowser) context.skip(absent);
  });
  afterEach(async () => {
    if (!hasBrowser) return;
    expect(shown.complaints).toEqual([]);
    await shown.page.close();
  });
  const open = async (width = 900, first = show()) => {
    shown = await openPage(browser as Browser, { script, style }, width);
    await shown.theme('light');
    await shown.tell(first);
    return shown.page;
  };
  const focused = () =>
    shown.page.evaluate<string | null>(
      'document.activeElement.getAttribute("aria-label") || document.activeElement.value || document.activeElement.textContent',
    );

  for (const theme of Object.keys(themes) as (keyof typeof themes)[]) {
    for (const by of ['condition', 'due'] as const) {
      // 450 pixels are a panel of 900 at 200 %; 320 the narrowest that a page must stand.
      for (const width of [900, 450, 320]) {
        it(`is accessible on ${theme}, by ${by}, ${width} pixels wide`, async () => {
          const page = await open(width, show({ by, lit: ['hatch'] }));
          await shown.theme(theme);
          await page.screenshot({ path: `${pictures}/${theme}-${by}-${width}.png`, fullPage: true });
          expect(await shown.violations()).toEqual([]);
          expect(await page.evaluate('document.documentElement.scrollWidth <= window.innerWidth')).toBe(true);
        });
      }
    }
  }

  it('finds what is wrong, when something is', async () => {
    const page = await open();
    await page.evaluate(
      'document.querySelector("g[data-item]").removeAttribute("aria-label"); document.querySelector("g[data-item] title").remove(); document.querySelector("g[data-item]").replaceChildren()',
    );
    expect((await shown.violations()).join()).toMatch(/aria-command-name|button-name|svg-img-alt/);
  });

  it('is walked by keyboard: the toggle, the buttons, the seams as one stop', async () => {
    const page = await open();
    const { seams } = show().plan!;
    const order = [...seams.filter(({ missing }) => !missing), ...seams.filter(({ missing }) => missing)];
    const press = async (key: string) => {
      await page.keyboard.press(key);
      return focused();
    };
    expect(await press('Tab')).toBe('condition');
    expect(await press('Tab')).toBe('Save as SVG…');
    expect(await press('Tab')).toBe('Print…');
    expect(await press('Tab')).toBe(order[0]?.says);
    for (const seam of order.slice(1)) expect(await press('ArrowRight')).toContain(seam.says);
    expect(await press('ArrowDown')).toContain(order.at(-1)?.says);
    expect(await press('Home')).toBe(order[0]?.says);
    expect(await press('ArrowLeft')).toBe(order[0]?.says);
    expect(await press('End')).toContain(order.at(-1)?.says);
    expect(await press('ArrowUp')).toContain(order.at(-2)?.says);
    await page.keyboard.press('Enter');
    expect(await shown.told()).toEqual([{ kind: 'ready' }, { kind: 'go', item: order.at(-2)?.item }]);
    // One stop: Tab leaves the seams, and comes back to the same.
    await page.keyboard.press('Shift+Tab');
    expect(await focused()).toBe('Print…');
    expect(await press('Tab')).toContain(order.at(-2)?.says);
    await page.keyboard.press('End');
    await page.keyboard.press('Space');
    expect((await shown.told()).filter(({ kind }) => kind === 'go')).toHaveLength(2);
  });

  it('shows where the focus is', async () => {
    const page = await open();
    for (let i = 0; i < 4; i++) await page.keyboard.press('Tab');
    const outline = await page.evaluate(
      'getComputedStyle(document.activeElement).outlineStyle + getComputedStyle(document.activeElement).outlineColor',
    );
    expect(outline).toBe('solidrgb(0, 95, 184)');
  });

  it('tells what is done with it', async () => {
    const page = await open();
    await page.locator('[data-item="hatch"]').click();
    await page.getByRole('radio', { name: 'due date' }).check();
    await page.getByRole('button', { name: 'Save as SVG…' }).click();
    await page.getByRole('button', { name: 'Print…' }).click();
    await page.getByRole('button', { name: /^corner joint/ }).click();
    expect(await shown.told()).toEqual([
      { kind: 'ready' },
      { kind: 'go', item: 'hatch' },
      { kind: 'by', by: 'due' },
      { kind: 'save' },
      { kind: 'print' },
      { kind: 'go', item: 'corner' },
    ]);
    expect(await page.evaluate('window.kept')).toEqual({ uri: 'file:///a.rig', name: 'Plover', by: 'condition' });
  });

  it('keeps focus and elements over an update', async () => {
    const page = await open();
    await page.locator('[data-item="hatch"]').focus();
    await page.evaluate(
      'window.before = document.activeElement; window.blurs = 0; window.before.addEventListener("blur", () => window.blurs++)',
    );
    await shown.tell(
      show({
        plan: planOf(
          text
            .replace('hatch lifting wet', 'hatch chalky')
            .replace('opening pipe', 'opening new 1 ft by 1 ft at 9 ft, 2 ft\n  opening pipe'),
        ),
      }),
    );
    expect(await focused()).toMatch(/^hatch opening, chalky/);
    expect(await page.evaluate('window.before === document.activeElement && window.blurs === 0')).toBe(true);
    expect(await page.locator('[data-item="new"]').count()).toBe(1);
    await shown.tell(show({ by: 'due' }));
    expect(await page.evaluate('window.before === document.activeElement')).toBe(true);
    // Where the seam with the focus goes, Tab still reaches the drawing.
    await shown.tell(show({ plan: planOf(text.replaceAll('hatch', 'lid')) }));
    expect(await page.locator('[data-item][tabindex="0"]').count()).toBe(1);
  });

  it('lights up the seams of the cursor and says them', async () => {
    const page = await open();
    await shown.tell(show({ lit: ['roadside'] }));
    expect(await page.locator('[aria-current="true"]').getAttribute('data-item')).toBe('roadside');
    const said = show().plan!.seams.find(({ item }) => item === 'roadside')!;
    expect(said.says).toBe('roadside edge, cracked, 30 ft, overdue since 18 Oct 2026');
    expect(await page.locator('[role=status]').last().textContent()).toBe(`${said.says}: ${said.why}`);
    await shown.tell(show({ lit: ['roadside', 'corner'] }));
    expect(await page.locator('[aria-current="true"]').count()).toBe(2);
    await shown.tell(show({ note: 'Some lines cannot be read.' }));
    expect(await page.locator('[aria-current]').count()).toBe(0);
    expect(await page.locator('[role=status]').first().textContent()).toBe('Some lines cannot be read.');
  });

  it('has a legend of exactly what is drawn, by pattern without colour in high contrast', async () => {
    const page = await open();
    await shown.theme('contrast');
    const drawn = await page.evaluate<string[]>(
      '[...new Set([...document.querySelectorAll("[data-class]")].map((one) => one.dataset.class))]',
    );
    const legend = await page.evaluate<string[]>(
      '[...document.querySelectorAll("[data-legend]")].map((one) => one.dataset.legend)',
    );
    expect(legend.toSorted()).toEqual(expect.arrayContaining(drawn.toSorted()));
    const fills = await page.evaluate<string[]>(
      '[...new Set([...document.querySelectorAll(".roof-tile")].map((one) => getComputedStyle(one).fill))]',
    );
    expect(fills.toSorted()).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
  });

  it('stands where the system forces its colours, and moves nothing where motion is unwelcome', async () => {
    const page = await open();
    const moved = () => page.evaluate('getComputedStyle(document.querySelector("[data-class]")).transitionDuration');
    expect(await moved()).toBe('0.12s');
    await page.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' });
    expect(await moved()).toBe('0s');
    expect(await shown.violations()).toEqual([]);
    const tiles = await page.evaluate<string[]>(
      '[...new Set([...document.querySelectorAll(".roof-tile")].map((one) => getComputedStyle(one).fill))]',
    );
    expect(tiles).toHaveLength(2);
  });

  it('lists every seam where nothing can be drawn, and says why there is no plan', async () => {
    const bare = 'rig Bare {\n  edge curbside\n  opening hatch 1 ft by 1 ft at 2 ft, 2 ft\n}';
    const page = await open(900, show({ plan: planOf(bare), lit: ['hatch'] }));
    expect(await page.locator('.picture, .legend').count()).toBe(0);
    expect(await page.getByRole('button', { name: /the roof has no size$/ }).count()).toBe(2);
    expect(await page.locator('main').textContent()).toContain('roof LENGTH by WIDTH');
    expect(await shown.violations()).toEqual([]);
    for (let i = 0; i < 4; i++) await page.keyboard.press('Tab');
    expect(await focused()).toMatch(/^hatch opening/);
    const { plan: _, ...without } = show({ note: 'The file has no rig `Plover` now.' });
    await shown.tell(without);
    expect(await page.locator('main').textContent()).toBe('Roof of PloverThe file has no rig `Plover` now.');
  });

  it('lets no drawing bring script or style of its own', async () => {
    const page = await open();
    const plan = show().plan!;
    const svg = plan.drawings.condition.svg.replace(
      '</svg>',
      '<script>window.bad = 1</script><image href="https://elsewhere.invalid/a.png" onerror="window.bad = 2"/></svg>',
    );
    await shown.tell(show({ plan: { ...plan, drawings: { ...plan.drawings, condition: { legend: [], svg } } } }));
    expect(await page.evaluate('window.bad')).toBeUndefined();
    expect(shown.complaints.length).toBeGreaterThan(0);
    (shown.complaints as string[]).length = 0;
  });
});
