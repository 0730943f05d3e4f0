// What is computed from one file: its rigs with their state, what falls due, what the work costs, each worked out when first asked for.
import { type Due, duesOf } from '../language/due/index.ts';
import { type Estimate, estimateOf } from '../language/estimate/index.ts';
import type { FileRecords } from '../language/records/file.ts';
import type { Project, ResolvedFleet } from '../language/resolve/project.ts';
import type { Dates, RigView } from '../language/resolve/types.ts';
import type { RigContext } from '../language/rules/rule.ts';
import { workedOut } from '../language/rules/worked-out.ts';
import { type Schedule, scheduleOfRig } from '../language/schedule/index.ts';
import { type RigState, rigState } from '../language/seams/index.ts';

export interface RigFigures {
  readonly view: RigView;
  /** The rig as the rules see it, with what they work out of it once. */
  readonly context: RigContext;
  readonly state: RigState;
  /** The state on any day, an ISO date. */
  stateOn(day: string): RigState;
  readonly dues: readonly Due[];
  readonly estimate: Estimate;
  readonly schedule: Schedule;
}

export interface Figures {
  readonly records: FileRecords | undefined;
  /** The rigs and models that the file declares, in its order. */
  readonly rigs: readonly RigFigures[];
  readonly fleets: readonly ResolvedFleet[];
}

export function figuresOf(project: Project, path: string, dates: Dates): Figures {
  return lazily({
    records: () => project.records(path),
    rigs: () => project.rigs(path).map((view) => rigFigures(view, dates)),
    fleets: () => project.fleets(path),
  });
}

export function rigFigures(view: RigView, dates: Dates): RigFigures {
  const others = new Map<string, RigState>();
  const figures: RigFigures = lazily({
    view: () => view,
    context: () => ({ view, dates, remembered: new Map() }),
    state: () => workedOut(figures.context).state,
    stateOn: () => (day) => {
      if (day === dates.asOf) return figures.state;
      const state = others.get(day) ?? rigState(view, day);
      others.set(day, state);
      return state;
    },
    dues: () => duesOf(view, dates, figures.state),
    estimate: () => estimateOf(view, dates),
    schedule: () => scheduleOfRig(view, dates),
  });
  return figures;
}

/** An object whose fields are made when first read, and kept. */
function lazily<T extends object>(makers: { readonly [K in keyof T]: () => T[K] }): T {
  const made = {} as T;
  for (const key of Object.keys(makers) as (keyof T & string)[]) {
    Object.defineProperty(made, key, {
      enumerable: true,
      configurable: true,
      get() {
        const value = makers[key]();
        Object.defineProperty(made, key, { value, enumerable: true });
        return value;
      },
    });
  }
  return made;
}
