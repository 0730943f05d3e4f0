import type { CutPlan, CutProblem } from '../../language/cutting/index.ts';

/** The best plan's figures, found by trying everything. It shares no code with the engine. */
export interface Truth {
  readonly splices: number;
  readonly cost: number;
  readonly left: number;
}

interface Best {
  cost: number;
  free: number;
  left: number;
}

interface Open {
  room: number;
}

/** Tries every way to put every piece into an open stock, an untouched offcut or a new roll. No splices. */
function everyPlacing(
  pieces: readonly number[],
  rolls: CutProblem['rolls'],
  offcuts: readonly number[],
): Best | undefined {
  let best: Best | undefined;
  const open: Open[] = offcuts.map((room) => ({ room }));
  place(0, 0, 0);
  return best;

  function place(k: number, cost: number, free: number): void {
    if (best && (cost > best.cost || (cost === best.cost && free > best.free))) return;
    if (k === pieces.length) {
      const left = Math.max(0, ...open.map((stock) => stock.room));
      if (!best || cost < best.cost || free < best.free || left > best.left) best = { cost, free, left };
      return;
    }
    const length = pieces[k]!;
    for (const stock of open) {
      if (stock.room < length) continue;
      stock.room -= length;
      place(k + 1, cost, free);
      stock.room += length;
    }
    for (const roll of rolls) {
      if (roll.length < length) continue;
      open.push({ room: roll.length - length });
      place(k + 1, cost + roll.price, free + (roll.price === 0 ? 1 : 0));
      open.pop();
    }
  }
}

/**
 * The least money, then the fewest splices, when any piece may be spliced: tries up to so many splices in any pieces, all
 * split points and all placings.
 */
export function bruteForceVoluntary(problem: CutProblem, mostSplices: number): Pick<Truth, 'cost' | 'splices'> {
  const { lap, leastPart } = problem.splice;
  const offcuts = problem.offcuts.map((offcut) => offcut.length);
  const longest = Math.max(...problem.rolls.map((roll) => roll.length), ...offcuts);
  let best = { cost: Number.POSITIVE_INFINITY, splices: 0 };
  for (let splices = 0; splices <= mostSplices; splices++) {
    for (const parts of everySplit(0, splices)) {
      const found = everyPlacing(parts, problem.rolls, offcuts);
      if (found && found.cost < best.cost) best = { cost: found.cost, splices };
    }
  }
  return best;

  function* everySplit(k: number, splices: number): Generator<number[]> {
    const piece = problem.pieces[k];
    if (!piece) {
      if (splices === 0) yield [];
      return;
    }
    for (let own = 0; own <= splices; own++) {
      const least = own === 0 ? 1 : Math.max(leastPart, lap + 1);
      for (const parts of splits(piece.length + own * lap, own + 1, least, longest)) {
        for (const others of everySplit(k + 1, splices - own)) yield [...parts, ...others];
      }
    }
  }
}

/** All ways to write `total` as `n` falling parts from `least` to `most`. */
function* splits(total: number, n: number, least: number, most: number): Generator<number[]> {
  if (n === 1) {
    if (total >= least && total <= most) yield [total];
    return;
  }
  for (let part = Math.min(most, total); part >= least; part--) {
    for (const rest of splits(total - part, n - 1, least, part)) yield [part, ...rest];
  }
}

/** Tries all numbers of splices from none upwards, all split points and all placings. Only pieces too long for every roll are split. */
export function bruteForce(problem: CutProblem, mostSplices: number): Truth | undefined {
  const longestRoll = Math.max(0, ...problem.rolls.map((roll) => roll.length));
  const longestStock = Math.max(longestRoll, ...problem.offcuts.map((offcut) => offcut.length));
  const { lap, leastPart } = problem.splice;
  const offcuts = problem.offcuts.map((offcut) => offcut.length);
  const short = problem.pieces.filter((piece) => piece.length <= longestRoll).map((piece) => piece.length);
  const long = problem.pieces.filter((piece) => piece.length > longestRoll).map((piece) => piece.length);

  for (let splices = 0; splices <= mostSplices; splices++) {
    let best: Best | undefined;
    for (const parts of spliced(0, splices)) {
      const found = everyPlacing([...parts, ...short], problem.rolls, offcuts);
      if (!found) continue;
      const better =
        !best ||
        found.cost < best.cost ||
        (found.cost === best.cost && (found.free < best.free || (found.free === best.free && found.left > best.left)));
      if (better) best = found;
    }
    if (best) return { splices, cost: best.cost, left: best.left };
    if (long.length === 0) return undefined;
  }
  return undefined;

  function* spliced(k: number, splices: number): Generator<number[]> {
    if (k === long.length) {
      if (splices === 0) yield [];
      return;
    }
    for (let own = 0; own <= splices; own++) {
      const least = own === 0 ? 1 : Math.max(leastPart, lap + 1);
      for (const parts of splits(long[k]! + own * lap, own + 1, least, longestStock)) {
        for (const others of spliced(k + 1, splices - own)) yield [...parts, ...others];
      }
    }
  }
}

