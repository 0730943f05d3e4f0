// Lengths, strips, pieces, beads, areas and gaps of the items of a roof.
export { areaSum, bandArea, roofArea, tapeArea } from './areas.ts';
export { bandKind, bandOf, type Strips, stripsFor, stripsOf } from './band.ts';
export { type BeadTakeoff, beadOf, beadSize, isSmothered } from './bead.ts';
export type { Filling, Long, Wide } from './figure.ts';
export {
  beyondRoof,
  centresOffRoof,
  closePairs,
  gapBetween,
  leastGap,
  type Pair,
  type Placed,
  placedItems,
} from './fit.ts';
export { rectangleFrame, roundFrame, squareHalf } from './frame.ts';
export { compareKeys, type LayKey, layKey } from './layorder.ts';
export { type SeamLength, type Stretch, seamLength, straightSides, stretchLength, stretchOf } from './length.ts';
export { type TapePiece, type TapePieces, tapePieces } from './pieces.ts';
export { whyNoSealant, whyNoTape } from './treatable.ts';
