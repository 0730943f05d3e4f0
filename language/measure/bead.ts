// How much sealant an item takes: the length of its bead times its section, or the volume that smothers a small mount.
import type { Explained, Input } from '../explain.ts';
import type { Item, Policy, Roof, Sealant, Stated } from '../resolve/types.ts';
import type { System } from '../values/display.ts';
import type { Length } from '../values/length.ts';
import { done, type Read, refused } from '../values/quantity.ts';
import { countInput, type Filling, figureInput, filling, type Long, lengthInput, long, units } from './figure.ts';
import { isPart, type Stretch, seamLength, stretchOf } from './length.ts';
import { sectionArea, volumeOfBead } from './section.ts';
import { whyNoSealant } from './treatable.ts';

/** The sealant of an item, all its copies together. A smothered mount has a length too: how far the gun goes round. */
export interface BeadTakeoff {
  readonly item: string;
  readonly length: Long;
  readonly section?: Explained;
  readonly volume: Filling;
  readonly smothered: boolean;
  /** Round an opening or mount, which takes longer than a straight seam. */
  readonly around: boolean;
}

type Bead = NonNullable<Sealant['bead']>;

const NM3_PER_ML = 1e21;

/**
 * The bead of an item, or of a stretch of its seam, for each of its copies. The bead of a flange is measured along the
 * flange or along its own middle (`+ 4w`, `pi (D + w)`), as the policy says; mounts up to the policy's size are
 * smothered, (W + 2w)(L + 2w) times the depth. Refused, with the reason, for what must not be sealed.
 */
export function beadOf(
  item: Item,
  roof: Roof | undefined,
  policy: Pick<Policy, 'beadLine' | 'smother'>,
  sealant: Sealant,
  stretch: Stretch | undefined,
  system: System,
): Read<BeadTakeoff> {
  const never = whyNoSealant(item);
  if (never !== undefined) return refused(never);
  const seam = seamLength(item, roof, system);
  if (!seam.ok) return seam;
  const bead = beadSize(item, sealant);
  if (bead === undefined) return refused(`how thick a bead of ${sealant.name} is, is not written`);
  const around = item.kind === 'opening' || item.kind === 'mount';
  if (isPart(stretch, seam.value.each.nm)) {
    const length = stretchOf(item, stretch, seam.value, system);
    if (length === undefined) return refused('this stretch lies beyond the end of the seam');
    return done({ item: item.name, length, ...filled(length, bead, system), smothered: false, around });
  }
  if (isSmothered(item, policy)) {
    const volume = smotherVolume(item, bead, policy, system);
    return done({ item: item.name, length: seam.value.all, volume, smothered: true, around });
  }
  const centred = around && item.length === undefined && policy.beadLine.value === 'centre';
  const length = centred ? centreLine(item, bead, policy, system) : seam.value.all;
  return done({ item: item.name, length, ...filled(length, bead, system), smothered: false, around });
}

/** The bead that an item is given: its own size, else that of the sealant; the section is the sealant's. */
export function beadSize(item: Item, sealant: Sealant): Bead | undefined {
  if (item.bead === undefined) return sealant.bead;
  return { value: { ...item.bead, section: sealant.bead?.value.section ?? 'rectangle' }, origin: item.origin };
}

/** True for a mount no side of which is longer than the policy's limit. */
export function isSmothered(item: Item, { smother }: Pick<Policy, 'smother'>): boolean {
  if (item.kind !== 'mount' || item.size === undefined || smother.value === 'none') return false;
  const { size } = item;
  const longest = size.shape === 'round' ? size.diameter.nm : Math.max(size.along.nm, size.across.nm);
  return longest <= smother.value.nm;
}

