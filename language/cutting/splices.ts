import type { CutProblem } from './problem.ts';

/** A part that takes one stock alone, or nearly: a new roll (by its place on the menu) or an offcut. */
export interface SolePart {
  readonly kind: 'roll' | 'offcut';
  readonly index: number;
  readonly length: number;
}

/** One long piece: the parts that fill a stock each, and the remainder, which is cut like any other piece. */
export interface Spliced {
  readonly piece: number;
  readonly sole: readonly SolePart[];
  /** A part before the remainder that shares its roll with other pieces. */
  readonly shared?: number;
  readonly rest: number;
  /** The offcut that must hold the remainder because no roll does. */
  readonly restIn?: number;
  /** A part gave way so that the remainder is not too short: from here on a rule of thumb, no longer an optimum. */
  readonly bent: boolean;
}

/** One way to splice all long pieces. `rest` lengths fit some roll unless `restIn` says where they lie. */
export type SpliceChoice = readonly Spliced[];

/** All choices with the fewest splices. `complete` false: there are more than were listed. */
export interface SpliceChoices {
  readonly choices: readonly SpliceChoice[];
  readonly complete: boolean;
  /** Pieces that no allowed splice makes. */
  readonly impossible: readonly number[];
}

const MOST_CHOICES = 400;
const MOST_STEPS = 100_000;

interface Menu {
  readonly pieces: readonly { readonly length: number }[];
  readonly rolls: readonly { readonly length: number }[];
  readonly offcuts: readonly { readonly length: number }[];
  readonly splice: CutProblem['splice'];
}

/**
 * Ways to make the pieces that no roll holds. Some best plan has, for every piece in `n` parts, `n - 1` stocks filled
 * wholly by a part and one remainder: of two parts in stocks A and B, the one in A can grow at the other's expense while
 * A's other pieces move into the room that this leaves in B. So it is enough to choose which stocks are filled.
 * A piece that fits an offcut longer than any roll is not spliced as long as that offcut is free.
 *
 * @param long places and lengths of the pieces longer than every roll
 */
export function spliceChoices(
  long: readonly { readonly piece: number; readonly length: number }[],
  menu: Menu,
): SpliceChoices {
  const free = new Set(menu.offcuts.keys());
  // What is left of the offcuts: one longer than every roll may hold several long pieces whole.
  const offcuts = menu.offcuts.map(({ length }) => ({ length }));
  const impossible = long.filter(({ length }) => waysOf(length, menu, free).next().done).map(({ piece }) => piece);
  if (impossible.length > 0) return { choices: [], complete: true, impossible };

  const pieces = [...long].sort((a, b) => b.length - a.length || a.piece - b.piece);
  const chosen: Spliced[] = [];
  let choices: SpliceChoice[] = [];
  let fewest = Number.POSITIVE_INFINITY;
  let steps = 0;
  let complete = true;
  choose(0, 0, '');
  return { choices, complete, impossible: choices.length > 0 ? [] : long.map(({ piece }) => piece) };

  function choose(k: number, splices: number, previous: string): void {
    if (splices > fewest) return;
    const current = pieces[k];
    if (!current) {
      if (splices < fewest) choices = [];
      fewest = splices;
      if (choices.length < MOST_CHOICES) choices.push([...chosen]);
      else complete = false;
      return;
    }
    const twin = pieces[k - 1]?.length === current.length;
    for (const way of waysOf(current.length, { ...menu, offcuts }, free)) {
      if (++steps > MOST_STEPS) {
        complete = false;
        return;
      }
      const key = keyOf(way);
      // Equal pieces take their ways in order, or the same choice would come once per permutation.
      if (twin && key < previous) continue;
      const before = offcuts.map((offcut) => offcut.length);
      const filled = way.sole.filter((part) => part.kind === 'offcut').map((part) => part.index);
      for (const index of filled) offcuts[index]!.length = 0;
      if (way.restIn !== undefined) offcuts[way.restIn]!.length -= way.rest;
      const taken = [...filled, way.restIn ?? -1].filter((index) => free.delete(index));
      chosen.push({ piece: current.piece, ...way });
      choose(k + 1, splices + way.sole.length, key);
      chosen.pop();
      for (const index of taken) free.add(index);
      for (const [index, length] of before.entries()) offcuts[index]!.length = length;
    }
  }
}

