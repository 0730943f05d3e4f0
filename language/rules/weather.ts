// Rules of weather: the air, the surface and the dew point while material is laid.
import { dewPoint } from '../measure/dew-point.ts';
import type { Located } from '../resolve/located.ts';
import { fahrenheit } from '../values/temperature.ts';
import { type Job, jobsOf, laidBy } from './jobs.ts';
import { family } from './rule.ts';

/** A surface is worked on at least this much above the dew point, in kelvins (5 F, rounded up in the metric rule). */
const margin = 5 / 1.8;

const rules = {
  'air-too-cold': {
    severity: 'warning',
    title: 'Laid in air that is too cold',
    why: 'Tape does not wet the surface and sealant does not cure in the cold. Look at the work again soon.',
    fix: 'None: what was done stays as it is recorded.',
    source: "the material's `apply`, else from memory; published frame for sealants 4 to 32 C (UFGS 07920, 08900)",
  },
  'air-too-hot': {
    severity: 'warning',
    title: 'Laid in air that is too hot',
    why: 'Sealant skins before it has levelled, tape stretches and creeps.',
    fix: 'None: what was done stays as it is recorded.',
    source: "the material's `apply`, else from memory",
  },
  'surface-too-hot': {
    severity: 'warning',
    title: 'Laid on a surface that is too hot',
    why: 'Roof skins are far hotter than the air: lay and gun before noon in summer.',
    fix: 'None: what was done stays as it is recorded.',
    source: "the material's `surface-up-to`, else from memory",
  },
  'too-near-dew-point': {
    severity: 'warning',
    title: 'Laid on a surface less than 5 F (3 C) above the dew point',
    why: 'Below that margin a film of water may stand on the surface that nobody sees.',
    fix: 'None: what was done stays as it is recorded.',
    source: 'published: ISO 8502-4 and specifications that cite it; dew point by Alduchov and Eskridge 1996',
  },
} as const;

type Found = Located & { readonly rule: keyof typeof rules };

export const weather = family(rules, function* (context): Iterable<Found> {
  const told = new Set<string>();
  for (const job of jobsOf(context)) {
    if (job.planned) continue;
    for (const found of ofJob(job)) {
      // One record of five seams has one weather.
      const key = `${found.file} ${found.at[0]} ${found.rule}`;
      if (told.has(key)) continue;
      told.add(key);
      yield found;
    }
  }
});

function* ofJob(job: Job): Iterable<Found> {
  const { air, surfaceTemperature: surface, humidity } = job.record;
  const here = { file: job.file, at: job.at, item: job.place.item };
  for (const { material } of laidBy(job)) {
    const range = material.apply?.value;
    if (air && range && air.celsius < range.low.celsius)
      yield {
        ...here,
        rule: 'air-too-cold',
        message: `The air was ${air.text}; ${material.name} is applied from ${range.low.text} to ${range.high.text}.`,
      };
    if (air && range && air.celsius > range.high.celsius)
      yield {
        ...here,
        rule: 'air-too-hot',
        message: `The air was ${air.text}; ${material.name} is applied from ${range.low.text} to ${range.high.text}.`,
      };
    const limit = material.surfaceUpTo?.value;
    if (surface && limit && surface.celsius > limit.celsius)
      yield {
        ...here,
        rule: 'surface-too-hot',
        message: `The surface was ${surface.text}; ${material.name} is applied up to ${limit.text}.`,
      };
  }
  if (!air || !surface || !humidity || humidity.percent <= 0 || humidity.percent > 100) return;
  const dew = dewPoint(air.celsius, humidity.percent);
  if (surface.celsius >= dew + margin - 1e-9) return;
  const shown = (celsius: number) =>
    air.text.endsWith('C') ? `${celsius.toFixed(0)} C` : `${fahrenheit(celsius).toFixed(0)} F`;
  yield {
    ...here,
    rule: 'too-near-dew-point',
    message: `At ${air.text} and ${humidity.text} humidity the dew point is ${shown(dew)}; the surface was ${surface.text}, and ${shown(dew + margin)} would have been the least.`,
  };
}
