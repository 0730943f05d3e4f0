// The names that stand in a text: where, and what kind of thing each may stand for. Words in quotes and remarks are none.
import type { Line } from '../../language/grammar/lines.ts';
import type { Span } from '../../language/grammar/problem.ts';
import { fileTable } from '../../language/statements/file.ts';
import { nameText } from '../../language/statements/slots/words.ts';
import { type Slotted, slottedParts } from '../cursor/slotted.ts';
import { allStatements, type Statement, statementOf } from '../cursor/standing.ts';

/** What a name does where it stands. */
export type Role =
  /** The name of a declaration, a history's being that of its rig. */
  | 'declaration'
  | 'history'
  | 'item'
  | 'bay'
  | 'yard'
  /** A crew where it is declared, and where one is named. */
  | 'crew'
  | 'of-crew'
  /** The former name of a rig or an item. */
  | 'former'
  | 'seam'
  /** An item that is dropped: it is one of what the declaration is like. */
  | 'dropped'
  | 'material'
  | 'surface'
  | 'policy'
  | 'group'
  /** A group or a rig that a yard serves. */
  | 'served'
  | 'base'
  | 'rig'
  | 'rule';

export interface Mention {
  readonly name: string;
  readonly at: Span;
  readonly role: Role;
  /** The outermost statement around it. */
  readonly outer: Statement;
}

/** Every name of a text that has been read into lines. */
export function* mentionsIn(lines: readonly Line[]): Iterable<Mention> {
  for (const line of lines) {
    const outer = statementOf(line, fileTable);
    for (const statement of allStatements([line])) yield* mentionsOf(statement, outer);
  }
}

/** The names of one statement. */
export function* mentionsOf(statement: Statement, outer: Statement): Iterable<Mention> {
  for (const slotted of slottedParts(statement)) {
    const role = roleOf(slotted, statement);
    if (!role) continue;
    for (const part of slotted.parts) {
      if (part.kind !== 'word') continue;
      yield { name: nameText(part.text), at: part.at, role, outer };
    }
  }
}

/** What a new name is by the word of its line, where it is neither a declaration nor an item. */
const roleOfWord: Readonly<Record<string, Role>> = { formerly: 'former', bay: 'bay', yard: 'yard', crew: 'crew' };

/** What the names of a value are. */
export function roleOf({ slot, field, clause }: Slotted, { row, table }: Statement): Role | undefined {
  if (!row) return undefined;
  // The sides are words of a closed list, and yet they are what an edge or a cap is called.
  if ((row.word === 'edge' || row.word === 'cap') && !clause && (field === 'names' || field === 'name')) return 'item';
  for (const { kind } of slot.offers) {
    switch (kind) {
      case 'new-name':
        if (table === fileTable) return row.word === 'history' ? 'history' : 'declaration';
        if (row.class === 'item') return 'item';
        return roleOfWord[row.word];
      case 'seams':
        return row.word === 'without' ? 'dropped' : 'seam';
      case 'materials':
        return 'material';
      case 'surfaces':
        return 'surface';
      case 'policies':
        return 'policy';
      case 'groups':
        return row.word === 'serves' ? 'served' : 'group';
      case 'crews':
        return 'of-crew';
      case 'bases':
        return 'base';
      case 'rigs':
        return 'rig';
      case 'rules':
        return 'rule';
    }
  }
  return undefined;
}
