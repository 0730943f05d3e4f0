// What the surfaces of a seam need before something is laid: wash, scuff, wipe, prime, and the material that goes on.
import { surfaceLeftBy } from '../library/left-behind.ts';
import type { Grade, Material, Stated } from '../resolve/types.ts';
import { groundOf } from '../seams/surface.ts';
import type { Facts } from './facts.ts';
import { type Choice, choose, gradesOf, mustNot } from './materials.ts';
import type { Action, Excluded, Preparation, Step } from './schema.ts';

/** Work after which nothing of the old lies there any more. */
const toTheSurface: ReadonlySet<Action> = new Set<Action>(['strip and recoat', 'replace the part']);
/** Actions with which something is laid. */
export const laying: ReadonlySet<Action> = new Set<Action>([
  'touch up',
  'recoat',
  'strip and recoat',
  'tape',
  'replace the part',
]);

const siliconeTest =
  'Test for silicone before anything goes on: water beads on it, a marker pen crawls, a piece of tape peels off clean.';
const noSpreading = 'No solvent on silicone before it is scraped off: it spreads the film.';

/** The preparation for an action here; undefined where nothing is laid, or where what is done is no matter of surfaces. */
export function preparationOf(action: Action, facts: Facts): Preparation | undefined {
  const { seam, ground, coats, silicone, scene } = facts;
  if (!laying.has(action) || seam.role === 'open') return undefined;
  const bare = bareSurfaces(facts);
  const stripped = toTheSurface.has(action) || (action === 'tape' && facts.ground.kind === 'tape');
  const surfaces = stripped ? bare : ground.surfaces;
  const lay = layOf(action, surfaces, facts);
  const notes = [...new Set([...bare, ...surfaces])].flatMap((name) => {
    const caution = scene.view.surface(name)?.caution;
    return caution ? [caution.value] : [];
  });
  if (silicone && stripped) notes.unshift(noSpreading);
  if (silicone || coats.unknown || ground.surfaces.includes('unknown-sealant')) notes.unshift(siliconeTest);
  const steps = [
    ...washing(bare, facts),
    ...scuffing(bare, facts),
    ...wiping(bare, facts),
    ...priming(action, bare, facts),
    ...lay,
  ];
  return { surfaces, steps, notes: [...new Set(notes)] };
}

/** The surfaces once all that was laid along the seam is off; the coating of the roof beside it stays. */
const bareSurfaces = ({ stretch, item, scene }: Facts) =>
  groundOf({ ...stretch, layers: [] }, item, scene.view.rig.roof).surfaces;

function washing(surfaces: readonly string[], { scene }: Facts): readonly Step[] {
  const { washWith } = scene.view.rig.policy;
  const wash =
    choose('cleaner', surfaces, scene, {
      ...(washWith ? { first: washWith.value } : {}),
      only: ({ solvent }) => solvent?.value === 'detergent',
    }) ?? generic('GenericDetergent', surfaces, scene);
  return wash ? [step('wash', wash, 'and rinse')] : [];
}

/** Thermoplastic sheet has an oxidised skin, which a fine pad takes off. */
function scuffing(surfaces: readonly string[], { scene }: Facts): readonly Step[] {
  const sheets = surfaces.filter((name) => scene.view.surface(name)?.group === 'thermoplastic');
  const pad = sheets.length > 0 ? generic('GenericAbrasivePad', sheets, scene) : undefined;
  return pad ? [step('scuff', pad, 'lightly')] : [];
}

function wiping(surfaces: readonly string[], { scene }: Facts): readonly Step[] {
  const { wipeWith } = scene.view.rig.policy;
  const wipe = choose('cleaner', surfaces, scene, {
    ...(wipeWith ? { first: wipeWith.value } : {}),
    only: ({ solvent }) => solvent !== undefined && solvent.value !== 'detergent' && solvent.value !== 'abrasive',
  });
  return wipe ? [step('wipe', wipe, 'a wet cloth, then a dry one before it has flashed')] : [];
}

