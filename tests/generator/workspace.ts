// A repository as an operator of many rigs keeps it: shared materials, policies and models, depots with a fleet each, rigs
// with ten years of records in their own file or beside it. Everything is in order on `asOf`.
import { type Draw, draws } from './draw.ts';
import { type Model, modelFiles, models } from './models.ts';
import type { GeneratedRig, Plan } from './records.ts';
import { historyText, rigText } from './rig-text.ts';
import { groupOf, type PolicyName, policies, sharedFiles } from './shop.ts';
import { vinOf } from './vin.ts';
import { firstYear, years } from './years.ts';

/** The day that a generated workspace is in order on. */
export const asOf = '2026-11-25';

export interface WorkspaceOptions {
  readonly rigs: number;
  readonly seed: number;
  /** Rigs of one depot, and so of one fleet. */
  readonly depot?: number;
}

/** Where the records of a rig stand: in its own file, in one beside it, in two by years. */
type Layout = 'own' | 'beside' | 'by-years';

export interface PlacedRig {
  readonly rig: GeneratedRig;
  readonly layout: Layout;
  /** The path of its file, and of each of its texts. */
  readonly file: string;
  readonly texts: Readonly<Record<string, string>>;
}

export const rigName = (index: number): string => `Rig${String(index).padStart(5, '0')}`;
const depotName = (index: number): string => `Depot${String(index).padStart(3, '0')}`;

/** The files that all rigs share. */
export const commonFiles: Readonly<Record<string, string>> = { ...sharedFiles, ...modelFiles };

/** The rigs of a workspace one by one, so that a large one need not be held in memory. Each is drawn from its own seed. */
export function* placedRigs({ rigs, seed, depot = 50 }: WorkspaceOptions): Generator<PlacedRig> {
  for (let index = 1; index <= rigs; index++) yield placed(index, seed, Math.ceil(index / depot));
}

function placed(index: number, seed: number, depot: number): PlacedRig {
  const draw = draws(seed * 1_000_003 + index);
  const model = draw.pick(models);
  const policy = policies[depot % policies.length] as PolicyName;
  const group = groupOf[policy];
  const rig: GeneratedRig = {
    name: rigName(index),
    like: model.name,
    ...(group === undefined ? { under: policy } : { group }),
    unit: String(100_000 + index),
    vin: vinOf(index),
    built: `${firstYear - 1}-0${draw.whole(3, 9)}`,
    acquired: `${firstYear}-01-20`,
    kept: `${draw.whole(2029, 2036)}-10-31`,
    rate: `${draw.whole(80, 150)} USD`,
    done: years(draw, model),
    plans: plans(draw, model),
  };
  const layout = (['own', 'beside', 'by-years'] as const)[index % 3] as Layout;
  const folder = `depots/${depotName(depot)}`;
  const file = `${folder}/${rig.name}.rig`;
  const uses = ['../../shop/materials.rig', '../../shop/policy.rig', `../../${model.file}`];
  const texts: Record<string, string> = {};
  if (layout === 'own') texts[file] = rigText(rig, uses);
  else {
    const claimed = `${rig.name}-records`;
    texts[file] = rigText(rig, uses, `${claimed}/*.rig`);
    const parts =
      layout === 'beside'
        ? [['all', rig.done] as const]
        : [
            ['early', rig.done.filter(({ date }) => date < '2022')] as const,
            ['late', rig.done.filter(({ date }) => date >= '2022')] as const,
          ];
    for (const [name, done] of parts) texts[`${folder}/${claimed}/${name}.rig`] = historyText(rig.name, done);
  }
  return { rig, layout, file, texts };
}

/** What a yard has planned for the next spring; one in two rigs has more than a look before it. */
function plans(draw: Draw, { sealant }: Model): readonly Plan[] {
  const look: Plan = { verb: 'inspect', before: '2027-05-31' };
  if (draw.chance(0.5)) return [look];
  return [
    look,
    { verb: 'wash', with: ['MildWash'], after: '2027-04-15' },
    draw.chance(0.5)
      ? {
          verb: 'seal',
          seams: ['stack-1', 'skylight'],
          with: ['Wipe', sealant],
          after: '2027-04-15',
          before: '2027-10-15',
        }
      : { verb: 'tape', seams: ['slide-roof'], with: ['Wipe', 'EdgeTape4'], after: '2027-04-15', before: '2027-10-15' },
  ];
}

/** The fleet of each depot: its crew, bays, closed days and what is booked for the next summer. */
export function* fleetFiles({ rigs, seed, depot = 50 }: WorkspaceOptions): Generator<readonly [string, string]> {
  for (let number = 1; (number - 1) * depot < rigs; number++) {
    const draw = draws(seed * 7_000_003 + number);
    const first = (number - 1) * depot + 1;
    const members = Array.from({ length: Math.min(depot, rigs - first + 1) }, (_, i) => rigName(first + i));
    const name = depotName(number);
    yield [`depots/${name}/fleet.rig`, fleetText(draw, name, policies[number % policies.length] as string, members)];
  }
}

const customers = ['family Roche', 'walking club', 'family Lynn', 'climbing club', 'school', 'family Adair'] as const;

function fleetText(draw: Draw, name: string, policy: string, members: readonly string[]): string {
  const booked = members.flatMap((rig) =>
    (['06', '07', '08'] as const)
      .filter(() => draw.chance(0.7))
      .map((month) => {
        const day = draw.whole(1, 17);
        const pad = (n: number) => String(n).padStart(2, '0');
        return `  booked       ${rig} 2027-${month}-${pad(day)} to 2027-${month}-${pad(day + draw.whole(4, 10))} for "${draw.pick(customers)}"`;
      }),
  );
  const crews = Math.max(2, Math.round(members.length / 12));
  return `use "../../shop/materials.rig"
use "../../shop/policy.rig"

fleet ${name} under ${policy} {
  rigs         "*.rig"
  crew         ${crews} for 8 h each on mon to fri
  bay          Shed indoor 40 ft
  bay          Lot outdoor 60 ft
  closed       2026-12-24 to 2027-01-03
  closed       2027-05-31 note "holiday"
  bought       2026-09-02 GreyLap 24 cartridges at 210.00 USD from "Upland Supply" lot "D-131" best-before 2027-12
  on-hand      EdgeTape4 20 ft, EdgeTape4 12 ft, GreyLap 7 cartridges best-before 2027-12

${booked.join('\n')}
}
`;
}

/** All texts of a workspace by path. */
export function workspaceOf(options: WorkspaceOptions): Map<string, string> {
  const texts = new Map(Object.entries(commonFiles));
  for (const [path, text] of fleetFiles(options)) texts.set(path, text);
  for (const placedRig of placedRigs(options))
    for (const [path, text] of Object.entries(placedRig.texts)) texts.set(path, text);
  return texts;
}
