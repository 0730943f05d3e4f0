// The default figures that a comparison rests on: what no record of the user says.
import type { Assumption } from '../estimate/index.ts';
import type { Policy, Stated, Tape } from '../resolve/types.ts';
import type { ThreePoints } from '../statements/slots/lists.ts';
import { type OffRoad, offRoad } from '../statements/words.ts';
import type { Grounds } from './basis-of.ts';

type Texted = { readonly text: string };

/** Each figure once, with its kind and its source. */
export function assumptionsOf(
  { realInterest, horizon, touchUp, recoat, daysOff }: Policy,
  grounds: Grounds,
): readonly Assumption[] {
  const stated: readonly (readonly [
    name: string,
    usedFor: string,
    figure: Stated<unknown> | undefined,
    text: string,
  ])[] = [
    ['horizon', 'how many years are compared', horizon, horizon.value.text],
    ['real interest', 'what later costs are worth today', realInterest, realInterest.value.text],
    ['touch up', 'the share of the seams that a year takes', touchUp, points(touchUp.value)],
    ['recoat', 'the cycle where sealing goes by the calendar', recoat, points(recoat.value)],
    ...worksIn(grounds)
      .map((work) => [work, daysOff[work]] as const)
      .map(([work, figure]) => [`days off, ${work}`, 'days off the road', figure, points(figure.value)] as const),
    ...limit(grounds),
    ...(grounds.tape ? lives(grounds.tape.material) : []),
  ];
  return stated.flatMap(([name, usedFor, figure, text]): Assumption[] => {
    if (figure === undefined || figure.origin.kind === 'record') return [];
    const { file, at, kind, source } = figure.origin;
    return [{ name, text, kind, ...(source === undefined || source === kind ? {} : { source }), file, at, usedFor }];
  });
}

/** The work that some way of the comparison is counted with. */
function worksIn({ basis: { tape, quotes } }: Grounds): readonly OffRoad[] {
  const reroof = quotes.some(({ job }) => job === 'reroof');
  const shop = quotes.some(({ job }) => job !== 'reroof');
  return offRoad.filter((work) =>
    work === 'tape' ? tape !== undefined : work === 'shop' ? shop : work === 'reroof' ? reroof : true,
  );
}

function points({ least, likely, most }: ThreePoints<Texted>): string {
  return least.text === most.text ? likely.text : `${least.text}, ${likely.text}, ${most.text}`;
}

function limit({ sealant: { material } }: Grounds) {
  const { coatsAtMost } = material;
  return coatsAtMost
    ? [['coats', 'when a seam is stripped', coatsAtMost, `at most ${coatsAtMost.value}`] as const]
    : [];
}

function lives(tape: Tape) {
  return tape.lives.map(
    (life) =>
      ['life of tape', life.on ? `on ${life.on.join(', ')}` : 'on every surface', life, points(life.value)] as const,
  );
}
