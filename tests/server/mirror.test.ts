// A workspace that the server cannot read itself: the findings are those of the same files on a disk, none comes too early,
// and what changes there is followed.
import { afterEach, expect, test } from 'vitest';
import { type Diagnostic, FileChangeType } from 'vscode-languageserver';
import { papersAsk } from '../../language/protocol/index.ts';
import { readFolder } from '../project/workspace.ts';
import { startEditor } from './editor.ts';
import { startVirtualEditor, uriIn, type VirtualEditor } from './virtual-editor.ts';

let editor: VirtualEditor | undefined;
afterEach(async () => {
  await editor?.stop();
  editor = undefined;
});
const started = async (texts?: Readonly<Record<string, string>>) => {
  editor = await startVirtualEditor(texts);
  return editor;
};

const brief = ({ range, code, message, severity }: Diagnostic) =>
  JSON.stringify([range.start, range.end, code, severity, message]);
const rules = (at: VirtualEditor, path: string) => at.diagnostics(path).map(({ code }) => code);

test.each(['examples/single', 'examples/fleet', 'tests/worked-example'])('%s: as on a disk', async (folder) => {
  const files = readFolder(folder);
  const onDisk = await startEditor({ files });
  await onDisk.quiet();
  const at = await started();
  await at.handOver(files);
  await at.quiet();
  for (const path of Object.keys(files))
    expect(at.diagnostics(path).map(brief), path).toEqual(onDisk.diagnostics(path).map(brief));
  expect(at.published.length).toBe(onDisk.published.length);
  await onDisk.stop();
});

const rig =
  'use "parts.rig"\nrig Teal {\n  roof 20 ft by 8 ft epdm\n  sealed 2025-05-05 all with Gum photo "teal/roof.jpg"\n}\n';
const parts = 'sealant Gum {\n  for epdm\n}\n';
const edited = { 'teal.rig': rig, 'parts.rig': parts };

test('nothing is judged before all files are there', async () => {
  const at = await started();
  await at.open('teal.rig', rig);
  await at.handOver({ 'teal.rig': rig }, [], false);
  // The server answers in order: by then it would have said what it had to say.
  await at.connection.sendRequest('textDocument/foldingRange', { textDocument: { uri: uriIn('teal.rig') } });
  await new Promise((done) => setTimeout(done, 100));
  expect(at.published.flatMap(({ diagnostics }) => diagnostics)).toEqual([]);
  await at.handOver({ 'parts.rig': parts });
  await at.quiet();
  expect(rules(at, 'teal.rig')).not.toContain('unknown-material');
  expect(rules(at, 'teal.rig')).toContain('evidence-missing');
});

test('a photo that is there is not missed, nor one that comes; one that goes is', async () => {
  const at = await started();
  await at.handOver(edited, ['teal/roof.jpg']);
  await at.quiet();
  expect(rules(at, 'teal.rig')).not.toContain('evidence-missing');
  await at.drop('teal');
  await at.quiet();
  expect(rules(at, 'teal.rig')).toContain('evidence-missing');
  await at.handOver({}, ['teal/roof.jpg']);
  await at.quiet();
  expect(rules(at, 'teal.rig')).not.toContain('evidence-missing');
});

test('a file that changes, goes, and comes back under another name is seen by those that use it', async () => {
  const at = await started();
  await at.handOver(edited, ['teal/roof.jpg']);
  await at.quiet();
  const clean = at.diagnostics('teal.rig').map(brief);
  await at.handOver({ 'parts.rig': parts.replace('Gum', 'Glue') });
  await at.quiet();
  expect(rules(at, 'teal.rig')).toContain('unknown-material');
  await at.handOver({ 'parts.rig': parts });
  // What the protocol's own watchers saw is told later: it must not take away what is there again.
  await at.watched('parts.rig', FileChangeType.Deleted);
  await at.watched('parts.rig', FileChangeType.Created);
  await at.quiet();
  expect(at.diagnostics('teal.rig').map(brief)).toEqual(clean);

  await at.connection.sendNotification('workspace/didRenameFiles', {
    files: [{ oldUri: uriIn('parts.rig'), newUri: uriIn('shelf/parts.rig') }],
  });
  await at.drop('parts.rig');
  await at.handOver({ 'shelf/parts.rig': parts });
  await at.quiet();
  expect(rules(at, 'teal.rig')).toContain('file-not-found');
  await at.handOver({ 'teal.rig': rig.replace('"parts.rig"', '"shelf/parts.rig"') });
  await at.quiet();
  expect(rules(at, 'teal.rig')).not.toContain('file-not-found');
  expect(rules(at, 'teal.rig')).not.toContain('unknown-material');
});

test('papers are written from it, and what was written before is asked of the editor', async () => {
  const files = readFolder('examples/single');
  const at = await started({ 'out/Wren.schedule.json': 'not ours' });
  await at.handOver(files);
  const reply = papersAsk.reply.parse(
    await at.connection.sendRequest(papersAsk.method, { uri: uriIn('wren.rig'), folder: uriIn('out') }),
  );
  expect(reply).toMatchObject({ kind: 'documents', problems: [] });
  expect(at.asked).toEqual(['out/Wren.schedule.json']);
});
