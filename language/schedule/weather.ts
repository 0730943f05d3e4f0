// What weather does to the days of a site: working days kept free for those that it takes, months in which a material cannot be
// applied, mornings.
import type { Fleet, Material, Policy, Rig } from '../resolve/types.ts';
import { type Month, months } from '../statements/words.ts';
import { addDays, daysInMonth } from '../values/calendar.ts';
import { inSeason } from '../values/season.ts';

/** The weather of a site: as its yard writes it, else the policy of the rig, else that of its fleet. */
export interface Weather {
  readonly slack: Policy['slack'];
  readonly normals: Policy['normals'];
  readonly beforeNoon: Policy['beforeNoon'];
}

export function weatherOf({ policy }: Pick<Rig, 'policy'>, fleet?: Fleet): Weather {
  const site = fleet?.yard?.climate;
  return {
    slack: { ...fleet?.policy.slack, ...policy.slack, ...site?.slack },
    normals: { ...fleet?.policy.normals, ...policy.normals, ...site?.normals },
    beforeNoon: site?.beforeNoon ?? policy.beforeNoon,
  };
}

const layingTasks: ReadonlySet<string> = new Set(['prime', 'lay', 'frame', 'press', 'gun', 'gun-around', 'coat']);

/** What is spoilt by a hot roof. */
export function isHeatSensitive(task: string): boolean {
  return layingTasks.has(task);
}

function monthOf(day: string): Month {
  return months[Number(day.slice(5, 7)) - 1] as Month;
}

/** The first day of the month after that of a day. */
function nextMonth(day: string): string {
  const month = day.slice(0, 7);
  return addDays(`${month}-01`, daysInMonth(month));
}

/**
 * The working days of a month (`2027-04`) that are kept free: spread evenly, so that one follows each stretch of work in which
 * as much is likely to be lost. Of 20 days, 30 % are the 4th, 7th, 10th, 14th, 17th and 20th.
 */
export function keptFree(month: string, percent: number, isWorkday: (day: string) => boolean): ReadonlySet<string> {
  const out = new Set<string>();
  let count = 0;
  for (let i = 0; i < daysInMonth(month); i++) {
    const day = addDays(`${month}-01`, i);
    if (!isWorkday(day)) continue;
    count++;
    // Whole per cents, so that 30 % of 10 days are 3 and not 2.99.
    if (Math.floor((count * percent) / 100) > Math.floor(((count - 1) * percent) / 100)) out.add(day);
  }
  return out;
}

/** The share of a month that is kept free, as written. */
export function slackOn(
  day: string,
  { slack }: Weather,
): { readonly percent: number; readonly text: string } | undefined {
  return slack[monthOf(day)]?.value;
}

/**
 * Why a material cannot be laid outdoors in the month of a day, going by the normal low and high of its days, and the first day
 * of the next month. A month of which no normals are written forbids nothing.
 */
export function tooColdOrHot(
  day: string,
  materials: readonly Material[],
  { normals }: Weather,
): { readonly because: string; readonly next: string } | undefined {
  const month = monthOf(day);
  const air = normals[month]?.value;
  if (!air) return undefined;
  const say = (because: string) => ({ because, next: nextMonth(day) });
  for (const { name, apply, surfaceUpTo } of materials) {
    const from = apply?.value.low;
    const to = apply?.value.high;
    if (from && air.high.celsius < from.celsius)
      return say(`${name} is applied from ${from.text}, and the normal high of ${month} is ${air.high.text}`);
    if (to && air.low.celsius > to.celsius)
      return say(`${name} is applied up to ${to.text}, and the normal low of ${month} is ${air.low.text}`);
    const surface = surfaceUpTo?.value;
    // A roof is never cooler for long than the coolest air of the day.
    if (surface && air.low.celsius > surface.celsius)
      return say(`${name} goes on surfaces up to ${surface.text}, and the normal low of ${month} is ${air.low.text}`);
  }
  return undefined;
}

/** Why tape is laid and sealant gunned before noon on a day; undefined where it may be done at any time. */
export function morningOnly(day: string, materials: readonly Material[], weather: Weather): string | undefined {
  const { value } = weather.beforeNoon;
  const month = monthOf(day);
  const high = weather.normals[month]?.value.high;
  if ('from' in value) {
    if (inSeason(day, value)) return `lay and gun before noon: roofs are too hot after it from ${value.text}`;
  } else if (high && high.celsius > value.celsius)
    return `lay and gun before noon: the normal high of ${month} is ${high.text}, above ${value.text}`;
  for (const { name, apply } of materials) {
    const to = apply?.value.high;
    if (to && high && high.celsius > to.celsius)
      return `lay and gun before noon: ${name} is applied up to ${to.text}, and the normal high of ${month} is ${high.text}`;
  }
  return undefined;
}
