import { describe, expect, it } from 'vitest';
import type { AnswerKind } from '../../language/authoring/answer-kinds.ts';
import { answerProblem } from '../../language/authoring/read-answer.ts';

const today = '2026-11-25';
const problem = (kind: AnswerKind, text: string, atMost?: string) => answerProblem(kind, text, { today, atMost });

describe('an answer', () => {
  it.each([
    ['length', '28 ft'],
    ['length', ' 8 ft 2 1/2 in '],
    ['length', '8.5 m'],
    ['day', '2026-11-25'],
    ['day', '2026-04-18 14:30'],
    ['rough-day', 'about 2019'],
    ['rough-day', '2019-06'],
    ['stretch', '6 ft to 9 ft'],
    ['stretch', '6 to 9 ft'],
    ['percent', '14 %'],
    ['percent', '6.5 %'],
  ] as const)('of a %s takes "%s"', (kind, text) => {
    expect(problem(kind, text)).toBeUndefined();
  });

  it.each([
    ['length', '', /^Write a length with its unit, such as `28 ft`/],
    ['length', '28', /unit/],
    ['length', `28'`, /`28 ft`/],
    ['length', '1,000 ft', /`1000`/],
    ['length', '28 ft 14 in', /1 ft/],
    ['length', '1/3 in', /no exact length/],
    ['length', '0 ft', /of nothing/],
    ['length', 'long', /length is expected/],
    ['length', '61 USD', /money/],
    ['length', '28 ft on curbside', /^Only a length/],
    ['length', '28 ft # about', /^Only a length/],
    ['length', '28 ft }', /^Only a length/],
    ['length', '28 ft\nedge curbside', /^Only a length/],
    ['day', '11/25/2026', /2026-11-25/],
    ['day', '2026-02-30', /February/],
    ['day', '2026-11-26', /after today/],
    ['day', '2026-11', /day itself/],
    ['day', 'before 2026-11-25', /day itself/],
    ['day', '2026-11-25 note', /./],
    ['rough-day', '2019', /2019/],
    ['stretch', '9 ft to 6 ft', /smaller figure comes first/],
    ['stretch', '6 ft to 9 ft, seam', /^Only one part/],
    ['stretch', '6 ft', /`to`/],
    ['stretch', '6 ft to 9 ft moisture 14 %', /^Only from where/],
    ['percent', '14', /%/],
    ['percent', '140 %', /100 %/],
  ] as const)('of a %s says what to write instead of "%s"', (kind, text, says) => {
    const said = problem(kind, text);
    expect(said).toMatch(says);
    expect(said).not.toMatch(/`seam`|`built`|`joint`|`dried`/);
  });

  it('has to go into what it belongs to', () => {
    expect(problem('length', '8.6 m', '28 ft')).toContain('more than 28 ft');
    expect(problem('length', '8.5 m', '28 ft')).toBeUndefined();
    expect(problem('stretch', '20 ft to 28 ft', '28 ft')).toBeUndefined();
    expect(problem('stretch', '20 ft to 29 ft', '28 ft')).toContain('28 ft long');
  });
});
