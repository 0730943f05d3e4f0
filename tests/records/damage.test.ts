import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readFile } from '../../language/records/file.ts';
import { wholeExample } from '../worked-example/text.ts';
import { factsIn, factsOf, lineAt, missingFrom } from './facts.ts';

// Every line of the worked example, cut after every third character and with every third one missing.

const lines = wholeExample.split('\n');
const base = factsOf(wholeExample).map((fact) => ({ ...fact, line: lineAt(wholeExample, fact.start) }));
const step = 3;

/** A heading without its name, or an inspection without its date: what stands below belongs to nothing. */
const baseless = /^(tape|sealant|policy|model|rig|fleet)\b|^ {2}inspected/;

interface Outcome {
  readonly on: string;
  readonly typed: string;
  readonly lost: number;
  readonly problems: number;
  readonly elsewhere: number;
}

function outcomes(): Outcome[] {
  const out: Outcome[] = [];
  for (const [i, line] of lines.entries()) {
    if (line.replace(/#.*$/, '').trim() === '') continue;
    const start = line.search(/\S/);
    const others = base.filter((fact) => fact.line !== i);
    for (let at = start; at < line.length; at += step)
      for (const typed of [line.slice(0, at + 1), line.slice(0, at) + line.slice(at + 1)]) {
        const text = [...lines.slice(0, i), typed, ...lines.slice(i + 1)].join('\n');
        const records = readFile(text);
        out.push({
          on: line,
          typed,
          lost: missingFrom(others, factsIn(records)).length,
          problems: records.problems.length,
          elsewhere: records.problems.filter((problem) => lineAt(text, problem.at[0]) !== i).length,
        });
      }
  }
  return out;
}

describe('damage to a line', () => {
  const all = outcomes();
  const states = (some: readonly Outcome[]) => some.map(({ typed, lost, elsewhere }) => ({ typed, lost, elsewhere }));

  it('is tried in thousands of states', () => {
    expect(all.length).toBeGreaterThan(2000);
  });

  it('nearly never loses another statement', () => {
    const whole = all.filter((state) => state.lost === 0).length;
    const share = (100 * whole) / all.length;
    console.info(
      `${all.length} states, ${share.toFixed(2)} % without loss, ${all.reduce((n, s) => n + s.lost, 0)} statements lost`,
    );
    expect(share).toBeGreaterThan(98.5);
    // Whatever is lost stood below a heading that says no longer whose it is, or went on from a word that may go on a line.
    const other = all.filter((state) => state.lost > 0 && !baseless.test(state.on));
    expect(states(other.filter((state) => state.lost > 1 || !/^\s+(by|on)$|^\s+(by|on)\s/.test(state.typed)))).toEqual(
      [],
    );
  });

  it('never loses a statement silently', () => {
    expect(states(all.filter((state) => state.lost > 0 && state.problems === 0))).toEqual([]);
  });

  it('is reported on its line, but for a brace that is gone', () => {
    const off = all.filter((state) => state.elsewhere > 0 && !/^\s*}$/.test(state.on));
    expect(states(off)).toEqual([]);
  });
});

describe('damage to a whole file', () => {
  const odd = fc.constantFrom(
    ...[
      '{',
      '}',
      ',',
      '"',
      '#',
      '\n',
      '\r',
      '\r\n',
      '\t',
      '\ufeff',
      '\u00a0',
      '\u2028',
      '\ud83d\ude90',
      '\ud800',
      '%',
      '$',
      '\\',
      'per',
      '1/',
      '-',
    ],
  );
  const edit = fc.record({ at: fc.double({ min: 0, max: 1, noNaN: true }), cut: fc.nat(12), put: odd });

  it('never stops the reader, and every place lies in the text', () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
        const text = edits.reduce((done, { at, cut, put }) => {
          const start = Math.floor(at * done.length);
          return done.slice(0, start) + put + done.slice(start + cut);
        }, wholeExample);
        for (const { at, message, fixes } of readFile(text).problems) {
          expect(message).not.toBe('');
          for (const [start, end] of [at, ...(fixes ?? []).map((fix) => fix.at)]) {
            expect(start).toBeLessThanOrEqual(end);
            expect(start).toBeGreaterThanOrEqual(0);
            expect(end).toBeLessThanOrEqual(text.length);
          }
        }
      }),
      { seed: 1042, numRuns: 400 },
    );
  });
});
