// The figures that a schedule rests on, each with its kind.
import type { Crew, Fleet, Rig, Stated } from '../resolve/types.ts';
import { months, type Task, tasks } from '../statements/words.ts';
import { hoursText } from '../values/display.ts';
import type { RigWork } from './board.ts';
import { workEnds } from './clocks.ts';
import { pairEfficiency } from './crew.ts';
import { companyDays } from './decode.ts';
import type { Schedule } from './types.ts';
import { isHeatSensitive, weatherOf } from './weather.ts';

type Assumption = Schedule['assumptions'][number];

/** The work of one board, and the fleet as its yard sees it. */
interface Part {
  readonly work: readonly RigWork[];
  readonly fleet?: Fleet;
}

/** Rates, seasons, hours of a day and the rules of placing, as far as a visit uses them; each once. */
export function assumptionsOf(parts: readonly Part[]): readonly Assumption[] {
  const busy = parts.map(({ work, fleet }) => ({
    fleet,
    work: work.filter(({ held, unplaced }) => held.length + unplaced.length > 0),
  }));
  if (busy.every(({ work }) => work.length === 0)) return [];
  const rigs = busy.flatMap(({ work, fleet }) => work.flatMap((one) => ofRig(one, fleet)));
  const crews = busy.flatMap(({ fleet }) => (fleet?.crews ?? []).map((crew) => ofCrew(crew, fleet)));
  const pair: readonly Assumption[] = busy.some(({ fleet }) => fleet?.crews.some(({ people }) => people > 1))
    ? [{ what: 'two on one roof', value: `${100 * pairEfficiency} % of the hours of each`, kind: 'from memory' }]
    : [];
  const fixed: readonly Assumption[] = [
    { what: 'clocks of planned work run from', value: workEnds, kind: 'common practice' },
    { what: 'a plan waits for others of its rig at least', value: `${companyDays} days`, kind: 'from memory' },
    {
      what: 'order of placing',
      value:
        'pinned days first, then the earliest last day, the worst finding, the name of the rig, the line; other orders are tried where that makes something late',
      kind: 'common practice',
    },
    {
      what: 'what a schedule is good at',
      value:
        'least days late, each times 1 for sound or unknown to 6 for open, then fewest visits, then days as they were, then earliest',
      kind: 'from memory',
    },
  ];
  const seen = new Set<string>();
  return [...crews, ...pair, ...rigs, ...fixed].filter(({ what, value }) => {
    const key = `${what} ${value}`;
    return !seen.has(key) && seen.add(key);
  });
}

function ofCrew({ name, people, minutes, origin }: Crew, fleet: Fleet | undefined): Assumption {
  const at = fleet?.yard ? ` at ${fleet.yard.name}` : '';
  return {
    what: `crew${name === undefined ? '' : ` ${name}`}${at}`,
    value: `${people} for ${hoursText(minutes)} each a day`,
    kind: origin.kind,
  };
}

function ofRig({ ground, held, jobs }: RigWork, fleet: Fleet | undefined): readonly Assumption[] {
  const { policy } = ground.view.rig;
  const used = new Set<string>(held.flatMap(({ steps }) => steps.map(({ task }) => task)));
  // A plan to dry out has a task of that name; the rate of `dry` is the wait after a wash.
  if (used.delete('dry')) used.add('dry-out');
  if (used.has('wash')) used.add('dry');
  const rates = tasks.filter((task) => used.has(task)).flatMap((task) => rateOf(task, policy.rates[task]));
  return [
    ...(jobs.some(({ season }) => season)
      ? [stated('season of roof work', policy.season.value.text, policy.season)]
      : []),
    ...siteOf(ground.view.rig, used, fleet),
    ...(fleet?.crew ? [] : [stated('hours of a day, one person', policy.workday.value.text, policy.workday)]),
    ...rates,
  ];
}

/** What the site does to the work: mornings where something is laid; slack, normals and turn days as they are written. */
function siteOf(rig: Rig, used: ReadonlySet<string>, fleet?: Fleet): readonly Assumption[] {
  const { slack, normals, beforeNoon } = weatherOf(rig, fleet);
  const own = fleet?.yard?.climate;
  // What a yard says of itself is told with its name: at another yard it may be otherwise.
  const at = (isOwn: boolean) => (isOwn ? ` at ${fleet?.yard?.name}` : '');
  const { turnRound } = rig.policy;
  return [
    ...([...used].some(isHeatSensitive)
      ? [stated(`lay and gun before noon${at(own?.beforeNoon !== undefined)}`, beforeNoon.value.text, beforeNoon)]
      : []),
    ...months.flatMap((month) => {
      const [share, air] = [slack[month], normals[month]];
      return [
        ...(share
          ? [
              stated(
                `kept free in ${month} for days that weather takes${at(own?.slack[month] !== undefined)}`,
                share.value.text,
                share,
              ),
            ]
          : []),
        ...(air
          ? [
              stated(
                `normal day in ${month}${at(own?.normals[month] !== undefined)}`,
                `${air.value.low.text} to ${air.value.high.text}`,
                air,
              ),
            ]
          : []),
      ];
    }),
    ...(turnRound ? [stated('roof free on a turn day', turnRound.value.text, turnRound)] : []),
  ];
}

function rateOf(task: Task, rate: RigWork['ground']['view']['rig']['policy']['rates'][Task] | undefined) {
  return rate && rate.value !== 'none' ? [stated(`rate of ${task}`, rate.value.likely.text, rate)] : [];
}

function stated(what: string, value: string, { origin: { kind, source } }: Stated<unknown>): Assumption {
  return { what, value, kind, ...(source === undefined || source === kind ? {} : { source }) };
}
