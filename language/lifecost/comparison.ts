// The ways to keep a rig's seams tight, compared over the years.
import type { Input } from '../explain.ts';
import { sumOf } from '../measure/figure.ts';
import type { RigView } from '../resolve/types.ts';
import { type RigState, rigState } from '../seams/index.ts';
import { rounded } from '../values/exact.ts';
import { assumptionsOf } from './assumptions.ts';
import { type Grounds, groundsOf } from './basis-of.ts';
import { breakEvenYear } from './breakeven.ts';
import { choicesOf, type WayChoice } from './choices.ts';
import { contestOf } from './contest.ts';
import { rowsOf } from './expected.ts';
import { frameOf } from './frame.ts';
import { horizonOf } from './horizon.ts';
import { notesOf } from './notes.ts';
import { money } from './printed.ts';
import type { CompareResult, Comparison, Reading, WayLine } from './schema.ts';
import type { Frame, Stream } from './streams.ts';
import { chanceCheaper, type Value, valued } from './value.ts';
import { costFormula, METHOD, presentFormula } from './working.ts';

/**
 * Every way to keep the seams of a rig tight that its records can price, over the years that it is kept: present values
 * at real interest (NIST Handbook 135, ASTM E917), lives and shares as distributions. The same figures on every run.
 */
export function comparisonOf(view: RigView, asOf: string, state: RigState = rigState(view, asOf)): CompareResult {
  const horizon = horizonOf(view, asOf);
  const grounds = groundsOf(view, state, horizon.value);
  if ('reason' in grounds) return grounds;
  const { basis, currency } = grounds;
  const frame = frameOf(basis);
  const choices = choicesOf(basis).map((choice) => ({ choice, value: valued(choice, frame) }));
  const rival = choices[0]!;
  const ways = choices.map(({ choice, value }): WayLine => {
    const line = wayLine(choice, value, frame, currency);
    return choice === rival.choice ? line : { ...line, ...against(value, rival.value, currency) };
  });
  const [cheapest] = [...choices].sort((a, b) => a.value.mean - b.value.mean);
  const contest = contestOf(grounds, ways);
  const { realInterest } = view.rig.policy;
  return {
    currency,
    horizon,
    interest: {
      value: basis.rate,
      unit: '',
      text: realInterest.value.text,
      rule: 'real interest a year',
      formula: 'percent / 100',
      inputs: [
        {
          name: 'percent',
          value: realInterest.value.percent,
          unit: '%',
          text: realInterest.value.text,
          origin: realInterest.origin,
        },
      ],
    },
    ways,
    cheapest: cheapest!.choice.key,
    ...(contest ? { contest } : {}),
    ...inspections(grounds, view),
    materials: [
      `${grounds.sealant.material.name}: ${grounds.sealant.because}.`,
      ...(grounds.tape ? [`${grounds.tape.material.name}: ${grounds.tape.because}.`] : []),
    ],
    notTaped: grounds.tape
      ? grounds.kept.flatMap(({ item, tape }) => (tape.ok ? [] : [{ item: item.name, reason: tape.why }]))
      : [],
    left: grounds.left,
    missing: grounds.missing,
    assumptions: assumptionsOf(view.rig.policy, grounds),
    notes: notesOf(grounds, horizon, view, asOf),
  };
}

function wayLine(choice: WayChoice, value: Value, frame: Frame, currency: string): WayLine {
  const courses = choice.streams.map((stream) => courseLine(stream, frame, currency));
  const { formula, inputs } = sumOf(
    courses.map(({ present }) => present),
    'course',
  );
  let spent = 0;
  const tolerance = value.tolerance === 0 ? '' : `; right within ${money(value.tolerance, currency)}`;
  const quantile = (amount: number, chance: string): Reading => ({
    value: amount,
    unit: currency,
    text: money(amount, currency),
    rule: `not exceeded with a chance of ${chance}, from the distribution of lives and shares${tolerance}`,
  });
  return {
    key: choice.key,
    name: choice.name,
    courses,
    expected: {
      value: courses.reduce((sum, { present }) => sum + present.value, 0),
      unit: currency,
      text: money(value.mean, currency),
      rule: 'all courses of work together, at present value',
      formula,
      inputs,
      source: METHOD,
    },
    low: quantile(value.low, '10 %'),
    median: quantile(value.median, '50 %'),
    high: quantile(value.high, '90 %'),
    daysOff: {
      value: value.days,
      unit: 'days',
      text: `${rounded(value.days, 1)} days`,
      rule: 'days off the road that are to be expected over the years',
    },
    spent: value.years.map(({ present }) => {
      spent += present;
      return Number(rounded(spent, 6));
    }),
  };
}

