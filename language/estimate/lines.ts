// Take-offs as the lines of the estimate.
import type { TapePiece } from '../measure/pieces.ts';
import type { LiquidNeed } from './liquid.ts';
import type { JobLine, LiquidLine } from './schema.ts';
import type { Takeoff } from './takeoff.ts';
import type { Numbered } from './tape.ts';

export function numbered(piece: TapePiece, number: number, tape: string): Numbered {
  const { item, copy, what, frame, figure, nm, keepOff } = piece;
  return { nm, line: { number, tape, item, copy, what, frame, length: figure }, ...(keepOff ? { keepOff } : {}) };
}

export function liquidLine({ task, material, area, volume }: LiquidNeed): LiquidLine {
  return {
    task,
    ...(material && { material: material.name }),
    area: area.figure,
    ...(volume && { volume: volume.figure }),
  };
}

export function jobLine(job: Takeoff, visit: number, pieces: readonly Numbered[]): JobLine {
  const { plan, sealant, tapeLength, beadLength, volume } = job;
  return {
    text: job.text,
    word: plan.statement.word,
    file: plan.file,
    at: plan.statement.at,
    visit,
    items: job.items.map(({ name }) => name),
    strips: job.strips.map(({ item, strips: { figure, slack, noSlack } }) => ({
      item,
      strips: figure,
      slack: slack.figure,
      noSlack,
    })),
    pieces: pieces.map(({ line }) => line),
    ...(tapeLength && { tapeLength: tapeLength.figure }),
    beads: job.beads.map(({ item, smothered, length, section, volume: each }) => ({
      sealant: sealant!.name,
      item,
      smothered,
      length: length.figure,
      ...(section && { section }),
      volume: each.figure,
    })),
    ...(beadLength && { beadLength: beadLength.figure }),
    ...(volume && { sealantVolume: volume.figure }),
    liquids: job.liquids.map(liquidLine),
    stripped: job.stripped.map(({ item, hard, length }) => ({ item, hard, length: length.figure })),
    skipped: job.skipped,
  };
}
