// Columns that people made where the language lays down none: kept, and mended, where lines of a run already stand in them.
import type { IToken } from 'chevrotain';
import { type Cell, headWidth, ownPieces, runColumn } from './cells.ts';
import type { Line, Piece } from './written.ts';

interface Seen {
  lines: number;
  /** Somebody put more than one blank before it. */
  wide: boolean;
}

/**
 * The cells of a run in which at least two lines have the same word or kind of value at the same place, set off by two
 * blanks. A line whose words come in another order has the cells that fit.
 */
export function keptCells(text: string, run: readonly Line[]): readonly (readonly Cell[])[] {
  const statement = run[0]?.pieces[0]?.statement;
  if (!statement || run.length < 2) return run.map(() => []);
  const keyed = run.map((line) => keysOf(line));
  const seen = new Map<string, Map<number, Seen>>();
  for (const [n, keys] of keyed.entries()) {
    const { pieces } = run[n] as Line;
    for (const [i, key] of keys.entries()) {
      if (key === undefined) continue;
      const { startOffset, startColumn } = (pieces[i] as Piece).token;
      const before = (pieces[i - 1] as Piece).token;
      const wide = startOffset - (before.endOffset as number) > 2 || text[startOffset - 1] === '\t';
      const places = seen.get(key) ?? new Map<number, Seen>();
      const place = places.get(startColumn as number) ?? { lines: 0, wide: false };
      places.set(startColumn as number, { lines: place.lines + 1, wide: place.wide || wide });
      seen.set(key, places);
    }
  }
  const columns: (readonly [key: string, at: number])[] = [];
  for (const [key, places] of seen) {
    const kept = [...places].filter(([, place]) => place.lines > 1 && place.wide).map(([at]) => at);
    if (kept.length > 0) columns.push([key, kept.reduce((least, at) => Math.min(least, at))]);
  }
  if (columns.length === 0) return run.map(() => []);
  columns.sort((a, b) => a[1] - b[1]);
  const orders = new Map(columns.map(([key], order) => [key, order]));
  const width = headWidth(statement);
  return keyed.map((keys, n) => {
    const cells: Cell[] = [];
    const line = (run[n] as Line).pieces;
    for (const [piece, key] of keys.entries()) {
      const order = key === undefined ? undefined : orders.get(key);
      if (order === undefined || order <= (cells.at(-1)?.order ?? -1)) continue;
      const isClause = (line[piece] as Piece).token.tokenType.name === 'CLAUSE';
      cells.push({ piece, order, column: runColumn(width, isClause ? 2 : 1) });
    }
    return cells;
  });
}

/** What each piece that may begin a column is among those of its line: a clause by its word, a value by its kind, each by its number. */
function keysOf(line: Line): (string | undefined)[] {
  const counts = new Map<string, number>();
  const own = ownPieces(line);
  return own.map(({ token }, i) => {
    const kind = kindOf(token);
    const count = counts.get(kind) ?? 0;
    counts.set(kind, count + 1);
    // The statement word and its first value have their places.
    return i > 1 && isApart(token, (own[i - 1] as Piece).token) ? `${kind} ${count}` : undefined;
  });
}

/** Neither the next one of a list, nor the value of a clause, nor within a quantity. */
function isApart(token: IToken, before: IToken): boolean {
  if (token.tokenType.name === 'CLAUSE') return true;
  return ![token, before].some(({ tokenType }) => within.has(tokenType.name)) && before.tokenType.name !== 'CLAUSE';
}
const within = new Set([',', 'UNIT', 'PER']);

function kindOf({ tokenType, image }: IToken): string {
  if (tokenType.name === 'CLAUSE') return image;
  return tokenType.name === 'FRACTION' ? 'NUMBER' : tokenType.name;
}
