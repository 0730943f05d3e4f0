// The ways over the years, as values: their figures come of distributions that no short formula gives.
import type { CompareResult, Comparison } from '../../lifecost/schema.ts';
import type { EstimatePaper } from '../papers.ts';
import { hoursFormat, moneyFormat, number, text } from './cells.ts';
import type { Row, Table } from './table.ts';

export function yearsSheet({ kind, comparisons }: EstimatePaper): Table {
  return {
    name: 'Over the years',
    title: 'The ways over the years',
    notes: [
      'Expected present values. The range runs from what is not exceeded with a chance of 10 % to what is not exceeded with a chance of 90 %. These figures do not follow changes in this workbook.',
    ],
    columns: [
      ...(kind === 'fleet' ? [{ key: 'rig', title: 'rig', width: 14 }] : []),
      { key: 'way', title: 'way', width: 60 },
      { key: 'expected', title: 'expected', width: 16, right: true },
      { key: 'low', title: 'range from', width: 16, right: true },
      { key: 'high', title: 'range to', width: 16, right: true },
      { key: 'days', title: 'days off', width: 10, right: true },
      { key: 'chance', title: 'chance to cost less', width: 22, right: true },
      { key: 'pays', title: 'pays', width: 20 },
    ],
    rows: comparisons.flatMap(({ rig, comparison }) => rowsOf(comparison).map((row) => ({ rig: text(rig), ...row }))),
    landscape: true,
  };
}

function rowsOf(comparison: CompareResult): readonly Row[] {
  if ('reason' in comparison) return [{ way: text(`Nothing is compared: ${comparison.reason}.`) }];
  const { ways, cheapest, currency } = comparison;
  const money = moneyFormat(currency);
  return [
    ...ways.map(({ key, name, expected, low, high, daysOff, cheaper, paysFrom }) => ({
      way: text(key === cheapest ? `${name} (expected to cost least)` : name, key === cheapest ? 'strong' : 'plain'),
      expected: number(expected.value, money),
      low: number(low.value, money),
      high: number(high.value, money),
      days: number(daysOff.value, hoursFormat),
      chance: text(cheaper?.text),
      pays: text(cheaper && (paysFrom?.text ?? 'not within these years')),
    })),
    ...sentences(comparison).map((sentence) => ({ way: text(sentence) })),
  ];
}

function sentences({
  horizon,
  interest,
  contest,
  inspections,
  left,
  missing,
  notTaped,
}: Comparison): readonly string[] {
  return [
    `Over ${horizon.text} (${horizon.rule}), at ${interest.text} real interest.`,
    ...(contest?.verdict ?? []),
    ...(inspections ? [`Inspections come to ${inspections.text} more, whichever way is taken.`] : []),
    ...left.map(({ way, reason }) => `Not compared: ${way}, for ${reason}.`),
    ...missing.map((one) => `Not whole: ${one}`),
    ...notTaped.map(({ item, reason }) => `No tape on ${item}: ${reason}.`),
  ];
}
