import { describe, expect, it } from 'vitest';
import { readFile } from '../../language/records/file.ts';
import { states, textOf } from '../grammar/states.ts';
import { wholeExample } from '../worked-example/text.ts';
import { factsIn, factsOf, lineAt, missingFrom } from './facts.ts';

// The worked example with one line half typed or mistaken: every other statement survives, and the message helps.

const base = factsOf(wholeExample);

describe('a line that is half typed', () => {
  it('is looked at in enough states', () => {
    expect(states.length).toBeGreaterThanOrEqual(43 + 25);
    expect(new Set(states.map((state) => state.name)).size).toBe(states.length);
  });

  it.each(states)('leaves every other statement as it was: $name', (state) => {
    const { text, replaced } = textOf(state, wholeExample);
    const others = base.filter((fact) => lineAt(wholeExample, fact.start) !== replaced);
    expect(missingFrom(others, factsOf(text))).toEqual([]);
  });

  it.each(states)('says what to write on the line that is wrong: $name', (state) => {
    const { text, first, last } = textOf(state, wholeExample);
    const { problems } = readFile(text);
    const lines = text.split('\n');
    const misplaced = problems.filter(({ at }) => {
      const line = lineAt(text, at[0]);
      return state.on === undefined ? line < first || line > last : !lines[line]?.startsWith(state.on);
    });
    expect(misplaced).toEqual([]);
    const said = problems.map((problem) => problem.message).join('\n');
    for (const words of state.says) expect(said).toContain(words);
    expect(problems.length > 0).toBe(state.says.length > 0);
    for (const { message, fixes } of problems) {
      expect(message).toMatch(/^[A-Z`\u201c].*[.?]$/s);
      expect(message.includes('`') || fixes !== undefined || /marks|days|closes nothing/.test(message)).toBe(true);
    }
  });

  it.each(states)('is mended by each of its fixes: $name', (state) => {
    const { text } = textOf(state, wholeExample);
    const { problems } = readFile(text);
    for (const problem of problems)
      for (const fix of problem.fixes ?? []) {
        const mended = text.slice(0, fix.at[0]) + fix.text + text.slice(fix.at[1]);
        const left = readFile(mended).problems.filter(
          ({ rule, message }) => rule === problem.rule && message === problem.message,
        );
        const before = problems.filter(({ rule, message }) => rule === problem.rule && message === problem.message);
        expect({ fix, left: left.length }).toEqual({ fix, left: before.length - 1 });
      }
  });

  it('keeps a rig whose heading is misspelt', () => {
    const text = wholeExample.replace('rig Heron like', 'ri Heron like');
    const records = readFile(text);
    expect(records.problems.map((problem) => problem.message)).toEqual([
      '`ri` is no statement here; did you mean `rig`?',
    ]);
    expect(missingFrom(base, factsIn(records))).toEqual([]);
  });
});
