// Estimates of small texts.
import { type Estimate, estimateOf } from '../../language/estimate/index.ts';
import type { RigView } from '../../language/resolve/types.ts';
import { projectOf } from '../project/workspace.ts';

export const asOf = '2026-10-01';

/** The rig of a text; a text with problems is a fault of the test. */
export function viewOf(text: string): RigView {
  const project = projectOf({ 'a.rig': text });
  const views = project.rigs('a.rig');
  const problems = [...project.problems('a.rig'), ...views.flatMap((view) => view.problems)];
  if (problems.length > 0) throw new Error(problems.map(({ message }) => message).join('\n'));
  const view = views.find(({ rig }) => rig.kind === 'rig');
  if (view === undefined) throw new Error('the text has no rig');
  return view;
}

/** The estimate of the rig of a text. */
export function estimate(text: string): Estimate {
  return estimateOf(viewOf(text), { asOf, today: asOf });
}

/** Materials with round figures and prices. */
export const materials = `
tape Tape4 {
  width 4 in
  roll  50 ft at 60.00 USD
  roll  25 ft at 35.00 USD
}
sealant Lap {
  family    solvent-lap
  cartridge 10 fl-oz at 10.00 USD
  case      12 cartridges at 100.00 USD
  bead      1 in by 1/4 in
}
cleaner Soap { container 1 gal at 14.00 USD  covers 400 sq-ft per gal }
cleaner Wipe { container 1 qt at 9.00 USD  covers 200 sq-ft per gal  passes 2 }
policy Shop {
  currency  USD
  labour    50.00 USD per h
  wash-with Soap
  wipe-with Wipe
}
`;

/** A rig under `Shop` with these lines on a roof of 28 ft by 8 ft. */
export function rigWith(...lines: readonly string[]): string {
  return `${materials}\nrig Heron under Shop {\n  roof 28 ft by 8 ft epdm\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
}
