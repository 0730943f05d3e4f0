/**
 * Cross sections of a bead, and how far a volume goes. Length times section is volume, whatever the units, as long as
 * they go together: areas here are in mm2, volumes in mL, lengths in nanometres as in `Length`.
 */

/** The shapes that a bead can have. */
export type SectionShape = 'rectangle' | 'dome' | 'fillet' | 'concave-fillet' | 'half-round' | 'round';

const NM_PER_MM = 1_000_000;
const MM3_PER_ML = 1000;

/** A flat bead, width by depth. */
export function rectangleSection(widthNm: number, depthNm: number): number {
  return (widthNm / NM_PER_MM) * (depthNm / NM_PER_MM);
}

/**
 * A self-levelling bead that runs out into a shallow dome: two thirds of its rectangle, the area under a parabola
 * (Archimedes). That such a bead is a parabola is from memory; the rectangle is the buyer's safe side.
 */
export function domeSection(widthNm: number, depthNm: number): number {
  return (2 / 3) * rectangleSection(widthNm, depthNm);
}

/** A triangular fillet between two faces at a right angle: half the square of its leg. */
export function filletSection(legNm: number): number {
  return rectangleSection(legNm, legNm) / 2;
}

/** A tooled, hollow fillet: what a quarter circle leaves of the square of its leg. */
export function concaveFilletSection(legNm: number): number {
  return (1 - Math.PI / 4) * rectangleSection(legNm, legNm);
}

/** Half a circle of the given width. */
export function halfRoundSection(widthNm: number): number {
  return (Math.PI / 8) * rectangleSection(widthNm, widthNm);
}

/** A full circle of the given width, as it leaves the nozzle. */
export function roundSection(widthNm: number): number {
  return (Math.PI / 4) * rectangleSection(widthNm, widthNm);
}

/** The area in mm2 of a section of any shape. The depth counts for rectangle and dome only. */
export function sectionArea(shape: SectionShape, widthNm: number, depthNm: number): number {
  switch (shape) {
    case 'rectangle':
      return rectangleSection(widthNm, depthNm);
    case 'dome':
      return domeSection(widthNm, depthNm);
    case 'fillet':
      return filletSection(widthNm);
    case 'concave-fillet':
      return concaveFilletSection(widthNm);
    case 'half-round':
      return halfRoundSection(widthNm);
    case 'round':
      return roundSection(widthNm);
  }
}

/** The length in nanometres of bead that a volume makes: V / A, without waste. The section must not be 0. */
export function lengthPerVolume(mL: number, sectionMm2: number): number {
  return ((mL * MM3_PER_ML) / sectionMm2) * NM_PER_MM;
}

/** The volume in mL that a bead of the given length takes: L x A, without waste. */
export function volumeOfBead(lengthNm: number, sectionMm2: number): number {
  return ((lengthNm / NM_PER_MM) * sectionMm2) / MM3_PER_ML;
}
