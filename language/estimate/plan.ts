// What a plan asks for: its words, the materials that it names, sorted by kind.
import { type OpenPlan, targetsLeft } from '../resolve/done.ts';
import type { Cleaner, Coating, MaterialsOf, Primer, Sealant, Tape } from '../resolve/types.ts';
import type { System } from '../values/display.ts';
import type { Question } from './schema.ts';

/** The first material of each kind that a plan names. */
export interface PlanMaterials {
  readonly tape?: Tape;
  readonly sealant?: Sealant;
  readonly primer?: Primer;
  readonly cleaner?: Cleaner;
  readonly coating?: Coating;
}

/** `tape edges, caps`: a plan in the words it was written in, without dates and materials; where some is done, what is left. */
export function planText(plan: OpenPlan, system: System): string {
  const { statement } = plan;
  const names = plan.partly ? targetsLeft(plan, system, 'its end') : (statement.targets ?? []).map(({ name }) => name);
  return names.length === 0 ? statement.word : `${statement.word} ${names.join(', ')}`;
}

/** The materials of a plan, and what is unclear about them. */
export function materialsOf(
  plan: OpenPlan,
  about: string,
  material: MaterialsOf,
): { readonly materials: PlanMaterials; readonly questions: readonly Question[] } {
  const questions: Question[] = [];
  const materials: { -readonly [K in keyof PlanMaterials]?: unknown } = {};
  for (const { name } of plan.statement.materials ?? []) {
    const found = material(name);
    if (found === undefined) {
      questions.push({ rule: 'unknown-material', about, text: `Nothing is known of the material \`${name}\`.` });
    } else if (materials[found.kind] === undefined) materials[found.kind] = found;
    else {
      const text = `\`${about}\` names two materials of one kind; ${name} is not counted.`;
      questions.push({ rule: 'two-materials', about, text });
    }
  }
  return { materials: materials as PlanMaterials, questions };
}
