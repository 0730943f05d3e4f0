// A record in words: what was done or seen, with what, by whom, in which conditions, and what of that is not written down.
import type { Event, Place } from '../../resolve/types.ts';
import { repairs } from '../../seams/index.ts';
import type { Amount, Used } from '../../statements/slots/amounts.ts';
import { unknownMaterial } from '../../statements/slots/amounts.ts';
import { lengthText, moneyText, type System } from '../../values/display.ts';
import { type Content, el } from '../sheets/element.ts';
import { typed } from '../sheets/marks.ts';
import { shown } from '../sheets/shown.ts';
import { type Account, evidenceOf, type Line, type Told } from './account.ts';
import { joined, paragraph } from './facts.ts';
import { linked, pictured } from './links.ts';

/** The date as it was written, with its time of day if it has one. */
export const dateOf = (event: Event): string => evidenceOf(event)?.date.text ?? event.last;

const verbs: Readonly<Record<string, string>> = {
  found: 'found so',
  inspected: 'inspected',
  struck: 'struck or strained',
  leaked: 'water came in',
  covered: 'covered for the time being',
  replaced: 'part replaced',
  rebedded: 'taken off and bedded anew',
  removed: 'taken away for good',
};
export const verbOf = ({ record }: Event): string => verbs[record.word] ?? record.word;

export function stretchText(places: readonly Place[], system: System): string {
  const parts = places.flatMap(({ from, to }) =>
    from === undefined || to === undefined ? [] : [`from ${lengthText(from, system)} to ${lengthText(to, system)}`],
  );
  return [...new Set(parts)].join(' and ');
}

/** Names of the places of a record, with their stretches. */
export function placesOf(event: Event, system: System): string {
  const all = [...event.places, ...event.findings.flatMap(({ places }) => places)];
  const names = [...new Set(all.map(({ item }) => item))];
  if (names.length === 0) return 'the roof as a whole';
  if (names.length > 6) return `${names.length} seams and items`;
  return names.map(shown).join(', ') + (names.length === 1 ? ` ${stretchText(event.places, system)}`.trimEnd() : '');
}

/** The word of a finding with its defects: `cracked, wet`. */
export function seenText({ seen }: Line): string {
  const words = [seen.condition, ...seen.defects, seen.wet ? 'wet' : undefined, seen.notSeen ? 'not seen' : undefined];
  const said = words.filter((word) => word !== undefined);
  return said.length === 0 ? 'looked at, no word written' : said.join(', ');
}

export function amountText(amount: Amount): string {
  if (amount.kind === 'length') return amount.length.text;
  if (amount.kind === 'volume') return amount.volume.text;
  const of = amount.length ?? amount.volume;
  return `${amount.counted.text}${of ? ` of ${of.text}` : ''}`;
}

export const amountsText = ({ used }: Used): string | undefined => used?.map(amountText).join(' and ');

export function usedText(used: Used): Content {
  const name = used.name === unknownMaterial ? 'unknown material' : typed(used.name);
  const amount = amountsText(used);
  return [name, amount === undefined ? '' : ` (${amount})`];
}

export const materialsOf = ({ record }: Event): readonly Used[] =>
  'materials' in record ? (record.materials ?? []) : [];

