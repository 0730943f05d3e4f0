// A material or a surface as Markdown: where it is declared, and each figure with its kind and source.
import { isLibrary } from '../../language/resolve/origin.ts';
import type { Material, Stated, Surface } from '../../language/resolve/types.ts';
import type { Texts } from '../places.ts';
import { inline, whereFrom } from './explained.ts';

export function materialText(material: Material, texts: Texts): string {
  const { kind, name, origin, doc } = material;
  // What the heading alone brings with it was not written and says nothing.
  const isImplied = (value: unknown) => isStated(value) && value.origin.at === origin.at;
  const figures = Object.entries(material).flatMap(([field, value]) =>
    isImplied(value) ? [] : figureLines(field, value, texts),
  );
  return [
    `**${inline(name)}**, a ${kind} ${isLibrary(origin.file) ? '(built in)' : whereFrom(origin, texts)}`,
    doc === undefined ? '' : inline(doc),
    figures.join('\n'),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

export function surfaceText(surface: Surface, texts: Texts): string {
  const { name, group, life, caution, origin } = surface;
  const lines = [
    ...(life ? [`- life: ${valueText(life.value)} ${whereFrom(life.origin, texts)}`] : []),
    ...(caution ? [`- ${inline(caution.value)} ${whereFrom(caution.origin, texts)}`] : []),
  ];
  const where = isLibrary(origin.file) ? '(built in)' : whereFrom(origin, texts);
  return [`**${inline(name)}**, a surface of the group ${group} ${where}`, lines.join('\n')]
    .filter((part) => part !== '')
    .join('\n\n');
}

/** The figures of one field: a value with its origin, or several. */
function figureLines(field: string, value: unknown, texts: Texts): string[] {
  const label = field.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  if (field === 'origin') return [];
  if (field === 'bonding') return bondingLines(value as Readonly<Record<string, Stated<string>>>);
  if (isStated(value)) return [`- ${label}: ${inline(valueText(value.value))} ${whereFrom(value.origin, texts)}`];
  if (Array.isArray(value)) return value.flatMap((one) => figureLines(label, sold(one), texts));
  if (field === 'clocks')
    return Object.entries(value as object).flatMap(([name, one]) => figureLines(name, one, texts));
  return [];
}

function bondingLines(bonding: Readonly<Record<string, Stated<string>>>): string[] {
  const by = new Map<string, string[]>();
  for (const [surface, { value }] of Object.entries(bonding)) by.set(value, [...(by.get(value) ?? []), surface]);
  const said: Readonly<Record<string, string>> = {
    yes: 'bonds to',
    label: 'bonds by its label to',
    test: 'bonds after a test patch to',
    never: 'never on',
  };
  return [...by].map(([grade, surfaces]) => `- ${said[grade] ?? grade}: ${surfaces.map(inline).join(', ')}`);
}

/** What is on sale reads as a figure: its size and its price. */
function sold(one: unknown): unknown {
  if (typeof one !== 'object' || one === null || !('size' in one) || !('origin' in one)) return one;
  const { size, price, origin } = one as { size: unknown; price?: unknown; origin: unknown };
  return { value: price === undefined ? valueText(size) : `${valueText(size)} at ${valueText(price)}`, origin };
}

const isStated = (value: unknown): value is Stated<unknown> =>
  typeof value === 'object' && value !== null && 'value' in value && 'origin' in value;

/** A value as it was written. Ranges and three points are shown by their ends. */
export function valueText(value: unknown): string {
  if (typeof value !== 'object' || value === null) return String(value);
  if ('text' in value) return String(value.text);
  if ('low' in value && 'high' in value) {
    const [low, high] = [valueText(value.low), valueText(value.high)];
    return low === high ? low : `${low} to ${high}`;
  }
  if ('least' in value && 'likely' in value && 'most' in value)
    return [value.least, value.likely, value.most].map(valueText).join(', ');
  if ('width' in value && 'height' in value) return `${valueText(value.width)} by ${valueText(value.height)}`;
  return Object.values(value).map(valueText).join(' ');
}
