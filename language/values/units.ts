import { isCurrency } from './currency.ts';

/** What a unit measures. */
export type Family =
  | 'length'
  | 'area'
  | 'volume'
  | 'period'
  | 'effort'
  | 'temperature'
  | 'percent'
  | 'money'
  | 'counted';

/** A unit by its first spelling: `days` is `{ family: 'period', word: 'day' }`. */
export interface Unit {
  readonly family: Family;
  readonly word: string;
}

/** The things that are bought and used by number. Singular and plural are one word. */
const NOUNS = (
  'roll:rolls cartridge:cartridges piece:pieces case:cases can:cans tub:tubs tube:tubes pail:pails bottle:bottles ' +
  'sheet:sheets screw:screws bolt:bolts cap:caps plug:plugs rag:rags blade:blades brush:brushes roller:rollers ' +
  'nozzle:nozzles box:boxes pack:packs bag:bags kit:kits pair:pairs patch:patches container:containers'
)
  .split(' ')
  .map((pair) => pair.split(':') as [string, string]);

/** Every spelling of every unit that is accepted, the first of each the canonical one. Currencies come from Intl. */
const SPELLINGS: Readonly<Record<Exclude<Family, 'money'>, readonly (readonly string[])[]>> = {
  length: [['yd'], ['ft'], ['in'], ['m'], ['cm'], ['mm']],
  area: [['sq-ft'], ['sq-in'], ['sq-m']],
  volume: [['gal'], ['qt'], ['pt'], ['fl-oz'], ['L'], ['mL']],
  period: [
    ['year', 'years'],
    ['month', 'months'],
    ['week', 'weeks'],
    ['day', 'days'],
  ],
  effort: [['h', 'hour', 'hours'], ['min']],
  temperature: [['F'], ['C']],
  percent: [['%']],
  counted: NOUNS,
};

const UNITS: ReadonlyMap<string, Unit> = new Map(
  (Object.keys(SPELLINGS) as Exclude<Family, 'money'>[]).flatMap((family) =>
    SPELLINGS[family].flatMap((spellings) => {
      const unit: Unit = { family, word: spellings[0] ?? '' };
      return spellings.map((spelling): [string, Unit] => [spelling, unit]);
    }),
  ),
);

const PLURALS: ReadonlyMap<string, string> = new Map([
  ...NOUNS,
  ...SPELLINGS.period.map(([one, many]): [string, string] => [one ?? '', many ?? '']),
]);

/** The unit of a word, or undefined. Currency codes are units of money. */
export function unitOf(word: string): Unit | undefined {
  const unit = UNITS.get(word);
  if (unit !== undefined) return unit;
  return isCurrency(word) ? { family: 'money', word } : undefined;
}

/** All accepted spellings of the units of a family, for completion and for near spellings; none for money. */
export function unitWords(family: Family): readonly string[] {
  return family === 'money' ? [] : SPELLINGS[family].flat();
}

/** The canonical spelling of a unit beside a number that is one (`1 roll`) or is not (`2 rolls`). */
export function spelled(word: string, one: boolean): string {
  return one ? word : (PLURALS.get(word) ?? word);
}
