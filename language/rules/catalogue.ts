// All rules by name: the one place that the checker, the pages, the editor and the tests read.
import { accepting } from './accept.ts';
import { amountsUsed } from './amounts-used.ts';
import { bookings } from './bookings.ts';
import { coats } from './coats.ts';
import { departures } from './departures.ts';
import { evidence } from './evidence.ts';
import { fallsDue } from './falls-due.ts';
import { fleets } from './fleet.ts';
import { ground } from './ground.ts';
import { groups } from './groups.ts';
import { identity } from './identity.ts';
import { laying } from './laying.ts';
import { materialsUsed } from './materials-used.ts';
import { moisture } from './moisture.ts';
import { money } from './money.ts';
import { naming } from './naming.ts';
import { openParts } from './open-parts.ts';
import { orderOfWork } from './order-of-work.ts';
import { percents } from './percents.ts';
import { planning } from './planning.ts';
import { readiness } from './readiness.ts';
import { reading } from './reading.ts';
import { roofs } from './roof.ts';
import type { RuleEntry, RuleFamily } from './rule.ts';
import { silencing } from './silenced.ts';
import { stretches } from './stretches.ts';
import { threePointed } from './three-points.ts';
import { weather } from './weather.ts';
import { which } from './which.ts';
import { wholeWorkspace } from './workspace.ts';

/** The families in the order of the reference page. */
export const families: readonly RuleFamily[] = [
  reading,
  naming,
  roofs,
  stretches,
  laying,
  identity,
  evidence,
  readiness,
  coats,
  ground,
  openParts,
  orderOfWork,
  weather,
  amountsUsed,
  materialsUsed,
  fallsDue,
  moisture,
  departures,
  which,
  money,
  threePointed,
  percents,
  planning,
  groups,
  fleets,
  bookings,
  wholeWorkspace,
  accepting,
  silencing,
];

export const catalogue: ReadonlyMap<string, RuleEntry> = new Map(
  families.flatMap(({ rules }) => Object.entries(rules)),
);
