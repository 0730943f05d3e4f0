import { describe, expect, it } from 'vitest';
import { statusText } from '../../client/status-text.ts';

const today = '2026-10-01';
const quiet = { rigs: 6, overdue: 0, asOf: today, today, busy: false };

describe('the status bar', () => {
  it('says how many rigs there are when none is overdue', () => {
    expect(statusText(quiet)).toMatchObject({ text: '$(calendar) 6 rigs', warning: false });
    expect(statusText({ ...quiet, rigs: 1 })?.text).toBe('$(calendar) 1 rig');
  });

  it('warns of overdue rigs', () => {
    expect(statusText({ ...quiet, overdue: 2 })).toMatchObject({ text: '$(warning) 2 overdue', warning: true });
    expect(statusText({ ...quiet, overdue: 2 })?.tooltip).toContain('2 of 6 rigs have something overdue.');
  });

  it('names the as-of date when it is not today', () => {
    const said = statusText({ ...quiet, overdue: 1, asOf: '2027-04-15' });
    expect(said?.text).toBe('$(warning) 1 overdue, as of 2027-04-15');
    expect(said?.tooltip).toContain('today is 2026-10-01');
  });

  it('says nothing in a workspace without rigs, and that it is reading while it reads', () => {
    expect(statusText({ ...quiet, rigs: 0 })).toBeUndefined();
    expect(statusText({ ...quiet, rigs: 0, asOf: '2027-04-15' })?.text).toContain('as of 2027-04-15');
    expect(statusText({ ...quiet, busy: true })?.text).toBe('$(sync~spin) Rigseam');
  });
});
