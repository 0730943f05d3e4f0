// Fleets in a few lines with their papers, and what they are made from.
import { type Budget, budgetOf } from '../../language/documents/fleet/budget.ts';
import { type FleetScene, sceneOf } from '../../language/documents/fleet/scene.ts';
import { textDocumentsOf } from '../../language/documents/index.ts';
import { papersOf } from '../../language/documents/papers.ts';
import type { Dates } from '../../language/resolve/types.ts';
import { projectOf } from '../project/workspace.ts';

export interface FleetPapers {
  readonly scene: FleetScene;
  readonly budget: Budget;
  /** By file name. */
  readonly texts: ReadonlyMap<string, string>;
}

/** The papers of the only fleet in some files. */
export function fleetPapers(files: Readonly<Record<string, string>>, asOf: string, path: string): FleetPapers {
  const [found] = projectOf(files).fleets(path);
  if (!found) throw new Error(`no fleet in ${path}`);
  const dates: Dates = { asOf, today: asOf };
  const subject = { kind: 'fleet', ...found } as const;
  const scene = sceneOf(found.fleet, found.views, papersOf(subject, dates), dates);
  const texts = new Map(textDocumentsOf(subject, dates).map(({ name, text }) => [name, text]));
  return { scene, budget: budgetOf(scene), texts };
}

const materials = `
tape Strip {
  width 4 in
  roll 50 ft at 60 USD
  end-lap 2 in
  side-lap 1 in
  bonds-to epdm, abs, solvent-lap, tape
  life 10 years to 20 years
}
sealant Lap {
  family solvent-lap
  grade self-levelling
  cartridge 10.3 fl-oz at 10 USD
  bead 1 in by 1/4 in
  rain 2 h to 6 h
  drive 12 h to 24 h
  wash 7 days
  cover 30 days to 60 days
  bonds-to epdm, abs, solvent-lap
}
sealant Slow {
  family silicone
  cartridge 310 mL at 9 EUR
  bead 25 mm by 6 mm
  rain 3 days to 5 days
  bonds-to epdm, abs
}
policy Site {
  season 04-15 to 10-15
  workday 8 h
  currency USD
  labour 45 USD per h
  tax 7.25 % on all
  lead Strip 3 weeks
}
policy Over like Site {
  currency EUR
  labour 41 EUR per h
  tax 19 % on materials
}
group Coastal under Site
`;

const rig = (name: string, lines: string, policy = 'Site') => `rig ${name} under ${policy} {
  roof     20 ft by 8 ft  epdm
  edge     curbside, roadside
  cap      front  wide 5 in
  cap      rear   wide 2 in
  opening  vent      16 in by 16 in  at 6 ft, 4 ft   of abs
  opening  skylight  30 in by 22 in  at 12 ft, 4 ft  of abs
  comes-off vent
  ${lines}
}
`;

/** Two yards with bays of one name, two currencies, work that is late for several reasons. */
export const twoYards = `${materials}
${rig('Auk', 'group Coastal\n  inspected 2027-03-01 {\n    vent open\n    rest sound\n  }\n  strip vent before 2027-03-20\n  seal vent with Lap before 2027-03-20\n  tape rear, front with Strip after 2027-05-01')}
${rig('Brant', 'group Coastal\n  inspected 2026-06-01 {\n    skylight lifting\n    rest sound\n  }\n  tape edges with Strip on 2027-03-12')}
${rig('Coot', 'inspected 2027-02-20 { rest sound }\n  strip skylight after 2027-06-01\n  seal skylight with Slow after 2027-06-01', 'Over')}
${rig('Dunlin', 'inspected 2027-02-20 {\n    front hairline\n    rest sound\n  }')}
fleet Yard under Site {
  rigs "a.rig"
  booked Brant 2027-03-10 to 2027-03-16
  yard North {
    crew 2 for 8 h each on mon to fri
    bay Shed indoor 40 ft
    serves Coastal
  }
  yard South {
    crew 2 for 8 h each on mon to fri
    bay Shed indoor 40 ft
    bay Long-barn indoor
    serves Coot, Dunlin
  }
}
`;
