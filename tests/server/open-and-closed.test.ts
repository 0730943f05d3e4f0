// Open in the editor, closed in its workspace, and on the command line: the same is said of everything that is written in the
// language here, whole and damaged.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver';
import { check } from '../../server/cli/check.ts';
import { asked } from '../../server/cli/paths.ts';
import { filesOf } from '../fixtures/annotated.ts';
import { readFolder } from '../project/workspace.ts';
import { type Editor, startEditor, today } from './editor.ts';

let editor: Editor | undefined;
afterEach(async () => {
  await editor?.stop();
  editor = undefined;
});

type Files = Readonly<Record<string, string>>;
const severities = ['', 'error', 'warning', 'information', 'hint'];
const brief = ({ range, code, message, severity }: Diagnostic) =>
  JSON.stringify([range.start, range.end, code, severities[severity ?? 0], message]);

/** What the command line says of a folder, by file. */
function printed(folder: string): ReadonlyMap<string, string[]> {
  const out = new Map<string, string[]>();
  for (const { file, range, rule, severity, message } of check(asked([folder], folder), { asOf: today, today })
    .findings) {
    const said = JSON.stringify([range.start, range.end, rule, severity, message]);
    out.set(file, [...(out.get(file) ?? []), said]);
  }
  return out;
}

async function sayTheSame(files: Files): Promise<number> {
  const at = await startEditor({ files });
  editor = at;
  const paths = Object.keys(files);
  await at.quiet();
  const closed = new Map(paths.map((path) => [path, at.diagnostics(path).map(brief)]));
  const commandLine = printed(at.folder);
  for (const path of paths)
    expect([...(closed.get(path) ?? [])].sort(), path).toEqual([...(commandLine.get(path) ?? [])].sort());

  // An editor takes the mark of byte order off before it hands a text over.
  for (const path of paths) await at.open(path, (files[path] ?? '').replace(/^\uFEFF/, ''));
  await at.quiet();
  for (const path of paths) expect(at.diagnostics(path).map(brief), path).toEqual(closed.get(path));

  for (const path of paths) await at.close(path);
  await at.quiet();
  for (const path of paths) expect(at.diagnostics(path).map(brief), path).toEqual(closed.get(path));
  return [...closed.values()].flat().length;
}

const folders = ['examples/single', 'examples/fleet', 'tests/worked-example'];

test.each([...folders, 'language/library'])('%s', async (folder) => {
  const files = readFolder(folder);
  expect(Object.keys(files).length).toBeGreaterThan(3);
  await sayTheSame(files);
});

const cases = 'tests/fixtures/cases';
test.each(readdirSync(cases))('fixture %s', async (name) => {
  const files = filesOf(readFileSync(join(cases, name), 'utf8'));
  await sayTheSame(Object.fromEntries(files.map((file) => [file.name, file.text])));
});

/** What can happen to a file on its way. */
const damages: Readonly<Record<string, (text: string, index: number) => string>> = {
  'cut off in the middle of a word': (text) => text.slice(0, text.length >> 1),
  'without its first opening brace': (text) => text.replace('{', ''),
  'without its last closing brace': (text) => text.replace(/\}(?=[^}]*$)/, ''),
  'with a quote that never ends': (text) => text.replace(/"(?=[^"]*$)/, ''),
  'with the marks of a merge': (text) => {
    const lines = text.split('\n');
    const half = lines.length >> 1;
    return [
      ...lines.slice(0, half),
      '<<<<<<< ours',
      lines[half],
      '=======',
      '>>>>>>> theirs',
      ...lines.slice(half),
    ].join('\n');
  },
  'with line ends of another system': (text) => text.replaceAll('\n', '\r\n'),
  'with line ends of an old system': (text) => text.replaceAll('\n', '\r'),
  'with a mark of byte order': (text) => `\uFEFFnonsense\n${text}`,
  'with letters beyond the first plane': (text) =>
    text.replace(/#.*/g, '# \u{1F69A} café').replace('{', '{ # \u{1F69A}'),
  'with characters that control': (text, index) => `${text.slice(0, 40 + index)}\u0000\u0007${text.slice(40 + index)}`,
  'with every third line twice': (text) =>
    text
      .split('\n')
      .flatMap((line, i) => (i % 3 === 0 ? [line, line] : [line]))
      .join('\n'),
  empty: () => '',
};

describe.each(['examples/single', 'tests/worked-example'])('%s damaged', (folder) => {
  test.each(Object.keys(damages))('%s', async (damage) => {
    const files = Object.entries(readFolder(folder)).map(([path, text], i) => [path, damages[damage]?.(text, i) ?? '']);
    const found = await sayTheSame(Object.fromEntries(files));
    if (!/line ends of another|beyond/.test(damage)) expect(found).toBeGreaterThan(0);
  });
});
