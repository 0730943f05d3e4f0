// The leaf of a seam or an item: how it is built, what lies on it, what happened to it, its readings.
import type { Item } from '../../resolve/types.ts';
import { extentOf, isThere, type Layer, type SeamState, type Stretch } from '../../seams/index.ts';
import { lengthText, type System } from '../../values/display.ts';
import { type Content, type Element, el } from '../sheets/element.ts';
import { lastFinding } from '../sheets/last-finding.ts';
import { typed } from '../sheets/marks.ts';
import { shown } from '../sheets/shown.ts';
import { type Account, evidenceOf, readingsOf, toldOf } from './account.ts';
import { facts, joined, listing, notRecorded, paragraph } from './facts.ts';
import { readingRows } from './readings.ts';
import { dateOf, rowHeads, rowOf, usedAmount } from './telling.ts';

export const anchorOf = (index: number): string => `seam-${index + 1}`;

export function seamLeaf(seam: SeamState, index: number, account: Account): Element {
  const { item } = seam;
  const { system, view, events, asOf } = account;
  const told = toldOf(events, item.name);
  const readings = readingsOf(events).filter(({ items }) => items.includes(item.name));
  const gone = isThere(seam, asOf) ? null : paragraph(el('b', {}, goneText(seam)));
  const former = view.rig.formerly[item.name] ?? [];
  return el(
    'section',
    { class: 'leaf', id: anchorOf(index) },
    el('h3', {}, typed(item.name)),
    gone,
    facts([
      ['what it is', `${kinds[item.kind] ?? item.kind}${item.wall ? ', on the wall' : ''}`],
      ...(former.length > 0 ? [['formerly called', joined(former.map(typed))] as const] : []),
      ['size', sizeText(item, seam, account)],
      [
        'between',
        item.between
          ? joined(item.between.map(typed), ' and ')
          : item.surface
            ? [typed(item.surface), ' on the roof']
            : notRecorded,
      ],
      ['fitted', item.since?.text ?? 'not recorded: with the rig, or not known'],
      ['found last', lastFinding(seam, system)],
    ]),
    ...(item.doc === undefined ? [] : [paragraph('The keeper says of it: ', typed(item.doc))]),
    seam.role === 'open'
      ? paragraph('It carries no sealant and no tape: it must stay open, or is held by a gasket.')
      : layersTable(seam, system),
    el(
      'div',
      { class: 'dated' },
      listing(
        'What happened, in order of time',
        rowHeads,
        told.map((one) => rowOf(one, account, item.name)),
        'nothing is recorded.',
      ),
    ),
    ...(readings.length > 0
      ? [listing('Readings of the moisture meter', readingHeads, readingRows(readings), '')]
      : [paragraph('Readings of the moisture meter: none is recorded.')]),
  );
}

export const readingHeads = ['date', 'where', 'reading', 'against the one before'] as const;

const kinds: Readonly<Record<string, string>> = {
  edge: 'edge of the roof',
  cap: 'front or rear cap',
  slide: 'slide room',
  opening: 'opening',
  mount: 'something mounted',
  joint: 'joint',
  gasket: 'part on a gasket',
  drain: 'drain',
  channel: 'channel',
  insert: 'insert',
  field: 'the membrane itself',
};

const goneText = ({ removed }: SeamState): string =>
  removed ? `Taken away ${dateOf(removed)}.` : 'Not on the rig on this date.';

function sizeText(item: Item, seam: SeamState, { system, view }: Account): Content {
  const long = (nm: number) => lengthText(nm, system);
  const { size, wide, bead, count } = item;
  const extent = extentOf(item, view.rig.roof);
  const said = [
    size && (size.shape === 'round' ? `round, ${size.diameter.text}` : `${size.along.text} by ${size.across.text}`),
    extent === undefined ? undefined : `runs ${long(extent)}`,
    wide && `${wide.text} wide`,
    bead && `bead ${bead.width.text} by ${bead.height.text}`,
    count > 1 ? `${count} alike` : undefined,
  ].filter((part) => part !== undefined);
  return said.length === 0 ? (seam.role === 'field' ? 'the whole roof' : notRecorded) : said.join(', ');
}

/** What lies there, from the bottom up, stretch by stretch. */
function layersTable({ stretches, item }: SeamState, system: System): Element {
  const rows = stretches.flatMap((stretch) => {
    const part = stretches.length > 1 ? partOf(stretch, system) : 'all of it';
    const all = [
      ...stretch.layers,
      ...(stretch.coating && !stretch.layers.includes(stretch.coating) ? [stretch.coating] : []),
    ];
    if (all.length === 0) return [[part, stretch.bare ? 'bare' : 'nothing is recorded', '', '', '', '']];
    return all.map((layer): readonly Content[] => layerRow(part, layer, item));
  });
  return listing(
    'What lies on it, from the bottom up',
    ['stretch', 'layer', 'material', 'laid', 'by', 'lot; amount in that record'],
    rows,
    'nothing is recorded.',
  );
}

const partOf = ({ from, to }: Stretch, system: System) =>
  `${lengthText(from, system)} to ${to === undefined ? 'its end' : lengthText(to, system)}`;

function layerRow(part: string, layer: Layer, item: Item): readonly Content[] {
  const { event, kind, by, material, known } = layer;
  const record = event && evidenceOf(event);
  const name = known === 'unknown' ? 'unknown' : material === undefined ? notRecorded : typed(material);
  const laid =
    by === 'factory'
      ? item.since
        ? `when it was fitted, ${item.since.text}`
        : 'at the factory, as assumed'
      : by === 'found'
        ? `found there ${event ? dateOf(event) : ''}`
        : event
          ? dateOf(event)
          : notRecorded;
  const amount = by === 'work' && event && material !== undefined ? usedAmount(event, material) : undefined;
  const lot = by === 'work' && record?.lot !== undefined ? ['lot ', typed(record.lot)] : 'lot not recorded';
  return [
    part,
    kind,
    [name, known === 'undeclared' ? ' (not declared)' : ''],
    laid,
    by !== 'work' ? notRecorded : record?.by === undefined ? notRecorded : typed(record.by),
    [lot, amount === undefined ? '' : `; ${shown(amount)}`],
  ];
}
