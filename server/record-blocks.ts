// The blocks of text that may hold the records of a rig that was looked at.
import type { RecordBlock } from '../language/authoring/inspection-place.ts';
import { recordBlocksOf } from '../language/authoring/record-blocks.ts';
import type { RigFigures } from './figures.ts';
import type { Session } from './session.ts';

/** Its own, then its histories by path. */
export function blocksOf({ project, files }: Session, { view: { rig } }: RigFigures): readonly RecordBlock[] {
  const declaration = project.records(rig.file)?.declarations.find(({ at }) => at[0] === rig.at[0]);
  return declaration?.kind === 'rig' ? recordBlocksOf(project, files, declaration, rig.file) : [];
}
