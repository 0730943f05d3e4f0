// In which class each part of a seam is drawn: by its condition or by what falls due there. Pattern as well as colour.
import type { RigView } from '../../resolve/types.ts';
import { isThere, type RigState, rank, type SeamState, type Stretch } from '../../seams/index.ts';
import { conditions } from '../../statements/words.ts';
import { dueClassing } from './due-classes.ts';

/** A class with its fill. Colours differ in lightness too, so that a copy in grey still tells them apart. */
export interface Class {
  readonly id: string;
  readonly words: string;
  readonly colour: string;
  /** Lines or dots over the colour, as a path in a tile of 2 by 2 mm. */
  readonly marks?: string;
  readonly stroke?: number;
}

export const byCondition: readonly Class[] = [
  { id: 'sound', words: 'sound', colour: '#ffffff' },
  { id: 'chalky', words: 'chalky', colour: '#f4ecb8', marks: 'M0.9 1h0.2', stroke: 0.35 },
  { id: 'hairline', words: 'hairline', colour: '#f3cf7a', marks: 'M-0.5 2.5L2.5 -0.5', stroke: 0.2 },
  { id: 'cracked', words: 'cracked', colour: '#e9a45b', marks: 'M0 0L2 2M2 0L0 2', stroke: 0.25 },
  { id: 'lifting', words: 'lifting', colour: '#d9763f', marks: 'M0.5 0v2M1.5 0v2', stroke: 0.45 },
  { id: 'open', words: 'open', colour: '#111111', marks: 'M0 1h2', stroke: 0 },
  {
    id: 'renewed',
    words: 'new work, not looked at yet',
    colour: '#cfe3f5',
    marks: 'M0 0.5h0.9M1 1.5h0.9',
    stroke: 0.2,
  },
  {
    id: 'not-seen',
    words: 'could not be seen',
    colour: '#e4e4e4',
    marks: 'M0.2 0.2h0.8v0.8h-0.8zM1.2 1.2h0.6v0.6h-0.6z',
    stroke: 0.15,
  },
  {
    id: 'unknown',
    words: 'no condition is recorded',
    colour: '#f6f6f6',
    marks: 'M0 1h0.7M1.3 1h0.7M1 0v0.6M1 1.4v0.6',
    stroke: 0.12,
  },
];

export type By = 'condition' | 'due';

/** The part of a seam between two distances from its beginning, in nanometres, and its class. */
export interface Classed {
  readonly from: number;
  readonly to?: number;
  readonly of: Class;
  readonly wet: boolean;
}

/** How the items of a rig are classed, and in words for the names of their groups. */
export interface Classing {
  readonly classes: readonly Class[];
  /** The parts of an item along its seam; empty where it is not there. */
  readonly parts: (item: string) => readonly Classed[];
  /** The gravest of an item. */
  readonly worst: (item: string) => Classed | undefined;
  readonly words: (item: string) => string;
}

export function classing(view: RigView, state: RigState, by: By): Classing {
  return by === 'condition' ? conditionClassing(state) : dueClassing(view, state);
}

function conditionClassing(state: RigState): Classing {
  const parts = (item: string) => {
    const seam = state.seams.get(item);
    return seam && isThere(seam, state.asOf) ? merged(seam) : [];
  };
  const worst = (item: string) => gravest(parts(item));
  const words = (item: string) => {
    const all = [...new Set(parts(item).map(({ of, wet }) => `${of.words}${wet ? ', wet' : ''}`))];
    const last = state.seams.get(item)?.stretches.find(({ looked }) => looked)?.looked;
    return `${all.join('; ')}${last ? `; last looked at ${last.last}` : ''}`;
  };
  return { classes: byCondition, parts, worst, words };
}

/** The stretches of a seam; neighbours of one class are one part. */
function merged({ stretches }: SeamState): readonly Classed[] {
  const out: Classed[] = [];
  for (const stretch of stretches) {
    const part = { of: conditionOf(stretch), wet: stretch.wet !== undefined };
    const before = out.at(-1);
    const same = before !== undefined && before.of === part.of && before.wet === part.wet;
    const from = same ? before.from : stretch.from;
    if (same) out.pop();
    out.push({ ...part, from, ...(stretch.to === undefined ? {} : { to: stretch.to }) });
  }
  return out;
}

const found = (id: string): Class => byCondition.find((one) => one.id === id)!;

/** What was found there; `not-seen` beats an older finding, unless that was worse than hairline. */
export function conditionOf({ condition, notSeen }: Stretch): Class {
  const word = condition?.word;
  const grave = word !== undefined && word !== 'renewed' && rank(word) > conditions.indexOf('hairline');
  if (notSeen && !grave) return found('not-seen');
  return found(word ?? 'unknown');
}

/** From the gravest to the least: what stands later in the list of conditions is worse, up to `open`. */
const order = ['open', 'lifting', 'cracked', 'not-seen', 'hairline', 'unknown', 'renewed', 'chalky', 'sound'];

function gravest(parts: readonly Classed[]): Classed | undefined {
  return [...parts].sort((a, b) => Number(b.wet) - Number(a.wet) || order.indexOf(a.of.id) - order.indexOf(b.of.id))[0];
}
