// A small change moves few visits, and none of this week.
import { describe, expect, test } from 'vitest';
import { type Schedule, scheduleOfFleet } from '../../language/schedule/index.ts';
import { addDays } from '../../language/values/calendar.ts';
import { fleetFrom, type ManyRigs, manyRigs, stream } from './many.ts';

/** A Sunday of the season, with all of the spring's work still to be done. */
const asOf = '2027-04-18';
const dates = { asOf, today: asOf };

function planned(many: ManyRigs, previous?: Schedule): Schedule {
  const { fleet, views } = fleetFrom(many);
  return scheduleOfFleet(fleet, views, dates, previous);
}

interface Change {
  readonly what: 'a booking' | 'a finding' | 'a part delayed';
  readonly rig: string;
  readonly many: ManyRigs;
}

/** One small change of a fleet: a booking added, a finding with its repair, or a plan that has to wait for its part. */
function changed(base: ManyRigs, next: () => number): Change {
  const pick = <T>(all: readonly T[]): T => all[Math.floor(next() * all.length)] as T;
  const { name, lines } = pick(base.rigs);
  const withLines = (own: readonly string[]): ManyRigs => ({
    ...base,
    rigs: base.rigs.map((one) => (one.name === name ? { name, lines: own } : one)),
  });
  const kind = Math.floor(next() * 3);
  const plans = lines.flatMap((line, i) => (/^(strip|seal|tape|wash|inspect )/.test(line) ? [i] : []));
  if (kind === 2 && plans.length > 0) {
    const late = pick(plans);
    const until = addDays(asOf, 10 + Math.floor(next() * 40));
    const delayed = (line: string) =>
      line
        .split('\n')
        .map((one) => `${one} after ${until}`)
        .join('\n');
    return {
      what: 'a part delayed',
      rig: name,
      many: withLines(lines.map((line, i) => (i === late ? delayed(line) : line))),
    };
  }
  if (kind === 1) {
    const item = pick(['vent', 'skylight', 'rear']);
    const word = pick(['cracked', 'lifting', 'open']);
    const found = `inspected ${asOf} {\n ${item} ${word}\n }\n strip ${item}\n seal ${item} with Lap`;
    return { what: 'a finding', rig: name, many: withLines([...lines, found]) };
  }
  const from = addDays(asOf, 1 + Math.floor(next() * 60));
  const line = `booked ${name} ${from} to ${addDays(from, 2 + Math.floor(next() * 8))}`;
  return { what: 'a booking', rig: name, many: { ...base, booked: [...base.booked, line] } };
}

describe('200 small changes of a fleet of 60', () => {
  const base = manyRigs(60, 7);
  const before = planned(base);
  const frozen = addDays(asOf, 7);

  test('few visits move, and of this week only what its own rig forbids', { timeout: 240_000 }, () => {
    const next = stream(99);
    const tally = new Map<string, { changes: number; moved: number; other: number; most: number }>();
    let [moves, visits] = [0, 0];
    for (let i = 0; i < 200; i++) {
      const { what, rig: name, many } = changed(base, next);
      const after = planned(many, before);
      const gone = (after.moved ?? []).filter(({ from, to }) => from !== undefined && from !== to);
      for (const { rig: whose, from = '', because } of gone) {
        if (from > frozen) continue;
        expect(whose, `${what} of ${name}: ${because}`).toBe(name);
        expect(because).toMatch(/booked|after|before|goes with|due|another visit/);
      }
      const others = gone.filter((one) => one.rig !== name).length;
      const row = tally.get(what) ?? { changes: 0, moved: 0, other: 0, most: 0 };
      tally.set(what, {
        changes: row.changes + 1,
        moved: row.moved + gone.length,
        other: row.other + others,
        most: Math.max(row.most, gone.length),
      });
      moves += gone.length;
      visits += before.visits.length;
    }
    console.table(Object.fromEntries(tally));
    console.log(`${((100 * moves) / visits).toFixed(2)} % of the visits move, ${(moves / 200).toFixed(2)} a change`);
    expect(moves / visits).toBeLessThan(0.025);
  });

  test('nothing changed, nothing moved', () => {
    const again = planned(base, before);
    expect(again.moved).toEqual([]);
    const all = ({ visits }: Schedule) => visits.map(({ order: _, ...visit }) => visit);
    expect(all(again)).toEqual(all(before));
  });
});
