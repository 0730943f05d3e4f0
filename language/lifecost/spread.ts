// The whole distribution of the present value of a stream, on a grid of money.
import { backwards } from './backwards.ts';
import { wholeYears } from './moments.ts';
import { certainly, type Outcomes, oneOf, shifted, together } from './outcomes.ts';
import type { Frame, Stream, Yearly } from './streams.ts';
import { gridded, type ThreePoint, threePoint } from './threepoint.ts';

/** The present value of a stream as a distribution on a grid of the given step. */
export function spreadOf(stream: Stream, frame: Frame, step: number): Outcomes {
  if (stream.kind === 'yearly') return ofYearly(stream, frame, step);
  return backwards<Outcomes>(stream, frame, certainly(0, step), (branches) => {
    return oneOf(branches.map(({ chance, cost, ahead }) => ({ chance, outcomes: shifted(ahead, cost) })));
  });
}

function ofYearly(stream: Yearly, frame: Frame, step: number): Outcomes {
  const years = wholeYears(stream, frame);
  const wholes = stream.drawn === 'once' ? [years.reduce((sum, cost) => sum + cost, 0)] : years;
  return wholes.map((whole) => shareOf(whole, stream.share, step)).reduce(together, certainly(0, step));
}

/** A share of a whole, on the grid; a certain share stays where it is. */
function shareOf(whole: number, share: ThreePoint, step: number): Outcomes {
  const [one, other] = [whole * share.least, whole * share.most];
  if (one === other) return certainly(one, step);
  const points = threePoint(Math.min(one, other), whole * share.likely, Math.max(one, other), share.shape);
  const { index, chances } = gridded(points, step);
  return { origin: index * step, step, chances: Float64Array.from(chances) };
}
