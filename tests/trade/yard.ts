// A used rig in a few lines, and what the real engine says of it: checker, due dates, estimate, schedule, papers.
import { textDocumentsOf } from '../../language/documents/index.ts';
import { type Due, duesOf } from '../../language/due/index.ts';
import { type Estimate, estimateOf } from '../../language/estimate/index.ts';
import type { RigView } from '../../language/resolve/types.ts';
import { checkFile } from '../../language/rules/check.ts';
import type { Finding } from '../../language/rules/finding.ts';
import { type Schedule, scheduleOfRig } from '../../language/schedule/index.ts';
import { projectOf } from '../project/workspace.ts';

export const asOf = '2026-11-25';

/** Materials with prices and nothing else of their own: all else is the built-in library. */
export const materials = `
tape Strip {
  width 4 in
  end-lap 2 in
  roll 50 ft at 61.00 USD
  roll 25 ft at 34.50 USD
  bonds-to epdm, abs, solvent-lap, tape
}
sealant Lap {
  family solvent-lap
  cartridge 10.3 fl-oz at 9.75 USD
  bonds-to epdm, abs, solvent-lap
}
cleaner Soap { container 1 gal at 14 USD  covers 400 sq-ft per gal }
policy Own {
  currency USD
  labour 50 USD per h
  wash-with Soap
  wipe-with Soap
}
`;

/** A rig under `Own` with these lines. */
export const rigWith = (...lines: readonly string[]): string =>
  `${materials}\nrig Teal under Own {\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;

export function viewOf(text: string): RigView {
  const view = projectOf({ 'a.rig': text })
    .rigs('a.rig')
    .find(({ rig }) => rig.kind === 'rig');
  if (view === undefined) throw new Error('the text has no rig');
  return view;
}

const on = (day: string) => ({ asOf: day, today: day > asOf ? day : asOf });

export const found = (text: string, day = asOf): readonly Finding[] =>
  checkFile(projectOf({ 'a.rig': text }), 'a.rig', on(day));
export const rules = (text: string, day = asOf): readonly string[] => found(text, day).map(({ rule }) => rule);
export const errors = (text: string, day = asOf): readonly string[] =>
  found(text, day)
    .filter(({ severity }) => severity === 'error')
    .map(({ message }) => message);
export const dues = (text: string, day = asOf): readonly Due[] => duesOf(viewOf(text), on(day));
export const estimate = (text: string, day = asOf): Estimate => estimateOf(viewOf(text), on(day));
export const schedule = (text: string, day = asOf): Schedule => scheduleOfRig(viewOf(text), on(day));
/** The papers of the rig by file name. */
export const papers = (text: string, day = asOf): ReadonlyMap<string, string> =>
  new Map(textDocumentsOf({ kind: 'rig', view: viewOf(text) }, on(day)).map(({ name, text: body }) => [name, body]));
