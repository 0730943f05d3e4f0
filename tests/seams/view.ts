// A rig from text, for questions about its seams and its dues.
import type { RigView } from '../../language/resolve/types.ts';
import { rigState, type SeamState } from '../../language/seams/index.ts';
import { projectOf } from '../project/workspace.ts';

export const FT = 304_800_000;

const yard = `tape Strip { width 4 in  roll 50 ft  life 8 years, 15 years, 25 years  bonds-to epdm, abs, solvent-lap, tape }
sealant Lap {
  family solvent-lap
  coats at most 4
  look-hard every 18 months
  cover 30 days to 60 days
  drive 12 h to 24 h
  apply 50 F to 90 F
  bonds-to epdm, abs, solvent-lap
}
sealant Quick { family hybrid-lap  cover 14 days  look-hard every 24 months }
sealant Sil { family silicone  cover never }
coating Cream { family acrylic }
primer Under { needed-on tpo }
`;

/** The text of a yard with one rig in it and these lines in its block. */
export function rigText(lines: string, facts = 'factory Lap\n  built 2020-03-10'): string {
  return `${yard}policy Yard {
  inspect every 6 months
  due-soon 30 days
  follow-up hairline within 6 months, cracked within 30 days, lifting within 7 days, open within 1 day, not-seen within 6 months, wet within 14 days, leak within 7 days
  look-after struck within 1 day, stored within 14 days, repaired-leak within 30 days
}
rig Teal under Yard {
  ${facts}
  roof 28 ft by 8 ft epdm
  edge curbside, roadside
  cap front
  opening vent 16 in by 16 in at 5 ft, 4 ft of abs
  opening dome 20 in by 20 in at 12 ft, 4 ft of polycarbonate
  gasket air-con 14 in by 14 in at 8 ft, 4 ft
  joint drip-rail 26 ft on wall curbside
  field membrane
${lines}
}
`;
}

export function viewsOf(texts: Readonly<Record<string, string>>, file = 'a.rig'): RigView {
  const project = projectOf(texts);
  const view = project.rigs(file).find(({ rig }) => rig.kind === 'rig');
  if (!view) throw new Error('the text has no rig');
  const wrong = Object.keys(texts).flatMap((path) => project.records(path)?.problems ?? []);
  if (wrong.length > 0) throw new Error(wrong.map((problem) => problem.message).join('\n'));
  return view;
}

export const viewOf = (lines: string, facts?: string): RigView => viewsOf({ 'a.rig': rigText(lines, facts) });

export const stateOf = (lines: string, asOf = '2026-11-25', facts?: string) => rigState(viewOf(lines, facts), asOf);

export function seam(lines: string, item: string, asOf = '2026-11-25', facts?: string): SeamState {
  const state = stateOf(lines, asOf, facts).seams.get(item);
  if (!state) throw new Error(`there is no ${item}`);
  return state;
}

/** The only stretch of an item. */
export function stretch(lines: string, item: string, asOf?: string, facts?: string) {
  const { stretches } = seam(lines, item, asOf, facts);
  if (stretches.length !== 1) throw new Error(`${item} has ${stretches.length} stretches`);
  return stretches[0]!;
}

/** A state as data that compares: records by their place in the text. */
export function plain(value: unknown): unknown {
  return JSON.parse(
    JSON.stringify(value, (_, each) => {
      if (each instanceof Map) return Object.fromEntries(each);
      if (each?.record && each?.places) return `${each.record.word} ${each.first} ${each.last} ${each.time ?? ''}`;
      if (each?.kind && each?.origin && each?.places) return each.name;
      return each;
    }),
  );
}
