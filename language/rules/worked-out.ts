// What several rules need of one rig, worked out once: its state, each record with the state before it.
import { type RigState, rigState, type Step } from '../seams/index.ts';
import { once, type RigContext } from './rule.ts';

export interface WorkedOut {
  readonly state: RigState;
  readonly steps: readonly Step[];
}

/** The rig's state on the as-of date and the steps that lead there. */
export const workedOut = (context: RigContext): WorkedOut => once(context, workOut);

function workOut({ view, dates }: RigContext): WorkedOut {
  const steps: Step[] = [];
  const state = rigState(view, dates.asOf, (step) => steps.push(step));
  return { state, steps };
}
