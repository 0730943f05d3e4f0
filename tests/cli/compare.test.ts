// `rigseam compare` on a real repository: renamed files, moved rigs, changed prices, a finding added.
import { readFileSync, rmdirSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { compareMarkdown } from '../../language/compare/index.ts';
import { compareRevisions } from '../../server/cli/compare.ts';
import { readFolder } from '../project/workspace.ts';
import { emptyFolder, type TestRepository, testRepository } from './repository.ts';

const dates = { asOf: '2026-11-25', today: '2026-11-25' };
const nothing = { shared: [], rigs: [], fleets: [], money: [] };
const prefixed = (folder: string) =>
  Object.fromEntries(
    Object.entries(readFolder(`examples/${folder}`)).map(([path, text]) => [`${folder}/${path}`, text]),
  );

let repository: TestRepository;
beforeEach(() => {
  repository = testRepository({ ...prefixed('single'), ...prefixed('fleet') });
});
afterEach(() => repository.end());

const compare = (options: { readonly from: string; readonly to?: string } = { from: 'HEAD' }, path = '.') =>
  compareRevisions([join(repository.folder, path)], dates, options);
const valid = new Ajv2020({ strict: false, formats: { date: true } }).compile(
  JSON.parse(readFileSync(new URL('../../client/schemas/compare.schema.json', import.meta.url), 'utf8')),
);

describe('is no change', () => {
  it('where nothing was done', async () => {
    expect(await compare()).toMatchObject({ ...nothing, from: 'HEAD', to: 'the working tree' });
  });

  it('a renamed file and a moved rig with its history', async () => {
    repository.move('single/wren.rig', 'single/bird.rig');
    repository.move('fleet/rigs/fell.rig', 'fleet/rigs/fell-2.rig');
    repository.move('single/materials.rig', 'single/shop/goods.rig');
    repository.replace('single/policy.rig', '"materials.rig"', '"shop/goods.rig"');
    const after = repository.commit('moved');
    expect(await compare({ from: 'HEAD~1', to: after })).toMatchObject(nothing);
    expect(await compare({ from: 'HEAD~1' })).toMatchObject(nothing);
  });

  it('line ends of another system and a mark of byte order', async () => {
    const text = readFileSync(join(repository.folder, 'single/wren.rig'), 'utf8');
    repository.write({ 'single/wren.rig': `\uFEFF${text.replaceAll('\n', '\r\n')}` });
    expect(await compare()).toMatchObject(nothing);
  });

  it('what lies outside of what is compared', async () => {
    repository.remove('fleet/rigs/glen.rig');
    expect(await compare({ from: 'HEAD' }, 'single')).toMatchObject(nothing);
  });
});

describe('is told', () => {
  it('a price, in every rig that buys at it and nowhere else, and what it costs', async () => {
    repository.replace('single/materials.rig', '58.50 USD', '64.50 USD');
    const { shared, rigs, fleets, money } = await compare();
    expect(shared.map(({ name }) => name)).toEqual(['SeamStrip4']);
    expect(rigs.map(({ name }) => name)).toEqual(['Wren']);
    expect(rigs[0]?.records).toEqual([]);
    expect(fleets).toEqual([]);
    const [buy] = rigs[0]?.buy ?? [];
    expect(buy).toMatchObject({ costBefore: { amount: '58.50' }, costAfter: { amount: '64.50' } });
    expect(Number(money[0]?.difference.amount)).toBeGreaterThanOrEqual(6);
  });

  it('a finding in a history, between two commits, with what falls due', async () => {
    repository.replace('single/wren/2026.rig', '    roadside    chalky', '    roadside    cracked');
    const later = repository.commit('found');
    repository.remove('fleet/rigs/glen.rig');
    const comparison = await compare({ from: `${later}~1`, to: later });
    expect(comparison).toMatchObject({ shared: [], fleets: [] });
    expect(comparison.rigs).toMatchObject([
      {
        name: 'Wren',
        file: 'single/wren.rig',
        records: [
          {
            kind: 'finding',
            before: 'inspected 2026-10-10: roadside chalky',
            after: 'inspected 2026-10-10: roadside cracked',
          },
        ],
      },
    ]);
    expect(comparison.rigs[0]?.dues).toContainEqual(
      expect.objectContaining({ title: expect.stringContaining('roadside'), after: expect.any(String) }),
    );
    expect(compareMarkdown(comparison)).toContain('roadside chalky → inspected 2026-10-10: roadside cracked');
  });

  it('a rig that is gone from the tree, also where only its path is named', async () => {
    repository.remove('fleet/rigs/glen.rig');
    const { rigs, fleets } = await compare();
    expect(rigs).toMatchObject([{ name: 'Glen', change: 'removed', file: 'fleet/rigs/glen.rig' }]);
    expect(fleets).toMatchObject([{ change: 'changed', left: ['Glen'] }]);
    expect((await compare({ from: 'HEAD' }, 'fleet/rigs/glen.rig')).rigs).toHaveLength(1);
  });

  it('a file that git does not know yet', async () => {
    repository.write({ 'single/ö "new" rig.rig': 'rig Tern {\n  roof  18 ft by 8 ft  epdm\n}\n' });
    expect((await compare()).rigs).toMatchObject([{ name: 'Tern', change: 'added', file: 'single/ö "new" rig.rig' }]);
    repository.commit('new');
    expect(await compare()).toMatchObject(nothing);
    expect((await compare({ from: 'HEAD~1', to: 'HEAD' })).rigs).toMatchObject([{ name: 'Tern', change: 'added' }]);
  });

  it('all of it in the published form, the same way from the other side', async () => {
    repository.replace('single/materials.rig', '58.50 USD', '64.50 USD');
    repository.remove('fleet/rigs/glen.rig');
    const after = repository.commit('changed');
    const there = await compare({ from: 'HEAD~1', to: after });
    const back = await compare({ from: after, to: 'HEAD~1' });
    for (const comparison of [there, back]) {
      valid(JSON.parse(JSON.stringify(comparison)));
      expect(valid.errors).toBe(null);
    }
    expect(JSON.stringify(there)).not.toContain(repository.folder);
    expect(back.money.map(({ before, after: end }) => [end.amount, before.amount])).toEqual(
      there.money.map(({ before, after: end }) => [before.amount, end.amount]),
    );
    expect(back.rigs.find(({ name }) => name === 'Glen')?.change).toBe('added');
  });
});

describe('is refused', () => {
  it('a revision that is none', async () => {
    await expect(compare({ from: 'nowhere' })).rejects.toThrow('git knows no revision `nowhere`');
    await expect(compare({ from: 'HEAD', to: '--all' })).rejects.toThrow('git knows no revision `--all`');
  });

  it('a path without records on either side', async () => {
    await expect(compare({ from: 'HEAD' }, 'nothing/here')).rejects.toThrow('neither before nor after');
  });

  it('what lies in two repositories, or in none', async () => {
    const other = testRepository({ 'a.rig': 'rig Tern {\n}\n' });
    try {
      const both = [repository.folder, other.folder];
      await expect(compareRevisions(both, dates, { from: 'HEAD' })).rejects.toThrow('several repositories');
    } finally {
      other.end();
    }
    const none = emptyFolder();
    await expect(compareRevisions([none], dates, { from: 'HEAD' })).rejects.toThrow('in no git repository');
    rmdirSync(none);
  });
});
