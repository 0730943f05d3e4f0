// The words of a finding and how to tell them apart, so that two people find the same.
import type { Element } from './element.ts';
import { table } from './marks.ts';

const heads = ['word', 'sealant', 'tape', 'membrane', 'fastener', 'gasket or part'];

/** Common practice and from memory; the thumbnail check has a published parent in the adhesion practice for sealants. */
const rows: readonly (readonly string[])[] = [
  [
    'sound',
    'as laid, edges down',
    'edges down all round',
    'even, no marks',
    'tight, bright',
    'even, about half height',
  ],
  [
    'chalky',
    'rubs off on a thumb, stiff, faded',
    'facing faded, dirt line at the edge',
    'chalks, stained',
    'dull',
    'hard, faded; dome yellow',
  ],
  [
    'hairline',
    'cracks under 1 mm (1/32 in), shallow',
    'wrinkle or edge lift under 3 mm (1/8 in), not through',
    'surface crazing, scuff',
    'surface rust',
    'flattened; dome crazed',
  ],
  [
    'cracked',
    'over 1 mm, or through more than half its depth',
    'edge lift 3 to 12 mm (1/8 to 1/2 in), blister under 25 mm (1 in), fish-mouth closed',
    'cut not through, scrim seen, blister',
    'backed out one turn, head rusted',
    'bolts loose, gasket split part-way; dome cracked',
  ],
  [
    'lifting',
    'edge or end comes up with a thumbnail',
    'lift over 12 mm (1/2 in), fish-mouth open',
    'loose, flapping, shrunk back',
    'loose in the wood',
    'a gap is seen',
  ],
  ['open', 'daylight, hole, missing', 'gone, torn through', 'hole, tear', 'missing', 'water passes'],
];

/** What is looked at: each has gauges of its own. */
export const gauged = ['sealant', 'tape', 'membrane', 'fastener', 'part'] as const;
export type Gauged = (typeof gauged)[number];

/** How a condition is told at such a thing; empty for a word that has no gauge. */
export const gaugeOf = (word: string, at: Gauged): string =>
  rows.find(([name]) => name === word)?.[gauged.indexOf(at) + 1] ?? '';

export const gaugeTable = (): Element => table('The words and their gauges', heads, rows);
