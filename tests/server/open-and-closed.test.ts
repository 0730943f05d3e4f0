// An open file, a closed file and the command line's engine say the same of every example.
import { afterEach, expect, test } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { examined } from '../../language/rules/check.ts';
import { summaryOf, workspaceFindings } from '../../language/rules/workspace.ts';
import { projectOf, readFolder } from '../project/workspace.ts';
import { type Editor, startEditor, today } from './editor.ts';

let editor: Editor | undefined;
afterEach(async () => {
  await editor?.stop();
  editor = undefined;
});

const brief = ({ range, code, message, severity }: Diagnostic) =>
  JSON.stringify([range.start, range.end, code, severity, message]);
const severities = ['', 'error', 'warning', 'information', 'hint'];

/** What the engine says of a workspace, by file. */
function expected(files: Readonly<Record<string, string>>): Map<string, string[]> {
  const project = projectOf(files);
  const paths = Object.keys(files);
  const check = (path: string) => examined(project, path, { asOf: today, today }, () => false);
  const found = [
    ...paths.flatMap((path) => check(path).findings),
    ...workspaceFindings(paths.map((path) => summaryOf(project, path, check(path).silences))),
  ];
  const out = new Map<string, string[]>();
  for (const { file, at, rule, severity, message } of found) {
    const document = TextDocument.create('', 'rig', 0, files[file] ?? '');
    const said = JSON.stringify([
      document.positionAt(at[0]),
      document.positionAt(at[1]),
      rule,
      severities.indexOf(severity),
      message,
    ]);
    const here = out.get(file) ?? [];
    if (!here.includes(said)) out.set(file, [...here, said]);
  }
  return out;
}

test.each(['examples/single', 'examples/fleet', 'tests/worked-example'])('%s', async (folder) => {
  const files = readFolder(folder);
  const paths = Object.keys(files);
  expect(paths.length).toBeGreaterThan(3);
  const at = await startEditor({ files });
  editor = at;
  await at.quiet();
  const engine = expected(files);
  const closed = new Map(paths.map((path) => [path, at.diagnostics(path).map(brief)]));
  for (const path of paths)
    expect([...(closed.get(path) ?? [])].sort(), path).toEqual([...(engine.get(path) ?? [])].sort());

  for (const path of paths) await at.open(path);
  await at.quiet();
  for (const path of paths) expect(at.diagnostics(path).map(brief), path).toEqual(closed.get(path));

  for (const path of paths) await at.close(path);
  await at.quiet();
  for (const path of paths) expect(at.diagnostics(path).map(brief), path).toEqual(closed.get(path));
});
