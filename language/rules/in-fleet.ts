// What only a fleet shows of its rigs: departures by booking, and the lots and dates of the yard's own shelf.
import { lotsOf } from '../due/index.ts';
import { bookedByRig } from '../resolve/fleet.ts';
import type { Located } from '../resolve/located.ts';
import type { Dates, FleetFrame } from '../resolve/types.ts';
import { shelvesOf } from '../resolve/yards.ts';
import { addPeriod, daysBetween } from '../values/calendar.ts';
import { leavesOpen } from './departures.ts';
import { usedPastBestBefore } from './materials-used.ts';
import { lotsAmong, type Member } from './member.ts';

/** Findings of rules of rigs that need the bookings or the stock of a fleet. Trips and a rig's own stock are asked about with the rig. */
export function* rigsInFleet(fleet: FleetFrame, members: readonly Member[], dates: Dates): Iterable<Located> {
  const booked = bookedByRig(fleet);
  const stock = shelvesOf(fleet);
  const dated = new Set(
    stock.flatMap((s) => (s.word === 'bought' && s.lot !== undefined && s.bestBefore ? [s.lot] : [])),
  );
  for (const member of members) {
    const { name, open, soon } = member;
    for (const problem of leavesOpen(open, booked.get(name) ?? [], dates.asOf, soon))
      yield { ...problem, rig: name, message: `${name}: ${problem.message}` };
    yield* usedPastBestBefore(lotsAmong(member, dated), stock);
  }
  yield* shelf({ ...fleet, stock }, dates);
}

function* shelf({ stock, policy }: FleetFrame, { asOf }: Dates): Iterable<Located> {
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
