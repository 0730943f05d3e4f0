// What all jobs of an estimate need of each material together.
import type { Filling } from '../measure/figure.ts';
import type { Tape } from '../resolve/types.ts';
import type { LiquidNeed } from './liquid.ts';
import type { Question } from './schema.ts';
import type { Poured } from './sizes.ts';
import type { Takeoff } from './takeoff.ts';
import type { Numbered } from './tape.ts';

/** The take-offs of a visit and the washing that begins it. */
export interface Needing {
  readonly jobs: readonly Takeoff[];
  readonly liquids: readonly LiquidNeed[];
}

/** Pieces of tape in laying order, and volumes of what is poured or gunned, by material. */
export interface Needs {
  readonly tapes: readonly { readonly tape: Tape; readonly pieces: readonly Numbered[] }[];
  readonly poured: readonly { readonly material: Poured; readonly fillings: readonly Filling[] }[];
}

/** By name: a material is resolved anew each time that it is asked for. */
export function needsOf(visits: readonly Needing[], pieces: ReadonlyMap<Takeoff, readonly Numbered[]>): Needs {
  const tapes = new Map<string, { readonly tape: Tape; readonly pieces: Numbered[] }>();
  const poured = new Map<string, { readonly material: Poured; readonly fillings: Filling[] }>();
  const pour = (material: Poured, filling: Filling) => {
    const known = poured.get(material.name) ?? { material, fillings: [] };
    known.fillings.push(filling);
    poured.set(material.name, known);
  };
  const jobs = visits.flatMap((visit) => visit.jobs);
  for (const job of jobs) {
    const mine = pieces.get(job);
    if (job.tape && mine) {
      const known = tapes.get(job.tape.name) ?? { tape: job.tape, pieces: [] };
      known.pieces.push(...mine);
      tapes.set(job.tape.name, known);
    }
    if (job.sealant && job.volume) pour(job.sealant, job.volume);
  }
  for (const { material, volume } of liquidsOf(visits)) if (material && volume) pour(material, volume);
  for (const { pieces: all } of tapes.values()) all.sort((a, b) => a.line.number - b.line.number);
  return { tapes: [...tapes.values()], poured: [...poured.values()] };
}

/** Liquids of which nobody wrote how far they go. */
export function uncovered(visits: readonly Needing[]): readonly Question[] {
  return liquidsOf(visits).flatMap(({ material, volume }): Question[] => {
    if (!material || volume) return [];
    const text = `How far ${material.name} goes is not written (\`covers\`): only the area is counted.`;
    return [{ rule: 'no-coverage', about: material.name, text }];
  });
}

const liquidsOf = (visits: readonly Needing[]): readonly LiquidNeed[] =>
  visits.flatMap(({ jobs, liquids }) => [...liquids, ...jobs.flatMap((job) => job.liquids)]);
