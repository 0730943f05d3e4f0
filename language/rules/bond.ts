// What may be said against a material on a surface: for the rules of the ground, and for whoever offers materials.
import type { Names } from '../resolve/names.ts';
import type { Grade, Material, Primer, RigView, Stated } from '../resolve/types.ts';
import type { Ground } from '../seams/index.ts';

/** Something against it: the rule that says so, and its words as the end of a sentence that begins with material and surface. */
export interface Objection {
  readonly rule:
    | 'silicone-underneath'
    | 'test-patch-first'
    | 'bond-unknown'
    | 'does-not-bond'
    | 'only-by-label'
    | 'thermoplastic-tape'
    | 'solvent-harms-surface';
  readonly text: string;
}

const isSilicone = (surface: string) =>
  surface === 'silicone' || surface === 'acetoxy-silicone' || surface === 'silicone-coating';
const ofSilicone = (material: Material) =>
  material.family?.value === 'silicone' || material.family?.value === 'acetoxy-silicone';

/** What speaks against laying a tape, sealant or coating on a surface; nothing where it bonds. */
export function objectionsTo(
  material: Material,
  surface: string,
  view: Pick<RigView, 'surface'>,
): readonly Objection[] {
  const grade = material.bonding[surface];
  const against = ungraded(material, surface, grade) ?? graded(surface, grade, view);
  if (material.kind !== 'tape' || view.surface(surface)?.group !== 'thermoplastic') return against;
  const text = 'on a thermoplastic sheet butyl tape is a temporary patch; the lasting repair is a weld.';
  return [...against, { rule: 'thermoplastic-tape', text }];
}

/** What silicone and the unknown do whatever is said of them. */
function ungraded(
  material: Material,
  surface: string,
  grade: Stated<Grade> | undefined,
): readonly Objection[] | undefined {
  if (isSilicone(surface) && !ofSilicone(material)) {
    const text = 'nothing but silicone holds on silicone. Strip it and test the surface with a piece of tape first.';
    return [{ rule: 'silicone-underneath', text }];
  }
  if (surface === 'unknown-sealant' && grade?.value !== 'never') {
    const text =
      'nobody knows what it lies on. Test for silicone first: water beads, a marker pen crawls, tape peels clean.';
    return [{ rule: 'test-patch-first', text }];
  }
  return undefined;
}

function graded(
  surface: string,
  grade: Stated<Grade> | undefined,
  view: Pick<RigView, 'surface'>,
): readonly Objection[] {
  if (grade === undefined) {
    const text = 'neither the label nor the built-in library says whether it holds. Look at the label.';
    return view.surface(surface) ? [{ rule: 'bond-unknown', text }] : [];
  }
  const kind = kindText(grade.origin);
  switch (grade.value) {
    case 'never':
      return [{ rule: 'does-not-bond', text: `it must not be used there (${kind}).` }];
    case 'label': {
      const text = `only its label can say yes (${kind}). If it does, add \`${surface}\` to its \`bonds-to\`.`;
      return [{ rule: 'only-by-label', text }];
    }
    case 'test':
      return [{ rule: 'test-patch-first', text: `a test patch comes first (${kind}).` }];
    case 'yes':
      return [];
  }
}

/** What speaks against a cleaner on a surface. */
export function harmsOf(material: Material, surface: string): readonly Objection[] {
  const grade = material.bonding[surface];
  if (material.kind !== 'cleaner' || grade?.value !== 'never') return [];
  return [{ rule: 'solvent-harms-surface', text: `${kindText(grade.origin)}.` }];
}

function kindText(origin: { readonly kind: string; readonly source?: string }): string {
  return origin.kind === 'record' ? 'said of the material' : (origin.source ?? origin.kind);
}

/** Primers that the user declares; the built-in ones are never asked for by name. */
export function primersOf(names: Names | undefined, view: Pick<RigView, 'material'>): readonly Primer[] {
  const out: Primer[] = [];
  for (const [name, entry] of names?.all('material') ?? []) {
    if (entry.declaration.kind !== 'primer' || entry.file.startsWith('library/')) continue;
    const material = view.material(name);
    if (material?.kind === 'primer') out.push(material);
  }
  return out;
}

/** The first surface that takes tape and sealant only over a primer that is not on it yet. */
export function primerNeeded(
  { surfaces, primer: under }: Ground,
  primers: readonly Primer[],
): { readonly surface: string; readonly primer: Primer } | undefined {
  if (under) return undefined;
  for (const surface of surfaces) {
    const primer = primers.find((one) => one.neededOn.some((on) => on.value === surface));
    if (primer) return { surface, primer };
  }
  return undefined;
}
