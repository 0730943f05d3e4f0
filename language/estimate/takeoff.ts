// What a plan takes: pieces of tape, beads of sealant, liquids, lengths to be stripped.
import { areaSum, bandArea, roofArea, tapeArea } from '../measure/areas.ts';
import type { Strips } from '../measure/band.ts';
import { type BeadTakeoff, beadOf } from '../measure/bead.ts';
import { type Filling, filling, type Long, long, sumOf } from '../measure/figure.ts';
import { seamLength, stretchOf } from '../measure/length.ts';
import { type TapePiece, tapePieces } from '../measure/pieces.ts';
import { whyNoSealant, whyNoTape } from '../measure/treatable.ts';
import { asWritten, itemsOf, type OpenPlan } from '../resolve/done.ts';
import type { Cleaner, Item, Place, Plan, Primer, Sealant, Tape } from '../resolve/types.ts';
import { isThere } from '../seams/index.ts';
import type { System } from '../values/display.ts';
import { type LiquidNeed, liquidNeed } from './liquid.ts';
import { materialsOf, type PlanMaterials, planText } from './plan.ts';
import { needsPrimer, primerOf, wipeOf } from './prep.ts';
import type { Scene } from './scene.ts';
import type { Question } from './schema.ts';
import { hardnessOf } from './underneath.ts';

/** What one plan takes. Lengths of what is stripped or bedded are those of all copies. */
export interface Takeoff {
  readonly plan: OpenPlan;
  readonly text: string;
  readonly materials: PlanMaterials;
  readonly items: readonly Item[];
  readonly tape?: Tape;
  readonly pieces: readonly TapePiece[];
  readonly strips: readonly { readonly item: string; readonly strips: Strips }[];
  readonly tapeLength?: Long;
  readonly sealant?: Sealant;
  readonly beads: readonly BeadTakeoff[];
  readonly beadLength?: Long;
  readonly volume?: Filling;
  readonly liquids: readonly LiquidNeed[];
  readonly stripped: readonly { readonly item: string; readonly hard: boolean; readonly length: Long }[];
  readonly bedded: readonly Long[];
  readonly skipped: readonly { readonly item: string; readonly reason: string }[];
  readonly questions: readonly Question[];
}

type Draft = { -readonly [K in keyof Takeoff]: Takeoff[K] extends readonly (infer T)[] ? T[] : Takeoff[K] };
type Target = { readonly place: Place; readonly item: Item };

/** Plans whose material has no price or no quantity in the records; their work has a rate. */
const UNPRICED: Partial<Record<Plan['statement']['word'], string>> = {
  cover: 'a temporary cover has no price in the records',
  replace: 'a part has no price in the records',
  patch: 'how much a patch takes is not written',
};

/**
 * The take-off of a plan. `counted` holds what other plans of the same visit already took (`tape curbside 0 nm`), and
 * is added to, so that a seam named twice is counted once.
 */
export function takeOff(plan: OpenPlan, scene: Scene, counted: Set<string>): Takeoff {
  const text = planText(plan, scene.system);
  const { materials, questions } = materialsOf(plan, text, scene.view.material);
  const draft: Draft = {
    plan,
    text,
    materials,
    items: [],
    pieces: [],
    strips: [],
    beads: [],
    liquids: [],
    stripped: [],
    bedded: [],
    skipped: alreadyDone(plan),
    questions: [...questions],
  };
  const targets = targetsOf(plan, scene, draft, counted);
  const { word } = plan.statement;
  if (word === 'tape') tape(targets, scene, draft);
  else if (word === 'seal') seal(targets, scene, draft);
  else if (word === 'strip') strip(targets, scene, draft);
  else if (word === 'coat') coat(scene, draft);
  else if (word === 'rebed') rebed(targets, scene, draft);
  else draft.items.push(...targets.map(({ item }) => item));
  const unpriced = UNPRICED[word];
  if (unpriced !== undefined) ask(draft, 'not-priced', `Not in the sum: ${unpriced}.`);
  return draft;
}

