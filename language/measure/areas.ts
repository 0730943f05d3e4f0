// Areas that liquids are counted by.
import type { Input } from '../explain.ts';
import type { Item, Policy, Roof, Tape } from '../resolve/types.ts';
import type { System } from '../values/display.ts';
import { bandKind, bandOf } from './band.ts';
import { figureInput, type Long, lengthInput, units, type Wide, wide } from './figure.ts';

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

/**
 * Areas together, each worked out in the sum: the parts stand nowhere else, and what they rest on (the default band of a
 * kind) is an assumption of whatever is counted by them.
 */
export function areaSum(areas: readonly Wide[], system: System): Wide {
  const mm2 = areas.reduce((sum, area) => sum + area.mm2, 0);
  const inputs = new Map<string, Input>();
  const terms = areas.map(({ figure }) => {
    const names = new Map(figure.inputs.map((input) => [input.name, nameIn(inputs, input)]));
    return figure.formula.replace(/[A-Za-z_]\w*/g, (name) => names.get(name) ?? name);
  });
  return wide(mm2, system, {
    rule: 'all bands together',
    formula: terms.join(' + ') || '0',
    inputs: [...inputs.values()],
  });
}

/** Adds an input under its own name, or a numbered one where another has that name, and gives the name; one that is there already is not added twice. */
function nameIn(inputs: Map<string, Input>, input: Input): string {
  const { name, value, text, origin } = input;
  for (let number = 1; ; number++) {
    const free = number === 1 ? name : `${name}_${number}`;
    const there = inputs.get(free);
    if (there === undefined) {
      inputs.set(free, { ...input, name: free });
      return free;
    }
    if (there.value === value && there.text === text && there.origin === origin) return free;
  }
}
