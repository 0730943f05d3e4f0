// The lines to be typed afterwards, ready made: what is left to fill in is underlined.
import { pastOf, targetsLeft } from '../../resolve/done.ts';
import type { Material, MaterialsOf } from '../../resolve/types.ts';
import type { System } from '../../values/display.ts';
import { shown } from './shown.ts';
import { temperatureUnit } from './units.ts';
import type { VisitJob, VisitWork } from './visit-work.ts';

/** A blank as it stands in a line. */
export const gap = '____';
export const dateGap = '____-__-__';

const unitOf: Partial<Readonly<Record<Material['kind'], (system: System) => string>>> = {
  tape: (system) => (system === 'us' ? 'ft' : 'm'),
  sealant: () => 'cartridges',
  cleaner: (system) => (system === 'us' ? 'fl-oz' : 'mL'),
  primer: (system) => (system === 'us' ? 'fl-oz' : 'mL'),
  coating: (system) => (system === 'us' ? 'gal' : 'L'),
};

/** Words that say with what; the weather is asked where something is laid. */
const laying: ReadonlySet<string> = new Set(['tape', 'seal', 'coat', 'patch']);

/** The record of each job of a visit. An inspection has its own lines on the inspection sheet. */
export function recordLines({ jobs }: VisitWork, material: MaterialsOf, system: System): readonly string[] {
  return jobs.filter(({ word }) => word !== 'inspect').map((job) => recordLine(job, material, system));
}

function recordLine({ word, plan, items }: VisitJob, material: MaterialsOf, system: System): string {
  const { statement } = plan;
  const targets = targetsLeft(plan, system, gap);
  const where = targets.length > 0 ? targets : word === 'wash' ? [] : items;
  const materials = (statement.materials ?? []).map(({ name }) => {
    const found = material(name);
    const unit = found && unitOf[found.kind]?.(system);
    return unit === undefined ? `with ${name}` : `with ${name} used ${gap} ${unit}`;
  });
  const unit = temperatureUnit(system);
  const weather = laying.has(word) ? [`lot "${gap}" air ${gap} ${unit} surface ${gap} ${unit} humidity ${gap} %`] : [];
  const reading = word === 'dry' ? [`moisture ${gap} %`] : [];
  const until = word === 'cover' ? [`until ${dateGap}`] : [];
  const parts = [
    `${pastOf[word as keyof typeof pastOf]} ${dateGap}`,
    where.join(', '),
    ...materials,
    ...until,
    ...reading,
    ...weather,
    `by "${gap}" took ${gap} h`,
  ];
  return shown(parts.filter((part) => part !== '').join(' '));
}
