import { describe, expect, it } from 'vitest';
import { asOfProblem, isDateOrEmpty } from '../../client/as-of-date.ts';
import { outputFolderProblem } from '../../client/output-folder.ts';

describe('the as-of date', () => {
  it.each(['', '2026-10-01', '2028-02-29', '2000-02-29', ' 2026-10-01 '])('takes "%s"', (text) => {
    expect(asOfProblem(text)).toBeUndefined();
  });

  // Leap years by the Gregorian rule: 1900 is none, 2000 is one.
  it.each(['2026-02-30', '2026-02-29', '1900-02-29', '2026-13-01', '2026-00-10', '2026-04-31', '2026-01-00'])(
    'says that the calendar has no %s',
    (text) => {
      expect(asOfProblem(text)).toBe(`The calendar has no ${text}.`);
      expect(isDateOrEmpty(text)).toBe(false);
    },
  );

  it.each(['tomorrow', '10/1/2026', '2026-10', '2026-1-1', '20261001'])(
    'says what to write instead of "%s"',
    (text) => {
      expect(asOfProblem(text)).toContain('such as 2026-10-01');
    },
  );
});

describe('the output folder', () => {
  it.each(['rigseam-out', 'papers/2026', '.', './out', 'a..b'])('takes "%s"', (setting) => {
    expect(outputFolderProblem(setting)).toBeUndefined();
  });

  it.each(['', '/etc', '~/papers', 'C:/papers', '\\\\share\\x', '..', '../other', 'a/../../b', 'a\\b'])(
    'refuses "%s", which is or may be outside the workspace folder',
    (setting) => {
      expect(outputFolderProblem(setting)).toBeTypeOf('string');
    },
  );
});
