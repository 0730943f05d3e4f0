import { describe, expect, it } from 'vitest';
import { nextNote } from '../../client/roof-plan/note.ts';
import type { RoofPlan } from '../../language/protocol/index.ts';

const plan = (asOf: string, unread = false): RoofPlan => ({
  name: 'Wren',
  asOf,
  drawings: { condition: { svg: '', legend: [] }, due: { svg: '', legend: [] } },
  seams: [],
  notes: [],
  unread,
});

describe('which plan is shown', () => {
  it('is the new one, when all could be read', () => {
    expect(nextNote(undefined, plan('b'), 'Wren')).toEqual({ plan: plan('b'), note: '' });
    expect(nextNote(plan('a'), plan('b'), 'Wren')).toEqual({ plan: plan('b'), note: '' });
    expect(nextNote(plan('a', true), plan('b'), 'Wren')).toEqual({ plan: plan('b'), note: '' });
  });

  it('is the last good one while something cannot be read, and says so', () => {
    const shown = nextNote(plan('a'), plan('b', true), 'Wren');
    expect(shown.plan).toEqual(plan('a'));
    expect(shown.note).toMatch(/cannot be read.*from before/);
    // And stays so for as long as it takes.
    expect(nextNote(shown.plan, plan('c', true), 'Wren')).toEqual(shown);
  });

  it('is what could be read, where there was never more', () => {
    expect(nextNote(undefined, plan('b', true), 'Wren')).toMatchObject({ plan: plan('b', true) });
    expect(nextNote(plan('b', true), plan('c', true), 'Wren').plan).toEqual(plan('c', true));
    expect(nextNote(undefined, plan('b', true), 'Wren').note).toMatch(/missing here/);
  });

  it('is the one before where the rig is gone', () => {
    expect(nextNote(plan('a'), null, 'Wren')).toMatchObject({
      plan: plan('a'),
      note: expect.stringMatching(/no rig `Wren`/),
    });
    expect(nextNote(undefined, null, 'Wren')).toEqual({ note: 'The file has no rig `Wren` now.' });
  });
});
