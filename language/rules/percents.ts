// Rules of percentages: what they may be where something is reckoned from them.
import type { Declaration } from '../records/file.ts';
import type { Whole } from '../records/statement.ts';
import type { Located } from '../resolve/located.ts';
import { family, type RuleEntry } from './rule.ts';

const rules = {
  'percent-out-of-range': {
    severity: 'error',
    title: 'A percentage that cannot be',
    why: 'A share of the seams and a chance lie between 0 % and 100 %, and real interest above -100 %: nothing can be reckoned from anything else. Interest is above inflation, so a little below 0 % is possible.',
    fix: 'None: only you know what was meant.',
  },
} as const satisfies Record<string, RuleEntry>;
type Found = Located & { readonly rule: keyof typeof rules };

export const percents = family(rules);

/** Shares, chances and interest of policies that lie outside of what they can be. */
export function* percentsOutOfRange(file: string, declarations: readonly Declaration[]): Iterable<Found> {
  for (const declaration of declarations) {
    for (const statement of declaration.statements as readonly Whole[]) {
      const found = outside(statement as unknown as Readonly<Record<string, unknown>> & { readonly word: string });
      const at = found && statement.spans[found.field];
      if (at) yield { file, rule: 'percent-out-of-range', at, message: found.message };
    }
  }
}

interface Outside {
  readonly field: string;
  readonly message: string;
}

function outside({ word, percent, share, chance }: Readonly<Record<string, unknown>>): Outside | undefined {
  if (word === 'real-interest' && percentIn(percent).some((value) => value <= -100))
    return { field: 'percent', message: 'Real interest lies above -100 %.' };
  if (word === 'touch-ups' && percentIn(share).some(isNoShare))
    return { field: 'share', message: 'A share of the seams lies between 0 % and 100 %.' };
  if (word === 'missed-leak' && percentIn(chance).some(isNoShare))
    return { field: 'chance', message: 'A chance in a year lies between 0 % and 100 %.' };
  return undefined;
}

const isNoShare = (percent: number) => percent < 0 || percent > 100;

/** The numbers of a percentage, or of three points of one. */
function percentIn(value: unknown): readonly number[] {
  if (typeof value !== 'object' || value === null) return [];
  if ('percent' in value && typeof value.percent === 'number') return [value.percent];
  return Object.values(value).flatMap(percentIn);
}
