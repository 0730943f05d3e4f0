// The tables that are read and written: their columns, in the order in which they are written.
import type { Column } from './columns.ts';

export const tableKinds = ['rigs', 'seams', 'inspections'] as const;
export type TableKind = (typeof tableKinds)[number];

export const rigColumns = [
  'rig',
  'like',
  'under',
  'group',
  'unit',
  'vin',
  'built',
  'in-service',
  'acquired',
  'kept-until',
  'day-rate',
  'length',
  'width',
  'membrane',
] as const;
export const seamColumns = [
  'rig',
  'kind',
  'name',
  'size',
  'at',
  'on',
  'wide',
  'length',
  'of',
  'more',
  'note',
  'sealed',
  'sealant',
  'taped',
  'tape',
] as const;
export const inspectionColumns = [
  'rig',
  'date',
  'by',
  'item',
  'stretch',
  'condition',
  'defect',
  'moisture',
  'note',
] as const;

export type RigColumn = (typeof rigColumns)[number];
export type SeamColumn = (typeof seamColumns)[number];
export type InspectionColumn = (typeof inspectionColumns)[number];
export type AnyColumn = RigColumn | SeamColumn | InspectionColumn;

export const columnsOf: Readonly<Record<TableKind, readonly AnyColumn[]>> = {
  rigs: rigColumns,
  seams: seamColumns,
  inspections: inspectionColumns,
};

const needed: Readonly<Record<TableKind, ReadonlySet<AnyColumn>>> = {
  rigs: new Set<AnyColumn>(['rig']),
  seams: new Set<AnyColumn>(['rig', 'kind', 'name']),
  inspections: new Set<AnyColumn>(['rig', 'date']),
};

/** The columns as a header may name them. */
export const headerOf = (kind: TableKind): readonly Column<AnyColumn>[] =>
  columnsOf[kind].map((name) => ({ name, ...(needed[kind].has(name) ? { needed: true } : {}) }));

/** A row by its columns; a column that says nothing is not there. */
export type Said = Partial<Readonly<Record<AnyColumn, string>>>;