function ask(draft: Draft, rule: Question['rule'], text: string): void {
  draft.questions.push({ rule, about: draft.text, text });
}

const asks = (draft: Draft) => (rule: Question['rule'], text: string) => ask(draft, rule, text);

/** Leaves an item out; unless nothing is to be done there anyway, the estimate is not whole without it. */
function skip(draft: Draft, item: Item, reason: string, rightly: boolean): void {
  draft.skipped.push({ item: item.name, reason });
  if (!rightly) ask(draft, 'not-counted', `${item.name} is not counted: ${reason}.`);
}

/** What a partly done plan names and nothing is left to do on. */
function alreadyDone(plan: OpenPlan): Takeoff['skipped'][number][] {
  const open = new Set(itemsOf(plan));
  const done = itemsOf(asWritten(plan)).filter((item) => !open.has(item));
  return done.map((item) => ({ item, reason: 'it is recorded as done' }));
}

/** The items of a plan that are still there and not counted yet. */
function targetsOf(plan: Plan, { view, states, asOf }: Scene, draft: Draft, counted: Set<string>): readonly Target[] {
  return plan.places.flatMap((place) => {
    const item = view.rig.items.find(({ name }) => name === place.item);
    if (item === undefined) return [];
    const key = `${plan.statement.word} ${item.name} ${place.from ?? ''} ${place.to ?? ''}`;
    const state = states.get(item.name);
    if (state !== undefined && !isThere(state, asOf)) {
      draft.skipped.push({ item: item.name, reason: `it is not there on ${asOf}` });
      return [];
    }
    if (counted.has(key)) {
      draft.skipped.push({ item: item.name, reason: 'it is counted already' });
      return [];
    }
    counted.add(key);
    return [{ place, item }];
  });
}

function tape(targets: readonly Target[], scene: Scene, draft: Draft): void {
  const { view, system } = scene;
  const { tape } = draft.materials;
  if (tape === undefined) {
    ask(draft, 'no-material', `\`${draft.text}\` names no tape: write it, as in \`tape front with EdgeTape4\`.`);
    return;
  }
  draft.tape = tape;
  const lengths: Long[] = [];
  const primed: Long[] = [];
  for (const { place, item } of targets) {
    const got = tapePieces(item, view.rig, view.rig.policy, tape, place, system);
    if (!got.ok) {
      skip(draft, item, got.message, whyNoTape(item) !== undefined);
      continue;
    }
    const { pieces, strips } = got.value;
    draft.items.push(item);
    draft.pieces.push(...pieces);
    if (strips !== undefined) draft.strips.push({ item: item.name, strips });
    lengths.push(...pieces);
    if (needsPrimer(item, scene)) primed.push(...pieces);
  }
  if (lengths.length === 0) return;
  draft.tapeLength = total(lengths, 'piece', 'all pieces together', system);
  const primer = primerOf(draft, primed.length > 0, scene, asks(draft));
  const primedLength = draft.materials.primer
    ? draft.tapeLength
    : total(primed, 'piece', 'what needs a primer', system);
  const area = tapeArea(draft.tapeLength, tape, system)!;
  draft.liquids.push(liquidNeed('wipe', wipeOf(draft, scene, asks(draft)), area, draft.tapeLength, system));
  if (primer !== undefined) {
    draft.liquids.push(liquidNeed('prime', primer, tapeArea(primedLength, tape, system)!, primedLength, system));
  }
}

