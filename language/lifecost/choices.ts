// The ways to keep the seams tight as streams of work over the years.
import type { OffRoad, Way } from '../statements/words.ts';
import type { Basis, Coated, Cost, Quoted, Taping } from './basis.ts';
import { atEndOf, once, preceded, renewed, yearlyChance } from './courses.ts';
import { fixedLife, yearlyLife } from './servicelife.ts';
import type { Choice, Renewals, Step, Stream, Work } from './streams.ts';
import { meanOf } from './threepoint.ts';

/** A way with its streams. `key` tells several quotes of shops apart. */
export interface WayChoice extends Choice {
  readonly key: string;
  readonly way: Way;
}

/** Every way that the basis can be counted for; `touch-up`, the fair rival of all others, comes first. */
export function choicesOf(basis: Basis): readonly WayChoice[] {
  const { tape, tapeEdges, quotes } = basis;
  const choice = (way: Way, name: string, streams: readonly Stream[], key: string = way): WayChoice => ({
    key,
    way,
    name,
    streams: [...streams, ...newRoof(basis, way), ...missedLeak(basis, way)],
  });
  return [
    choice('touch-up', 'inspecting, and touching up what needs it', [
      ...today(basis, basis.now),
      ...touchUps(basis, { share: 1, seams: basis.seams, coats: basis.coats }),
    ]),
    choice('recoat', 'sealing everything again by the calendar', [recoats(basis)]),
    ...(tape ? [choice('tape', 'taping what can be taped, touching up the rest', taped(basis, tape))] : []),
    ...(tapeEdges
      ? [choice('tape-edges', 'taping the side edges, touching up the rest', taped(basis, tapeEdges))]
      : []),
    ...quotes.map((quote, i) => {
      const way = quote.job === 'reroof' ? 'reroof' : 'shop';
      return choice(way, `${jobs[quote.job]} by ${quote.from}`, quoted(basis, quote), `${way}-${i + 1}`);
    }),
  ];
}

/** A new roof when the membrane ends, whichever way its seams are kept; where it is laid now, it outlasts the comparison. */
function newRoof({ membrane, days }: Basis, way: Way): readonly Stream[] {
  if (!membrane || way === 'reroof') return [];
  const laying: Work = { title: 'a new roof', material: membrane.price, labour: 0, days: meanOf(days.reroof) };
  return [atEndOf('a new roof at the end of the membrane', yearlyLife(membrane.left), laying)];
}

const jobs: Readonly<Record<Quoted['job'], string>> = {
  recoat: 'everything sealed again',
  tape: 'everything taped',
  strip: 'everything stripped and sealed',
  reseal: 'everything stripped and sealed',
  reroof: 'a new roof',
};

const off = ({ days }: Basis, what: OffRoad) => meanOf(days[what]);

function work(title: string, { material, labour }: Cost, days: number): Work {
  return { title, material, labour, days };
}

/** What the findings of today ask for, as a visit of touching up, whether something is stripped for it or not. */
function today(basis: Basis, now: Cost | undefined): readonly Stream[] {
  if (now === undefined) return [];
  return [once('now', work('what the findings ask for now', now, off(basis, 'touch-up')), 0)];
}

/** The same on the visit that tapes the other seams: set up once, and off the road no longer than the longer of the two. */
function todayBeside(basis: Basis, now: Cost | undefined): readonly Stream[] {
  if (now === undefined) return [];
  const days = Math.max(0, off(basis, 'touch-up') - off(basis, 'tape'));
  return [once('now', work('what the findings ask for now', { ...now, labour: now.labour - now.setUp }, days), 0)];
}

/**
 * How much of what is touched up has its last coat on, on average over the years in which that is done. Each year its mean
 * share of every seam gets a coat; at the limit it is stripped, and the count begins again at one.
 */
function fullOnAverage({ limit, touchUp, years }: Basis, coats: readonly Coated[]): number {
  const share = meanOf(touchUp);
  // By the number of coats, from none to the limit; what is bad is stripped today.
  let lying = new Array<number>(limit + 1).fill(0);
  for (const { share: part, coats: on, bad } of coats) lying[bad ? Math.min(1, limit) : Math.min(on, limit)]! += part;
  let full = 0;
  const visits = Math.max(1, years - 1);
  for (let year = 1; year <= visits; year++) {
    full += lying[limit]! / visits;
    const touched = lying.map((part) => part * share);
    lying = lying.map((part, on) => part - touched[on]! + (on > 0 ? touched[on - 1]! : 0));
    lying[1]! += touched[limit]!;
  }
  // Shares that make the whole may miss it by a rounding.
  return Math.min(1, full);
}

/** Seams that are touched up: their share of the length of all, their number, and what lies on them. */
type Touched = Taping['rest'];

/**
 * Touching up a part of the seams: each year its share of the sealing, of what has its last coat on with stripping, and a
 * visit in the years in which at least one seam needs it (each with the chance of its share, one apart from the other).
 */
