// The order in which materials are offered: by what the rules would say of each on the place that the line is about.
import { openPlans } from '../../language/resolve/done.ts';
import type { Item, Material, RigView } from '../../language/resolve/types.ts';
import { harmsOf, type Objection, objectionsTo, primerNeeded, primersOf } from '../../language/rules/bond.ts';
import { catalogue } from '../../language/rules/catalogue.ts';
import { jobsOf } from '../../language/rules/jobs.ts';
import { type Ground, groundOf, surfacesOf } from '../../language/seams/index.ts';
import { sets } from '../../language/statements/words.ts';
import type { Statement } from '../cursor/standing.ts';
import type { RigFigures } from '../figures.ts';
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
  const { project } = features.session;
  const { line } = statement;
  const about = seamsAbout(rig, here.path, statement);
  const grounds = about.flatMap((one) => one.grounds);
  const bare = new Set(about.flatMap(({ item }) => surfacesOf(item, view.rig.roof)));
  const isPrimed = line.parts.some((part) => part.kind === 'word' && view.material(part.text)?.kind === 'primer');
  const takesPrimer = !isPrimed && ['tape', 'taped', 'seal', 'sealed'].includes(line.head);
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

interface About {
  readonly item: Item;
  readonly grounds: readonly Ground[];
}

/** The seams of a line with what lies on them: of a whole line as the rules see it, of half a one by its names and its date. */
function seamsAbout({ context, stateOn }: RigFigures, path: string, { line, row }: Statement): readonly About[] {
  const { view, dates } = context;
  const { rig } = view;
  const jobs = jobsOf(context).filter(
    ({ file, at, seam }) => file === path && at[0] === line.at[0] && seam.role !== 'open',
  );
  if (jobs.length > 0)
    return jobs.map(({ seam: { item }, stretches }) => ({
      item,
      grounds: stretches.map((stretch) => groundOf(stretch, item, rig.roof)),
    }));
  const date = line.parts.find(({ kind }) => kind === 'date');
  const isRecord = row?.class === 'record' && date?.kind === 'date' && date.text < dates.asOf;
  const state = stateOn(isRecord ? date.text : dates.asOf);
  const words = new Set(line.parts.flatMap((part) => ('text' in part && part.kind !== 'text' ? [part.text] : [])));
  const kinds = new Set<string | undefined>(
    Object.entries(sets).flatMap(([word, kind]) => (words.has(word) ? [kind] : [])),
  );
  const isMeant = ({ name, kind }: Item) => words.has(name) || kinds.has(undefined) || kinds.has(kind);
  // What another plan takes off is gone by then.
  const plans = row?.class === 'plan' ? openPlans(rig, dates.asOf) : [];
  const emptied = new Set(
    plans
      .filter(({ statement }) => ['strip', 'replace', 'rebed'].includes(statement.word))
      .flatMap(({ places }) => places.map((place) => place.item)),
  );
  return [...state.seams.values()]
    .filter(({ item, role }) => role !== 'open' && isMeant(item))
    .map(({ item, stretches }) => ({
      item,
      grounds: emptied.has(item.name)
        ? [{ kind: 'surface', surfaces: surfacesOf(item, rig.roof) }]
        : stretches.map((stretch) => groundOf(stretch, item, rig.roof)),
    }));
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
