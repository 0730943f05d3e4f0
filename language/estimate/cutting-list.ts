// The cutting list: what is cut from each roll and each piece on hand, in laying order.
import type { CutPlan } from '../cutting/index.ts';
import type { Explained } from '../explain.ts';
import { figureInput, lengthInput, long, sumOf } from '../measure/figure.ts';
import type { Tape } from '../resolve/types.ts';
import { lengthText, type System } from '../values/display.ts';
import type { CuttingList, StockLine } from './schema.ts';
import type { Numbered, Stocked } from './tape.ts';

/** What was cut: rolls on sale, lengths on hand and pieces, by the numbers that the plan calls them. */
export interface Cut {
  readonly rolls: readonly Stocked[];
  readonly shelf: readonly Stocked[];
  readonly pieces: readonly Numbered[];
}

/** `3`, or `3 of Heron` where pieces of several rigs are cut together. */
export function pieceName({ line, rig }: Numbered): string {
  return rig === undefined ? String(line.number) : `${line.number} of ${rig}`;
}

/** The cutting list of a plan: roll by roll, piece by piece, in laying order. */
export function cuttingList(tape: Tape, plan: CutPlan, { rolls, shelf, pieces }: Cut, system: System): CuttingList {
  const pieceOf = (id: string) => pieces[Number(id)] as Numbered;
  const named = ({ line, rig }: Numbered) => ({
    ...(rig === undefined ? {} : { rig }),
    piece: line.number,
    item: line.item,
  });
  const stock = plan.cuts.map((cut): StockLine & { readonly leftNm: number } => {
    const { kind, id, number } = cut.stock;
    const from = (kind === 'roll' ? rolls : shelf)[Number(id)]!;
    const cuts = cut.parts.map(({ piece, length, part }) => {
      const { line } = pieceOf(piece);
      const place = { ...named(pieceOf(piece)), what: line.what };
      return part === undefined
        ? { ...place, length: line.length }
        : { ...place, part, length: partFigure(length, line.length, part, tape, system) };
    });
    const used = sumOf(
      cuts.map(({ length }) => length),
      'cut',
    );
    const left = long(cut.left, system, {
      rule: 'what is left',
      formula: `usable - (${used.formula})`,
      inputs: [figureInput('usable', from.usable.figure), ...used.inputs],
    });
    const what = kind === 'roll' ? `${from.what}, number ${number}` : from.what;
    return {
      kind: kind === 'roll' ? 'roll' : 'on-hand',
      what,
      ...(from.at === undefined ? {} : { at: from.at }),
      usable: from.usable.figure,
      cuts,
      left: left.figure,
      leftNm: cut.left,
    };
  });
  const touched = new Set(plan.cuts.flatMap(({ stock: { kind, id } }) => (kind === 'offcut' ? [Number(id)] : [])));
  const lefts = [
    ...stock.map(({ leftNm, left }) => [leftNm, left] as const),
    ...shelf.flatMap(({ usable }, i) => (touched.has(i) ? [] : [[usable.nm, usable.figure] as const])),
  ];
  const longest = lefts.find(([nm]) => nm === plan.longestLeft)?.[1];
  return {
    tape: tape.name,
    stock: stock.map(({ leftNm: _, ...line }) => line),
    splices: plan.splices,
    joints: plan.joints.map(({ piece, at, inKeepOff }) => ({
      ...named(pieceOf(piece)),
      at: jointFigure(at, pieceOf(piece), system),
      tooNear: inKeepOff,
    })),
    ...(longest === undefined ? {} : { longestLeft: longest }),
  };
}

function partFigure(
  nm: number,
  whole: Explained,
  [k, n]: readonly [number, number],
  tape: Tape,
  system: System,
): Explained {
  return long(nm, system, {
    rule: `part ${k} of ${n} of ${whole.text}, the forward part over the rear one by an end lap`,
    formula: 'part',
    inputs: [
      lengthInput('part', { nm, text: lengthText(nm, system) }, system),
      figureInput('piece', whole),
      lengthInput('end_lap', tape.endLap.value, system, tape.endLap.origin),
    ],
  }).figure;
}

function jointFigure(nm: number, { line }: Numbered, system: System): Explained {
  return long(nm, system, {
    rule: `the middle of the lap, from the front end of a piece of ${line.length.text}`,
    formula: 'at',
    inputs: [lengthInput('at', { nm, text: lengthText(nm, system) }, system)],
  }).figure;
}
