// The roof itself and what tells its ends apart: front and rear, the sides, the direction of travel, where water falls.
import type { Rig } from '../../resolve/types.ts';
import { box, type Drawn, path, text } from './ink.ts';
import { type Box, n, overlap, type Paper } from './paper.ts';

export function around(rig: Rig, paper: Paper, taken: readonly Box[]): readonly Drawn[] {
  const { along, across, above, below } = paper;
  const [up, down] = rig.policy.curb.value === 'left' ? ['road', 'curb'] : ['curb', 'road'];
  const hand = (side: string, right: boolean) => `${side} side (${right ? 'right' : 'left'} of travel)`;
  const turned = (x: number) => ({ 'text-anchor': 'middle', transform: `rotate(-90 ${n(x)} ${n(across / 2)})` });
  return [
    box(
      { x: 0, y: 0, w: along, h: across },
      { class: 'roof-line', fill: 'none', stroke: '#111111', 'stroke-width': 0.3, 'data-outline': 'roof' },
    ),
    ...water(rig, paper, taken),
    text(0, -above - 2.6, hand(up, true)),
    text(0, across + below + 4.4, hand(down, false)),
    text(-5, across / 2, 'front', turned(-5)),
    text(along + 5.5, across / 2, 'rear', turned(along + 5.5)),
    path(`M-8 ${n(across / 2 + 5)}h-6m2.4 -1.6l-2.4 1.6l2.4 1.6`, { 'stroke-width': 0.5 }),
    text(-11, across / 2 + 9, 'travel', { 'text-anchor': 'middle', 'font-size': 2 }),
  ];
}

/** Arrows that run as water does; none where the record does not say it. */
function water({ falls }: Rig, { along, across, y }: Paper, taken: readonly Box[]): readonly Drawn[] {
  if (falls === undefined) return [];
  const middle = across / 2;
  const free = (x: number, size: number) => {
    const reach = { x: x - size, y: middle - size - 1, w: 2 * size, h: 2 * size + 2 };
    return !taken.some((box) => overlap(reach, box));
  };
  const clear = (size: number) =>
    shares.flatMap((share) => nearby(share).find((one) => free(along * one, size)) ?? []).map((share) => along * share);
  // On a crowded roof fewer or smaller arrows say as much; some there must be.
  const sizes = [1, 0.7, 0.45].map((share) => share * Math.min(6, across / 6));
  const size = sizes.find((one) => clear(one).length > 0) ?? sizes[0]!;
  const spots = clear(size).length > 0 ? clear(size) : shares.map((share) => along * share);
  const style = { class: 'roof-water', stroke: '#3f7fb5', 'stroke-width': 0.35, 'data-water': falls.value };
  const arrow = (x: number, at: number, dx: number, dy: number) =>
    path(
      `M${n(x)} ${n(at)}l${n(dx * size)} ${n(dy * size)}m${n(-dx * 1.4 - dy)} ${n(-dy * 1.4 - dx)}l${n(dx * 1.4 + dy)} ${n(dy * 1.4 + dx)}l${n(-dx * 1.4 + dy)} ${n(-dy * 1.4 + dx)}`,
      style,
    );
  // On paper the curb side may lie above or below.
  const toCurb = y(0) < y(1) ? -1 : 1;
  switch (falls.value) {
    case 'edges':
      return spots.flatMap((x) => [arrow(x, middle - 1, 0, -1), arrow(x, middle + 1, 0, 1)]);
    case 'rear':
      return spots.map((x) => arrow(x, middle, 1, 0));
    case 'front':
      return spots.map((x) => arrow(x, middle, -1, 0));
    case 'curbside':
      return spots.map((x) => arrow(x, middle, 0, toCurb));
    case 'roadside':
      return spots.map((x) => arrow(x, middle, 0, -toCurb));
  }
}

/** Where arrows are drawn, in shares of the length. */
const shares = [0.2, 0.5, 0.8];

/** Shares of the length near one, the nearest first. */
const nearby = (share: number): readonly number[] =>
  Array.from({ length: 13 }, (_, i) => share + (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * 0.025);
