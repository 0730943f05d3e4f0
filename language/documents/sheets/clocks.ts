// Clocks to fill in: when fresh work may be touched, rained on, driven, washed, covered.

import type { ClockName, Material } from '../../resolve/types.ts';
import type { Visit } from '../../schedule/index.ts';
import type { Duration } from '../../values/period.ts';
import { clockText } from '../titles.ts';
import { type Content, type Element, el } from './element.ts';
import { clock, day, list, table, typed } from './marks.ts';
import { shown } from './shown.ts';

const names: readonly ClockName[] = ['skin', 'rain', 'drive', 'wash'];
const began: Partial<Readonly<Record<Material['kind'], string>>> = {
  sealant: 'gunned',
  tape: 'laid',
  coating: 'coated',
  primer: 'primed',
};
const words: Readonly<Record<ClockName | 'cover', string>> = { skin: 'has a skin', ...clockText };

interface Running {
  readonly material: Material;
  readonly clock: ClockName | 'cover';
  readonly low: Duration;
  readonly high: Duration;
}

/** The clocks of materials; a material that is never covered with tape has none for it, and that is said. */
function runningOf(materials: readonly Material[]): readonly Running[] {
  return materials.flatMap((material) => {
    const own = names.flatMap((name): Running[] => {
      const figure = material.clocks[name]?.value;
      return figure ? [{ material, clock: name, low: figure.low, high: figure.high }] : [];
    });
    const cover = material.cover?.value;
    return cover && cover !== 'never'
      ? [...own, { material, clock: 'cover' as const, low: cover.low, high: cover.high }]
      : own;
  });
}

/** One row a clock: `gunned __:__ + 24 h = __:__`, at the earliest and without doubt. */
export function clockTable(materials: readonly Material[], visit: Visit): Element {
  const laid = materials.filter(({ kind }) => began[kind] !== undefined);
  const rows = runningOf(laid).map(({ material, clock: name, low, high }): readonly Content[] => {
    const verb = began[material.kind] ?? 'done';
    const same = low.text === high.text;
    return [
      [typed(material.name), ` ${words[name]}`],
      same ? '–' : sum(verb, low, `${shown(material.name)} ${words[name]} at the earliest`),
      sum(verb, high, `${shown(material.name)} ${words[name]} without doubt`),
    ];
  });
  const never = laid.filter(({ cover }) => cover?.value === 'never').map(({ name }) => shown(name));
  const silent = laid
    .filter((material) => runningOf([material]).length === 0)
    .map(({ name }) => `No clock of ${shown(name)} is recorded: its label says when it may get wet and be driven.`);
  const planned = visit.clocks.map(
    ({ clock: name, safeFrom }) => `As planned it ${clockText[name]} without doubt from ${safeFrom}.`,
  );
  return el(
    'div',
    {},
    rows.length > 0
      ? table('Write down when each began, and add', ['what', 'at the earliest', 'without doubt'], rows)
      : null,
    list([...never.map((name) => `${name} is never covered with tape.`), ...silent, ...planned]),
    el('p', { class: 'small' }, 'In the cold all of them run slower: twice as long for each 18 F (10 C), from memory.'),
  );
}

/** Hours run from a time, days from a date. */
function sum(verb: string, figure: Duration, what: string): Content {
  if (figure.kind === 'effort' && figure.minutes === 0) return 'at once';
  const blank = figure.kind === 'effort' ? clock : day;
  return el('span', {}, `${verb} `, blank(`${what}: begun`), ` + ${shown(figure.text)} = `, blank(what));
}
