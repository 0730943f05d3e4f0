// What is written is what was said: the block is read back by the language itself.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { inspectionLines, type SaidOfSeam } from '../../language/authoring/inspection-block.ts';
import { readFile } from '../../language/records/file.ts';
import { conditions } from '../../language/statements/words.ts';

const seams = ['front', 'curbside', 'bath-vent', 'a-name-that-is-longer-than-most'];
/** One line, as an input box gives it. */
const text = fc
  .string({ unit: 'grapheme', maxLength: 30 })
  .map((one) => one.replace(/[\p{Cc}\u2028\u2029]/gu, ' ').trim());
const beside = fc.record(
  {
    wet: fc.boolean(),
    moisture: fc.integer({ min: 1, max: 99 }).map((n) => `${n} %`),
    note: text,
    stretch: fc.constantFrom('6 ft to 9 ft', '2 m to 3 m'),
  },
  { requiredKeys: [] },
);
const finding = fc
  .tuple(fc.constantFrom(...seams), fc.constantFrom(...conditions, 'not-seen' as const), beside)
  .map(([item, seen, more]): SaidOfSeam => ({ item, seen, ...more }));
const forms = fc.record({
  indent: fc.constantFrom('', '  ', '\t'),
  dateAt: fc.integer({ min: 10, max: 20 }),
  innerIndent: fc.constantFrom('  ', '    ', '\t\t'),
  seenAt: fc.option(fc.integer({ min: 1, max: 40 }), { nil: undefined }),
});

it('an inspection reads back as it was said', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(finding, { selector: ({ item, stretch }) => `${item} ${stretch}` }),
      fc.boolean(),
      text,
      forms,
      (said, restIsSound, by, form) => {
        const written = inspectionLines({ date: '2026-11-25', by, said, restIsSound }, seams, form).join('\n');
        const { declarations, problems } = readFile(`history Teal {\n${written}\n}\n`);
        expect(problems, written).toEqual([]);
        const record = declarations[0]?.statements[0];
        if (record?.word !== 'inspected') throw new Error(`no inspection in ${written}`);
        expect(record.by ?? '').toBe(by);
        const rest = record.findings?.some(({ targets }) => targets[0]?.name === 'rest') ?? false;
        const spoken = new Set(said.map(({ item }) => item));
        // Nothing that nobody spoke of is sound, unless that was said.
        if (!restIsSound && spoken.size < seams.length) expect(rest).toBe(false);
        if (restIsSound && spoken.size < seams.length) expect(rest).toBe(true);
        for (const one of said) {
          const found = record.findings?.some(
            ({ targets, seen, stretch, moisture, note }) =>
              targets[0]?.name === one.item &&
              (stretch ?? targets[0].stretch)?.low.text === one.stretch?.split(' to ')[0] &&
              (seen.notSeen ? 'not-seen' : seen.condition) === one.seen &&
              seen.wet === (one.wet ?? false) &&
              moisture?.text === one.moisture &&
              (note ?? '') === (one.note ?? ''),
          );
          const isInRest = rest && one.seen === 'sound' && !one.wet && !one.note && !one.moisture && !one.stretch;
          expect(found || isInRest, `${JSON.stringify(one)}\n${written}`).toBe(true);
        }
      },
    ),
    { numRuns: 300 },
  );
});
