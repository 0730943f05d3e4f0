// The roof plan as a page to print.
import type { RigView } from '../../resolve/types.ts';
import type { RigState } from '../../seams/index.ts';
import { type By, planOf } from '../roof/index.ts';
import { pageWith } from './page.ts';

/** One page, as wide as the paper lies: the plan to the scale that it states. */
export function roofPage(view: RigView, state: RigState, by: By): string {
  return pageWith({
    title: `Roof of ${view.rig.name}`,
    body: [planOf(view, state, { by, inPage: true, width: 225 })],
    more: '@page{size:landscape;margin:9mm}',
  });
}