function centreLine(item: Item, bead: Bead, policy: Pick<Policy, 'beadLine'>, system: System): Long {
  const size = item.size!;
  const { width } = bead.value;
  const line: Input = { name: 'bead_line', value: 'centre', text: 'centre', origin: policy.beadLine.origin };
  const of = (name: string, length: Length): Input => lengthInput(name, length, system, item.origin);
  const shared = [lengthInput('bead_width', width, system, bead.origin), line];
  const count = countInput('count', item.count, item.origin);
  const rule = 'along the middle of the bead, half its width outside the flange';
  if (size.shape === 'round') {
    return long(item.count * Math.PI * (size.diameter.nm + width.nm), system, {
      rule,
      formula: 'count * pi * (diameter + bead_width)',
      inputs: [count, of('diameter', size.diameter), ...shared],
    });
  }
  return long(item.count * (2 * (size.along.nm + size.across.nm) + 4 * width.nm), system, {
    rule,
    formula: 'count * (2 * (along + across) + 4 * bead_width)',
    inputs: [count, of('along', size.along), of('across', size.across), ...shared],
  });
}

const SECTIONS: Readonly<Record<Bead['value']['section'], readonly [formula: string, rule: string]>> = {
  rectangle: ['bead_width * bead_height', "width times height: the buyer's safe side"],
  dome: ['2 / 3 * bead_width * bead_height', 'a shallow dome: two thirds of width times height'],
  fillet: ['bead_width * bead_width / 2', 'a triangular fillet: half the square of its leg'],
  'half-round': ['pi / 8 * bead_width * bead_width', 'half a circle of that width'],
};

function filled(length: Long, bead: Bead, system: System): Pick<BeadTakeoff, 'section' | 'volume'> {
  const { width, height, section: shape } = bead.value;
  const mm2 = sectionArea(shape, width.nm, height.nm);
  const [formula, rule] = SECTIONS[shape];
  const { unit, mm2: size } = units[system].section;
  const section: Explained = {
    value: mm2 / size,
    unit,
    text: `${Number((mm2 / size).toPrecision(4))} ${unit}`,
    rule,
    formula,
    inputs: beadInputs(bead, system),
  };
  const volume = filling(volumeOfBead(length.nm, mm2), system, {
    rule: 'length times section',
    formula: `length * section / ${units[system].perVolume}`,
    inputs: [figureInput('length', length.figure), figureInput('section', section)],
  });
  return { section, volume };
}

function smotherVolume(item: Item, bead: Bead, { smother }: Pick<Policy, 'smother'>, system: System): Filling {
  const size = item.size!;
  const { width, height } = bead.value;
  const of = (name: string, length: Length): Input => lengthInput(name, length, system, item.origin);
  const limit = smother as Stated<Length>;
  const shared = [...beadInputs(bead, system), lengthInput('smother_up_to', limit.value, system, limit.origin)];
  const count = countInput('count', item.count, item.origin);
  const rule = 'smothered whole, a bead wide beyond it on every side';
  const per = units[system].perVolume;
  if (size.shape === 'round') {
    const nm3 = (Math.PI / 4) * (size.diameter.nm + 2 * width.nm) ** 2 * height.nm;
    return filling((item.count * nm3) / NM3_PER_ML, system, {
      rule,
      formula: `count * pi / 4 * (diameter + 2 * bead_width) ^ 2 * bead_height / ${per}`,
      inputs: [count, of('diameter', size.diameter), ...shared],
    });
  }
  const nm3 = (size.along.nm + 2 * width.nm) * (size.across.nm + 2 * width.nm) * height.nm;
  return filling((item.count * nm3) / NM3_PER_ML, system, {
    rule,
    formula: `count * (along + 2 * bead_width) * (across + 2 * bead_width) * bead_height / ${per}`,
    inputs: [count, of('along', size.along), of('across', size.across), ...shared],
  });
}

function beadInputs(bead: Bead, system: System): readonly Input[] {
  return [
    lengthInput('bead_width', bead.value.width, system, bead.origin),
    lengthInput('bead_height', bead.value.height, system, bead.origin),
  ];
}
