// A number of things, such as `12 cartridges`.
import { Counted, readCounted } from '../../values/numbers.ts';
import { type Cursor, expected, peek, refuse } from '../cursor.ts';
import type { Slot } from '../slot.ts';

export const counted: Slot<Counted> = {
  what: 'a number of things',
  example: '12 cartridges',
  schema: Counted,
  offers: [{ kind: 'units', units: ['cartridges', 'rolls', 'pieces'] }],
  accepts: (part) => part.kind === 'quantity',
  read(cursor: Cursor) {
    const part = peek(cursor);
    if (part?.kind !== 'quantity') return expected(cursor, 'a number of things', '12 cartridges');
    cursor.index++;
    const got = readCounted(part);
    if (got.ok) return got.value;
    return refuse(cursor, 'wrong-value', got, part.at);
  },
};
