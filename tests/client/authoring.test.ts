import { describe, expect, it } from 'vitest';
import { freeName } from '../../client/authoring/free-name.ts';
import {
  besides,
  goTo,
  isWaiting,
  itemAt,
  type Round,
  restIsSound,
  say,
  startRound,
  takeBack,
} from '../../client/authoring/said-so-far.ts';
import { type Step, throughSteps } from '../../client/authoring/steps.ts';

interface Answers {
  readonly a?: string;
  readonly b?: string;
  readonly c?: string;
}

/** Steps that answer from a script; `undefined` is the way back. */
function scripted(script: readonly (Partial<Answers> | undefined)[]) {
  const left = [...script];
  const asked: string[] = [];
  const step =
    (name: string): Step<Answers> =>
    async (answers, { step, total }) => {
      asked.push(`${name} ${step}/${total} ${JSON.stringify(answers)}`);
      return left.shift();
    };
  return { asked, step };
}

describe('questions one after the other', () => {
  it('go back without losing what was answered', async () => {
    const { asked, step } = scripted([
      { a: '1' },
      { b: '2' },
      undefined,
      undefined,
      { a: '3' },
      { b: '2' },
      { c: '4' },
    ]);
    expect(await throughSteps(() => [step('a'), step('b'), step('c')], {})).toEqual({ a: '3', b: '2', c: '4' });
    expect(asked.map((one) => one[0]).join('')).toBe('abcbabc');
    expect(asked[4]).toBe('a 1/3 {"a":"1","b":"2"}');
  });

  it('end without an answer in front of the first', async () => {
    const { step } = scripted([{ a: '1' }, undefined, undefined]);
    expect(await throughSteps(() => [step('a'), step('b')], {})).toBeUndefined();
  });

  it('come and go with the answers', async () => {
    const { asked, step } = scripted([{ a: 'yes' }, undefined, { a: 'no' }]);
    const steps = ({ a }: Answers) => [step('a'), ...(a === 'yes' ? [step('b')] : [])];
    expect(await throughSteps(steps, {})).toEqual({ a: 'no' });
    expect(asked.map((one) => one.slice(0, 5))).toEqual(['a 1/1', 'b 2/2', 'a 1/2']);
  });
});

describe('what has been said on the way round', () => {
  const start = startRound(['front', 'curbside', 'vent']);
  const moved = (...moves: readonly ((round: Round) => Round)[]) => moves.reduce((round, move) => move(round), start);

  it('goes on with a condition, and takes with it what stands beside', () => {
    const round = moved(
      (r) => besides(r, { wet: true, note: 'by the rail' }),
      (r) => say(r, 'lifting'),
    );
    expect(round).toMatchObject({ index: 1, beside: {} });
    expect(round.said).toEqual([{ item: 'front', seen: 'lifting', wet: true, note: 'by the rail' }]);
  });

  it('stays at a seam of which a part was named', () => {
    const round = moved(
      (r) => besides(r, { stretch: '2 m to 3 m' }),
      (r) => say(r, 'hairline'),
    );
    expect(round).toMatchObject({ index: 0, beside: {} });
    const next = say(round, 'sound');
    expect(itemAt(next)).toBe('curbside');
    expect(next.said).toHaveLength(2);
  });

  it('is corrected by going back: what stood beside is there again, the new word takes the place of the old', () => {
    const back = moved(
      (r) => besides(r, { note: 'x' }),
      (r) => say(r, 'chalky'),
      (r) => goTo(r, r.index - 1),
    );
    expect(back.beside).toEqual({ note: 'x' });
    expect(isWaiting(back)).toBe(false);
    expect(say(back, 'cracked').said).toEqual([{ item: 'front', seen: 'cracked', note: 'x' }]);
    expect(takeBack(back)).toMatchObject({ said: [], beside: {} });
  });

  it('forgets a text that was emptied', () => {
    expect(
      moved(
        (r) => besides(r, { note: 'x', wet: true }),
        (r) => besides(r, { note: '', wet: false }),
      ).beside,
    ).toEqual({});
  });

  it('calls the other parts of a seam sound with the rest, and no seam of which nothing was said by name', () => {
    const part = moved(
      (r) => besides(r, { stretch: '2 m to 3 m' }),
      (r) => say(r, 'hairline'),
    );
    expect(restIsSound(part).said).toContainEqual({ item: 'front', seen: 'sound' });
    expect(restIsSound(start).said).toEqual([]);
    const note = moved((r) => besides(r, { note: 'x' }));
    expect(restIsSound(note).said).toEqual([{ item: 'front', seen: 'sound', note: 'x' }]);
    const said = moved(
      (r) => say(r, 'open'),
      (r) => goTo(r, 0),
    );
    expect(restIsSound(said).said).toEqual([{ item: 'front', seen: 'open' }]);
    const noted = besides(said, { note: 'late' });
    expect(restIsSound(noted).said).toEqual([{ item: 'front', seen: 'open', note: 'late' }]);
  });
});

it('a file that is there is never written over', async () => {
  const there = new Set(['Plover.rig', 'Plover-2.rig']);
  expect(await freeName('Plover', async (file) => there.has(file))).toBe('Plover-3.rig');
  expect(await freeName('Teal', async (file) => there.has(file))).toBe('Teal.rig');
});