/** A fleet has too many long pieces to try all choices for each alone: up to so many all choices are listed. */
const FEW = 6;

/**
 * Choices for many long pieces: whole into offcuts as long as some are free, then one way for all pieces, by the roll
 * that their parts fill. Few long pieces get all choices.
 */
export function fleetChoices(
  long: readonly { readonly piece: number; readonly length: number }[],
  menu: Menu,
): SpliceChoices {
  if (long.length <= FEW) {
    const listed = spliceChoices(long, menu);
    if (listed.choices.length <= MOST_POLICIES) return listed;
  }
  const { whole, rest } = intoOffcuts(long, menu);
  const ways = new Map<number, Way[]>();
  for (const { length } of rest) {
    if (!ways.has(length)) ways.set(length, fewest([...waysOf(length, { ...menu, offcuts: [] }, new Set())]));
  }
  const impossible = rest.filter(({ length }) => ways.get(length)!.length === 0).map(({ piece }) => piece);
  if (impossible.length > 0) return { choices: [], complete: true, impossible };

  const found = new Map<string, SpliceChoice>();
  for (const filled of menu.rolls.keys()) {
    const choice = shareRolls(
      rest.map(({ piece, length }) => ({ piece, ...preferred(ways.get(length)!, filled) })),
      menu,
    );
    const key = choice.map((one) => keyOf(one)).join(' | ');
    if (!found.has(key) && found.size < MOST_POLICIES) found.set(key, [...whole, ...choice]);
  }
  const complete = menu.offcuts.length === 0 && [...ways.values()].every((own) => own.length === 1);
  return { choices: [...found.values()], complete, impossible: [] };
}

const MOST_POLICIES = 4;

/**
 * Where a part gave way for a remainder that would be too short, a roll is left with a rest that no piece fits. Instead
 * the part is shortened further, by a short piece that is cut from the same roll; the remainder grows by as much.
 */
function shareRolls(choice: readonly Spliced[], menu: Menu): Spliced[] {
  const least = leastPartOf(menu);
  const supply = new Map<number, number>();
  for (const { length } of menu.pieces) supply.set(length, (supply.get(length) ?? 0) + 1);
  const lengths = [...supply.keys()].sort((a, b) => a - b);
  return choice.map((one): Spliced => {
    const last = one.sole.at(-1);
    if (!one.bent || last?.kind !== 'roll') return one;
    const roll = menu.rolls[last.index]!.length;
    const both = last.length + one.rest;
    const filler = lengths
      .filter((length) => roll - length >= least && both - (roll - length) >= least && length < roll / 2)
      .filter((length) => supply.get(length)! > 0)
      .slice(0, SHORT_ONES)
      .reduce((most, length) => ((supply.get(length) ?? 0) > (supply.get(most) ?? 0) ? length : most), 0);
    if (filler === 0) return one;
    supply.set(filler, supply.get(filler)! - 1);
    return { ...one, sole: one.sole.slice(0, -1), shared: roll - filler, rest: both - (roll - filler) };
  });
}

const SHORT_ONES = 12;

/** Long pieces that offcuts longer than every roll hold, the longest first, each in the shortest offcut. */
function intoOffcuts(
  long: readonly { readonly piece: number; readonly length: number }[],
  menu: Menu,
): { readonly whole: Spliced[]; readonly rest: readonly { readonly piece: number; readonly length: number }[] } {
  const rooms = menu.offcuts.map(({ length }, index) => ({ index, room: length })).sort((a, b) => a.room - b.room);
  const whole: Spliced[] = [];
  const rest = [...long]
    .sort((a, b) => b.length - a.length || a.piece - b.piece)
    .filter(({ piece, length }) => {
      const shelf = rooms.find(({ room }) => room >= length);
      if (!shelf) return true;
      shelf.room -= length;
      whole.push({ piece, sole: [], rest: length, restIn: shelf.index, bent: false });
      return false;
    });
  return { whole, rest };
}

