// What is cut and what was measured for it.
import type { CuttingList, Estimate } from '../../estimate/index.ts';
import type { Explained } from '../../explain.ts';
import type { EstimatePaper } from '../papers.ts';
import { amountFormat, number, text } from './cells.ts';
import type { Column, Row, Table } from './table.ts';

const rigColumn: Column = { key: 'rig', title: 'rig', width: 16 };

export function cuttingSheet({ kind, estimates, together }: EstimatePaper): Table {
  const lists = [
    ...together.flatMap(({ cutting }) => (cutting ? [{ whose: 'all together', cutting }] : [])),
    ...estimates.flatMap(({ rig, cutting: all }) => all.map((cutting) => ({ whose: rig.name, cutting }))),
  ];
  return {
    name: 'Cutting list',
    title: 'Cutting list',
    notes: ['Roll by roll, in the order in which the pieces are laid; their numbers are those of the take-off.'],
    columns: [
      ...(kind === 'fleet' ? [{ key: 'list', title: 'list', width: 14 }, rigColumn] : []),
      { key: 'tape', title: 'tape', width: 18 },
      { key: 'stock', title: 'from', width: 26 },
      { key: 'piece', title: 'piece', width: 8, right: true },
      { key: 'item', title: 'seam', width: 18 },
      { key: 'what', title: 'what', width: 22 },
      { key: 'part', title: 'part', width: 10 },
      { key: 'length', title: 'length', width: 14, right: true },
      { key: 'exact', title: 'length as number', width: 14, right: true },
      { key: 'unit', title: 'in', width: 6 },
    ],
    rows: lists.flatMap(({ whose, cutting }) => cuttingRows(cutting).map((row) => ({ list: text(whose), ...row }))),
    landscape: true,
  };
}

function cuttingRows({ tape, stock, joints }: CuttingList): readonly Row[] {
  const cuts = stock.flatMap(({ what, usable, cuts: of, left }) => [
    ...of.map((cut) => ({
      rig: text(cut.rig),
      tape: text(tape),
      stock: text(what),
      piece: number(cut.piece),
      item: text(cut.item),
      what: text(cut.what),
      part: text(cut.part && `${cut.part[0]} of ${cut.part[1]}`),
      ...lengthOf(cut.length),
    })),
    {
      tape: text(tape),
      stock: text(what),
      what: text(of.length === 0 ? `not needed, ${usable.text} usable` : `left of ${usable.text} usable`, 'strong'),
      ...lengthOf(left),
    },
  ]);
  const splices = joints.map(({ rig, piece, item, at, tooNear }) => ({
    rig: text(rig),
    tape: text(tape),
    stock: text('splice, from the front end'),
    piece: number(piece),
    item: text(item),
    what: text(tooNear ? 'nearer than 12 in to a corner or an opening' : 'splice'),
    ...lengthOf(at),
  }));
  return [...cuts, ...splices];
}

const lengthOf = (figure: Explained): Row => ({
  length: text(figure.text),
  exact: number(figure.value, amountFormat),
  unit: text(figure.unit),
});

export function takeOffSheet({ kind, estimates }: EstimatePaper): Table {
  return {
    name: 'Take-off',
    title: 'Take-off',
    notes: ['Pieces, beads, what is stripped and liquids, as measured for the purchase.'],
    columns: [
      ...(kind === 'fleet' ? [rigColumn] : []),
      { key: 'what', title: 'what', width: 16 },
      { key: 'item', title: 'seam', width: 18 },
      { key: 'material', title: 'material', width: 22 },
      { key: 'note', title: 'which', width: 26 },
      { key: 'length', title: 'length or area', width: 16, right: true },
      { key: 'exact', title: 'as number', width: 14, right: true },
      { key: 'unit', title: 'in', width: 7 },
      { key: 'volume', title: 'volume', width: 13, right: true },
      { key: 'volumeUnit', title: 'in', width: 7 },
    ],
    rows: estimates.flatMap((estimate) =>
      measuredRows(estimate).map((row) => ({ rig: text(estimate.rig.name), ...row })),
    ),
    landscape: true,
  };
}

function measuredRows({ jobs, visits }: Estimate): readonly Row[] {
  const liquids = [...visits, ...jobs].flatMap((of) => of.liquids);
  return [
    ...jobs.flatMap(({ pieces, beads, stripped }) => [
      ...pieces.map(({ number: n, item, tape, what, length }) => ({
        what: text(`piece ${n}`),
        item: text(item),
        material: text(tape),
        note: text(what),
        ...lengthOf(length),
      })),
      ...beads.map(({ item, sealant, smothered, length, volume }) => ({
        what: text(smothered ? 'covered whole' : 'bead'),
        item: text(item),
        material: text(sealant),
        ...lengthOf(length),
        ...volumeOf(volume),
      })),
      ...stripped.map(({ item, hard, length }) => ({
        what: text(hard ? 'strip (hard)' : 'strip'),
        item: text(item),
        ...lengthOf(length),
      })),
    ]),
    ...liquids.map(({ task, material, area, volume }) => ({
      what: text(task),
      material: text(material),
      ...lengthOf(area),
      ...(volume ? volumeOf(volume) : {}),
    })),
  ];
}

const volumeOf = (figure: Explained): Row => ({
  volume: number(figure.value, amountFormat),
  volumeUnit: text(figure.unit),
});
