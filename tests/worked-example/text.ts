import { readFileSync } from 'node:fs';

const files = ['yard/materials.rig', 'yard/policy.rig', 'rigs/models.rig', 'rigs/heron.rig', 'yard/fleet.rig'] as const;

/** The text of one file of the worked example. */
export const exampleFile = (path: (typeof files)[number]): string =>
  readFileSync(new URL(path, import.meta.url), 'utf8');

/** The worked example as one text: a file may hold a whole yard. */
export const wholeExample: string = files.map(exampleFile).join('\n');
