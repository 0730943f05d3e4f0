// The bookings that a fleet has from files, and which of its rigs they are for.
import type { Span } from '../grammar/problem.ts';
import type { FleetDeclaration } from '../records/file.ts';
import { nameText } from '../statements/slots/words.ts';
import { type BookingRow, type BookingsFile, isBookingsFile, readBookings } from '../tables/bookings.ts';
import { originOf } from './origin.ts';
import { folderOf, resolvePath } from './paths.ts';
import type { FleetFrame } from './types.ts';

/** A file of bookings that a fleet names. */
export interface BookingTable {
  readonly path: string;
  readonly written: string;
  /** Where the fleet names it. */
  readonly at: Span;
  /** Named before by the same fleet: it counts once. */
  readonly again?: true;
  /** Undefined where there is no such file. */
  readonly read: BookingsFile | undefined;
  /** The names of files that might have been meant. */
  readonly beside: readonly string[];
}

/** The files of bookings that a declaration names, each once. */
export function bookingPaths(declaration: FleetDeclaration, file: string): readonly string[] {
  const paths = declaration.statements.flatMap((s) =>
    s.word === 'bookings' ? [resolvePath(folderOf(file), s.path)] : [],
  );
  return [...new Set(paths)];
}

interface Reading {
  readonly bookings: (path: string) => BookingsFile | undefined;
  readonly beside: (folder: string) => readonly string[];
}

export function bookingTables(declaration: FleetDeclaration, file: string, reading: Reading): readonly BookingTable[] {
  const named = new Set<string>();
  return declaration.statements.flatMap((s): BookingTable[] => {
    if (s.word !== 'bookings') return [];
    const path = resolvePath(folderOf(file), s.path);
    const where = { path, written: s.path, at: s.spans.path ?? s.at };
    if (named.has(path)) return [{ ...where, again: true, read: undefined, beside: [] }];
    named.add(path);
    const read = isBookingsFile(path) ? reading.bookings(path) : undefined;
    return [{ ...where, read, beside: read ? [] : reading.beside(folderOf(path)) }];
  });
}

/** Reads each text once for as long as it stays the same. */
export function bookingsBy(text: (path: string) => string | undefined) {
  const known = new Map<string, BookingsFile | undefined>();
  return {
    of(path: string): BookingsFile | undefined {
      if (known.has(path)) return known.get(path);
      const got = text(path);
      const read = got === undefined ? undefined : readBookings(path, got);
      known.set(path, read);
      return read;
    },
    forget: (path: string): void => void known.delete(path),
  };
}

/** A rig as bookings may call it. */
export interface Bookable {
  readonly name: string;
  readonly unit?: { readonly value: string };
  readonly vin?: { readonly value: string };
}

/** Finds the rig that a row is for: by its name, its unit number or its VIN, exactly as written. */
export function rigOfRow(rigs: Iterable<Bookable>): (row: BookingRow) => string | undefined {
  const names = new Map<string, string>();
  const all = [...rigs];
  // A name goes before a unit number that reads the same.
  for (const { name, vin } of all) if (vin) names.set(vin.value, name);
  for (const { name, unit } of all.toReversed()) if (unit) names.set(unit.value, name);
  for (const { name } of all) names.set(name, name);
  return ({ labels }) => {
    for (const label of labels) {
      const found = names.get(nameText(label));
      if (found !== undefined) return found;
    }
    return undefined;
  };
}

/** A fleet with the bookings of its files beside those of its lines; rows that name none of its rigs are left out. */
export function withBookings<F extends FleetFrame>(fleet: F, rigs: Iterable<Bookable>): F {
  const { tables = [] } = fleet;
  if (tables.length === 0) return fleet;
  const rigOf = rigOfRow(rigs);
  const booked = tables.flatMap(({ path, read }) =>
    (read?.rows ?? []).flatMap((row) => {
      const rig = rigOf(row);
      return rig === undefined ? [] : [{ rig, first: row.first, last: row.last, origin: originOf(path, row.at) }];
    }),
  );
  return { ...fleet, booked: [...fleet.booked, ...booked] };
}