function touchUps(basis: Basis, { share: part, seams, coats }: Touched): readonly Stream[] {
  if (seams === 0 || part === 0) return [];
  const { recoat, strip, touchUp } = basis;
  const full = fullOnAverage(basis, coats);
  const blend = (of: (cost: Cost) => number) => part * (of(recoat) * (1 - full) + of(strip) * full);
  const sealing: Work = {
    title: 'touching up',
    material: blend((cost) => cost.material),
    labour: blend((cost) => cost.labour - cost.setUp),
    days: 0,
  };
  const visit: Work = { title: 'a visit for it', material: 0, labour: recoat.setUp, days: off(basis, 'touch-up') };
  const through = basis.years - 1;
  return [
    { kind: 'yearly', title: 'touching up', work: sealing, share: touchUp, drawn: 'once', through },
    { ...yearlyChance('visits', visit, 1 - (1 - meanOf(touchUp)) ** seams, through), through },
  ];
}

/** Sealing everything now and at the end of each cycle; what has its last coat on, or is bad now, is stripped first. */
function recoats(basis: Basis): Renewals {
  const { limit, recoat, strip, coats } = basis;
  const life = yearlyLife(basis.recoatEvery);
  const works = new Map<number, Work>();
  const step = (share: number): Step => {
    const known = works.get(share);
    if (known) return { life, work: known };
    const mix = (of: (cost: Cost) => number) => of(recoat) * (1 - share) + of(strip) * share;
    const made: Work = {
      title: share === 0 ? 'sealing' : share === 1 ? 'stripping and sealing' : 'sealing, stripping the last coats',
      material: mix((cost) => cost.material),
      labour: mix((cost) => cost.labour),
      days: off(basis, 'recoat') * (1 - share) + off(basis, 'strip') * share,
    };
    works.set(share, made);
    return { life, work: made };
  };
  // Each visit adds a coat, or begins at one where the last is reached: after `limit` of them all is as it was.
  const steps: Step[] = [];
  let now = coats;
  for (let visit = 0; visit < 2 * limit; visit++) {
    const stripped = ({ coats: on, bad }: Basis['coats'][number]) => bad || on >= limit;
    const share = now.reduce((sum, each) => sum + (stripped(each) ? each.share : 0), 0);
    // Shares that make the whole may miss it by a rounding.
    steps.push(step(Number(share.toFixed(9))));
    now = now.map((each) => ({ share: each.share, coats: stripped(each) ? 1 : each.coats + 1, bad: false }));
  }
  return { kind: 'renewals', title: 'sealing', lead: steps.slice(0, limit), cycle: steps.slice(limit) };
}

/** Taping now, and anew at the end of the tape's life; what is not taped is touched up. */
function taped(basis: Basis, { first, renewal, lives, now, rest }: Taping): readonly Stream[] {
  const part = (cost: Cost, share: number) => ({
    ...cost,
    material: cost.material * share,
    labour: cost.labour * share,
  });
  const streams = lives.map(({ share, life }) => {
    const lasting = yearlyLife(life);
    const days = off(basis, 'tape') * share;
    return renewed(
      'tape',
      { work: work('taping', part(first, share), days), life: lasting },
      { work: work('new tape for old', part(renewal, share), days), life: lasting },
    );
  });
  return [...streams, ...todayBeside(basis, now), ...touchUps(basis, rest)];
}

/** A shop's work now; what it leaves is kept by touching up, or by renewing its tape. */
function quoted(basis: Basis, { price, job, from }: Quoted): readonly Stream[] {
  const days = off(basis, job === 'reroof' ? 'reroof' : 'shop');
  const bought = work(`the work of ${from}`, { material: price, labour: 0, setUp: 0 }, days);
  if (job === 'tape' && basis.tape) {
    const [longest] = [...basis.tape.lives].sort((a, b) => b.share - a.share);
    const [own] = taped(basis, { ...basis.tape, lives: [{ share: 1, life: longest!.life }] }) as readonly [Renewals];
    const renewals: Renewals = { ...own, lead: [] };
    return [
      preceded('tape', { work: bought, life: yearlyLife(longest!.life) }, renewals),
      ...today(basis, basis.tape.now),
      ...touchUps(basis, basis.tape.rest),
    ];
  }
  const after: readonly Coated[] =
    job === 'recoat'
      ? basis.coats.map((each) => ({ ...each, coats: each.coats + 1 }))
      : [{ share: 1, coats: 1, bad: false }];
  return [
    { kind: 'renewals', title: 'shop', lead: [{ work: bought, life: fixedLife(1) }], cycle: [] },
    ...touchUps(basis, { share: 1, seams: basis.seams, coats: after }),
  ];
}

/** The what-if of a missed leak, where the policy writes one. */
function missedLeak({ missedLeak: all, years }: Basis, way: Way): readonly Stream[] {
  const leak = all[way];
  if (!leak || leak.chance === 0) return [];
  const loss: Work = { title: 'a leak that was missed', material: leak.cost, labour: 0, days: 0 };
  return [yearlyChance('missed leaks', loss, leak.chance, years)];
}
