// How many rigs, and how many with something overdue: what the status bar counts.
import type { Figures } from './figures.ts';

export interface Tally {
  readonly rigs: number;
  readonly overdue: number;
}

export function countDues(figures: Figures): Tally {
  const rigs = figures.rigs.filter(({ view }) => view.rig.kind === 'rig');
  return {
    rigs: rigs.length,
    overdue: rigs.filter((rig) => rig.dues.some((due) => due.status === 'overdue')).length,
  };
}
