// The order in which materials are offered: by what the rules would say of each on the place that the line is about.
import type { Material, RigView } from '../../language/resolve/types.ts';
import { harmsOf, type Objection, objectionsTo, primerNeeded, primersOf } from '../../language/rules/bond.ts';
import { catalogue } from '../../language/rules/catalogue.ts';
import { jobsOf } from '../../language/rules/jobs.ts';
import type { RigContext } from '../../language/rules/rule.ts';
import { type Ground, groundOf, surfacesOf } from '../../language/seams/index.ts';
import type { Statement } from '../cursor/standing.ts';
import { type Features, type Here, rigAround } from './here.ts';

/** The kinds of material that a statement is about: they stand first, what else may be named with it after them. */
const usedWith: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  (
    [
      [['seal', 'sealed', 'rebed', 'rebedded', 'factory'], ['sealant']],
      [['tape', 'taped', 'patch', 'patched'], ['tape']],
      [['wash', 'washed', 'strip', 'stripped'], ['cleaner']],
      [['primed'], ['primer']],
      [['coat', 'coated'], ['coating']],
    ] as const
  ).flatMap(([words, kinds]) => words.map((word) => [word, new Set<string>(kinds)] as const)),
);

/** Whether a statement is about such a material; every one where the statement says nothing. */
export const isUsedWith = (word: string, kind: string): boolean => usedWith.get(word)?.has(kind) ?? true;

/** Where a material stands among those that are offered, and what speaks against it. */
export interface Standing {
  /** 0: bonds; 1: over a primer that is missing yet; 2: with a doubt; 3: the rules refuse it. */
  readonly rank: 0 | 1 | 2 | 3;
  /** A few words, and the sentences of the rules; empty where nothing speaks against it. */
  readonly short: string;
  readonly why: readonly string[];
}

const nothingAgainst: Standing = { rank: 0, short: '', why: [] };

/** How the materials stand on what lies on the seams of a line on its date, as the rules see the line itself. */
export function materialStandings(
  features: Features,
  here: Here,
  around: readonly Statement[],
  statement: Statement | undefined,
): (name: string) => Standing {
  const rig = statement && rigAround(features, here.path, around);
  if (!rig) return () => nothingAgainst;
  const { view } = rig;
  const { project, dates } = features.session;
  const context: RigContext = { view, dates, remembered: new Map() };
  const { line } = statement;
  const jobs = jobsOf(context).filter(
    ({ file, at, seam }) => file === here.path && at[0] === line.at[0] && seam.role !== 'open',
  );
  const grounds = jobs.flatMap(({ seam, stretches }) =>
    stretches.map((stretch) => groundOf(stretch, seam.item, view.rig.roof)),
  );
  const bare = new Set(jobs.flatMap(({ seam }) => surfacesOf(seam.item, view.rig.roof)));
  const isPrimed = jobs.some(({ materials }) => materials.some(({ material }) => material?.kind === 'primer'));
  const takesPrimer = !isPrimed && jobs.some(({ verb }) => verb === 'tape' || verb === 'seal');
  const primers = takesPrimer ? primersOf(project.names(view.rig.file), view) : [];
  const missing = grounds.flatMap((ground) => primerNeeded(ground, primers) ?? [])[0];
  return (name) => {
    const material = view.material(name);
    if (!material) return nothingAgainst;
    const against = objections(material, grounds, bare, view);
    if (against.length > 0) return judged(material, against);
    if (!missing || !isLaid(material)) return nothingAgainst;
    const { primer, surface } = missing;
    return { rank: 1, short: `needs ${primer.name} first`, why: [`On ${surface} it needs \`${primer.name}\` first.`] };
  };
}

const isLaid = ({ kind }: Material) => kind === 'tape' || kind === 'sealant' || kind === 'coating';

type Against = Objection & { readonly surface: string };

function objections(
  material: Material,
  grounds: readonly Ground[],
  bare: ReadonlySet<string>,
  view: RigView,
): readonly Against[] {
  if (material.kind === 'cleaner')
    return [...bare].flatMap((surface) => harmsOf(material, surface).map((one) => ({ ...one, surface })));
  if (!isLaid(material)) return [];
  const surfaces = new Set(grounds.flatMap((ground) => ground.surfaces));
  return [...surfaces].flatMap((surface) => objectionsTo(material, surface, view).map((one) => ({ ...one, surface })));
}

const shortly: Readonly<Record<Objection['rule'], (surface: string) => string>> = {
  'silicone-underneath': (surface) => `does not hold on ${surface}`,
  'does-not-bond': (surface) => `does not bond to ${surface}`,
  'solvent-harms-surface': (surface) => `harms ${surface}`,
  'only-by-label': (surface) => `on ${surface} only by its label`,
  'thermoplastic-tape': (surface) => `a temporary patch on ${surface}`,
  'test-patch-first': (surface) => `test patch first on ${surface}`,
  'bond-unknown': (surface) => `not known on ${surface}`,
};

/** The worst of what is said goes first, as the catalogue grades it. */
function judged(material: Material, against: readonly Against[]): Standing {
  const isRefusal = ({ rule }: Against) => catalogue.get(rule)?.severity === 'error';
  const worst = against.find(isRefusal) ?? (against[0] as Against);
  return {
    rank: isRefusal(worst) ? 3 : 2,
    short: shortly[worst.rule](worst.surface),
    why: against.map(({ surface, text }) => `\`${material.name}\` on ${surface}: ${text}`),
  };
}
