import { describe, expect, it } from 'vitest';
import { Estimate, figuresIn } from '../../language/estimate/index.ts';
import { estimate, rigWith } from './asked.ts';
import { recompute } from './recompute.ts';

const all = [
  'edge curbside, roadside',
  'cap front',
  'cap rear wide 3 in',
  'slide dinette 11 ft by 3 ft 6 in on roadside at 9 ft',
  'opening vent 16 in by 16 in at 18 ft, 2 ft and 8 ft, 2 ft',
  'opening pipe cutout round 2 in flange 2 1/2 in at 20 ft, 6 ft',
  'mount ladder-feet 3 in by 4 in at 27 ft, 1 ft and 27 ft, 3 ft',
  'mount dish round 9 in at 5 ft, 4 ft',
  'joint drip-rail 26 ft',
  'comes-off vent',
  'on-hand Tape4 18 ft, Lap 2 cartridges, Wipe 1/2 qt',
  'strip vent',
  'tape edges, caps, slides, vent, pipe with Tape4',
  'tape drip-rail from 2 ft to 9 ft with Tape4',
  'seal openings, mounts, drip-rail with Lap',
  'inspect before 2026-12-31',
];

describe.each([
  ['US', rigWith(...all)],
  ['metric', rigWith(...all).replace('policy Shop {', 'policy Shop {\n  units metric\n  tax 19 % on all')],
  [
    'short laps, beads of other sections',
    rigWith(...all)
      .replace('policy Shop {', 'policy Shop {\n  frame short-lap\n  smother none\n  bead-line flange')
      .replace('bead      1 in by 1/4 in', 'bead      1 in by 1/4 in dome'),
  ],
])('every figure of an estimate (%s)', (_, text) => {
  const whole = estimate(text);
  const figures = [...figuresIn(whole)];

  it('comes out again from its own formula and inputs', () => {
    expect(figures.length).toBeGreaterThan(150);
    const wrong = figures.filter((figure) => {
      const again = recompute(figure);
      return Math.abs(again - figure.value) > 1e-9 * Math.max(1, Math.abs(figure.value));
    });
    expect(wrong).toEqual([]);
  });

  it('fits the form of the document and survives JSON', () => {
    const sent = JSON.parse(JSON.stringify(whole));
    expect(sent).toEqual(whole);
    expect(Estimate.parse(sent)).toEqual(whole);
  });

  it('names where its assumptions come from', () => {
    expect(whole.assumptions.length).toBeGreaterThan(10);
    for (const { name, file, kind } of whole.assumptions) {
      expect(kind).not.toBe('record');
      // One pass of a liquid is custom, which no line of the library says: it points to the user's material.
      if (!file.startsWith('library/')) expect([name, kind]).toEqual(['passes', 'common practice']);
    }
    // Of a rate with three points it names the likely one.
    expect(whole.assumptions).toContainEqual(
      expect.objectContaining({ name: 'lay rate', text: '40 ft per h', kind: 'from memory' }),
    );
    const names = whole.assumptions.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['margin', 'wash rate', 'spare', 'opening band']));
    expect(names.filter((name) => /\d/.test(name))).toEqual([]);
  });
});
