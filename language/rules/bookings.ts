// Rules of bookings that are kept in a table or a calendar: what is wrong stands at its row, and the fleet has the sum.
import { mostProblems } from '../records/file.ts';
import { type BookingTable, rigOfRow } from '../resolve/bookings.ts';
import type { Located } from '../resolve/located.ts';
import type { FleetFrame } from '../resolve/types.ts';
import type { TableProblem } from '../tables/columns.ts';
import { nearest } from '../values/nearest.ts';
import type { Member } from './member.ts';
import { family, type RuleEntry } from './rule.ts';

const rules = {
  'bookings-missing': {
    severity: 'error',
    title: 'A file of bookings is not there',
    why: 'The path is seen from the folder of the file that names it, and ends in `.csv` or `.ics`. Without it no booking of the file counts.',
    fix: 'Writes the nearest name of a file that is there.',
  },
  'bookings-twice': {
    severity: 'warning',
    title: 'A file of bookings is named twice',
    why: 'What it books counts once.',
    fix: 'None: one of the two lines can go, or was to name another file.',
  },
  'booking-unreadable': {
    severity: 'error',
    title: 'A row of a file of bookings cannot be read',
    why: 'Each row needs the rig, the first and the last day, as the names of the columns in the first row say. A row that cannot be read is left out; the others count.',
    fix: 'None: only the yard knows what the row is to say.',
  },
  'bookings-left-out': {
    severity: 'error',
    title: 'Rows of a file of bookings are left out',
    why: 'What is wrong stands at each row of the file. Days of rows that are left out count as free.',
    fix: 'None: the rows are mended in their file.',
  },
} as const satisfies Record<string, RuleEntry>;

export const bookings = family(rules);

/** What is wrong with the files of bookings of a fleet, a finding a row, and one for the sum where the fleet names the file. */
export function* checkBookings({ name, file, tables = [] }: FleetFrame, members: readonly Member[]): Iterable<Located> {
  const rigOf = rigOfRow(members);
  for (const table of tables) {
    const { path, written, at, again, read } = table;
    if (again) {
      const message = `\`${written}\` is named before: what it books counts once.`;
      yield { rule: 'bookings-twice', file, at, message };
      continue;
    }
    if (!read) {
      yield { rule: 'bookings-missing', file, ...missing(table) };
      continue;
    }
    const row = ({ at, line, message }: TableProblem, rule: string): Located => ({
      rule,
      file: path,
      at,
      message: `${isCalendar(path) ? 'Event on line' : 'Row'} ${line}: ${message}`,
    });
    const found = read.problems.map((problem) => row(problem, 'booking-unreadable'));
    // With no rig at all the pattern of the fleet is to blame, and says so.
    const strangers = members.length === 0 ? [] : read.rows.filter((one) => rigOf(one) === undefined);
    const said = new Set<string>();
    for (const { labels, labelAt, line } of strangers) {
      if (said.has(`${labelAt}`)) continue;
      said.add(`${labelAt}`);
      found.push(row({ at: labelAt, line, message: unknown(name, labels, members) }, 'booked-unknown'));
    }
    found.sort((a, b) => a.at[0] - b.at[0]);
    const [first] = found;
    if (!first) continue;
    yield* found.slice(0, mostProblems);
    const left = found.length - read.problems.filter(({ harmless }) => harmless).length;
    if (left === 0) continue;
    const kind = isCalendar(path) ? ['event', 'events'] : ['row', 'rows'];
    const sum =
      read.unread || read.count < left
        ? `\`${written}\` cannot be read: what it books counts as free. Mend that file.`
        : `${counted(left)} of ${counted(read.count)} ${kind[read.count === 1 ? 0 : 1]} of \`${written}\` cannot be read: what they book counts as free. Mend them in that file.`;
    yield {
      rule: 'bookings-left-out',
      file,
      at,
      message: sum,
      related: [{ file: path, at: first.at, message: first.message }],
    };
  }
}

const isCalendar = (path: string) => /\.ics$/i.test(path);

function missing({ written, at, path, beside }: BookingTable): Pick<Located, 'at' | 'message' | 'fixes'> {
  if (!/\.(csv|ics)$/i.test(path))
    return { at, message: `Bookings come from a table, \`.csv\`, or a calendar, \`.ics\`; \`${written}\` is neither.` };
  const folder = written.slice(0, written.lastIndexOf('/') + 1);
  const close = nearest(written.slice(folder.length), beside);
  if (close === undefined)
    return { at, message: `There is no file \`${written}\`, seen from the folder of this file.` };
  const better = folder + close;
  return {
    at,
    message: `There is no file \`${written}\`, seen from the folder of this file; did you mean \`${better}\`?`,
    fixes: [{ label: `Write \`${better}\``, at, text: `from "${better}"` }],
  };
}

function unknown(fleet: string, labels: readonly string[], members: readonly Member[]): string {
  const names = members.map(({ name }) => name);
  const close = labels.map((label) => nearest(label, names)).find((one) => one !== undefined);
  const said = labels.map((label) => `\`${label}\``).join(' or ');
  const hint =
    close === undefined ? 'Its name, its unit number or its VIN is written here.' : `Did you mean \`${close}\`?`;
  return `No rig of ${fleet} is called ${said}. ${hint}`;
}

/** `3,400`. */
const counted = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ',');
