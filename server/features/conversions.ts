// A figure in the measures of the other system.
import type { Part } from '../../language/grammar/lines.ts';
import { readArea } from '../../language/values/area.ts';
import { areaText, lengthText, temperatureText, volumeText } from '../../language/values/display.ts';
import { kindOf } from '../../language/values/kinds.ts';
import { readLength } from '../../language/values/length.ts';
import { quantityText } from '../../language/values/quantity.ts';
import { readTemperature } from '../../language/values/temperature.ts';
import { readVolume } from '../../language/values/volume.ts';

/** `28 ft 4 in = 8.64 m`, either way; undefined for figures that are the same everywhere. */
export function conversionOf(quantity: Part & { readonly kind: 'quantity' }): string | undefined {
  const texts = bothSystems(quantity);
  const written = quantityText(quantity);
  const others = texts?.filter((text) => text !== written);
  return others && others.length > 0 ? `${written} = ${others.join(' = ')}` : undefined;
}

function bothSystems(quantity: Part & { readonly kind: 'quantity' }): string[] | undefined {
  const systems = ['us', 'metric'] as const;
  switch (kindOf(quantity)) {
    case 'length': {
      const read = readLength(quantity);
      return read.ok ? systems.map((system) => lengthText(read.value.nm, system)) : undefined;
    }
    case 'area': {
      const read = readArea(quantity);
      return read.ok ? systems.map((system) => areaText(read.value.mm2, system)) : undefined;
    }
    case 'volume': {
      const read = readVolume(quantity);
      return read.ok ? systems.map((system) => volumeText(read.value.mL, system)) : undefined;
    }
    case 'temperature': {
      const read = readTemperature(quantity);
      return read.ok ? systems.map((system) => temperatureText(read.value.celsius, system)) : undefined;
    }
    default:
      return undefined;
  }
}
