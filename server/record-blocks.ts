// The blocks of text that may hold the records of a rig.
import type { RecordBlock } from '../language/authoring/inspection-place.ts';
import { historiesOf } from '../language/resolve/claims.ts';
import type { RigFigures } from './figures.ts';
import type { Session } from './session.ts';

/** Its own, then its histories by path. */
export function blocksOf({ project, files }: Session, { view: { rig } }: RigFigures): readonly RecordBlock[] {
  const declaration = project.records(rig.file)?.declarations.find(({ at }) => at[0] === rig.at[0]);
  if (declaration?.kind !== 'rig') return [];
  const reading = { records: (path: string) => project.records(path), inside: (path: string) => files.inside(path) };
  const histories = historiesOf({ declaration, file: rig.file }, files, reading);
  return [{ declaration, file: rig.file }, ...histories].flatMap(({ declaration: { at }, file }) => {
    const text = project.text(file);
    return text === undefined ? [] : [{ file, text, start: at[0] }];
  });
}
