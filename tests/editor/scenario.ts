// What a scenario in the real editor is made of, and what its steps say again and again.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Editor } from './editor.ts';

interface Step {
  readonly name: string;
  run(editor: Editor): Promise<void>;
}

/** Steps that build on each other, in an editor of their own. */
export interface Scenario {
  /** Names its folder of screenshots, and chooses it: `npm run test:editor NAME`. */
  readonly name: string;
  /** The folder of this repository that it works on a copy of; absent: an empty folder. */
  readonly workspace?: string;
  /** Files that are there before the editor starts, beside that copy. */
  readonly files?: Readonly<Record<string, string>>;
  /** User settings beside the quiet ones. */
  readonly settings?: Readonly<Record<string, unknown>>;
  /** Whether the workspace is trusted from the start. Default: yes. */
  readonly trusted?: boolean;
  readonly steps: readonly Step[];
}

export const rig = (editor: Editor) => readFileSync(join(editor.workspace, 'wren.rig'), 'utf8');
/** Columns are the formatter's affair: any run of blanks is like any other. */
const single = (text: string) => text.replace(/ +/g, ' ');
/** The number of the first line that begins with a text, from 1. */
export function lineOf(editor: Editor, start: string): number {
  const index = rig(editor)
    .split('\n')
    .findIndex((line) => single(line.trimStart()).startsWith(single(start)));
  assert.ok(index >= 0, `the example has no line \`${start}\``);
  return index + 1;
}

export async function eventually(what: string, holds: () => Promise<boolean>, seconds = 15): Promise<void> {
  for (const end = Date.now() + seconds * 1000; Date.now() < end; ) {
    if (await holds()) return;
    await new Promise((done) => setTimeout(done, 200));
  }
  assert.fail(`not seen within ${seconds} s: ${what}`);
}

export const errors = async (editor: Editor) => (await editor.problems()).filter((text) => /\[Ln \d+/.test(text));
export const saysError = async (editor: Editor, message: RegExp) =>
  (await errors(editor)).some((text) => message.test(text));
export const squiggles = (editor: Editor) => editor.page.locator('.editor-instance .squiggly-error').count();

/** Types a line at the end of the rig, before its closing brace. */
export async function addLine(editor: Editor, text: string): Promise<void> {
  const last = rig(editor).trimEnd().split('\n').length;
  await editor.goTo(last, 1);
  await editor.type(`${text}\n`);
}
