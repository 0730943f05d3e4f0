// Plain simulation of the same courses, written apart from the engine: it draws lives in continuous time and counts.
import type { Frame, Renewals, ThreePoint, Work, Yearly } from '../../language/lifecost/index.ts';

/** Mulberry32, a small generator in the public domain: even numbers from 0 to 1, the same for the same seed. */
export function dice(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A triangular figure by rejection: a point in the box is kept if it lies under the triangle. */
export function drawn({ least, likely, most }: ThreePoint, roll: () => number): number {
  if (least === most) return least;
  for (;;) {
    const x = least + (most - least) * roll();
    const height = x < likely ? (x - least) / (likely - least) : likely === most ? 1 : (most - x) / (most - likely);
    if (roll() <= height) return x;
  }
}

/** A life as it is booked: begun at any time of its year, ended in the year it ends in, one year at the least. */
function bookedLife(points: ThreePoint, roll: () => number): number {
  return Math.max(1, Math.floor(roll() + drawn(points, roll)));
}

/** What happens in one possible course of the years. */
export interface Run {
  readonly worth: number;
  readonly works: number;
}

/** One run of a course whose works have the given lives (lead, then cycle), in the order of its steps. */
export function runOf(
  course: Pick<Renewals, 'lead' | 'cycle'>,
  lives: readonly ThreePoint[],
  frame: Frame,
  roll: () => number,
  time: 'booked' | 'true' = 'booked',
): Run {
  const works: Work[] = [...course.lead, ...course.cycle].map((step) => step.work);
  let [year, index, worth, count] = [0, 0, 0, 0];
  while (year < frame.years && index < works.length) {
    const { material, labour, days } = works[index]!;
    worth += (material + labour + days * frame.dayRate) / (1 + frame.rate) ** year;
    count++;
    year += time === 'booked' ? bookedLife(lives[index]!, roll) : drawn(lives[index]!, roll);
    index = index + 1 < works.length || course.cycle.length === 0 ? index + 1 : course.lead.length;
  }
  return { worth, works: count };
}

/** One run of a yearly work. */
export function yearlyRun({ work, share, drawn: when }: Yearly, frame: Frame, roll: () => number): number {
  const whole = work.material + work.labour + work.days * frame.dayRate;
  let [worth, part] = [0, drawn(share, roll)];
  for (let year = 1; year <= frame.years; year++) {
    if (when === 'each year' && year > 1) part = drawn(share, roll);
    worth += (part * whole) / (1 + frame.rate) ** (frame.timing === 'end' ? year : year - 0.5);
  }
  return worth;
}

/** Runs in order of size, their mean, and the standard error of the mean. */
export function sample(runs: number, run: () => number): { sorted: Float64Array; mean: number; error: number } {
  const sorted = Float64Array.from({ length: runs }, run).sort();
  const mean = sorted.reduce((sum, value) => sum + value, 0) / runs;
  const variance = sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (runs - 1);
  return { sorted, mean, error: Math.sqrt(variance / runs) };
}
