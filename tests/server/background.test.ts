// Many closed files: checked a little at a time, with progress, while an open one is served at once.
import { afterEach, expect, test } from 'vitest';
import type { Hover, MessageConnection } from 'vscode-languageserver';
import { type Editor, startEditor } from './editor.ts';

let editor: Editor | undefined;
afterEach(async () => {
  await editor?.stop();
  editor = undefined;
});

const rigText = (name: string) => `use "models.rig"
rig ${name} like Base {
  inspected 2026-10-01 { rest sound }
  washed 2026-10-02
  tightened 2026-10-02 fan
}
`;
const yardOf = (count: number) => ({
  'models.rig':
    'model Base {\n  roof 20 ft by 8 ft epdm\n  edge curbside, roadside\n  gasket fan 14 in by 14 in at 14 ft, 4 ft\n}\n',
  ...Object.fromEntries(Array.from({ length: count }, (_, i) => [`rig-${i}.rig`, rigText(`Rig${i}`)])),
});

test('all are counted in the end, with progress on the way, and requests are answered meanwhile', async () => {
  const at = await startEditor({ files: yardOf(400) });
  editor = at;
  const progress: string[] = [];
  (at.connection as unknown as MessageConnection).onUnhandledProgress(
    ({ value }) => void progress.push((value as { kind: string }).kind),
  );
  await at.open('models.rig');
  const position = at.positionOf('models.rig', 'gasket', 1);
  const hover = await at.request<Hover | null>('textDocument/hover', 'models.rig', { position });
  expect(hover).not.toBeNull();
  const answeredWhileBusy = !at.statuses.some(({ busy, rigs }) => !busy && rigs === 400);
  await at.until(() => at.statuses.some(({ busy, rigs }) => !busy && rigs === 400), 'all rigs');
  expect(answeredWhileBusy).toBe(true);
  await at.until(() => progress.includes('end'));
  expect(progress[0]).toBe('begin');
  expect(progress.filter((kind) => kind === 'begin')).toHaveLength(1);
});

test('typing in a file that all use: its own findings come first, those of the others after', async () => {
  const at = await startEditor({ files: yardOf(100) });
  editor = at;
  await at.quiet();
  await at.open('models.rig');
  await at.quiet();
  const count = at.published.length;
  await at.replace('models.rig', 'gasket fan', 'gasket fan-1 wide 4');
  await at.until(() => at.published.length >= count + 101);
  const paths = at.published.slice(count).map(({ path }) => path);
  expect(paths[0]).toBe('models.rig');
  expect(new Set(paths).size).toBe(101);
  expect(at.diagnostics('rig-7.rig').map(({ code }) => code)).toContain('unknown-seam');
});

test('a file that was not read yet is read when it is asked for by another', async () => {
  const at = await startEditor({ files: yardOf(3), folders: ['nowhere'] });
  editor = at;
  await at.open('rig-0.rig');
  await at.until(() => at.published.some(({ path }) => path === 'rig-0.rig'));
  // Outside every folder a file brings its own folder along, so that what it uses is found.
  expect(at.shown('rig-0.rig').map(({ rule }) => rule)).not.toContain('use-leaves-workspace');
  expect(at.diagnostics('rig-1.rig')).toEqual([]);
});
