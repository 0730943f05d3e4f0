// Seams by what falls due there first: bands of time, from overdue to nothing known.
import { type Due, duesOf } from '../../due/index.ts';
import type { RigView } from '../../resolve/types.ts';
import { isThere, type RigState } from '../../seams/index.ts';
import { addPeriod } from '../../values/calendar.ts';
import type { Class, Classed, Classing } from './classes.ts';

const byDue: readonly Class[] = [
  { id: 'overdue', words: 'overdue', colour: '#111111', marks: 'M0 1h2', stroke: 0 },
  { id: 'due', words: 'due today', colour: '#d9763f', marks: 'M0.5 0v2M1.5 0v2', stroke: 0.45 },
  { id: 'soon', words: 'due soon', colour: '#f3cf7a', marks: 'M-0.5 2.5L2.5 -0.5', stroke: 0.2 },
  { id: 'half-year', words: 'due within 6 months', colour: '#cfe3f5', marks: 'M0.9 1h0.2', stroke: 0.35 },
  { id: 'later', words: 'due later', colour: '#ffffff' },
  {
    id: 'none',
    words: 'nothing is due that is known',
    colour: '#f6f6f6',
    marks: 'M0 1h0.7M1.3 1h0.7M1 0v0.6M1 1.4v0.6',
    stroke: 0.12,
  },
];

const halfYear = { months: 6, days: 0 };

/** What only says from or until when something holds asks for no work. */
const noWork: ReadonlySet<Due['kind']> = new Set(['cover', 'tape-second-half', 'best-before', 'quote']);

/** What asks for work on a rig, by date, as of the date of its state. */
export const workDues = (view: RigView, state: RigState): readonly Due[] =>
  duesOf(view, { asOf: state.asOf, today: state.asOf }, state).filter(({ kind }) => !noWork.has(kind));

/** The items that a due is about; none where it is about the whole rig. */
export const itemsOf = ({ item, items }: Due): readonly string[] => items ?? (item === undefined ? [] : [item]);

/** The first due of each item that has one of its own. */
export function firstDues(dues: readonly Due[]): ReadonlyMap<string, Due> {
  const first = new Map<string, Due>();
  for (const due of dues) {
    for (const item of itemsOf(due)) if (!first.has(item)) first.set(item, due);
  }
  return first;
}

export function dueClassing(view: RigView, state: RigState): Classing {
  const first = firstDues(workDues(view, state));
  const far = addPeriod(state.asOf, halfYear);
  const bandOf = (due: Due | undefined): string => {
    if (due === undefined) return 'none';
    if (due.status !== 'not-due') return due.status;
    return due.date <= far ? 'half-year' : 'later';
  };
  const classOf = (item: string) => byDue.find(({ id }) => id === bandOf(first.get(item)))!;
  const parts = (item: string): readonly Classed[] => {
    const seam = state.seams.get(item);
    return seam && isThere(seam, state.asOf) ? [{ from: 0, of: classOf(item), wet: false }] : [];
  };
  const words = (item: string) => {
    const due = first.get(item);
    return due ? `${classOf(item).words}: ${due.date}, ${due.because}` : classOf(item).words;
  };
  return { classes: byDue, parts, worst: (item) => parts(item)[0], words };
}
