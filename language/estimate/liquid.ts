// Liquids by area: passes times area, divided by what a volume covers.

import { countInput, type Filling, figureInput, filling, type Long, units, type Wide } from '../measure/figure.ts';
import type { Cleaner, Coating, Primer } from '../resolve/types.ts';
import type { System } from '../values/display.ts';
import type { LiquidLine } from './schema.ts';

/** What a task takes of a liquid. The length is what is worked along, where the task goes by length. */
export interface LiquidNeed {
  readonly task: LiquidLine['task'];
  readonly material?: Primer | Cleaner | Coating;
  readonly area: Wide;
  readonly length?: Long;
  readonly volume?: Filling;
}

/** The need of a task. Without a material, or without its coverage, only the area is known. */
export function liquidNeed(
  task: LiquidLine['task'],
  material: Primer | Cleaner | Coating | undefined,
  area: Wide,
  length: Long | undefined,
  system: System,
): LiquidNeed {
  const along = length === undefined ? {} : { length };
  if (material === undefined) return { task, area, ...along };
  const { covers, passes } = material;
  if (covers === undefined || covers.value.mm2PerMl === 0) return { task, material, area, ...along };
  const [large, small] = [units[system].area, units[system].liquid];
  const volume = filling(
    (area.mm2 * passes.value) / covers.value.mm2PerMl,
    system,
    {
      rule: 'area times passes, by what a volume covers',
      formula: 'area * passes / covers',
      inputs: [
        figureInput('area', area.figure),
        countInput('passes', passes.value, passes.origin),
        {
          name: 'covers',
          value: (covers.value.mm2PerMl * small.mL) / large.mm2,
          unit: `${large.unit} per ${small.unit}`,
          text: covers.value.text,
          origin: covers.origin,
        },
      ],
    },
    'liquid',
  );
  return { task, material, area, ...along, volume };
}
