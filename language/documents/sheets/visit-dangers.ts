// What one visit can hurt people with: of the rig's dangers those that its tasks bring.
import type { RigView } from '../../resolve/types.ts';
import type { Dangers } from '../cautions.ts';
import { dangersOf } from '../dangers.ts';
import type { VisitWork } from './visit-work.ts';

const laying = ['lay', 'frame', 'gun', 'gun-around', 'coat', 'patch'];

export function visitDangers({ visit, materials }: VisitWork, view: RigView, asOf: string): Dangers {
  const does = (...tasks: readonly string[]) => visit.tasks.some(({ task }) => tasks.includes(task));
  const openings = new Set(view.rig.items.filter(({ kind }) => kind === 'opening').map(({ name }) => name));
  const closes = visit.tasks.some(
    ({ task, items }) =>
      [...laying, 'temporary-cover'].includes(task) && (items.length === 0 || items.some((item) => openings.has(item))),
  );
  return {
    ...dangersOf(view, asOf),
    roofWork: true,
    solvents: does('wipe', 'prime', ...laying) || materials.some(({ kind }) => kind === 'primer'),
    urethane: materials.some(({ kind, family }) => kind === 'primer' || family?.value === 'urethane'),
    stripping: does('strip', 'strip-hard', 'rebed', 'replace'),
    washing: does('wash', 'wipe'),
    closing: closes,
  };
}

/** Of a look alone, outside and inside. */
export function lookingDangers(view: RigView, asOf: string): Dangers {
  return {
    ...dangersOf(view, asOf),
    roofWork: true,
    solvents: false,
    urethane: false,
    stripping: false,
    washing: false,
    closing: false,
  };
}
