// What a surface gets before tape or sealant: the wipe and the primer.
import type { Cleaner, Item, Primer, Tape } from '../resolve/types.ts';
import type { PlanMaterials } from './plan.ts';
import type { Scene } from './scene.ts';
import type { Question } from './schema.ts';

type Ask = (rule: Question['rule'], text: string) => void;
type Job = { readonly text: string; readonly materials: PlanMaterials; readonly tape?: Tape };

/** The cleaner of the wipe: the plan's, else the policy's. Tape is wiped in any case, sealed seams where one is named. */
export function wipeOf(job: Job, { view }: Scene, ask: Ask): Cleaner | undefined {
  if (job.materials.cleaner !== undefined) return job.materials.cleaner;
  const name = view.rig.policy.wipeWith?.value;
  const found = name === undefined ? undefined : view.material(name);
  if (found?.kind === 'cleaner') return found;
  if (job.tape !== undefined) {
    ask('no-cleaner', 'No cleaner is named for the wipe before tape: only its area is counted.');
  }
  return undefined;
}

/** The primer of a plan; where none is named but a surface usually needs one, the generic one, which has no price. */
export function primerOf(job: Job, needed: boolean, { view }: Scene, ask: Ask): Primer | undefined {
  if (job.materials.primer !== undefined || !needed) return job.materials.primer;
  const generic = view.material(GENERIC_PRIMER);
  if (generic?.kind !== 'primer') return undefined;
  ask('primer-needed', `A surface of \`${job.text}\` usually needs a primer; none is named.`);
  return generic;
}

const GENERIC_PRIMER = 'GenericTapePrimer';

/** Whether a primer is usually needed on a surface of an item: its own, or the membrane. */
export function needsPrimer(item: Item, { view }: Scene): boolean {
  const generic = view.material(GENERIC_PRIMER);
  if (generic?.kind !== 'primer') return false;
  const surfaces = item.between ?? [item.surface, view.rig.roof?.surface];
  return generic.neededOn.some(({ value }) => surfaces.includes(value));
}
