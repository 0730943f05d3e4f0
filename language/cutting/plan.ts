import { jointsOf, moveJoints } from './joints.ts';
import type { Menu } from './menu.ts';
import type { CutPart, CutPlan, CutProblem, StockCut } from './problem.ts';
import type { SpliceChoice } from './splices.ts';
import { type Load, makeTask, type Task } from './task.ts';

/** A cut that the task must make: a whole piece or the remainder of a spliced one. `piece` is its place in the problem. */
interface Item {
  readonly piece: number;
  readonly length: number;
  readonly part?: readonly [number, number];
}

/** An offcut as the task sees it: what is free of it, and what the splices already cut from it. */
interface Held {
  readonly offcut: number;
  readonly length: number;
  readonly taken: readonly Item[];
}

interface Sole {
  readonly kind: 'roll' | 'offcut';
  readonly index: number;
  readonly item: Item;
}

/** One ordinary problem: what is left to cut after one choice of splices. */
export interface Stage {
  readonly task: Task;
  readonly items: readonly Item[];
  readonly held: readonly Held[];
  readonly soles: readonly Sole[];
  /** What the rolls cost that a part of a spliced piece takes alone, in the menu's money. */
  readonly soleCost: number;
  readonly splices: number;
  readonly bent: boolean;
}

/** Sets up the ordinary problem that one choice of splices leaves. */
export function makeStage(problem: CutProblem, menu: Menu, choice: SpliceChoice): Stage {
  const spliced = new Map(choice.map((one) => [one.piece, one]));
  const items: Item[] = [];
  const soles: Sole[] = [];
  const taken = new Map<number, Item[]>();
  for (const [piece, { length }] of problem.pieces.entries()) {
    const one = spliced.get(piece);
    if (!one) {
      items.push({ piece, length });
      continue;
    }
    const parts = one.sole.length + (one.shared === undefined ? 0 : 1) + 1;
    one.sole.forEach((sole, k) => {
      soles.push({ ...sole, item: { piece, length: sole.length, part: [k + 1, parts] } });
    });
    if (one.shared !== undefined) items.push({ piece, length: one.shared, part: [parts - 1, parts] });
    const rest: Item = { piece, length: one.rest, ...(parts > 1 ? { part: [parts, parts] as const } : {}) };
    if (one.restIn === undefined) items.push(rest);
    else taken.set(one.restIn, [...(taken.get(one.restIn) ?? []), rest]);
  }
  const used = new Set(soles.filter((sole) => sole.kind === 'offcut').map((sole) => sole.index));
  const held = problem.offcuts.flatMap((offcut, index): Held[] => {
    if (used.has(index) || offcut.length <= 0) return [];
    const cut = taken.get(index) ?? [];
    return [{ offcut: index, length: cut.reduce((left, item) => left - item.length, offcut.length), taken: cut }];
  });
  const lengths = held.map(({ length }) => length);
  return {
    task: makeTask(
      items.map((item) => item.length),
      menu.rolls,
      lengths,
    ),
    items,
    held,
    soles,
    soleCost: soles.reduce((cost, sole) => cost + (sole.kind === 'roll' ? menu.rolls[sole.index]!.price : 0), 0),
    splices: choice.reduce((sum, one) => sum + one.sole.length + (one.shared === undefined ? 0 : 1), 0),
    bent: choice.some((one) => one.bent),
  };
}