/** A primer at hand where it says that it is needed; under tape the generic one where such sheets usually need one. */
function priming(action: Action, surfaces: readonly string[], { scene }: Facts): readonly Step[] {
  const primers = scene.atHand.filter((one) => one.kind === 'primer');
  const stand = scene.view.material('GenericTapePrimer');
  if (action === 'tape' && stand?.kind === 'primer') primers.push(stand);
  for (const primer of primers) {
    const needing = surfaces.filter((name) => primer.neededOn.some(({ value }) => value === name));
    if (needing.length === 0) continue;
    const choice: Choice = { material: primer, atHand: primer !== stand, grades: gradesOf(primer, needing) };
    return [step('prime', choice, 'and let it flash')];
  }
  return [];
}

/** What goes on: tape or a patch, a coating on a coating, else a bead; what lies there already goes first where it may. */
function layOf(action: Action, surfaces: readonly string[], { seam, ground, scene }: Facts): readonly Step[] {
  const { layer, kind } = ground;
  const first = layer?.material === undefined ? {} : { first: layer.material };
  const choice: Choice | undefined =
    action === 'tape' || seam.role === 'field' || (action === 'touch up' && kind === 'tape')
      ? choose('tape', surfaces, scene, first)
      : kind === 'coating' && action === 'recoat'
        ? choose('coating', surfaces, scene, first)
        : choose('sealant', surfaces, scene, first);
  return choice ? [step('lay', choice, '')] : [];
}

function generic(name: string, surfaces: readonly string[], { view }: Facts['scene']): Choice | undefined {
  const material = view.material(name);
  const choice = material && { material, atHand: false, grades: gradesOf(material, surfaces) };
  return choice && !mustNot(choice) ? choice : undefined;
}

const verbs: Readonly<Record<Step['task'], string>> = {
  wash: 'Wash',
  scuff: 'Scuff',
  wipe: 'Wipe',
  prime: 'Prime',
  lay: 'Lay',
};

function step(task: Step['task'], { material, atHand, grades }: Choice, how: string): Step {
  const names = grades.map(({ surface }) => surface).join(' and ');
  const where = names === '' ? 'it' : names;
  const act = task === 'lay' ? `Lay ${material.name} on ${where}` : `${verbs[task]} ${where} with ${material.name}`;
  const how2 = how === '' ? '' : task === 'wipe' ? `: ${how}` : `, ${how}`;
  return {
    task,
    material: material.name,
    atHand,
    grades: grades.map(({ surface, grade }) => graded(surface, grade)),
    text: [`${act}${how2}.`, ...grades.flatMap(({ surface, grade }) => remark(surface, grade?.value))].join(' '),
  };
}

function graded(surface: string, grade: Stated<Grade> | undefined): Step['grades'][number] {
  if (!grade) return { surface, grade: 'unknown', kind: 'from memory' };
  const { kind, source } = grade.origin;
  return { surface, grade: grade.value, kind, ...(source === undefined ? {} : { source }) };
}

function remark(surface: string, grade: Grade | undefined): string[] {
  switch (grade) {
    case 'label':
      return [`On ${surface} only if its label says so.`];
    case 'test':
      return [`On ${surface} a test patch comes first.`];
    case undefined:
      return [`Nothing is known of it on ${surface}: see its label.`];
    default:
      return [];
  }
}

/** What of the materials at hand must not come near this seam. */
export function harmfulAtHand(facts: Facts): readonly Excluded[] {
  const { scene, ground, seam } = facts;
  if (seam.role === 'open') return [];
  const bare = bareSurfaces(facts);
  return scene.atHand.flatMap((material: Material) => {
    // Bedding lies under a flange, on a clean bed: it is no choice for a bead in any case.
    if (material.family?.value === 'butyl' && material.kind === 'sealant') return [];
    const surfaces =
      material.kind === 'cleaner' || material.kind === 'primer' ? bare : [...new Set([...ground.surfaces, ...bare])];
    const bad = surfaces.flatMap((surface) => {
      const grade = material.bonding[surface];
      return grade?.value === 'never' && surface !== own(material) ? [{ surface, origin: grade.origin }] : [];
    });
    const [one] = bad;
    if (!one) return [];
    const why = `${material.name} must not be used on ${bad.map(({ surface }) => surface).join(' or ')}.`;
    const { kind, source } = one.origin;
    return [{ what: material.name, why, kind, ...(source === undefined ? {} : { source }) }];
  });
}

const own = (material: Material) => surfaceLeftBy(material.kind, material.family?.value);
