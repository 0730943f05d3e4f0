// The blocks of text that may hold the records of a rig.
import type { RigDeclaration } from '../records/file.ts';
import { historiesOf, type Listing } from '../resolve/claims.ts';
import type { Project } from '../resolve/project.ts';
import type { RecordBlock } from './inspection-place.ts';

/** Its own, then its histories by path. */
export function recordBlocksOf(
  project: Project,
  files: Listing,
  declaration: RigDeclaration,
  file: string,
): readonly RecordBlock[] {
  const reading = { records: (path: string) => project.records(path), inside: (path: string) => files.inside(path) };
  const histories = historiesOf({ declaration, file }, files, reading);
  return [{ declaration, file }, ...histories].flatMap((block) => {
    const text = project.text(block.file);
    return text === undefined ? [] : [{ file: block.file, text, start: block.declaration.at[0] }];
  });
}
