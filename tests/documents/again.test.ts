import { describe, expect, it } from 'vitest';
import { papersOf, scheduleIn } from '../../language/documents/papers.ts';
import { scheduleCsv } from '../../language/documents/schedule-csv.ts';
import { scheduleMarkdown } from '../../language/documents/schedule-markdown.ts';
import { projectOf } from '../project/workspace.ts';
import { dates } from './examples.ts';

const text = (...lines: readonly string[]) => `tape Strip { width 4 in  roll 50 ft at 58 USD  bonds-to epdm }
policy P { currency USD  labour 50 USD per h  season 01-01 to 12-31 }
rig Teal under P {
  roof 20 ft by 8 ft epdm
  cap rear
  cap front
  tape rear with Strip on 2026-11-28
  tape front with Strip after 2026-12-20
  ${lines.join('\n  ')}
}
`;
const subject = (...lines: readonly string[]) => {
  const [view] = projectOf({ 'a.rig': text(...lines) }).rigs('a.rig');
  return { kind: 'rig', view: view! } as const;
};
const written = (paper: unknown) => JSON.stringify(paper, undefined, 2);

describe('a schedule that was written before', () => {
  const first = papersOf(subject(), dates).schedule;
  const before = scheduleIn(written(first), dates)!;

  it('is read back from its JSON', () => {
    expect(before).toEqual(first.schedule);
    expect(scheduleIn(undefined, dates)).toBeUndefined();
    expect(scheduleIn('{ "document": ', dates)).toBeUndefined();
    expect(scheduleIn(written({ ...first, document: 'rigseam/schedule/0' }), dates)).toBeUndefined();
    expect(scheduleIn(written(first), { ...dates, asOf: '2026-11-24' })).toBeUndefined();
  });

  it('gives itself again where nothing changed, and tells of no move', () => {
    const again = papersOf(subject(), dates, { previous: before }).schedule.schedule;
    expect(again.visits.map(({ days }) => days)).toEqual(before.visits.map(({ days }) => days));
    expect(again.moved ?? []).toEqual([]);
  });

  it('tells what moved and why, and goes on telling it when it is written again on that day', () => {
    const trip = 'trip 2026-12-15 to 2027-01-10';
    const moved = papersOf(subject(trip), dates, { previous: before }).schedule;
    expect(moved.schedule.moved?.length).toBe(1);
    expect(moved.schedule.moved?.[0]?.because).not.toBe('');
    const [told] = moved.schedule.moved!;
    expect(scheduleMarkdown(moved)).toMatch(/## Moved since it was written last\n\n- .*2026-12-2\d to 2027-01-1\d/);
    expect(scheduleCsv(moved)).toContain(`Teal,moved,${told?.from},${told?.to},`);
    const again = papersOf(subject(trip), dates, { previous: scheduleIn(written(moved), dates)! }).schedule;
    expect(written(again)).toBe(written(moved));
  });
});
