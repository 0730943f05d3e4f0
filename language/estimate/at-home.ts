// A cutting plan of several yards with as little sent between them as equal lengths allow. Equal pieces change their places, and
// equal lengths on hand their turns: the purchase, the leftovers and all that is proven of the plan stay as they are.
import type { CutPlan, StockCut } from '../cutting/index.ts';

export interface Homes {
  /** The place where each piece is laid, by its number in the plan. */
  readonly ofPiece: (piece: string) => string;
  /** The place where a length on hand lies, and how long it is. */
  readonly shelf: readonly { readonly place: string; readonly length: number }[];
}

/** The same plan, cut nearer to where its pieces are laid. */
export function cutAtHome(plan: CutPlan, homes: Homes): CutPlan {
  return { ...plan, cuts: swapped(turned(plan.cuts, homes), homes) };
}

/** Which of several equal lengths on hand is cut to what. */
function turned(cuts: readonly StockCut[], { ofPiece, shelf }: Homes): readonly StockCut[] {
  const free = new Map<number, number[]>();
  for (const [i, { length }] of shelf.entries()) free.set(length, [...(free.get(length) ?? []), i]);
  const atHome = ({ parts }: StockCut, i: number) =>
    parts.filter(({ piece }) => ofPiece(piece) === shelf[i]?.place).length;
  return cuts.map((cut) => {
    if (cut.stock.kind !== 'offcut') return cut;
    const alike = free.get(shelf[Number(cut.stock.id)]?.length ?? -1) ?? [];
    const best = alike.reduce((a, b) => (atHome(cut, b) > atHome(cut, a) ? b : a), alike[0] ?? Number(cut.stock.id));
    alike.splice(alike.indexOf(best), 1);
    return { ...cut, stock: { ...cut.stock, id: String(best) } };
  });
}

type Part = StockCut['parts'][number];

/** A piece that would be sent changes places with an equal one that is laid where the length lies. */
function swapped(cuts: readonly StockCut[], { ofPiece, shelf }: Homes): readonly StockCut[] {
  const placeOf = ({ stock }: StockCut) => (stock.kind === 'offcut' ? shelf[Number(stock.id)]?.place : undefined);
  const bins = cuts.map((cut) => ({ place: placeOf(cut), parts: [...cut.parts] }));
  const isWhole = ({ part }: Part) => part === undefined;
  // Whole pieces that are not cut where they are laid, by length and home.
  const away = new Map<string, { bin: (typeof bins)[number]; at: number }[]>();
  const key = (length: number, home: string) => `${length} ${home}`;
  for (const bin of bins) {
    for (const [at, part] of bin.parts.entries()) {
      const home = ofPiece(part.piece);
      if (!isWhole(part) || home === bin.place) continue;
      const k = key(part.length, home);
      away.set(k, [...(away.get(k) ?? []), { bin, at }]);
    }
  }
  for (const bin of bins) {
    const { place } = bin;
    if (place === undefined) continue;
    for (const [at, part] of bin.parts.entries()) {
      const home = ofPiece(part.piece);
      if (!isWhole(part) || home === place) continue;
      const others = away.get(key(part.length, place)) ?? [];
      const other = others.pop();
      if (!other) continue;
      const mine = away.get(key(part.length, home)) ?? [];
      mine.splice(
        mine.findIndex((one) => one.bin === bin && one.at === at),
        1,
      );
      bin.parts[at] = other.bin.parts[other.at] as Part;
      other.bin.parts[other.at] = part;
      if (other.bin.place !== home) mine.push(other);
    }
  }
  const inOrder = (a: Part, b: Part) => Number(a.piece) - Number(b.piece);
  return cuts.map((cut, i) => ({ ...cut, parts: (bins[i]?.parts ?? []).sort(inOrder) }));
}
