// Go or no go: the figures of the materials of a visit, and blanks for those of the day.

import type { Material } from '../../resolve/types.ts';
import { type System, temperatureText } from '../../values/display.ts';
import { type Element, el } from './element.ts';
import { blank, clock, field, list } from './marks.ts';
import { shown } from './shown.ts';

const laid: ReadonlySet<Material['kind']> = new Set(['tape', 'sealant', 'primer', 'coating']);

/** The range in which all of the materials may be laid, each figure with the material that sets it. */
export function limitLines(materials: readonly Material[], system: System): readonly string[] {
  const ranged = materials.filter((one) => laid.has(one.kind) && one.apply !== undefined);
  const lows = ranged.map((one) => ({ celsius: one.apply!.value.low.celsius, name: one.name }));
  const highs = ranged.map((one) => ({ celsius: one.apply!.value.high.celsius, name: one.name }));
  const tops = materials.flatMap((one) =>
    one.surfaceUpTo ? [{ celsius: one.surfaceUpTo.value.celsius, name: one.name }] : [],
  );
  const low = lows.reduce<(typeof lows)[number] | undefined>(
    (a, b) => (a && a.celsius >= b.celsius ? a : b),
    undefined,
  );
  const least = (all: typeof highs) =>
    all.reduce<(typeof all)[number] | undefined>((a, b) => (a && a.celsius <= b.celsius ? a : b), undefined);
  const [high, top] = [least(highs), least(tops)];
  const silent = materials
    .filter((one) => laid.has(one.kind) && one.apply === undefined)
    .map(({ name }) => shown(name));
  const text = (limit: { celsius: number; name: string }) =>
    `${temperatureText(limit.celsius, system)} (${shown(limit.name)})`;
  return [
    ...(low && high ? [`Air and surface from ${text(low)} to ${text(high)}.`] : []),
    ...(top ? [`Surface at most ${text(top)}.`] : []),
    ...(silent.length > 0 ? [`The record has no range for ${silent.join(', ')}: the label has.`] : []),
    'Surface at least 5 F (3 C) above the dew point.',
    'Dry, and no rain until the rain clock below has run out.',
    'Ladder and roof: stop above about 25 mph (40 km/h) of wind, at the first thunder, at dusk.',
  ];
}

/** The limits and the readings of the day. */
export function goNoGo(materials: readonly Material[], system: System): Element {
  const unit = system === 'us' ? 'F' : 'C';
  return el(
    'div',
    {},
    list(limitLines(materials, system)),
    el(
      'p',
      {},
      field(`air`, blank('air'), ` ${unit}`),
      field('humidity', blank('humidity'), ' %'),
      field('dew point', blank('dew point'), ` ${unit}`),
      field('surface', blank('surface'), ` ${unit}`),
      field('surface less dew point', blank('surface less dew point'), ` ${unit}`),
      field('wind', blank('wind')),
      field('no rain until', clock('no rain until')),
    ),
  );
}