/** Everything that makes a plan wrong to follow, as sentences; none for a right plan. */
export function faultsOf(problem: CutProblem, plan: CutPlan): string[] {
  const faults: string[] = [];
  const expect = (holds: boolean, what: string): void => {
    if (!holds) faults.push(what);
  };
  const stock = { roll: problem.rolls, offcut: problem.offcuts };
  const usedOffcuts = new Map<string, number>();
  const bought = new Map<string, number>();
  for (const cut of plan.cuts) {
    const { kind, id, number } = cut.stock;
    const own = stock[kind].filter((one) => one.id === id);
    expect(
      own.some((one) => one.length === cut.length),
      `${kind} ${id} is not ${cut.length} long`,
    );
    expect(cut.parts.length > 0, `nothing is cut from ${kind} ${id}`);
    const sum = cut.parts.reduce((total, part) => total + part.length, 0);
    expect(sum + cut.left === cut.length && cut.left >= 0, `${kind} ${id} ${number}: ${sum} and ${cut.left} left`);
    const counter = kind === 'roll' ? bought : usedOffcuts;
    counter.set(id, (counter.get(id) ?? 0) + 1);
    expect(counter.get(id) === number, `${kind} ${id} is numbered ${number}`);
  }
  for (const [id, count] of usedOffcuts) {
    expect(count <= problem.offcuts.filter((one) => one.id === id).length, `offcut ${id} is used ${count} times`);
  }
  const buy = new Map(plan.buy.map(({ id, count }) => [id, count]));
  expect(
    buy.size === bought.size && [...bought].every(([id, count]) => buy.get(id) === count),
    'buy differs from cuts',
  );
  const price = new Map(problem.rolls.map((roll) => [roll.id, roll.price]));
  const cost = [...bought].reduce((sum, [id, count]) => sum + count * price.get(id)!, 0);
  expect(cost === plan.cost, `cost is ${cost}, not ${plan.cost}`);

  const { lap, leastPart } = problem.splice;
  const cuts = plan.cuts.flatMap((cut) => cut.parts);
  for (const piece of problem.pieces) {
    const parts = cuts.filter((part) => part.piece === piece.id);
    const sum = parts.reduce((total, part) => total + part.length, 0);
    expect(sum === piece.length + (parts.length - 1) * lap, `piece ${piece.id} comes to ${sum}`);
    const numbers = parts.map((part) => part.part?.[0] ?? 1).sort((a, b) => a - b);
    expect(
      numbers.every((number, i) => number === i + 1),
      `parts of ${piece.id} are numbered ${numbers}`,
    );
    expect(
      parts.every((part) => (part.part?.[1] ?? 1) === parts.length),
      `part count of ${piece.id}`,
    );
    if (parts.length > 1) {
      expect(
        parts.every((part) => part.length >= leastPart && part.length > lap),
        `a part of ${piece.id} is too short`,
      );
      expect(
        problem.splice.voluntary === true || problem.rolls.every((roll) => roll.length < piece.length),
        `piece ${piece.id} fits a roll and is spliced`,
      );
    }
  }
  expect(cuts.length === problem.pieces.length + plan.splices, `${cuts.length} cuts, ${plan.splices} splices`);
  expect(plan.lowerBound <= plan.cost && plan.cost <= plan.firstFitCost, 'bounds and first fit are out of order');
  expect((plan.proof === 'none') === plan.lowerBound < plan.cost, 'proof does not follow from the bound');
  expect(plan.longestLeft <= plan.longestLeftBound, 'leftover above its bound');
  expect(plan.longestLeftProven === (plan.longestLeft === plan.longestLeftBound), 'leftover proof');
  expect(plan.joints.length === plan.splices, `${plan.joints.length} joints, ${plan.splices} splices`);
  for (const { piece: id, after, at, inKeepOff } of plan.joints) {
    const piece = problem.pieces.find((one) => one.id === id)!;
    const parts = cuts.filter((part) => part.piece === id && part.part![0] <= after);
    const middle = parts.reduce((sum, part) => sum + part.length, 0) - (after - 0.5) * lap;
    expect(at === middle, `joint ${after} of ${id} is told at ${at}, lies at ${middle}`);
    const within = (piece.keepOff ?? []).some(([from, to]) => at > from && at < to);
    expect(within === inKeepOff, `joint ${after} of ${id} at ${at} is told wrong`);
  }
  return faults;
}
