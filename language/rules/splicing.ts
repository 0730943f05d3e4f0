// Where a strip of tape that is longer than every roll may be spliced, and the plan as parts that one roll each makes.
import type { Fix, Span } from '../grammar/problem.ts';
import { besideSeam, SPLICE_CLEAR } from '../measure/splicing.ts';
import type { OpenPlan } from '../resolve/done.ts';
import type { Item, Rig } from '../resolve/types.ts';
import { lengthText, type System } from '../values/display.ts';

/** A part of a seam from its beginning, in nanometres. */
type Reach = readonly [from: number, to: number];

/**
 * Where along a side edge a splice may lie between two distances from its front, in nanometres: a foot from the corners and
 * from the openings beside the edge, whose names are `near`.
 */
export function clearOf(
  edge: Item,
  rig: Rig,
  from: number,
  to: number,
): { readonly clear: readonly Reach[]; readonly near: readonly string[] } {
  const beside = besideSeam(edge, rig);
  let clear: Reach[] = [[Math.max(from, SPLICE_CLEAR), Math.min(to, rig.roof!.along.nm - SPLICE_CLEAR)]];
  for (const { span } of beside) {
    const [low, high] = [span[0] - SPLICE_CLEAR, span[1] + SPLICE_CLEAR];
    clear = clear.flatMap(([a, b]): Reach[] => [
      [a, Math.min(b, low)],
      [Math.max(a, high), b],
    ]);
    clear = clear.filter(([a, b]) => a <= b);
  }
  clear = clear.filter(([a, b]) => a <= b);
  return { clear, near: [...new Set(beside.map(({ placed }) => placed.item.name))] };
}

/** A splice is marked on a roof to this. */
const steps: Readonly<Record<System, number>> = { us: 25_400_000, metric: 10_000_000 };

/**
 * Writes an edge that a plan names whole as stretches, each of which a roll makes with an end lap at both ends. `most`: what
 * a stretch may measure, in nanometres. A person may want the splice elsewhere. None where it has no clear place.
 */
export function splitOver(plan: OpenPlan, edge: Item, rig: Rig, most: number): readonly Fix[] {
  const target = plan.statement.targets?.find(({ name, stretch }) => name === edge.name && stretch === undefined);
  if (!target || plan.partly || edge.kind !== 'edge' || !rig.roof || most <= 0) return [];
  const system = rig.policy.units.value;
  const cuts = cutsOf(edge, rig, most, steps[system]);
  if (!cuts) return [];
  const ends = [0, ...cuts, rig.roof.along.nm].map((nm) => lengthText(nm, system));
  const parts = ends.slice(1).map((to, i) => `${edge.name} from ${ends[i]} to ${to}`);
  const label = `Split over ${parts.length} rolls: at ${ends.slice(1, -1).join(' and ')}`;
  const at: Span = target.at;
  return [{ label, at, text: parts.join(', '), unsure: true }];
}

/** As few cuts as can be, each in a clear place, as near to equal parts as these allow. */
function cutsOf(edge: Item, rig: Rig, most: number, step: number): readonly number[] | undefined {
  const whole = rig.roof!.along.nm;
  const { clear } = clearOf(edge, rig, 0, whole);
  const fewest = Math.ceil(whole / most);
  for (let parts = Math.max(2, fewest); parts <= fewest + 2; parts++) {
    const cuts: number[] = [];
    for (let i = 1; i < parts; i++) {
      const before = cuts.at(-1) ?? 0;
      const least = Math.max(before + step, whole - (parts - i) * most);
      const cut = nearestIn(clear, (whole * i) / parts, least, before + most, step);
      if (cut !== undefined) cuts.push(cut);
    }
    if (cuts.length === parts - 1) return cuts;
  }
  return undefined;
}

function nearestIn(clear: readonly Reach[], ideal: number, from: number, to: number, step: number): number | undefined {
  const marks = clear.flatMap(([a, b]) => {
    const [low, high] = [Math.ceil(Math.max(a, from) / step), Math.floor(Math.min(b, to) / step)];
    return low > high ? [] : [Math.min(Math.max(Math.round(ideal / step), low), high) * step];
  });
  return marks.sort((a, b) => Math.abs(a - ideal) - Math.abs(b - ideal))[0];
}
