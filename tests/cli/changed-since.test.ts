// `--changed-since` on a real repository: what changed, what depends on it, and nothing else.
import { mkdirSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createProject } from '../../language/resolve/project.ts';
import { affectedBy, changedSince } from '../../server/cli/changed.ts';
import { check, checked, printed } from '../../server/cli/check.ts';
import { asked, diskOf, Misuse } from '../../server/cli/paths.ts';
import { emptyFolder, type TestRepository, testRepository } from './repository.ts';

const dates = { asOf: '2026-11-25', today: '2026-11-25' };
const rig = (name: string, more = '') => `use "../materials.rig"

rig ${name} {
  roof     18 ft by 8 ft  epdm
  edge     curbside, roadside  wide 2 in
  records  "${name.toLowerCase()}/*.rig"
${more}}
`;

let repository: TestRepository;
beforeEach(() => {
  repository = testRepository({
    'materials.rig': 'sealant GreyLap {\n  family  solvent-lap\n}\n',
    'rigs/wren.rig': rig('Wren'),
    'rigs/wren/2025.rig': 'history Wren {\n  washed 2025-04-01\n}\n',
    'rigs/gull.rig': rig('Gull', '  found  2025-04-01 curbside cracked photo "edge.jpg"\n'),
    'rigs/edge.jpg': 'picture',
    'yard/fleet.rig': 'fleet Yard {\n  rigs  "../rigs/*.rig"\n}\n',
    'other/tern.rig': 'rig Tern {\n  roof  18 ft by 8 ft  epdm\n  cap   frnt\n}\n',
  });
});
afterEach(() => repository.end());

function affected(revision = 'HEAD'): readonly string[] {
  const what = asked([repository.folder], repository.folder);
  const disk = diskOf(what);
  const changed = changedSince(what.roots, revision);
  return affectedBy(changed, what.files, createProject(disk), disk).map((path) => relative(repository.folder, path));
}

describe('what a change affects', () => {
  it('is nothing where nothing changed', () => {
    expect(affected()).toEqual([]);
  });

  it('is the file itself, and the fleet that lists it', () => {
    repository.replace('rigs/gull.rig', '2 in', '3 in');
    expect(affected()).toEqual(['rigs/gull.rig', 'yard/fleet.rig']);
    repository.git('add', '--all');
    expect(affected()).toEqual(['rigs/gull.rig', 'yard/fleet.rig']);
  });

  it('is all rigs that use changed materials', () => {
    repository.replace('materials.rig', 'solvent-lap', 'hybrid-lap');
    expect(affected()).toEqual(['materials.rig', 'rigs/gull.rig', 'rigs/wren.rig', 'yard/fleet.rig']);
  });

  it('is the rig whose history changed, came or went', () => {
    const wren = ['rigs/wren.rig', 'rigs/wren/2025.rig', 'yard/fleet.rig'];
    repository.replace('rigs/wren/2025.rig', '04-01', '04-02');
    expect(affected()).toEqual(wren);
    repository.remove('rigs/wren/2025.rig');
    expect(affected()).toEqual(['rigs/wren.rig', 'yard/fleet.rig']);
    repository.commit('gone');
    repository.write({ 'rigs/wren/2026.rig': 'history Wren {\n  washed 2026-04-01\n}\n' });
    expect(affected()).toEqual(['rigs/wren.rig', 'rigs/wren/2026.rig', 'yard/fleet.rig']);
  });

  it('is both ends of a renamed file, and whoever used the old name', () => {
    repository.move('materials.rig', 'shop/materials.rig');
    expect(affected()).toEqual(['rigs/gull.rig', 'rigs/wren.rig', 'shop/materials.rig', 'yard/fleet.rig']);
  });

  it('is the rig that names a photo that went', () => {
    repository.remove('rigs/edge.jpg');
    expect(affected()).toEqual(['rigs/gull.rig', 'yard/fleet.rig']);
  });

  it('counts from the revision, over commits', () => {
    repository.replace('rigs/gull.rig', '2 in', '3 in');
    repository.commit('second');
    repository.replace('other/tern.rig', 'frnt', 'front');
    expect(affected()).toEqual(['other/tern.rig']);
    expect(affected('HEAD~1')).toEqual(['other/tern.rig', 'rigs/gull.rig', 'yard/fleet.rig']);
  });

  it('is found from a folder below as well', () => {
    repository.replace('rigs/gull.rig', '2 in', '3 in');
    const what = asked([join(repository.folder, 'rigs')], repository.folder);
    expect([...changedSince(what.roots, 'HEAD')]).toEqual([join(repository.folder, 'rigs/gull.rig')]);
  });
});

describe('the check of it', () => {
  it('says of the affected files what a whole check says of them, and of others nothing', () => {
    const what = asked([repository.folder], repository.folder);
    repository.replace('materials.rig', 'family', 'famly');
    const all = check(what, dates).findings;
    const some = printed(checked(what, dates, { changed: changedSince(what.roots, 'HEAD') }));
    expect(all.some(({ file }) => file === 'other/tern.rig')).toBe(true);
    expect(some.files).toBe(4);
    expect(some.findings.length).toBeGreaterThan(0);
    expect(some.findings).toEqual(all.filter(({ file }) => file !== 'other/tern.rig'));
  });

  it('refuses what is no revision, in words', () => {
    const { roots } = asked([repository.folder], repository.folder);
    for (const revision of ['nowhere', '', '--output=x', 'HEAD:materials.rig'])
      expect(() => changedSince(roots, revision), revision).toThrow(Misuse);
    expect(() => changedSince(roots, 'nowhere')).toThrow('git knows no revision `nowhere`');
  });

  it('says where there is no repository, and where there is no git', () => {
    const folder = emptyFolder();
    mkdirSync(join(folder, 'a'));
    expect(() => changedSince([folder], 'HEAD')).toThrow('lies in no git repository');
    rmSync(folder, { recursive: true });
    const { PATH } = process.env;
    process.env.PATH = '';
    try {
      expect(() => changedSince([repository.folder], 'HEAD')).toThrow('git could not be started');
    } finally {
      process.env.PATH = PATH;
    }
  });
});
