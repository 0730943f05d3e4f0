// `rigseam add-record`: one record or plan for many rigs.
import { relative } from 'node:path';
import { addRecord, chosenRigs, readStatement, rigsOf } from '../../language/authoring/added-record.ts';
import { draftOver } from '../../language/authoring/draft.ts';
import type { Dates } from '../../language/resolve/types.ts';
import { type BulkOptions, carriedOut } from './bulk.ts';
import { type Asked, diskOf, Misuse } from './paths.ts';

export interface AddOptions extends BulkOptions {
  /** Names, or patterns of names. */
  readonly rigs: readonly string[];
}

export interface Printed {
  readonly text: string;
  readonly json: unknown;
  /** Something was refused: exit code 1. */
  readonly failed: boolean;
}

export function addToRigs(typed: string, asked: Asked, dates: Dates, options: AddOptions): Printed {
  const read = readStatement(typed);
  if ('message' in read) throw new Misuse(`The statement cannot be read: ${read.message}`);
  const disk = diskOf(asked);
  const draft = draftOver(disk, dates, disk.exists);
  const { rigs, unknown } = chosenRigs(rigsOf(draft, asked.files), options.rigs);
  if (unknown.length > 0) throw new Misuse(unknown.join('\n'));
  const results = addRecord(draft, rigs, read.statement);
  const { lines, files } = carriedOut(draft.changes(), asked.from, options);
  const name = (file: string) => relative(asked.from, file) || file;
  const refused = results.filter(({ outcome }) => outcome === 'refused');
  const there = results.filter(({ outcome }) => outcome === 'there');
  const text = [
    ...refused.map((one) => `${name(one.file)}: ${one.name} is left out: ${one.why}`),
    ...there.map((one) => `${place(one.place, name)}: ${one.name} has it already.`),
    ...lines,
  ];
  return {
    text: `${text.join('\n')}\n`,
    json: {
      written: options.write === true && files.length > 0,
      rigs: results.map(({ file, name: rig, outcome, place, why }) => ({
        rig,
        file: name(file),
        outcome,
        ...(place && { place: { file: name(place.file), line: place.line } }),
        ...(why !== undefined && { why }),
      })),
      files,
    },
    failed: refused.length > 0,
  };
}

const place = (at: { file: string; line: number } | undefined, name: (file: string) => string) =>
  at ? `${name(at.file)}:${at.line}` : '';
