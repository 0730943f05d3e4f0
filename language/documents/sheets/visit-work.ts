// What a visit of the schedule takes of the estimate: its jobs, its pieces, its rolls. The schedule says when, the estimate
// how much; both are made of the same plans.
import type { CuttingList, Estimate, JobLine, PieceLine, StockLine } from '../../estimate/index.ts';
import { asWritten, type OpenPlan, openPlans } from '../../resolve/done.ts';
import { relativeTo } from '../../resolve/paths.ts';
import type { Material, RigView } from '../../resolve/types.ts';
import { planKeys, type Visit } from '../../schedule/index.ts';
import type { RigState } from '../../seams/index.ts';
import type { Piece } from '../roof/index.ts';

/** A job of the estimate with the plan that it comes from. */
export interface VisitJob extends Pick<JobLine, 'text' | 'word' | 'items' | 'beads' | 'pieces'> {
  readonly plan: OpenPlan;
  /** Tape, patch or coating that are not counted as a bead or a liquid. */
  readonly materials: readonly string[];
}

/** One cut of a roll. */
export interface Cut {
  readonly piece: PieceLine;
  readonly length: string;
  readonly from: string;
  readonly part?: readonly [number, number];
}

export interface VisitWork {
  readonly visit: Visit;
  readonly jobs: readonly VisitJob[];
  readonly liquids: JobLine['liquids'];
  readonly pieces: readonly PieceLine[];
  /** In laying order. */
  readonly cuts: readonly Cut[];
  readonly splices: readonly string[];
  readonly rolls: readonly string[];
  /** What is laid, gunned, wiped or coated with. */
  readonly materials: readonly Material[];
}

/** The work of a visit. `cutting` are the lists that are cut by: the rig's own, or those of a fleet that buys together. */
export function workOf(
  visit: Visit,
  view: RigView,
  state: RigState,
  estimate: Estimate,
  cutting: readonly CuttingList[],
  folder: string,
): VisitWork {
  const { rig, material } = view;
  const plans = plansOf(visit, view, state.asOf);
  const jobs = estimate.jobs.flatMap((job): (VisitJob & { readonly line: JobLine })[] => {
    const plan = plans.find(
      ({ file, statement }) => statement.at[0] === job.at[0] && relativeTo(folder, file) === job.file,
    );
    if (plan === undefined) return [];
    const used = (plan.statement.materials ?? []).map(({ name }) => name);
    const counted = new Set([
      ...job.beads.map(({ sealant }) => sealant),
      ...job.liquids.flatMap((one) => (one.material === undefined ? [] : [one.material])),
      ...job.pieces.map(({ tape }) => tape),
    ]);
    const more = job.word === 'wash' ? [] : used.filter((name) => !counted.has(name));
    return [{ ...job, plan, materials: more, line: job }];
  });
  const washes = visit.tasks.some(({ task }) => task === 'wash');
  const ofVisit = new Set(jobs.map(({ line }) => line.visit));
  const washing = estimate.visits.flatMap(({ number, liquids }) => (washes && ofVisit.has(number) ? liquids : []));
  const pieces = jobs.flatMap(({ line }) => line.pieces).sort((a, b) => a.number - b.number);
  const names = new Set([...visit.tasks.flatMap((task) => task.materials), ...jobs.flatMap((job) => job.materials)]);
  return {
    visit,
    jobs,
    liquids: [...washing, ...jobs.flatMap(({ line }) => line.liquids)],
    pieces,
    ...cutsOf(pieces, cutting, rig.name),
    materials: [...names].map((name) => material(name)).filter((found) => found !== undefined),
  };
}

/** What is left of the plans that a visit does, which the schedule names. */
function plansOf({ plans = [] }: Visit, { rig }: RigView, asOf: string): readonly OpenPlan[] {
  const keys = planKeys(rig);
  return openPlans(rig, asOf).filter((plan) => plans.includes(keys.get(asWritten(plan)) as string));
}

function cutsOf(
  pieces: readonly PieceLine[],
  cutting: readonly CuttingList[],
  rig: string,
): Pick<VisitWork, 'cuts' | 'splices' | 'rolls'> {
  const byNumber = new Map(pieces.map((piece) => [piece.number, piece]));
  const cuts: Cut[] = [];
  const splices: string[] = [];
  const rolls: string[] = [];
  for (const list of cutting) {
    const mine = (cut: { readonly rig?: string | undefined; readonly piece: number }) =>
      (cut.rig ?? rig) === rig && byNumber.get(cut.piece)?.tape === list.tape;
    for (const stock of list.stock) {
      const here = stock.cuts.filter(mine);
      if (here.length > 0) rolls.push(`${list.tape}: ${stock.what}`);
      cuts.push(...here.map((cut) => cutLine(cut, stock, byNumber.get(cut.piece)!)));
    }
    for (const { piece, at, tooNear, ...joint } of list.joints) {
      if (!mine({ ...joint, piece })) continue;
      const near = tooNear ? ', nearer to a corner or an opening than 12 in: the roll leaves no other place' : '';
      splices.push(`Piece ${piece} is spliced at ${at.text} from its front end${near}: forward part over rear part.`);
    }
  }
  const sorted = cuts.sort((a, b) => a.piece.number - b.piece.number || (a.part?.[0] ?? 0) - (b.part?.[0] ?? 0));
  return { cuts: sorted, splices, rolls };
}

function cutLine({ part, length }: StockLine['cuts'][number], { what }: StockLine, piece: PieceLine): Cut {
  return { piece, length: length.text, from: what, ...(part ? { part } : {}) };
}

const NM = { in: 25_400_000, mm: 1_000_000 } as const;

/** The pieces of a visit as the roof plan draws them: the pieces of one kind on an item follow the places of its plan. */
export function drawnPieces({ jobs }: VisitWork, material: RigView['material']): readonly Piece[] {
  return jobs.flatMap(({ plan, pieces }) => {
    const met = new Map<string, number>();
    return pieces.flatMap(({ number, item, copy, what, length, tape }): Piece[] => {
      const found = material(tape);
      if (found?.kind !== 'tape') return [];
      const kind = `${item} ${copy} ${what}`;
      const nth = met.get(kind) ?? 0;
      met.set(kind, nth + 1);
      const place = plan.places.filter((one) => one.item === item)[nth];
      return [
        {
          number,
          item,
          copy,
          what,
          length: (length.value * (length.unit === 'in' ? NM.in : NM.mm)) / NM.mm,
          tape: found,
          ...(place?.from === undefined ? {} : { from: place.from }),
          ...(place?.to === undefined ? {} : { to: place.to }),
        },
      ];
    });
  });
}
