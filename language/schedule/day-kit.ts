// What is carried to a rig: pieces of tape by their numbers, whole cartridges, other materials by their names.
import type { Estimate } from '../estimate/schema.ts';
import { units } from '../measure/figure.ts';
import type { RigView } from '../resolve/types.ts';
import { countedOf } from '../values/numbers.ts';
import type { KitLine } from './day-plan.ts';
import type { Visit } from './types.ts';
import { namesOf } from './words.ts';

const laying: ReadonlySet<string> = new Set(['lay', 'frame']);
const gunning: ReadonlySet<string> = new Set(['gun', 'gun-around']);

/** The kit of some tasks of a visit; without the estimate of the rig materials are named, but not counted. */
export function kitOf(tasks: Visit['tasks'], view: RigView, estimate?: Estimate): readonly KitLine[] {
  const names = [...new Set(tasks.flatMap(({ materials }) => materials))];
  return names.map((material): KitLine => {
    const items = (which: ReadonlySet<string>) =>
      new Set(
        tasks.filter((one) => which.has(one.task) && one.materials.includes(material)).flatMap((one) => one.items),
      );
    const pieces = piecesOf(material, items(laying), estimate);
    if (pieces.length > 0) return { material, pieces, text: `${pieceWords(pieces)} of ${material}` };
    const mL = volumeOf(material, items(gunning), estimate);
    const cartridges = mL > 0 ? cartridgesFor(mL, view.material(material)) : undefined;
    if (cartridges !== undefined) return { material, cartridges, text: cartridgeWords(material, cartridges) };
    return { material, text: material };
  });
}

/** The kit of several rigs together. Cartridges add up, since each rig's last one is begun for it; pieces keep their rig. */
export function wholeKit(
  rows: readonly { readonly rig: string; readonly kit: readonly KitLine[] }[],
): readonly KitLine[] {
  const names = [...new Set(rows.flatMap(({ kit }) => kit.map(({ material }) => material)))].sort();
  return names.map((material): KitLine => {
    const mine = rows.flatMap(({ rig, kit }) =>
      kit.filter((line) => line.material === material).map((line) => ({ rig, line })),
    );
    const cartridges = mine.reduce((sum, { line }) => sum + (line.cartridges ?? 0), 0);
    if (cartridges > 0) return { material, cartridges, text: cartridgeWords(material, cartridges) };
    const cut = mine.filter(({ line }) => line.pieces !== undefined);
    if (cut.length === 0) return { material, text: material };
    const words = cut.map(({ rig, line }) => `${pieceWords(line.pieces ?? [])} for ${rig}`);
    return { material, text: `${material}: ${words.join('; ')}` };
  });
}

function piecesOf(tape: string, items: ReadonlySet<string>, estimate?: Estimate): readonly number[] {
  const lines = estimate?.jobs.flatMap(({ pieces }) => pieces) ?? [];
  const mine = lines.filter((piece) => piece.tape === tape && items.has(piece.item));
  return [...new Set(mine.map(({ number }) => number))].sort((a, b) => a - b);
}

function volumeOf(sealant: string, items: ReadonlySet<string>, estimate?: Estimate): number {
  if (!estimate) return 0;
  const { mL } = units[estimate.system].volume;
  const beads = estimate.jobs.flatMap((job) => job.beads);
  const mine = beads.filter((bead) => bead.sealant === sealant && items.has(bead.item));
  return mine.reduce((sum, { volume }) => sum + volume.value * mL, 0);
}

/** Whole cartridges of the smallest size on sale; rounding of the last digit opens none. */
function cartridgesFor(mL: number, material: ReturnType<RigView['material']>): number | undefined {
  if (material?.kind !== 'sealant') return undefined;
  const [smallest] = material.cartridges.map(({ size }) => size.mL).sort((a, b) => a - b);
  return smallest === undefined || smallest <= 0 ? undefined : Math.max(1, Math.ceil(mL / smallest - 1e-9));
}

function pieceWords(pieces: readonly number[]): string {
  return pieces.length === 1 ? `piece ${pieces[0]}` : `pieces ${namesOfAll(pieces)}`;
}

function namesOfAll(pieces: readonly number[]): string {
  const words = pieces.map(String);
  return words.length <= 3 ? namesOf(words) : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

function cartridgeWords(material: string, count: number): string {
  return `${countedOf(count, 'cartridge').text} of ${material}`;
}
