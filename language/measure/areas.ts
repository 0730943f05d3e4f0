// Areas that liquids are counted by.
import type { Item, Policy, Roof, Tape } from '../resolve/types.ts';
import type { System } from '../values/display.ts';
import { bandKind, bandOf } from './band.ts';
import { figureInput, type Long, lengthInput, sumOf, units, type Wide, wide } from './figure.ts';

const NM2_PER_MM2 = 1e12;

/** The whole roof, as washing, inspecting and coating count it. */
export function roofArea(roof: Roof, system: System): Wide {
  return wide((roof.along.nm * roof.across.nm) / NM2_PER_MM2, system, {
    rule: 'the whole roof',
    formula: `roof_length * roof_width / ${units[system].perArea}`,
    inputs: [
      lengthInput('roof_length', roof.along, system, roof.origin),
      lengthInput('roof_width', roof.across, system, roof.origin),
    ],
  });
}

/** What lies under tape of a length: what is wiped and primed before it is laid. Undefined without a width. */
export function tapeArea(length: Long, tape: Pick<Tape, 'width'>, system: System): Wide | undefined {
  if (tape.width === undefined) return undefined;
  return wide((length.nm * tape.width.value.nm) / NM2_PER_MM2, system, {
    rule: 'length of tape times its width',
    formula: `length * tape_width / ${units[system].perArea}`,
    inputs: [
      figureInput('length', length.figure),
      lengthInput('tape_width', tape.width.value, system, tape.width.origin),
    ],
  });
}

/** What lies under sealant: the seam times the band of its kind. Undefined for what has no band. */
export function bandArea(length: Long, item: Item, policy: Policy, system: System): Wide | undefined {
  const band = bandOf(item, policy);
  const kind = bandKind(item);
  if (band === undefined || kind === undefined) return undefined;
  const name = `${kind.replace('-', '_')}_band`;
  return wide((length.nm * band.value.nm) / NM2_PER_MM2, system, {
    rule: 'length of the seam times its band',
    formula: `length * ${name} / ${units[system].perArea}`,
    inputs: [figureInput('length', length.figure), lengthInput(name, band.value, system, band.origin)],
  });
}

/** Areas together. */
export function areaSum(areas: readonly Wide[], system: System): Wide {
  const mm2 = areas.reduce((sum, area) => sum + area.mm2, 0);
  const working = sumOf(
    areas.map(({ figure }) => figure),
    'area',
  );
  return wide(mm2, system, { rule: 'all bands together', ...working });
}