/** What a record says beside its findings. */
export function evidence(event: Event, account: Account, shared: boolean): readonly Content[] {
  const record = evidenceOf(event);
  if (!record) return [];
  const { folder } = account;
  const used = materialsOf(event);
  const figures = [
    record.lot === undefined ? undefined : ['lot ', typed(record.lot)],
    record.air && `air ${record.air.text}`,
    record.surfaceTemperature && `surface ${record.surfaceTemperature.text}`,
    record.humidity && `humidity ${record.humidity.text}`,
    record.took && `took ${record.took.text}`,
    'inside' in record && record.inside !== undefined ? ['inside: ', typed(record.inside)] : undefined,
    'moisture' in record && record.moisture ? `moisture ${record.moisture.text}` : undefined,
    'until' in record && record.until ? `meant to last until ${record.until.text}` : undefined,
    record.paid && `paid ${moneyText(record.paid)}${shared ? ' for all places of the record' : ''}`,
  ].filter((figure) => figure !== undefined);
  return [
    used.length > 0 ? paragraph('with ', ...joined(used.map(usedText))) : null,
    figures.length > 0 ? paragraph(...joined(figures, '; ')) : null,
    record.note === undefined ? null : paragraph('note: ', typed(record.note)),
    ...(record.photos ?? []).map((photo) =>
      pictured(photo, event.file, folder, `${verbOf(event)} ${dateOf(event)}, ${placesOf(event, account.system)}`),
    ),
    record.papers?.length
      ? paragraph('papers: ', ...joined(record.papers.map((paper) => linked(paper, event.file, folder))))
      : null,
  ];
}

/** A line of findings about one item. */
export function lineTold(line: Line, event: Event, account: Account, item: string): readonly Content[] {
  return [
    line.materials?.length ? paragraph('found there: ', ...joined(line.materials.map(usedText))) : null,
    line.moisture
      ? paragraph(`moisture ${line.moisture.text}`, line.inside === undefined ? '' : [' inside: ', typed(line.inside)])
      : line.inside === undefined
        ? null
        : paragraph('inside: ', typed(line.inside)),
    line.note === undefined ? null : paragraph('note: ', typed(line.note)),
    ...(line.photos ?? []).map((photo) =>
      pictured(photo, event.file, account.folder, `${shown(item)}: ${seenText(line)}, ${dateOf(event)}`),
    ),
  ];
}

const looks: ReadonlySet<string> = new Set(['found', 'inspected']);
const laying: ReadonlySet<string> = new Set(['sealed', 'taped', 'patched', 'coated', 'rebedded', 'primed']);

/** What a buyer would ask of such a record and does not find. */
export function missingIn({ event, lines }: Told): readonly string[] {
  const record = evidenceOf(event);
  if (!record) return [];
  const { word } = record;
  const pictures = [...(record.photos ?? []), ...lines.flatMap(({ line }) => line.photos ?? [])];
  const used = materialsOf(event);
  return [
    record.by === undefined && word !== 'struck' ? 'who' : undefined,
    laying.has(word) && used.length === 0 ? 'material' : undefined,
    laying.has(word) && record.lot === undefined ? 'lot' : undefined,
    laying.has(word) && record.air === undefined ? 'air' : undefined,
    pictures.length === 0 && (looks.has(word) || repairs.has(word)) ? 'photo' : undefined,
  ].filter((what) => what !== undefined);
}

/** The row of a record in the history of an item: date, what, who, the rest. */
export function rowOf(told: Told, account: Account, item: string): readonly Content[] {
  const { event, places, lines } = told;
  const record = evidenceOf(event);
  const shared = new Set([...event.places, ...event.findings.flatMap((f) => f.places)].map((p) => p.item)).size > 1;
  const missing = missingIn(told);
  const where = stretchText(places, account.system);
  return [
    dateOf(event),
    [
      paragraph(el('b', {}, verbOf(event)), where === '' ? '' : ` ${where}`),
      ...lines.map(({ line, places: seen }) =>
        paragraph(el('b', {}, seenText(line)), ` ${stretchText(seen, account.system)}`.trimEnd()),
      ),
    ],
    record?.by === undefined ? '' : typed(record.by),
    [
      ...lines.flatMap(({ line }) => lineTold(line, event, account, item)),
      ...evidence(event, account, shared),
      missing.length > 0 ? el('p', { class: 'small unknown' }, `not recorded: ${missing.join(', ')}`) : null,
    ],
  ];
}

export const rowHeads = ['date', 'what', 'by', 'what is recorded of it'] as const;

/** How much of a material a record says was used. */
export function usedAmount(event: Event, material: string): string | undefined {
  const used = materialsOf(event).find(({ name }) => name === material);
  return used && amountsText(used);
}
