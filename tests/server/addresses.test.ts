import fc from 'fast-check';
import { URI } from 'langium';
import { describe, expect, it } from 'vitest';
import { folderOf, resolvePath } from '../../language/resolve/paths.ts';
import { isSomewhere, isVirtual, pathOf, uriOf } from '../../server/addresses.ts';

const segment = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 8 })
  .filter((text) => !/[/\\]|^\.\.?$|^[a-z]:$/i.test(text));
const path = fc.array(segment, { minLength: 1, maxLength: 4 }).map((parts) => `/${parts.join('/')}`);

describe('paths of the engine', () => {
  it.each([
    ['file:///srv/rigs/a%20b.rig', '/srv/rigs/a b.rig'],
    ['file:///srv/rigs/', '/srv/rigs'],
    ['file:///', '/'],
    ['file:///C%3A/Rigs/a.rig', 'c:/Rigs/a.rig'],
    ['file://shelf/rigs/a.rig', '//shelf/rigs/a.rig'],
    ['vscode-vfs://github/me/rigs/a.rig', '/:vscode-vfs:github/me/rigs/a.rig'],
    ['vscode-remote://wsl%2Bdebian/rigs/a.rig', '/:vscode-remote:wsl%2Bdebian/rigs/a.rig'],
    ['memfs:/a.rig', '/:memfs:/a.rig'],
    ['file:///:vault:x/a.rig', '/:file:/:vault:x/a.rig'],
    ['rigseam-library:/library/materials.rig', 'library/materials.rig'],
  ])('%s is %s', (uri, expected) => {
    expect(pathOf(uri)).toBe(expected);
    expect(URI.parse(uriOf(expected)).toString().replace(/\/$/, '')).toBe(
      URI.parse(uri).toString().replace('C%3A', 'c%3A').replace(/\/$/, ''),
    );
  });

  it.each(['untitled:Untitled-1', 'git:/srv/a.rig?%7B%22ref%22%3A%22HEAD%22%7D', 'vault://h/a.rig#1'])(
    '%s lies nowhere and keeps its URI',
    (uri) => {
      expect(isSomewhere(pathOf(uri))).toBe(false);
      expect(URI.parse(uriOf(pathOf(uri))).toString()).toBe(URI.parse(uri).toString());
    },
  );

  it('come back as the URI that they were made of, whatever the names', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('file', 'vault', 'vscode-vfs', 'x+y.z-1'),
        fc.constantFrom('', 'host', 'a+b@c:80', 'wsl+debian'),
        path,
        (scheme, authority, inner) => {
          const uri = URI.from({ scheme, authority, path: inner });
          const back = URI.parse(uriOf(pathOf(uri)));
          expect([back.scheme, back.authority, back.path]).toEqual([scheme, authority, inner]);
          expect(isVirtual(pathOf(uri))).toBe(scheme !== 'file');
        },
      ),
    );
  });

  it('stand beside each other as the URIs do', () => {
    const here = pathOf('vault://host/rigs/teal.rig');
    expect(uriOf(resolvePath(folderOf(here), '../yard/parts.rig'))).toBe('vault://host/yard/parts.rig');
  });
});