function fewest(ways: readonly Way[]): Way[] {
  const least = Math.min(...ways.map((way) => way.sole.length));
  return ways.filter((way) => way.sole.length === least);
}

/** The way that fills most rolls of the kind asked for. */
function preferred(ways: readonly Way[], roll: number): Way {
  const count = (way: Way): number => way.sole.filter((part) => part.index === roll).length;
  return ways.reduce((best, way) => (count(way) > count(best) ? way : best));
}

type Way = Omit<Spliced, 'piece'>;

/** Fewer parts first; rolls before offcuts, longest first, so the first way is the plain one. */
function* waysOf(length: number, menu: Menu, free: ReadonlySet<number>): Generator<Way> {
  const { lap } = menu.splice;
  const longest = Math.max(...menu.rolls.map((roll) => roll.length));
  const least = leastPartOf(menu);
  const parts = longest > lap ? Math.ceil((length - lap) / (longest - lap)) : 1;
  // A copy: the caller takes offcuts out and puts them back between two ways.
  const held = [...free].sort((a, b) => a - b);
  const lengths = menu.offcuts.map((offcut) => offcut.length);
  const stocks: SolePart[] = [
    ...menu.rolls.map(({ length }, index): SolePart => ({ kind: 'roll', index, length })),
    ...held.map((index): SolePart => ({ kind: 'offcut', index, length: menu.offcuts[index]!.length })),
  ]
    .filter((stock) => stock.length >= least)
    .sort((a, b) => (a.kind === b.kind ? b.length - a.length || a.index - b.index : a.kind === 'roll' ? -1 : 1));

  for (let n = 1; n <= parts; n++) yield* fill([], n - 1, 0, length + (n - 1) * lap);

  function* fill(sole: readonly SolePart[], open: number, from: number, rest: number): Generator<Way> {
    if (open === 0) {
      yield* close(sole, rest);
      return;
    }
    for (let k = from; k < stocks.length; k++) {
      const stock = stocks[k]!;
      // A remainder within the lap means that one part fewer does.
      if (rest - stock.length <= lap) continue;
      yield* fill([...sole, stock], open - 1, stock.kind === 'roll' ? k : k + 1, rest - stock.length);
    }
  }

  function* close(sole: readonly SolePart[], rest: number): Generator<Way> {
    const whole = sole.length === 0;
    const bent = !whole && rest < least;
    const parts = bent ? shorten(sole, least - rest, least) : sole;
    if (!parts) return;
    const remainder = bent ? least : rest;
    if (remainder <= longest) {
      if (!whole) yield { sole: parts, rest: remainder, bent };
      return;
    }
    const used = new Set(sole.filter((part) => part.kind === 'offcut').map((part) => part.index));
    for (const [index, room] of lengths.entries()) {
      if (!used.has(index) && room >= remainder) {
        yield { sole: parts, rest: remainder, restIn: index, bent };
      }
    }
  }
}

function leastPartOf({ splice }: Pick<Menu, 'splice'>): number {
  return Math.max(splice.leastPart, splice.lap + 1);
}

/** Takes `need` off the parts without making one shorter than `least`; undefined if they cannot give so much. */
function shorten(sole: readonly SolePart[], need: number, least: number): SolePart[] | undefined {
  let open = need;
  const parts = sole.map((part) => {
    const give = Math.min(open, part.length - least);
    open -= give;
    return { ...part, length: part.length - give };
  });
  return open === 0 ? parts : undefined;
}

function keyOf(way: Way): string {
  const sole = way.sole.map((part) => `${part.kind}${String(part.index).padStart(6, '0')}`).join(' ');
  return `${String(way.sole.length).padStart(6, '0')} ${sole} ${way.restIn ?? ''}`;
}
