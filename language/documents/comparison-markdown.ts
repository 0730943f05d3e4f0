// The comparison of the ways over the years, as Markdown.
import type { CompareResult, Comparison, InputBar, WayLine } from '../lifecost/schema.ts';
import { bullets, left, paragraphs, plain, right, table } from './markdown.ts';

/**
 * What stands under the heading: a table of the ways, what decides, what it rests on. `chart`: the file beside it that shows
 * the ways as lines.
 */
export function comparisonMarkdown(comparison: CompareResult, chart?: string): string {
  if ('reason' in comparison) return `Nothing is compared: ${plain(comparison.reason)}.`;
  const { horizon, interest, contest, inspections, notes, materials, missing, left: leftOut, notTaped } = comparison;
  return paragraphs(
    `Over ${horizon.text} (${horizon.rule}), at ${interest.text} real interest. Expected present values; a range runs from what is not exceeded with a chance of 10 % to what is not exceeded with a chance of 90 %.`,
    wayTable(comparison),
    chart && `![What each way costs over the years](${encodeURIComponent(chart)})`,
    contest && bullets(contest.verdict.map(plain)),
    ...(contest && contest.bars.length > 0
      ? [
          'What becomes of the difference to touching up where one thing is otherwise; less than nothing is for tape:',
          barTable(contest.bars),
        ]
      : []),
    inspections && `Inspections come to ${inspections.text} more, whichever way is taken.`,
    bullets([
      ...leftOut.map(({ way, reason }) => `Not compared: ${plain(way)}, for ${plain(reason)}.`),
      ...missing.map((text) => `Not whole: ${plain(text)}`),
      ...notTaped.map(({ item, reason }) => `No tape on ${plain(item)}: ${plain(reason)}.`),
      ...materials.map(plain),
      ...notes.map(plain),
    ]),
  ).trimEnd();
}

function wayTable({ ways, cheapest }: Comparison): string {
  const name = ({ key, name: text }: WayLine) => (key === cheapest ? `**${plain(text)}**` : plain(text));
  return table(
    [left('way'), right('expected'), right('range'), right('days off'), right('chance to cost less'), left('pays')],
    ways.map((way) => [
      name(way),
      way.expected.text,
      `${way.low.text} to ${way.high.text}`,
      way.daysOff.text,
      way.cheaper?.text ?? '',
      way.cheaper === undefined ? '' : (way.paysFrom?.text ?? 'not within these years'),
    ]),
  );
}

/** What the difference to touching up becomes at the ends of each input; less than nothing is for tape. */
function barTable(bars: readonly InputBar[]): string {
  return table(
    [left('what if'), right('less'), right('more'), left('turns it')],
    bars.map((bar) => [
      bar.input,
      `${bar.low}: ${bar.atLow.text}`,
      `${bar.high}: ${bar.atHigh.text}`,
      bar.decides ? 'yes' : '',
    ]),
  );
}
