import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RigView } from '../../language/resolve/types.ts';
import { rigState, type Step } from '../../language/seams/index.ts';
import { addDays } from '../../language/values/calendar.ts';
import { plain, rigText, viewOf, viewsOf } from './view.ts';

const items = ['curbside', 'front', 'vent', 'dome', 'air-con', 'all'] as const;
const conditionWords = [
  'sound',
  'chalky',
  'hairline',
  'cracked',
  'lifting',
  'open',
  'wet',
  'not-seen',
  'torn',
] as const;

const part = fc.option(
  fc
    .tuple(fc.integer({ min: 0, max: 26 }), fc.integer({ min: 1, max: 9 }))
    .map(([low, by]) => ` from ${low} ft to ${low + by} ft`),
  { nil: '' },
);
const target = fc
  .tuple(fc.constantFrom(...items), part)
  .map(([item, stretch]) => (item === 'curbside' ? item + stretch : item));
const finding = fc
  .tuple(
    fc.constantFrom(...items),
    fc.constantFrom(...conditionWords),
    part,
    fc.option(fc.integer({ min: 8, max: 30 })),
  )
  .map(([item, word, stretch, moisture]) => {
    const where = item === 'curbside' ? stretch : '';
    return `${item} ${word}${where}${moisture === null ? '' : ` moisture ${moisture} %`}`;
  });

/** A record without its date. */
const work = fc.oneof(
  fc
    .tuple(
      fc.constantFrom('sealed', 'stripped', 'replaced', 'taped', 'covered', 'dried', 'struck', 'tightened'),
      target,
    )
    .map(([verb, where]) => {
      const material = verb === 'sealed' ? ' with Lap' : verb === 'taped' ? ' with Strip' : '';
      return (day: string) => `  ${verb} ${day} ${where}${material}`;
    }),
  fc.constant((day: string) => `  coated ${day} with Cream`),
  fc.constant((day: string) => `  leaked ${day} suspect vent`),
  fc.constant((day: string) => `  found ${day} all with unknown`),
  fc
    .array(finding, { maxLength: 4 })
    .map((lines) => (day: string) => `  inspected ${day} {\n${lines.map((line) => `    ${line}\n`).join('')}  }`),
);

/** Records on ascending days, one a day. */
const history = fc
  .array(fc.tuple(work, fc.integer({ min: 1, max: 200 })), { minLength: 1, maxLength: 14 })
  .map((all) => {
    let day = '2021-01-01';
    return all.map(([write, gap]) => {
      day = addDays(day, gap);
      return { day, text: write(day) };
    });
  });
const textOf = (records: readonly { readonly text: string }[]) => records.map(({ text }) => text).join('\n');
const stateText = (view: RigView, date: string) => plain(rigState(view, date));

describe('the fold', () => {
  it('at a past date equals the fold of the records up to it', () => {
    fc.assert(
      fc.property(history, fc.nat(), (records, pick) => {
        const date = records[pick % records.length]!.day;
        const upTo = records.filter(({ day }) => day <= date);
        expect(stateText(viewOf(textOf(records)), date)).toEqual(stateText(viewOf(textOf(upTo)), date));
      }),
      { numRuns: 60 },
    );
  });

  it('does not hang on the order of statements of different days, nor on the files they stand in', () => {
    fc.assert(
      fc.property(history, fc.infiniteStream(fc.nat()), fc.infiniteStream(fc.boolean()), (records, keys, apart) => {
        const expected = stateText(viewOf(textOf(records)), '2035-01-01');
        const keyed = records.map((record) => ({ record, key: keys.next().value as number }));
        const shuffled = keyed.sort((a, b) => a.key - b.key).map(({ record }) => record);
        expect(stateText(viewOf(textOf(shuffled)), '2035-01-01')).toEqual(expected);
        const elsewhere = shuffled.filter(() => apart.next().value);
        const here = shuffled.filter((record) => !elsewhere.includes(record));
        const texts = {
          'a.rig': rigText(`  records "old/*.rig"\n${textOf(here)}`),
          'old/b.rig': `history Teal {\n${textOf(elsewhere)}\n}\n`,
        };
        expect(stateText(viewsOf(texts), '2035-01-01')).toEqual(expected);
      }),
      { numRuns: 60 },
    );
  });

  it('keeps the stretches of a seam in order, without gaps, from its beginning to its end', () => {
    fc.assert(
      fc.property(history, (records) => {
        const { seams } = rigState(viewOf(textOf(records)), '2035-01-01');
        const { stretches } = seams.get('curbside')!;
        expect(stretches[0]?.from).toBe(0);
        expect(stretches.at(-1)?.to).toBe(28 * 304_800_000);
        for (let i = 1; i < stretches.length; i++) expect(stretches[i]?.from).toBe(stretches[i - 1]?.to);
        for (const { from, to } of stretches) expect(to).toBeGreaterThan(from);
      }),
      { numRuns: 60 },
    );
  });

  it('never calls a repair sound: only a record with `sound` in it does', () => {
    fc.assert(
      fc.property(history, (records) => {
        const { seams } = rigState(viewOf(textOf(records)), '2035-01-01');
        for (const { stretches } of seams.values()) {
          for (const { condition } of stretches) {
            if (condition?.word !== 'sound') continue;
            const { record } = condition.event;
            expect(record.word).toBe('inspected');
            expect('findings' in record && record.findings?.some(({ seen }) => seen.condition === 'sound')).toBe(true);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('holds the order of one day: stripped then sealed is one coat, sealed then stripped is bare', () => {
    const one = rigState(viewOf('  stripped 2024-05-01 vent\n  sealed 2024-05-01 vent with Lap'), '2025-01-01');
    const other = rigState(viewOf('  sealed 2024-05-01 vent with Lap\n  stripped 2024-05-01 vent'), '2025-01-01');
    expect(one.seams.get('vent')?.stretches[0]?.layers).toHaveLength(1);
    expect(other.seams.get('vent')?.stretches[0]?.layers).toHaveLength(0);
  });

  it('shows each record with the state before and after it', () => {
    const steps: Step[] = [];
    const lines =
      '  inspected 2024-04-01 { vent lifting }\n  sealed 2024-05-01 vent with Lap\n  sealed 2030-05-01 vent with Lap';
    rigState(viewOf(lines), '2025-01-01', (step) => {
      const words = [step.before.get('vent'), step.after('vent')].map((state) => state?.stretches[0]?.condition?.word);
      steps.push(step);
      expect(words).toEqual(steps.length === 1 ? [undefined, 'lifting'] : ['lifting', 'renewed']);
    });
    expect(steps).toHaveLength(2);
  });
});
