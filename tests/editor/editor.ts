// A real VS Code in a real browser: starts the server build with the packed extension and drives the workbench.
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Locator, type Page } from 'playwright-core';

/** Nothing but the extension is to move on the screen. */
const quiet = {
  'workbench.startupEditor': 'none',
  'chat.disableAIFeatures': true,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'telemetry.telemetryLevel': 'off',
  'workbench.tips.enabled': false,
  'editor.minimap.enabled': false,
  'extensions.autoCheckUpdates': false,
  'files.autoSave': 'off',
  'editor.hover.delay': 150,
  'git.enabled': false,
  'editor.acceptSuggestionOnEnter': 'off',
};

export interface Editor {
  readonly page: Page;
  readonly workspace: string;
  /** The folder of its own settings and extensions. */
  readonly data: string;
  open(file: string): Promise<void>;
  /** Runs a command of the palette by its title. */
  command(title: string): Promise<void>;
  /** Puts the cursor at a line and column, counted from 1. */
  goTo(line: number, column: number): Promise<void>;
  /** The lines of the editor that hold a text. */
  line(text: string): Locator;
  type(text: string): Promise<void>;
  press(keys: string): Promise<void>;
  undo(): Promise<void>;
  /** Changes settings of the workspace, as the settings editor would. */
  configure(settings: Readonly<Record<string, unknown>>): void;
  /** The texts of the problems panel. */
  problems(): Promise<string[]>;
  screenshot(name: string): Promise<void>;
  close(): Promise<void>;
}

async function freePort(): Promise<number> {
  return new Promise((done, failed) => {
    const server = createServer();
    server.on('error', failed);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => (address && typeof address === 'object' ? done(address.port) : failed(new Error('no port'))));
    });
  });
}

async function answers(url: string): Promise<void> {
  for (let tries = 0; tries < 120; tries++) {
    try {
      if ((await fetch(url)).ok) return;
    } catch {
      // not up yet
    }
    await new Promise((done) => setTimeout(done, 250));
  }
  throw new Error(`the editor does not answer at ${url}`);
}

interface Start {
  readonly settings?: Readonly<Record<string, unknown>>;
  readonly trusted?: boolean;
}

/** Starts the editor on a workspace with the packed extension. `pictures` is the folder of the screenshots. */
export async function startEditor(
  install: string,
  vsix: string,
  workspace: string,
  pictures: string,
  { settings = {}, trusted = true }: Start = {},
): Promise<Editor> {
  const data = mkdtempSync(join(tmpdir(), 'rigseam-editor-data-'));
  mkdirSync(join(data, 'User'), { recursive: true });
  mkdirSync(pictures, { recursive: true });
  writeFileSync(join(data, 'User/settings.json'), JSON.stringify({ ...quiet, ...settings }));
  let given: Readonly<Record<string, unknown>> = {};
  const configure = (more: Readonly<Record<string, unknown>>) => {
    given = { ...given, ...more };
    mkdirSync(join(workspace, '.vscode'), { recursive: true });
    writeFileSync(join(workspace, '.vscode/settings.json'), JSON.stringify(given));
  };
  const server = join(install, 'code-server');
  const folders = ['--user-data-dir', data, '--extensions-dir', join(data, 'extensions')];
  execFileSync(server, [...folders, '--install-extension', vsix, '--force'], { stdio: 'pipe' });
  const port = await freePort();
  const child: ChildProcess = spawn(
    server,
    [
      '--auth',
      'none',
      '--bind-addr',
      `127.0.0.1:${port}`,
      ...folders,
      '--disable-telemetry',
      '--disable-update-check',
      ...(trusted ? ['--disable-workspace-trust'] : []),
      workspace,
    ],
    { stdio: 'ignore' },
  );
  let browser: Browser | undefined;
  const close = async () => {
    await browser?.close();
    child.kill();
    rmSync(data, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  };
  try {
    await answers(`http://127.0.0.1:${port}/healthz`);
    browser = await chromium.launch({
      executablePath: '/usr/bin/chromium',
      args: [
        '--headless',
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    });
    const page = await browser.newPage({ viewport: { width: 1500, height: 950 } });
    await page.goto(`http://127.0.0.1:${port}/?folder=${encodeURIComponent(workspace)}`);
    const listed = readdirSync(workspace).length > 0 ? '.explorer-folders-view .monaco-list-row' : '.explorer-viewlet';
    await page.locator(listed).first().waitFor({ timeout: 90_000 });
    return { ...drive(page, workspace, pictures), configure, data, close };
  } catch (error) {
    await close();
    throw error;
  }
}

/** Opens a folder of the explorer; while the tree is read anew a click may be lost, or close it again. */
async function unfold(folder: Locator): Promise<void> {
  for (let tries = 0; tries < 10 && (await folder.getAttribute('aria-expanded')) === 'false'; tries++) {
    await folder.click();
    await folder.page().waitForTimeout(500);
  }
}

function drive(page: Page, workspace: string, pictures: string): Omit<Editor, 'close' | 'data' | 'configure'> {
  const row = (name: string) =>
    page
      .locator('.explorer-folders-view .monaco-list-row')
      .filter({ has: page.locator('.label-name', { hasText: new RegExp(`^${name.replace(/[.]/g, '\\.')}$`) }) });
  const editor: Omit<Editor, 'close' | 'data' | 'configure'> = {
    page,
    workspace,
    async open(file) {
      const parts = file.split('/');
      for (const [i, part] of parts.entries()) {
        const last = i === parts.length - 1;
        await row(part).first().waitFor();
        if (last) await row(part).first().dblclick();
        else await unfold(row(part).first());
      }
      await page.locator('.tab.active', { hasText: parts.at(-1) as string }).waitFor();
      await page.locator('.editor-instance .view-line').first().waitFor();
    },
    async command(title) {
      await page.keyboard.press('F1');
      const input = page.locator('.quick-input-widget input').first();
      await input.waitFor();
      await input.fill(`>${title}`);
      await page.locator('.quick-input-list .monaco-list-row', { hasText: title }).first().waitFor();
      await page.keyboard.press('Enter');
    },
    async goTo(line, column) {
      await page.locator('.editor-instance .view-lines').first().click();
      await page.keyboard.press('Control+g');
      const input = page.locator('.quick-input-widget input').first();
      await input.waitFor();
      await input.fill(`:${line}:${column}`);
      await page.keyboard.press('Enter');
      await page.locator('.quick-input-widget').first().waitFor({ state: 'hidden' });
    },
    line: (text) => page.locator('.editor-instance .view-line', { hasText: text }),
    type: (text) => page.keyboard.type(text, { delay: 15 }),
    press: (keys) => page.keyboard.press(keys),
    undo: () => page.keyboard.press('Control+z'),
    async problems() {
      const panel = page.locator('.markers-panel');
      if (!(await panel.isVisible())) await page.keyboard.press('Control+Shift+m');
      await panel.waitFor();
      return panel.locator('.monaco-list-row').allInnerTexts();
    },
    async screenshot(name) {
      await page.screenshot({ path: join(pictures, `${name}.png`) });
    },
  };
  return editor;
}
