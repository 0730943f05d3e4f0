// The pages of panels in a browser, as the editor shows them: their policy, their themes, their messages.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { type Browser, chromium, type Page } from 'playwright-core';
import { pageText } from '../../client/page-text.ts';

export const browserPath = '/usr/bin/chromium';
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** The classes and colours that the editor gives a page, as its own themes have them. */
export const themes = {
  light: {
    class: 'vscode-light',
    colours: {
      'editor-foreground': '#3b3b3b',
      'editor-background': '#ffffff',
      focusBorder: '#005fb8',
      'button-secondaryBackground': '#e5e5e5',
      'button-secondaryForeground': '#3b3b3b',
      'charts-blue': '#0063d3',
    },
  },
  dark: {
    class: 'vscode-dark',
    colours: {
      'editor-foreground': '#cccccc',
      'editor-background': '#1f1f1f',
      focusBorder: '#0078d4',
      'button-secondaryBackground': '#313131',
      'button-secondaryForeground': '#cccccc',
      'charts-blue': '#59a4f9',
    },
  },
  contrast: {
    class: 'vscode-high-contrast',
    colours: {
      'editor-foreground': '#ffffff',
      'editor-background': '#000000',
      focusBorder: '#f38518',
      contrastBorder: '#6fc3df',
      contrastActiveBorder: '#f38518',
    },
  },
} as const;

export interface Shown {
  readonly page: Page;
  tell(message: unknown): Promise<void>;
  /** What the page told the extension. */
  told(): Promise<readonly { readonly kind: string }[]>;
  theme(name: keyof typeof themes): Promise<void>;
  /** What breaks a rule of accessibility: the rule and the elements. */
  violations(): Promise<readonly string[]>;
  /** What was refused or failed in the page. */
  readonly complaints: readonly string[];
}

/** A page to be looked at: its script as bundled, and its style. */
export interface PageMade {
  readonly script: string;
  readonly style: string;
}

/** `name` is the folder of the page's script in `client/pages`. */
export async function startBrowser(name: string): Promise<{ readonly browser: Browser; readonly script: string }> {
  const { outputFiles } = await build({
    entryPoints: [fileURLToPath(new URL(`../../client/pages/${name}/main.ts`, import.meta.url))],
    bundle: true,
    write: false,
    format: 'iife',
    platform: 'browser',
  });
  const args = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-background-networking'];
  const browser = await chromium.launch({ executablePath: browserPath, args });
  return { browser, script: outputFiles[0]?.text as string };
}

/** Opens the page in a window so wide, in pixels at 100 %. */
export async function openPage(browser: Browser, { script, style }: PageMade, width: number): Promise<Shown> {
  const page = await browser.newPage({ viewport: { width, height: 800 } });
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  page.on('pageerror', ({ message }) => complaints.push(message));
  await page.addInitScript(
    'window.told = []; window.acquireVsCodeApi = () => ({ postMessage: (one) => window.told.push(one), setState: (one) => { window.kept = one; } });',
  );
  await page.route('**/*', (route) => {
    const { pathname } = new URL(route.request().url());
    if (pathname === '/plan') {
      const body = pageText({ title: 'A page', style, script: 'https://plan.invalid/page.js' });
      return route.fulfill({ contentType: 'text/html', body });
    }
    if (pathname === '/page.js') return route.fulfill({ contentType: 'text/javascript', body: script });
    if (pathname !== '/favicon.ico') complaints.push(`asked for ${pathname}`);
    return route.abort();
  });
  await page.goto('https://plan.invalid/plan');
  return {
    page,
    complaints,
    tell: (message) =>
      page.evaluate(`window.postMessage(${JSON.stringify(message)}, '*'); new Promise((done) => setTimeout(done, 30))`),
    told: () => page.evaluate('window.told'),
    async theme(name) {
      const { class: kind, colours } = themes[name];
      const all = Object.entries(colours).map(([key, colour]) => [`--vscode-${key}`, colour]);
      await page.evaluate(
        `document.body.className = '${kind}'; document.documentElement.removeAttribute('style');
         for (const [key, colour] of ${JSON.stringify(all)}) document.documentElement.style.setProperty(key, colour)`,
      );
    },
    async violations() {
      await page.evaluate(axe);
      const found = await page.evaluate<{ id: string; nodes: { html: string; failureSummary: string }[] }[]>(
        'axe.run(document).then(({ violations }) => violations)',
      );
      return found.flatMap(({ id, nodes }) =>
        nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary}`),
      );
    },
  };
}
