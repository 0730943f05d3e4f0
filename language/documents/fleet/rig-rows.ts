// Rigs and seams of a fleet as flat rows.
import { seamLength } from '../../measure/length.ts';
import { coatsOf, isThere, rank, type SeamState, type Stretch } from '../../seams/index.ts';
import { conditions } from '../../statements/words.ts';
import { conditionOf } from '../roof/classes.ts';
import type { RigRow, SeamRow } from './rows.ts';
import type { FleetRig, FleetScene } from './scene.ts';

/** Nanometres as millimetres, to a thousandth. */
const mm = (nm: number): number => Math.round(nm / 1000) / 1000;

/** What every row says of its rig. */
export function headOf({ name: fleet, asOf }: FleetScene, { name, yard, group }: FleetRig) {
  return { fleet, as_of: asOf, rig: name, yard: yard ?? null, group: group ?? null };
}

/** The seams that are on the rig on the as-of date, the membrane left out. */
const seamsOf = ({ state }: FleetRig): readonly SeamState[] =>
  [...state.seams.values()].filter((seam) => seam.role !== 'field' && isThere(seam, state.asOf));

function lengthOf({ item }: SeamState, { view: { rig } }: FleetRig): number | null {
  const length = seamLength(item, rig.roof, rig.policy.units.value);
  return length.ok ? mm(length.value.all.nm) : null;
}

const latest = (dates: readonly (string | undefined)[]): string | null =>
  dates
    .filter((one) => one !== undefined)
    .sort()
    .at(-1) ?? null;

export function rigRow(scene: FleetScene, rig: FleetRig, unplaced: number): RigRow {
  const { view, state, estimate, visits, dues } = rig;
  const { identity, policy, roof } = view.rig;
  const seams = seamsOf(rig);
  const stretches = [...state.seams.values()].flatMap((seam) => seam.stretches);
  const worst = Math.max(
    -1,
    ...stretches.flatMap(({ condition }) => (condition && condition.word !== 'renewed' ? rank(condition.word) : [])),
  );
  const { totals } = estimate;
  const status = (which: string) => dues.filter(({ due }) => due.status === which).length;
  return {
    ...headOf(scene, rig),
    unit: identity.unit?.value ?? null,
    file: estimate.rig.file,
    policy: policy.name,
    built: identity.built?.value.text ?? null,
    kept_until: identity.keptUntil?.value.text ?? null,
    roof_along_mm: roof ? mm(roof.along.nm) : null,
    roof_across_mm: roof ? mm(roof.across.nm) : null,
    roof_surface: roof?.surface ?? null,
    seams: seams.length,
    seam_length_mm: Math.round(seams.reduce((sum, seam) => sum + (lengthOf(seam, rig) ?? 0), 0) * 1000) / 1000,
    worst_condition: conditions[worst] ?? null,
    open_leaks: state.leaks.filter(({ closed }) => !closed).length,
    last_look: latest(stretches.map(({ looked }) => looked?.last)),
    next_due: dues.map(({ due }) => due.date).sort()[0] ?? null,
    overdue: status('overdue'),
    due_soon: status('due') + status('soon'),
    visits: visits.length,
    unplaced,
    work_minutes: Math.round(visits.reduce((sum, { minutes }) => sum + minutes, 0) * 100) / 100,
    materials: totals.materials?.money.amount ?? null,
    labour: totals.labour?.money.amount ?? null,
    tax: totals.tax?.money.amount ?? null,
    total: totals.total?.money.amount ?? null,
    currency: totals.total ? (totals.currency ?? null) : null,
    total_complete: totals.complete,
  };
}

export function seamRows(scene: FleetScene, rig: FleetRig): readonly SeamRow[] {
  const dueAt = new Map<string, { readonly date: string; readonly status: SeamRow['due_status'] }>();
  // They come in order of time: the first at a seam is the most pressing.
  for (const { due, from } of rig.dues)
    for (const item of from.items ?? (from.item === undefined ? [] : [from.item]))
      if (!dueAt.has(item)) dueAt.set(item, { date: due.date, status: due.status });
  return seamsOf(rig).flatMap((seam) => {
    const { item, role, stretches } = seam;
    const due = dueAt.get(item.name);
    const length = lengthOf(seam, rig);
    return stretches.map((stretch) => ({
      ...headOf(scene, rig),
      item: item.name,
      kind: item.kind,
      role,
      side: item.side ?? null,
      count: item.count,
      length_mm: length,
      ...stateOf(stretch),
      next_due: due?.date ?? null,
      due_status: due?.status ?? null,
    }));
  });
}

function stateOf(stretch: Stretch) {
  const top = stretch.layers.at(-1);
  return {
    from_mm: mm(stretch.from),
    to_mm: stretch.to === undefined ? null : mm(stretch.to),
    condition: conditionOf(stretch).id,
    wet: stretch.wet !== undefined,
    defects: stretch.defects.join(', '),
    last_look: stretch.looked?.last ?? null,
    coats: coatsOf(stretch).count,
    top_layer: top?.kind ?? null,
    top_material: top?.material ?? null,
  };
}
