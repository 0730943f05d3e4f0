// Tape against touching up: what the difference hangs on.
import type { Basis, Taping } from './basis.ts';
import type { Grounds } from './basis-of.ts';
import { leastLasting } from './breakeven.ts';
import { choicesOf } from './choices.ts';
import { presentValue } from './expected.ts';
import { frameOf } from './frame.ts';
import { money } from './printed.ts';
import type { Contest, InputBar, WayLine } from './schema.ts';
import { certain, type ThreePoint } from './threepoint.ts';
import { type Spread, tornado } from './tornado.ts';

/** Prices, wages and day rates are varied by a quarter either way; lives and shares from their least to their most. */
const QUARTER = 0.25;
/** Lives and years are searched up to here, or to the horizon where that is farther. */
const MOST_YEARS = 40;
const mostYears = ({ years }: Basis) => Math.max(MOST_YEARS, years);

type Way = 'tape' | 'tape-edges';

/** The way with tape that is expected to cost least, against touching up. Undefined where no seam is taped. */
export function contestOf({ basis, currency }: Grounds, ways: readonly WayLine[]): Contest | undefined {
  const rival = ways.find(({ key }) => key === 'touch-up');
  const [way] = ways
    .filter(({ key }) => key === 'tape' || key === 'tape-edges')
    .sort((a, b) => a.expected.value - b.expected.value);
  if (!way || !rival) return undefined;
  const key = way.key as Way;
  const value = way.expected.value - rival.expected.value;
  const taping = (key === 'tape' ? basis.tape : basis.tapeEdges) as Taping;
  const life = leastLasting((years) => difference(withLife(basis, key, certain(years)), key) <= 0, 1, mostYears(basis));
  const kept = leastLasting((years) => difference({ ...basis, years }, key) <= 0, 1, mostYears(basis));
  const { bars } = tornado(spreads(basis, taping), (values) => difference(changed(basis, key, values), key));
  const contest: Omit<Contest, 'verdict'> = {
    way: way.key,
    rival: rival.key,
    difference: {
      value,
      unit: currency,
      text: money(value, currency),
      rule: 'expected present value of the one less that of the other; below 0 tape is the cheaper one',
      formula: 'way - rival',
      inputs: [
        { name: 'way', value: way.expected.value, unit: currency, text: way.expected.text },
        { name: 'rival', value: rival.expected.value, unit: currency, text: rival.expected.text },
      ],
    },
    ...(life === undefined
      ? {}
      : {
          leastLife: yearsRead(
            life,
            `the least life of tape at which it costs no more over ${yearsText(basis.years)}, if it lasted just as long every time`,
          ),
        }),
    ...(kept === undefined
      ? {}
      : { leastYears: yearsRead(kept, 'how long the rig must be kept for tape to cost no more, all else as it is') }),
    bars: bars
      .filter(({ swing }) => swing > 0)
      .map(({ name, input, atLow, atHigh, decides }): InputBar => {
        const { title, print } = inputs[name];
        const end = (value: number) => ({
          value,
          unit: currency,
          text: money(value, currency),
          rule: `the difference with ${title} at that end, all else as it is`,
        });
        return {
          input: title,
          low: print(input.low, currency),
          high: print(input.high, currency),
          atLow: end(atLow),
          atHigh: end(atHigh),
          decides,
        };
      }),
  };
  return { ...contest, verdict: verdictOf(contest, way, basis, currency) };
}

const yearsText = (value: number) => (value === 1 ? '1 year' : `${value} years`);

function yearsRead(value: number, rule: string) {
  return { value, unit: 'years', text: yearsText(value), rule };
}

function difference(basis: Basis, key: Way): number {
  const frame = frameOf(basis);
  const worth = (wanted: string) => {
    const choice = choicesOf(basis).find((each) => each.key === wanted);
    return choice?.streams.reduce((sum, stream) => sum + presentValue(stream, frame), 0) ?? Number.NaN;
  };
  return worth(key) - worth('touch-up');
}

type InputName = 'life' | 'share' | 'day' | 'labour' | 'tape' | 'sealant' | 'rate' | 'years';

const inputs: Readonly<
  Record<InputName, { readonly title: string; readonly print: (value: number, currency: string) => string }>
> = {
  life: { title: 'how long tape lasts', print: (v) => yearsText(Number(v.toFixed(1))) },
  share: {
    title: 'the share of the seams that is touched up in a year',
    print: (v) => `${Number((v * 100).toFixed(1))} %`,
  },
  day: { title: 'a day off the road', print: money },
  labour: { title: 'the price of work', print: (v) => `${Math.round(v * 100)} %` },
  tape: { title: 'the price of what taping takes', print: (v) => `${Math.round(v * 100)} %` },
  sealant: { title: 'the price of what sealing takes', print: (v) => `${Math.round(v * 100)} %` },
  rate: { title: 'real interest', print: (v) => `${Number((v * 100).toFixed(2))} %` },
  years: { title: 'how long the rig is kept', print: yearsText },
};

