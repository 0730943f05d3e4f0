import { describe, expect, it } from 'vitest';
import { blockOpenedBy, headingMeant, unknownBlock } from '../../language/grammar/kinds.ts';
import { layoutOptions } from '../../language/statements/layout-kinds.ts';

const { root } = layoutOptions;

describe('the heading that is meant', () => {
  it.each([
    ['rig', undefined, 'rig'],
    ['ri', 'unit', 'rig'],
    ['rgi', undefined, 'rig'],
    ['Rig', undefined, 'rig'],
    ['sealent', undefined, 'sealant'],
    ['se', 'family', 'sealant'],
    ['p', 'inspect', 'policy'],
    ['xyz', 'end-lap', 'tape'],
    ['xyz', 'family', undefined], // four kinds of material have one
    ['xyz', undefined, undefined],
    ['', undefined, undefined],
  ])('%s before %s: %s', (head, inside, meant) => {
    expect(headingMeant(root, head, inside)).toBe(meant);
    expect(blockOpenedBy(root, head, inside)).toBe(meant === undefined ? unknownBlock : root.blocks.get(meant));
  });
});
