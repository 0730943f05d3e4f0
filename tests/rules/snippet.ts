// A small yard for tests of rules: one rig, its materials, and the lines that a test adds.

import type { Finding } from '../../language/rules/finding.ts';
import { check } from '../project/workspace.ts';

const yard = `tape Strip { width 4 in  roll 50 ft at 58 USD  bonds-to epdm, aluminium, abs, fibreglass, solvent-lap, tape }
sealant Lap {
  family solvent-lap
  coats at most 4
  cover 30 days to 60 days
  bonds-to epdm, aluminium, abs, solvent-lap
  cartridge 10.3 fl-oz at 9.75 USD
}
sealant Fast { family hybrid  bonds-to epdm, abs }
sealant Sil { family silicone }
cleaner Ketone { solvent acetone }
cleaner Mild { solvent detergent }
`;

/** A rig with the lines of a test in it. */
export function rigWith(lines: string, more = ''): string {
  return `${yard}${more}rig Teal {
  factory Lap
  built 2020-03
  found 2020-05-01 all with Lap
  roof 20 ft by 8 ft epdm
  edge curbside, roadside
  cap front
  cap rear
  opening vent 16 in by 16 in at 5 ft, 4 ft of abs
  opening dome 20 in by 20 in at 12 ft, 4 ft of polycarbonate
  gasket air-con 14 in by 14 in at 8 ft, 4 ft
  drain spout
  serviced dome
${lines}
}
`;
}

/** The findings of one rule, or of all, on a rig with these lines. */
export function findings(lines: string, rule?: string, options: { more?: string; asOf?: string } = {}): Finding[] {
  return check(rigWith(lines, options.more), 'a.rig', options.asOf ?? '2026-11-25').filter(
    (finding) => rule === undefined || finding.rule === rule,
  );
}

/** The text that the first fix of a finding makes of a rig. */
export function mended(lines: string, finding: Finding, more = ''): string {
  const text = rigWith(lines, more);
  const fix = finding.fixes?.[0];
  if (!fix) throw new Error('the finding has no fix');
  return text.slice(0, fix.at[0]) + fix.text + text.slice(fix.at[1]);
}
