// What only a fleet shows of its rigs: departures by booking, and the lots and dates of the yard's own shelf.
import { lotsOf } from '../due/index.ts';
import type { Located } from '../resolve/located.ts';
import type { Dates, Fleet, RigView } from '../resolve/types.ts';
import { addPeriod, daysBetween } from '../values/calendar.ts';
import { usedPastBestBefore } from './materials-used.ts';
import { leavesOpen } from './moisture.ts';

/** Findings of rules of rigs that need the bookings or the stock of a fleet. Trips and a rig's own stock are asked about with the rig. */
export function* rigsInFleet(fleet: Fleet, views: readonly RigView[], dates: Dates): Iterable<Located> {
  for (const view of views) {
    const { rig, booked = [] } = view;
    if (booked.length > 0) {
      for (const problem of leavesOpen({ view, dates, remembered: new Map() }, booked))
        yield { ...problem, rig: rig.name, message: `${rig.name}: ${problem.message}` };
    }
    yield* usedPastBestBefore(view, fleet.stock, dates.asOf);
  }
  yield* shelf(fleet, dates);
}

function* shelf({ stock, policy }: Fleet, { asOf }: Dates): Iterable<Located> {
  for (const { material, file, at, date, text } of lotsOf(stock)) {
    const days = daysBetween(asOf, date);
    if (days < 0)
      yield {
        rule: 'best-before-past',
        file,
        at,
        message: `\`${material}\` was best before ${text}, ${-days} ${days === -1 ? 'day' : 'days'} ago on ${asOf}: take it off the shelf, and off \`on-hand\`.`,
      };
    else if (asOf >= addPeriod(date, policy.dueSoon.value, -1))
      yield {
        rule: 'best-before-soon',
        file,
        at,
        message: `\`${material}\` is best before ${text}, ${days} ${days === 1 ? 'day' : 'days'} more: use it or plan for new.`,
      };
  }
}
