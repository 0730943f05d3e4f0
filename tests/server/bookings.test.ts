// Bookings beside the records: what is wrong is shown in their own file, as it is typed and as it lies on disk.
import { afterEach, expect, test } from 'vitest';
import { FileChangeType } from 'vscode-languageserver';
import { tableTextAsk } from '../../language/protocol/index.ts';
import { type Editor, startEditor } from './editor.ts';
import { startVirtualEditor, type VirtualEditor } from './virtual-editor.ts';

const stops: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const stop of stops.splice(0)) await stop();
});

const header = 'rig,first,last\n';
const files = {
  'yard.rig': 'fleet Yard {\n  rigs      "rigs/*.rig"\n  bookings  from "bookings.csv"\n}\n',
  'rigs/heron.rig': 'rig Heron {\n  roof 28 ft by 8 ft epdm\n}\n',
  'bookings.csv': `${header}Hern,2027-06-10,2027-06-24\n`,
};
const started = async (texts: Readonly<Record<string, string>> = files) => {
  const editor = await startEditor({ files: texts });
  stops.push(editor.stop);
  await editor.quiet();
  return editor;
};
const rules = (at: Pick<Editor | VirtualEditor, 'diagnostics'>, path: string) =>
  at.diagnostics(path).map(({ code }) => code);

test('a row that cannot be read is shown in the table, and the sum in the fleet', async () => {
  const at = await started();
  expect(at.diagnostics('bookings.csv')).toMatchObject([
    { code: 'booked-unknown', range: { start: { line: 1, character: 0 }, end: { line: 1, character: 4 } } },
  ]);
  expect(rules(at, 'yard.rig')).toContain('bookings-left-out');
});

test('the fleet leads to the table', async () => {
  const at = await started();
  await at.open('yard.rig');
  const links = await at.request<readonly { target: string }[]>('textDocument/documentLink', 'yard.rig');
  expect(links.map(({ target }) => target)).toEqual([at.uri('bookings.csv')]);
});

test('a table that is mended on disk is read anew', async () => {
  const at = await started();
  await at.save({ 'bookings.csv': `${header}Heron,2027-06-10,2027-06-24\n` });
  await at.quiet();
  expect(rules(at, 'bookings.csv')).toEqual([]);
  expect(rules(at, 'yard.rig')).not.toContain('bookings-left-out');
});

test('what is typed counts before it is saved, and no longer when it is thrown away', async () => {
  const at = await started();
  const typed = (text: string | null) =>
    at.connection.sendRequest(tableTextAsk.method, { uri: at.uri('bookings.csv'), text });
  await typed(`${header}Heron,2027-06-10,2027-06-31\n`);
  await at.quiet();
  expect(rules(at, 'bookings.csv')).toEqual(['booking-unreadable']);
  await typed(null);
  await at.quiet();
  expect(rules(at, 'bookings.csv')).toEqual(['booked-unknown']);
});

test('a table that is not there is missed until it comes', async () => {
  const { 'bookings.csv': rows, ...rest } = files;
  const at = await started({ ...rest, 'bokings.csv': '' });
  const [missing] = at.diagnostics('yard.rig').filter(({ code }) => code === 'bookings-missing');
  expect(missing?.message).toContain('did you mean `bokings.csv`?');
  await at.save({ 'bookings.csv': rows }, FileChangeType.Created);
  await at.quiet();
  expect(rules(at, 'yard.rig')).not.toContain('bookings-missing');
  expect(rules(at, 'bookings.csv')).toEqual(['booked-unknown']);
});

test('a server without a disk of its own is handed the tables', async () => {
  const at = await startVirtualEditor();
  stops.push(at.stop);
  await at.handOver(files);
  await at.quiet();
  expect(rules(at, 'bookings.csv')).toEqual(['booked-unknown']);
  expect(rules(at, 'yard.rig')).toContain('bookings-left-out');
});