function courseLine(stream: Stream, frame: Frame, currency: string): WayLine['courses'][number] {
  const rows = rowsOf(stream, frame);
  const works = [...new Set(rows.map(({ work }) => work))].map((work) => {
    const number = rows.reduce((sum, row) => sum + (row.work === work ? row.number : 0), 0);
    const cost = costFormula(work, frame, currency);
    const said = stream.kind === 'yearly' ? 'shares of it over the years, added up' : 'expected times over the years';
    return {
      title: work.title,
      cost: { ...cost, unit: currency, text: money(cost.value, currency), rule: 'at today’s prices' },
      number: { value: number, unit: 'times', text: rounded(number, 2), rule: said },
    };
  });
  const present = presentFormula(stream, frame, currency);
  return {
    title: stream.title,
    works,
    present: {
      ...present,
      unit: currency,
      text: money(present.value, currency),
      rule: 'what each year is expected to cost, discounted',
      source: METHOD,
    },
  };
}

function against(value: Value, rival: Value, currency: string): Pick<WayLine, 'cheaper' | 'paysFrom'> {
  const chance = chanceCheaper(value, rival);
  const year = breakEvenYear(
    value.years.map(({ present }) => present),
    rival.years.map(({ present }) => present),
  );
  return {
    cheaper: {
      value: chance,
      unit: '',
      text: chanceText(chance),
      rule: `the chance to cost less than touching up, where each takes its own course; ties in ${currency} count half`,
    },
    ...(year === undefined
      ? {}
      : {
          paysFrom: {
            value: year,
            unit: 'years',
            text: year === 0 ? 'from the beginning' : `from year ${year}`,
            rule: 'the first year from which on less has been spent than on touching up',
          },
        }),
  };
}

/** Rounded, but never to a certainty that is none. */
function chanceText(chance: number): string {
  if (chance > 0 && chance < 0.005) return 'under 1 %';
  if (chance < 1 && chance >= 0.995) return 'over 99 %';
  return `${Math.round(chance * 100)} %`;
}

function inspections({ inspection, basis, currency }: Grounds, { rig }: RigView): Pick<Comparison, 'inspections'> {
  if (!inspection) return {};
  const { value: every, origin } = rig.policy.inspect;
  const months = every.months + (every.days * 12) / 365.2425;
  if (months === 0) return {};
  const once = inspection.material + inspection.labour;
  const inputs: Input[] = [
    { name: 'once', value: once, unit: currency, text: money(once, currency) },
    { name: 'months', value: months, unit: 'months', text: every.text, origin },
    {
      name: 'rate',
      value: basis.rate,
      text: rig.policy.realInterest.value.text,
      origin: rig.policy.realInterest.origin,
    },
  ];
  const terms = Array.from({ length: basis.years }, (_, i) => `1 / (1 + rate)^${i + 1}`);
  const factor = terms.reduce((sum, _, i) => sum + (1 + basis.rate) ** -(i + 1), 0);
  const worth = (once * 12 * factor) / months;
  return {
    inspections: {
      value: worth,
      unit: currency,
      text: money(worth, currency),
      rule: 'inspections over the years, at present value: the same whichever way is taken',
      formula: `once * 12 / months * (${terms.join(' + ')})`,
      inputs,
      source: METHOD,
    },
  };
}