function seal(targets: readonly Target[], scene: Scene, draft: Draft): void {
  const { view, system } = scene;
  const { policy, roof } = view.rig;
  const { sealant } = draft.materials;
  if (sealant === undefined) {
    ask(draft, 'no-material', `\`${draft.text}\` names no sealant: write it, as in \`seal openings with GreyLap\`.`);
    return;
  }
  draft.sealant = sealant;
  for (const { place, item } of targets) {
    const got = beadOf(item, roof, policy, sealant, place, system);
    if (!got.ok) {
      skip(draft, item, got.message, whyNoSealant(item) !== undefined);
      continue;
    }
    draft.items.push(item);
    draft.beads.push(got.value);
  }
  if (draft.beads.length === 0) return;
  draft.beadLength = total(
    draft.beads.map(({ length }) => length),
    'bead',
    'all beads together',
    system,
  );
  const volumes = draft.beads.map(({ volume }) => volume);
  draft.volume = filling(
    volumes.reduce((sum, { mL }) => sum + mL, 0),
    system,
    {
      rule: 'all beads together',
      ...sumOf(
        volumes.map(({ figure }) => figure),
        'bead',
      ),
    },
  );
  const cleaner = wipeOf(draft, scene, asks(draft));
  if (cleaner !== undefined) seamLiquid('wipe', cleaner, draft, scene, () => true);
  const needing = draft.items.some((item) => needsPrimer(item, scene));
  const primer = primerOf(draft, needing, scene, asks(draft));
  const named = draft.materials.primer !== undefined;
  if (primer !== undefined) seamLiquid('prime', primer, draft, scene, (item) => named || needsPrimer(item, scene));
}

/** A liquid on the bands of the sealed seams. */
function seamLiquid(
  task: 'wipe' | 'prime',
  material: Cleaner | Primer,
  draft: Draft,
  { view, system }: Scene,
  which: (item: Item) => boolean,
): void {
  const chosen = draft.beads.filter((_, i) => which(draft.items[i]!));
  const areas = draft.beads.flatMap(({ length }, i) => {
    const item = draft.items[i]!;
    return which(item) ? (bandArea(length, item, view.rig.policy, system) ?? []) : [];
  });
  const length = total(
    chosen.map((each) => each.length),
    'seam',
    'all seams together',
    system,
  );
  draft.liquids.push(liquidNeed(task, material, areaSum(areas, system), length, system));
}

function strip(targets: readonly Target[], scene: Scene, draft: Draft): void {
  for (const { place, item } of targets) {
    const length = treatedLength(place, item, scene);
    if (typeof length === 'string') {
      skip(draft, item, length, false);
      continue;
    }
    const hardness = hardnessOf(scene.states.get(item.name), place);
    if (hardness === 'unknown') {
      const text = `What lies on ${item.name} is not known: it is counted like a solvent-borne sealant. Silicone or urethane takes longer.`;
      ask(draft, 'unknown-underneath', text);
    }
    draft.items.push(item);
    draft.stripped.push({ item: item.name, hard: hardness === 'hard', length });
  }
}

function rebed(targets: readonly Target[], scene: Scene, draft: Draft): void {
  for (const { place, item } of targets) {
    const length = treatedLength(place, item, scene);
    if (typeof length === 'string') skip(draft, item, length, false);
    else {
      draft.items.push(item);
      draft.bedded.push(length);
    }
  }
}

function treatedLength(place: Place, item: Item, { view, system }: Scene): Long | string {
  const seam = seamLength(item, view.rig.roof, system);
  if (!seam.ok) return seam.message;
  const part = stretchOf(item, place, seam.value, system);
  return part ?? 'this stretch lies beyond the end of the seam';
}

function coat(scene: Scene, draft: Draft): void {
  const { roof } = scene.view.rig;
  if (roof === undefined) ask(draft, 'not-counted', 'The roof has no size, so the coating cannot be counted.');
  else if (draft.materials.coating === undefined) {
    ask(draft, 'no-material', `\`${draft.text}\` names no coating: write it, as in \`coat with RoofCoat\`.`);
  } else {
    const area = roofArea(roof, scene.system);
    draft.liquids.push(liquidNeed('coat', draft.materials.coating, area, undefined, scene.system));
  }
}

function total(parts: readonly Long[], name: string, rule: string, system: System): Long {
  const nm = parts.reduce((sum, part) => sum + part.nm, 0);
  return long(nm, system, {
    rule,
    ...sumOf(
      parts.map(({ figure }) => figure),
      name,
    ),
  });
}
