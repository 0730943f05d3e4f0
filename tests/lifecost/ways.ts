import { estimateOf } from '../../language/estimate/index.ts';
import { comparisonOf } from '../../language/lifecost/comparison.ts';
import type { CompareResult, Comparison, WayLine } from '../../language/lifecost/schema.ts';
import type { RigView } from '../../language/resolve/types.ts';
import { projectOf } from '../project/workspace.ts';

export const asOf = '2026-10-01';

export const rigMaterials = `
tape Strip4 {
  width     4 in
  roll      50 ft at 58.00 USD
  roll      25 ft at 31.00 USD
  life      8 years, 15 years, 25 years
  end-lap   2 in
  bonds-to  epdm, aluminium, abs, solvent-lap
}
sealant Lap {
  family    solvent-lap
  cartridge 10.3 fl-oz at 9.50 USD
  case      12 cartridges at 102.00 USD
  bead      1 in by 1/4 in
  coats     at most 3
  bonds-to  epdm, aluminium, abs, solvent-lap
}
cleaner Wipe { container 1 qt at 9.00 USD  covers 200 sq-ft per gal }
`;

export interface Told {
  readonly policy?: readonly string[];
  readonly rig?: readonly string[];
  readonly materials?: string;
  readonly dayRate?: string;
}

/** A trailer of 20 ft whose sealant was laid anew in 2025 and found sound in 2026. */
export function rigText({
  policy = [],
  rig = [],
  materials: sold = rigMaterials,
  dayRate = '60 USD',
}: Told = {}): string {
  return `${sold}
policy Home {
  currency   USD
  labour     20 USD per h
  tax        6 % on materials
  wipe-with  Wipe
  ${policy.join('\n  ')}
}
rig Teal under Home {
  built      2020-03
  day-rate   ${dayRate}
  roof       20 ft by 8 ft epdm
  edge       curbside, roadside  wide 2 in
  cap        front               wide 2 in
  cap        rear                wide 2 in
  opening    vent 16 in by 16 in  of abs
  opening    lid 16 in by 16 in   of abs
  serviced   lid
  gasket     air-con 14 in by 14 in
  stripped   2025-05-01 all
  sealed     2025-05-02 all with Lap
  inspected  2026-04-18 { rest sound }
  ${rig.join('\n  ')}
}
`;
}

export function viewOf(told: Told = {}): RigView {
  const project = projectOf({ 'teal.rig': rigText(told) });
  const [view] = project.rigs('teal.rig');
  const problems = [...project.problems('teal.rig'), ...view!.problems];
  if (problems.length > 0) throw new Error(problems.map(({ message }) => message).join('; '));
  return view!;
}

export const result = (told: Told = {}): CompareResult => comparisonOf(viewOf(told), asOf);

export function compared(told: Told = {}): Comparison {
  const got = result(told);
  if ('reason' in got) throw new Error(got.reason);
  return got;
}

export function way(key: string, comparison: Comparison): WayLine {
  const found = comparison.ways.find((each) => each.key === key);
  if (!found) throw new Error(`no way ${key}`);
  return found;
}

/** What the estimate of plans that somebody wrote comes to, materials with tax. */
export function planned(...plans: string[]): { materials: number; labour: number } {
  const { totals } = estimateOf(viewOf({ rig: plans }), { asOf, today: asOf });
  return {
    materials: Number(totals.materials?.money.amount) + Number(totals.tax?.money.amount),
    labour: Number(totals.labour?.money.amount),
  };
}