/** Writes the loads of a stage as cuts with the pieces' names, in an order that follows the laying order. */
export function writeCuts(problem: CutProblem, menu: Menu, stage: Stage, loads: readonly Load[]): StockCut[] {
  const waiting = new Map<number, Item[]>();
  for (const item of stage.items) {
    const same = waiting.get(item.length);
    if (same) same.push(item);
    else waiting.set(item.length, [item]);
  }
  const drafts: { kind: 'roll' | 'offcut'; index: number; items: Item[] }[] = stage.soles.map(
    ({ kind, index, item }) => ({
      kind,
      index,
      items: [item],
    }),
  );
  const touched = new Set<number>();
  for (const load of loads.toSorted(byContent)) {
    const items = load.counts.flatMap((count, i) => waiting.get(stage.task.sizes[i]!)!.splice(0, count));
    if (load.kind === 'roll') drafts.push({ kind: 'roll', index: load.index, items });
    else {
      const held = stage.held[load.index]!;
      touched.add(load.index);
      drafts.push({ kind: 'offcut', index: held.offcut, items: [...held.taken, ...items] });
    }
  }
  stage.held.forEach((held, i) => {
    if (!touched.has(i) && held.taken.length > 0)
      drafts.push({ kind: 'offcut', index: held.offcut, items: [...held.taken] });
  });

  for (const draft of drafts) draft.items.sort(byLaying);
  drafts.sort((a, b) => a.kind.localeCompare(b.kind) || byLaying(a.items[0]!, b.items[0]!));
  const numbers = new Map<string, number>();
  return drafts.map(({ kind, index, items }) => {
    const { id, length } = kind === 'roll' ? menu.rolls[index]! : problem.offcuts[index]!;
    const number = (numbers.get(`${kind} ${id}`) ?? 0) + 1;
    numbers.set(`${kind} ${id}`, number);
    const parts = items.map(
      (item): CutPart => ({
        piece: problem.pieces[item.piece]!.id,
        length: item.length,
        ...(item.part ? { part: item.part } : {}),
      }),
    );
    const left = items.reduce((sum, item) => sum - item.length, length);
    return { stock: { kind, id, number }, length, parts, left };
  });
}

/** Rolls and offcuts apart, then by what they hold, so that the search's own order does not show. */
function byContent(a: Load, b: Load): number {
  if (a.kind !== b.kind) return a.kind === 'offcut' ? -1 : 1;
  const differing = a.counts.findIndex((count, i) => count !== b.counts[i]);
  if (differing >= 0) return b.counts[differing]! - a.counts[differing]!;
  return a.index - b.index;
}

function byLaying(a: Item, b: Item): number {
  return a.piece - b.piece || (a.part?.[0] ?? 0) - (b.part?.[0] ?? 0);
}

/** Costs and bounds in the menu's money, the bound of the leftover in the caller's unit. */
export interface Findings {
  readonly cost: number;
  readonly firstFitCost: number;
  readonly volumeBound: number;
  readonly lowerBound: number;
  readonly leftBound: number;
  /** The lower bound comes from the linear program, not from search. */
  readonly byLinearProgram?: boolean;
}

/** The plan as the caller gets it: cuts, purchase, and what is proven, in the caller's money. */
export function finishPlan(
  problem: CutProblem,
  menu: Menu,
  stage: Stage,
  loads: readonly Load[],
  findings: Findings,
): CutPlan {
  const money = (amount: number): number => Math.floor(amount / menu.scale);
  const cuts = moveJoints(problem, writeCuts(problem, menu, stage, loads));
  const cost = money(findings.cost);
  const byVolume = money(findings.volumeBound) === cost;
  const proven = money(findings.lowerBound) === cost;

  const touched = new Set(stage.soles.filter((sole) => sole.kind === 'offcut').map((sole) => sole.index));
  for (const load of loads) if (load.kind === 'offcut') touched.add(stage.held[load.index]!.offcut);
  for (const held of stage.held) if (held.taken.length > 0) touched.add(held.offcut);
  const untouched = problem.offcuts.filter((_, i) => !touched.has(i)).map((offcut) => offcut.length);
  const longestLeft = Math.max(0, ...cuts.map((cut) => cut.left), ...untouched);
  return {
    cuts,
    buy: problem.rolls.flatMap(({ id }) => {
      const count = cuts.filter((cut) => cut.stock.kind === 'roll' && cut.stock.id === id).length;
      return count > 0 ? [{ id, count }] : [];
    }),
    cost,
    lowerBound: money(findings.lowerBound),
    proof: byVolume ? 'volume' : proven ? (findings.byLinearProgram ? 'lp' : 'search') : 'none',
    splices: stage.splices,
    joints: jointsOf(problem, cuts),
    longestLeft,
    longestLeftBound: findings.leftBound,
    longestLeftProven: longestLeft === findings.leftBound,
    firstFitCost: money(findings.firstFitCost),
  };
}
