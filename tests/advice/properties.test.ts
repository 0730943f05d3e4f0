// Whatever the records say, each item that is on the rig gets advice with a reason, in the form of its schema.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { adviceFrom, adviceOf, SeamAdvice, urgencies } from '../../language/advice/index.ts';
import { duesOf } from '../../language/due/index.ts';
import { isThere, rigState } from '../../language/seams/index.ts';
import { conditions, defects } from '../../language/statements/words.ts';
import { rigText as benchText, rigOf, sharedRig } from '../bench/records.ts';
import { viewsOf } from '../seams/view.ts';
import { viewOf } from './ask.ts';

const form = z.array(SeamAdvice);

function holds(view: ReturnType<typeof viewOf>, asOf: string): void {
  const dates = { asOf, today: asOf };
  const all = adviceOf(view, dates);
  // Plain data: it survives JSON, and it fits its form.
  expect(form.parse(JSON.parse(JSON.stringify(all)))).toEqual(all);
  const state = rigState(view, asOf);
  const there = [...state.seams.values()].filter((seam) => isThere(seam, asOf));
  expect(new Set(all.flatMap(({ item }) => item ?? []))).toEqual(new Set(there.map(({ item }) => item.name)));
  for (const one of all) {
    expect(one.reasons.length).toBeGreaterThan(0);
    expect(one.what).not.toBe('');
    // What is kept open is never prepared for a bead, and what is left alone is never covered.
    if (one.action === 'leave') expect(one.interim).toBeUndefined();
    const role = one.item === undefined ? undefined : state.seams.get(one.item)?.role;
    if (role === 'open')
      expect([one.preparation, one.action === 'tape', one.action.includes('recoat')]).toEqual([
        undefined,
        false,
        false,
      ]);
    for (const step of one.preparation?.steps ?? [])
      expect(step.grades.map(({ grade }) => grade)).not.toContain('never');
  }
  // The stretches of an item lie end to end.
  for (const { item, stretches } of there) {
    const parts = all
      .filter((one) => one.item === item.name && one.from !== undefined)
      .sort((a, b) => a.from! - b.from!);
    if (parts.length === 0) continue;
    expect(parts[0]!.from).toBe(0);
    expect(parts.at(-1)!.to).toBe(stretches.at(-1)!.to);
    for (const [i, part] of parts.slice(1).entries()) expect(part.from).toBe(parts[i]!.to);
  }
  const ranks = all.map(({ urgency }) => urgencies.indexOf(urgency));
  expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  const [first] = all;
  if (first?.item !== undefined) {
    const only = adviceFrom(view, dates, state, duesOf(view, dates, state), first.item);
    expect(only).toEqual(all.filter(({ item }) => item === first.item));
  }
}

const items = ['curbside', 'roadside', 'front', 'vent', 'dome', 'lid', 'foot', 'air-con', 'spout', 'trim', 'membrane'];
const seams = ['curbside', 'roadside', 'front', 'vent', 'dome', 'lid', 'foot'];
const day = fc.integer({ min: 0, max: 22 * 28 - 1 }).map((n) => {
  const month = Math.floor(n / 28);
  return `${2024 + Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}-${String((n % 28) + 1).padStart(2, '0')}`;
});
const stretch = fc.option(
  fc
    .tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 13, max: 28 }))
    .map(([a, b]) => ` from ${a} ft to ${b} ft`),
  { nil: '' },
);
const place = fc.oneof(
  fc.constantFrom(...items),
  fc.tuple(fc.constantFrom('curbside', 'roadside'), stretch).map(([a, b]) => `${a}${b}`),
);
const seen = fc
  .tuple(
    fc.oneof(
      place.filter((text) => !text.includes(' ')),
      fc.constantFrom('curbside', 'roadside'),
    ),
    fc.constantFrom(...conditions, ...(Object.keys(defects) as string[]), 'not-seen', 'sound wet', 'cracked wet'),
    fc.option(fc.integer({ min: 8, max: 30 }), { nil: undefined }),
  )
  .map(([item, word, percent]) => `${item} ${word}${percent === undefined ? '' : ` moisture ${percent} %`}`);
const record = fc.oneof(
  fc.tuple(day, seen).map(([d, s]) => [d, `inspected ${d} {\n    ${s}\n    rest sound\n  }`] as const),
  fc
    .tuple(day, fc.constantFrom('curbside', 'roadside'), stretch, fc.constantFrom(...conditions))
    .map(([d, item, s, word]) => [d, `inspected ${d} { ${item} ${word}${s} }`] as const),
  fc
    .tuple(day, fc.constantFrom(...seams), fc.constantFrom('Lap', 'Sil', 'unknown', 'Tar', 'Vinegar'))
    .map(([d, item, name]) => [d, `found ${d} ${item} with ${name}`] as const),
  fc
    .tuple(day, fc.constantFrom(...seams), fc.constantFrom('Lap', 'Sil'))
    .map(([d, item, name]) => [d, `sealed ${d} ${item} with ${name}`] as const),
  fc
    .tuple(day, fc.constantFrom('curbside', 'roadside'), stretch)
    .map(([d, item, s]) => [d, `taped ${d} ${item}${s} with Strip`] as const),
  fc
    .tuple(day, fc.constantFrom('stripped', 'replaced', 'rebedded', 'tightened', 'removed'), fc.constantFrom(...items))
    .map(([d, verb, item]) => [d, `${verb} ${d} ${item}`] as const),
  fc
    .tuple(day, fc.constantFrom(...items))
    .map(([d, item]) => [d, `leaked ${d} inside "here" suspect ${item}`] as const),
  fc
    .tuple(day, fc.constantFrom(...items))
    .map(([d, item]) => [d, `covered ${d} ${item} until 2026-05-${item.length + 10}`] as const),
  day.map((d) => [d, `leaked ${d}`] as const),
  day.map((d) => [d, `coated ${d} with Cream`] as const),
  fc.tuple(day, fc.constantFrom(...items)).map(([d, item]) => [d, `dried ${d} ${item} moisture 14 %`] as const),
  day.map((d) => [d, `struck ${d} by hail`] as const),
);

describe('advice', () => {
  it('is given for each item, whatever the records say', () => {
    fc.assert(
      fc.property(
        fc.array(record, { maxLength: 12 }),
        fc.constantFrom('epdm', 'tpo', 'fibreglass', ''),
        fc.constantFrom('2024-06-01', '2025-06-01', '2026-05-20'),
        (records, surface, asOf) => {
          const lines = [...records]
            .sort(([a], [b]) => (a < b ? -1 : 1))
            .map(([, text]) => text)
            .join('\n  ');
          holds(viewOf(lines, { surface }), asOf);
        },
      ),
      { numRuns: 150 },
    );
  });

  it.each([0, 1, 2, 3])('is given for the rigs of the benchmarks (%i)', (index) => {
    const rig = rigOf(index, 4);
    const view = viewsOf({ ...sharedRig, 'rigs/a.rig': benchText(rig) }, 'rigs/a.rig');
    for (const asOf of ['2021-12-31', '2024-04-10', '2026-05-20']) holds(view, asOf);
  });
});