function spreads(basis: Basis, { lives }: Taping): Readonly<Record<InputName, Spread>> {
  const longest = [...lives].sort((a, b) => b.share - a.share)[0]!.life;
  const quarter = (base: number): Spread => ({ low: base * (1 - QUARTER), base, high: base * (1 + QUARTER) });
  const points = ({ least, likely, most }: ThreePoint): Spread => ({ low: least, base: likely, high: most });
  return {
    life: points(longest),
    share: points(basis.touchUp),
    day: quarter(basis.dayRate),
    labour: quarter(1),
    tape: quarter(1),
    sealant: quarter(1),
    rate: { low: 0, base: basis.rate, high: basis.rate * 2 },
    years: {
      low: Math.max(1, Math.round(basis.years / 2)),
      base: basis.years,
      high: Math.max(basis.years, Math.min(MOST_YEARS, basis.years * 2)),
    },
  };
}

/** The basis with one or more inputs at other values; what is at its base stays the distribution that it is. */
function changed(basis: Basis, key: Way, values: Readonly<Record<InputName, number>>): Basis {
  const of = spreads(basis, (key === 'tape' ? basis.tape : basis.tapeEdges) as Taping);
  const at = (name: InputName) => (values[name] === of[name].base ? undefined : values[name]);
  const [life, share] = [at('life'), at('share')];
  const priced = withPrices(basis, values);
  const lasting = life === undefined ? priced : withLife(priced, key, certain(life));
  return {
    ...lasting,
    years: values.years,
    rate: values.rate,
    dayRate: values.day,
    ...(share === undefined ? {} : { touchUp: certain(share) }),
  };
}

function withPrices(basis: Basis, { labour, tape, sealant }: Readonly<Record<InputName, number>>): Basis {
  const scaled = <T extends { material: number; labour: number; setUp: number }>(cost: T, material: number): T => ({
    ...cost,
    material: cost.material * material,
    labour: cost.labour * labour,
    setUp: cost.setUp * labour,
  });
  const taping = (one: Taping): Taping => ({
    ...one,
    first: scaled(one.first, tape),
    renewal: scaled(one.renewal, tape),
    ...(one.now ? { now: scaled(one.now, sealant) } : {}),
  });
  return {
    ...basis,
    recoat: scaled(basis.recoat, sealant),
    strip: scaled(basis.strip, sealant),
    ...(basis.now ? { now: scaled(basis.now, sealant) } : {}),
    ...(basis.tape ? { tape: taping(basis.tape) } : {}),
    ...(basis.tapeEdges ? { tapeEdges: taping(basis.tapeEdges) } : {}),
  };
}

function withLife(basis: Basis, key: Way, life: ThreePoint): Basis {
  const field = key === 'tape' ? 'tape' : 'tapeEdges';
  const taping = basis[field] as Taping;
  return { ...basis, [field]: { ...taping, lives: [{ share: 1, life }] } };
}

function verdictOf(
  { difference: { value }, leastLife, leastYears, bars }: Omit<Contest, 'verdict'>,
  way: WayLine,
  basis: Basis,
  currency: string,
): readonly string[] {
  const [name, chance] = [`${way.name.charAt(0).toUpperCase()}${way.name.slice(1)},`, way.cheaper?.text];
  const apart = `${money(Math.abs(value), currency)} ${value <= 0 ? 'less' : 'more'} than touching up over ${yearsText(basis.years)}`;
  const deciding = bars.filter(({ decides }) => decides).map(({ input }) => input);
  const [widest] = bars;
  return [
    value <= 0
      ? `${name} is expected to cost ${apart}; the chance that it turns out cheaper is ${chance}.`
      : `${name} is expected to cost ${apart}; the chance that it turns out cheaper all the same is ${chance}.`,
    leastLife === undefined
      ? `However long tape lasts, it does not pay over ${yearsText(basis.years)}.`
      : `Tape pays if it lasts ${leastLife.text} or more.`,
    leastYears === undefined
      ? `With the life that is written for tape it does not pay within ${mostYears(basis)} years.`
      : `With the life that is written for tape it pays where the rig is kept for ${leastYears.text} or more.`,
    ...(widest ? [`What moves the difference most is ${widest.input}.`] : []),
    deciding.length > 0
      ? `Each of these alone could turn it: ${deciding.join('; ')}.`
      : 'None of the inputs alone turns it within its range.',
  ];
}
