// Rules of figures that are known by three points: least, likely, most.
import type { Fix } from '../grammar/problem.ts';
import type { Declaration } from '../records/file.ts';
import type { Whole } from '../records/statement.ts';
import type { Located } from '../resolve/located.ts';
import { family, type RuleEntry } from './rule.ts';

const rules = {
  'points-out-of-order': {
    severity: 'warning',
    title: 'Three points that are not in order',
    why: 'A figure with a spread is written least, likely, most: the comparison over the years and the range of hours are reckoned from them in that order.',
    fix: 'Writes them in order.',
  },
} as const satisfies Record<string, RuleEntry>;
type Found = Located & { readonly rule: keyof typeof rules };

export const threePointed = family(rules);

interface Point {
  readonly text: string;
}

/** No line of these has three points, and they are most of what there is to read. */
export const withoutPoints: ReadonlySet<Declaration['kind']> = new Set(['rig', 'model', 'history', 'fleet']);

/** Lives, shares, cycles, days and rates whose points go down somewhere. Rates count by how fast, efforts by how long. */
export function* pointsOutOfOrder(file: string, declarations: readonly Declaration[]): Iterable<Found> {
  for (const declaration of declarations) {
    if (withoutPoints.has(declaration.kind)) continue;
    for (const statement of declaration.statements as readonly Whole[]) {
      for (const field in statement.spans) {
        const at = statement.spans[field];
        const points = pointsOf((statement as unknown as Readonly<Record<string, unknown>>)[field]);
        if (!at || !points) continue;
        const sizes = points.map(sizeOf);
        if (sizes.some((size) => size === undefined) || isRising(sizes as number[])) continue;
        const better = `${statement.word === 'recoats' ? 'every ' : ''}${[...points]
          .sort((a, b) => (sizeOf(a) as number) - (sizeOf(b) as number))
          .map(({ text }) => text)
          .join(', ')}`;
        const fixes: Fix[] = [{ label: `Write \`${better}\``, at, text: better }];
        const message = `These are not in order: least, likely, most is \`${better}\`.`;
        yield { file, rule: 'points-out-of-order', at, message, fixes };
      }
    }
  }
}

function pointsOf(value: unknown): readonly Point[] | undefined {
  if (typeof value !== 'object' || value === null || !('least' in value) || !('likely' in value) || !('most' in value))
    return undefined;
  return [value.least, value.likely, value.most] as readonly Point[];
}

/** A number to order points of one kind by: days, percent, minutes, or how much is done in an hour. */
function sizeOf(point: Point): number | undefined {
  const figure = point as unknown as Readonly<Record<string, unknown>>;
  if (typeof figure.months === 'number' && typeof figure.days === 'number')
    return figure.months * 30.436875 + figure.days;
  const size = figure.percent ?? figure.nmPerH ?? figure.mm2PerH ?? figure.minutes;
  return typeof size === 'number' ? size : undefined;
}

const isRising = (sizes: readonly number[]) => sizes.every((size, i) => i === 0 || (sizes[i - 1] as number) <= size);
