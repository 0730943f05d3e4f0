// Seeded fleets of any size over a season: findings, plans, bookings, a crew and two bays.
import { projectOf } from '../project/workspace.ts';
import { materials, rig } from './yard.ts';

/** A stream of numbers from 0 to 1 (mulberry32). */
export function stream(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** What a fleet is written from, so that a test can change one thing of it. */
export interface ManyRigs {
  readonly people: number;
  readonly rigs: readonly { readonly name: string; readonly lines: readonly string[] }[];
  readonly booked: readonly string[];
  readonly policy: readonly string[];
}

const day = (n: number) => new Date(Date.UTC(2027, 0, 1 + n)).toISOString().slice(0, 10);

/** Rigs with one to four plans each, some of them pressing; booked five to seven times for a week or two each. */
export function manyRigs(count: number, seed: number): ManyRigs {
  const next = stream(seed);
  const pick = <T>(all: readonly T[]): T => all[Math.floor(next() * all.length)] as T;
  const booked: string[] = [];
  const rigs = Array.from({ length: count }, (_, i) => {
    const name = `R${`${i + 1}`.padStart(3, '0')}`;
    for (let at = 95 + Math.floor(next() * 25); at < 290; ) {
      const long = 4 + Math.floor(next() * 10);
      booked.push(`booked ${name} ${day(at)} to ${day(at + long)}`);
      at += long + 2 + Math.floor(next() * 18);
    }
    const word = pick(['sound', 'sound', 'hairline', 'hairline', 'cracked', 'cracked', 'lifting', 'open']);
    const item = pick(['vent', 'skylight', 'front', 'rear']);
    const found =
      word === 'sound'
        ? []
        : [`inspected 2027-03-${10 + Math.floor(next() * 20)} {\n ${item} ${word}\n rest sound\n }`];
    const repair = word === 'sound' ? [] : [`strip ${item}`, `seal ${item} with Lap`];
    const others = [
      'inspect',
      'tape edges with Strip',
      'tape rear with Strip',
      'wash',
      'strip openings\n seal openings with Lap',
    ];
    const more = others.filter(() => next() < 0.3);
    return { name, lines: [...found, ...repair, ...more] };
  });
  return { people: count < 10 ? 2 : count < 100 ? 4 : 12, rigs, booked, policy: [] };
}

export function textOf({ people, rigs, booked, policy }: ManyRigs): string {
  const own = `policy Hire like Home {\n${policy.map((line) => ` ${line}\n`).join('')}}\n`;
  const texts = rigs.map(({ name, lines }) => rig(name, lines.join('\n '), 'Hire'));
  const fleet = [
    ' rigs "a.rig"',
    ` crew ${people} for 8 h each on mon to fri`,
    ' bay Shed indoor 40 ft',
    ' bay Barn indoor 40 ft',
    ...booked.map((line) => ` ${line}`),
  ];
  return `${materials}${own}${texts.join('')}fleet Yard under Hire {\n${fleet.join('\n')}\n}\n`;
}

/** The fleet with its rigs as the computation sees them. */
export function fleetFrom(many: ManyRigs) {
  const [found] = projectOf({ 'a.rig': textOf(many) }).fleets('a.rig');
  if (!found) throw new Error('no fleet');
  return found;
}
