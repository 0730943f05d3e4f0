// The purchase for a whole fleet and its schedule, in a process of its own: `node scale-fleet.ts FOLDER FLEET-FILE`.
import { estimateWithNeeds, pooledPurchases } from '../../language/estimate/index.ts';
import { createProject } from '../../language/resolve/project.ts';
import { scheduleOfFleet } from '../../language/schedule/index.ts';
import { nodeDisk } from '../../server/disk-node.ts';
import { diskFiles } from '../../server/files.ts';
import { loadLinearPrograms } from '../../server/solver/highs.ts';
import { asOf } from '../generator/workspace.ts';

const [folder, file] = process.argv.slice(2) as [string, string];
const dates = { asOf, today: asOf };
const lp = await loadLinearPrograms();
if (!lp) throw new Error('the solver of linear programs did not load');
const seconds = (from: number) => (performance.now() - from) / 1000;

const project = createProject(diskFiles(nodeDisk, [folder]));
let start = performance.now();
const [found] = project.fleets(file);
if (!found) throw new Error('no fleet');
const reading = seconds(start);
start = performance.now();
const rigs = found.views.map((view) => ({ view, ...estimateWithNeeds(view, dates) }));
const estimates = seconds(start);
start = performance.now();
const purchases = pooledPurchases(found.fleet, rigs, asOf, 'USD', lp);
const purchase = seconds(start);
start = performance.now();
const schedule = scheduleOfFleet(found.fleet, found.views, dates);
console.log(
  JSON.stringify({
    reading,
    estimates,
    purchase,
    schedule: seconds(start),
    materials: purchases.length,
    visits: schedule.visits.length,
    unplaced: schedule.unplaced.length,
  }),
);
