// What several rules need of one rig, worked out once: its state, each record with the state before it.
import { type RigState, rigState, type Step } from '../seams/index.ts';
import type { RigContext } from './rule.ts';

export interface WorkedOut {
  readonly state: RigState;
  readonly steps: readonly Step[];
}

const known = new WeakMap<RigContext, WorkedOut>();

/** The rig's state on the as-of date and the steps that lead there. */
export function workedOut(context: RigContext): WorkedOut {
  let got = known.get(context);
  if (!got) {
    const steps: Step[] = [];
    const state = rigState(context.view, context.dates.asOf, (step) => steps.push(step));
    got = { state, steps };
    known.set(context, got);
  }
  return got;
}
