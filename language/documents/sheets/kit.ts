// What goes along: tools by the work of the visit, materials by its take-off, rolls by the cutting list.

import type { Estimate } from '../../estimate/index.ts';
import { units } from '../../measure/figure.ts';
import type { Material, Policy } from '../../resolve/types.ts';
import type { Visit } from '../../schedule/index.ts';
import { rounded } from '../../values/exact.ts';
import { shown } from './shown.ts';
import type { VisitWork } from './visit-work.ts';

const everywhere = [
  'ladder or platform, and a second person',
  'soft-soled shoes, gloves, eye cover',
  'pencil, this sheet',
];

/** By the task words of the schedule. Common practice. */
const tools: Readonly<Record<string, readonly string[]>> = {
  inspect: ['torch', 'ruler with 1 mm (1/32 in) marks', 'camera', 'plastic probe'],
  'inspect-inside': ['moisture meter', 'torch'],
  cover: ['screwdriver, box for screws'],
  wash: ['bucket, soft brush, hose'],
  strip: ['plastic scrapers', 'box for blades', 'bag for what comes off'],
  'strip-hard': ['plastic scrapers, plastic blades', 'box for blades', 'bag for what comes off'],
  wipe: ['lint-free cloths, two for each seam', 'solvent-proof gloves', 'closed metal can for the cloths'],
  prime: ['brush or small roller for primer'],
  lay: ['tape measure, scissors, pencil', 'surface thermometer, hygrometer'],
  frame: ['tape measure, scissors, pencil', 'surface thermometer, hygrometer'],
  press: ['hand roller'],
  gun: ['cartridge gun, knife for tips, spare tips', 'surface thermometer, hygrometer'],
  'gun-around': ['cartridge gun, knife for tips, spare tips', 'surface thermometer, hygrometer'],
  rebed: ['screwdriver, new screws', 'plastic wedges'],
  tighten: ['screwdriver, spanners'],
  dry: ['heater or fan', 'moisture meter'],
  'temporary-cover': ['sheet and tape for it, weights; vents stay free'],
};

export function toolsFor({ tasks }: Visit): readonly string[] {
  return [...new Set([...everywhere, ...tasks.flatMap(({ task }) => tools[task] ?? [])])];
}

/** What of each material goes along, with the count of its containers where that is known. */
export function materialsFor(
  { jobs, liquids }: VisitWork,
  material: (name: string) => Material | undefined,
  policy: Policy,
  system: Estimate['system'],
): readonly string[] {
  const volumes = new Map<string, number>();
  const add = (name: string, mL: number) => volumes.set(name, (volumes.get(name) ?? 0) + mL);
  for (const job of jobs) for (const bead of job.beads) add(bead.sealant, millilitres(bead.volume));
  for (const liquid of liquids) {
    if (liquid.material !== undefined) add(liquid.material, liquid.volume ? millilitres(liquid.volume) : 0);
  }
  const spare = 1 + policy.spare.value.percent / 100;
  const poured = [...volumes].map(([name, mL]) => {
    const found = material(name);
    const sizes = found?.kind === 'sealant' ? found.cartridges : (found?.containers ?? []);
    const size = [...sizes].map((one) => one.size).sort((a, b) => a.mL - b.mL)[0];
    if (mL === 0) return `${shown(name)}: as much as the label asks for`;
    const count = size ? Math.ceil((mL * spare) / size.mL) : undefined;
    const noun = found?.kind === 'sealant' ? 'cartridge' : 'container';
    const packed = count === undefined ? '' : `: ${count} ${noun}${count === 1 ? '' : 's'} of ${size!.text}`;
    return `${shown(name)}, ${volumeText(mL * spare, system)} with the spare of ${policy.spare.value.text}${packed}`;
  });
  const named = jobs.flatMap(({ materials }) => materials).filter((name) => !volumes.has(name));
  return [...poured, ...[...new Set(named)].map(shown)];
}

const millilitres = ({ value, unit }: { readonly value: number; readonly unit: string }): number =>
  value *
  ({
    [units.us.volume.unit]: units.us.volume.mL,
    [units.us.liquid.unit]: units.us.liquid.mL,
    [units.metric.volume.unit]: units.metric.volume.mL,
    [units.metric.liquid.unit]: units.metric.liquid.mL,
  }[unit] ?? 1);

function volumeText(mL: number, system: Estimate['system']): string {
  const { unit, mL: size } = units[system].volume;
  return `${rounded(mL / size, system === 'us' ? 1 : 0)} ${unit}`;
}
