// The advice on a rig from text.
import { adviceOf, type SeamAdvice } from '../../language/advice/index.ts';
import type { RigView } from '../../language/resolve/types.ts';
import { projectOf } from '../project/workspace.ts';
import { viewsOf } from '../seams/view.ts';

export const FT = 304_800_000;

const yard = `tape Strip { width 4 in  roll 50 ft  life 8 years, 15 years, 25 years  bonds-to epdm, aluminium, abs, solvent-lap, tape }
sealant Lap {
  family solvent-lap
  coats at most 4
  look-hard every 18 months
  cover 30 days to 60 days
  bonds-to epdm, aluminium, abs, solvent-lap
}
sealant Sil { family silicone  cover never }
sealant Vinegar { family acetoxy-silicone }
sealant Tar { family asphalt }
coating Cream { family acrylic }
coating SilCoat { family silicone }
cleaner Mild { solvent detergent }
cleaner Ketone { solvent acetone }
cleaner Spirit { solvent isopropyl }
`;

export interface Asked {
  readonly asOf?: string;
  /** What stands in the place of `factory Lap` and `built 2020-03-10`. */
  readonly facts?: string;
  /** The surface of the roof. */
  readonly surface?: string;
  readonly policy?: string;
  /** The text has lines that cannot be read. */
  readonly broken?: boolean;
}

/** The text of a yard with one rig in it: these lines, on a roof of 28 ft by 8 ft. */
export function rigText(
  lines: string,
  { facts = 'factory Lap\n  built 2020-03-10', surface = 'epdm', policy = '' }: Asked = {},
): string {
  return `${yard}policy Yard {
  inspect every 6 months
  due-soon 30 days
  follow-up hairline within 6 months, cracked within 30 days, lifting within 7 days, open within 1 day, not-seen within 6 months, wet within 14 days, leak within 7 days
  look-after struck within 1 day, stored within 14 days, repaired-leak within 30 days
  ${policy}
}
rig Teal under Yard {
  ${facts}
  roof 28 ft by 8 ft ${surface}
  edge curbside, roadside
  cap front
  opening vent 16 in by 16 in at 5 ft, 4 ft of abs
  opening dome 20 in by 20 in at 12 ft, 4 ft of polycarbonate
  opening lid 14 in by 14 in at 16 ft, 4 ft of abs
  mount foot 3 in by 4 in at 20 ft, 2 ft of aluminium
  gasket air-con 14 in by 14 in at 8 ft, 4 ft
  drain spout at 27 ft, 8 ft
  insert trim 28 ft
  field membrane
  serviced lid
${lines}
}
`;
}

export function viewOf(lines: string, asked?: Asked): RigView {
  const text = { 'a.rig': rigText(lines, asked) };
  const [view] = asked?.broken ? projectOf(text).rigs('a.rig') : [viewsOf(text)];
  if (!view) throw new Error('the text has no rig');
  return view;
}

export const today = '2026-05-20';

/** All advice on such a rig; on 2026-05-20 where no day is given. */
export function advice(lines: string, asked: Asked = {}): readonly SeamAdvice[] {
  const asOf = asked.asOf ?? today;
  return adviceOf(viewOf(lines, asked), { asOf, today: asOf });
}

/** The advice on one item. */
export const on = (item: string, lines: string, asked?: Asked): readonly SeamAdvice[] =>
  advice(lines, asked).filter((one) => one.item === item);

/** The only advice on one item. */
export function one(item: string, lines: string, asked?: Asked): SeamAdvice {
  const all = on(item, lines, asked);
  const [only] = all;
  if (!only || all.length > 1)
    throw new Error(`${all.length} on ${item}: ${all.map(({ row, where }) => `${row} ${where}`).join(', ')}`);
  return only;
}

export const texts = (reasons: readonly { readonly text: string }[]): string =>
  reasons.map(({ text }) => text).join(' ');
