import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { check, projectOf, readFolder } from './workspace.ts';

const texts = readFolder(fileURLToPath(new URL('../worked-example', import.meta.url)));

describe('the worked example of the language page', () => {
  it.each(Object.keys(texts))('%s is accepted word for word, with no error', (path) => {
    expect(check(texts, path, '2026-07-10').filter((finding) => finding.severity === 'error')).toEqual([]);
  });

  it('gives the rig everything that it is like and uses', () => {
    const [view] = projectOf(texts).rigs('rigs/heron.rig');
    expect(view?.rig.items.map((item) => item.name)).toEqual([
      'curbside',
      'roadside',
      'front',
      'rear',
      'dinette',
      'bath-vent',
      'skylight',
      'stack-1',
      'stack-2',
      'ladder-feet',
      'drip-rail',
      'air-con',
      'spout-1',
    ]);
    expect(view?.rig.policy.name).toBe('Yard');
    expect(view?.material('EdgeTape4')?.kind).toBe('tape');
    expect(view?.rig.events).toHaveLength(9);
  });

  it('makes a fleet of the rigs that its pattern names', () => {
    const [fleet] = projectOf(texts).fleets('yard/fleet.rig');
    expect(fleet?.fleet.rigs.map((rig) => rig.name)).toEqual(['Heron']);
    expect(fleet?.fleet.crew).toMatchObject({ people: 2, minutes: 480, days: [1, 2, 3, 4, 5] });
  });
});
