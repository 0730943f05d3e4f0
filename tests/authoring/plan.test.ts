import { expect, test } from 'vitest';
import { planInsertion } from '../../language/authoring/inspection-place.ts';

const inserted = (...lines: readonly string[]) => {
  const text = `rig Heron {\n  edge         curbside, roadside\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
  const plan = planInsertion({ file: 'heron.rig', text, start: 0 }, 'strip', 'curbside before 2026-12-15');
  return plan && text.slice(0, plan.at[0]) + plan.text + text.slice(plan.at[1]);
};

test('a plan goes behind the last one, in its column', () => {
  expect(inserted('inspected 2026-04-01', 'wash     before 2027-05-01')).toContain(
    '\n  wash     before 2027-05-01\n  strip    curbside before 2026-12-15\n}',
  );
  expect(inserted('wash        before 2027-05-01')).toContain('\n  strip       curbside before 2026-12-15\n}');
  expect(inserted('dry on 2027-05-01')).toContain('\n  strip curbside before 2026-12-15\n}');
});

test('the first plan stands in the column that formatting gives it', () => {
  expect(inserted('inspected 2026-04-01')).toContain(
    '\n  inspected 2026-04-01\n\n  strip    curbside before 2026-12-15\n}',
  );
});
