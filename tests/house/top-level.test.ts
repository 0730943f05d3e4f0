import { expect, it } from 'vitest';
import { projectFiles } from './source.ts';

/** What may stand at the top: the rooms, the pages that people read, and what the tools insist on. */
const allowed = new Set([
  ...['client', 'server', 'language', 'examples', 'tests'],
  ...['README.md', 'DEVELOPERS.md', 'LICENSE', 'CHANGELOG.md'],
  ...['package.json', 'package-lock.json', 'tsconfig.json', 'biome.json', 'esbuild.mjs', 'vitest.config.ts'],
  ...['.ci', '.editorconfig', '.gitattributes', '.gitignore', '.node-version', '.npmrc', '.vscodeignore'],
]);

it('only the agreed names stand at the top', () => {
  const names = new Set(projectFiles.map((path) => path.split('/')[0] ?? ''));
  expect([...names].filter((name) => !allowed.has(name))).toEqual([]);
});

it('no folder is a dumping ground', () => {
  const bad = /(^|\/)(utils?|helpers?|common|misc|shared)(\/|\.ts$)/;
  expect(projectFiles.filter((path) => bad.test(path))).toEqual([]);
});
