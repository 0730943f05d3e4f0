// What changed in the yards of a fleet, and in the group of a rig.
import { expect, it } from 'vitest';
import { compareProjects, type Side } from '../../language/compare/index.ts';
import { filesOf, projectOf } from '../project/workspace.ts';

type Texts = Readonly<Record<string, string>>;
const dates = { asOf: '2026-11-25', today: '2026-11-25' };
const side = (texts: Texts): Side => ({ project: projectOf(texts), files: filesOf(texts), paths: Object.keys(texts) });
const compare = (before: Texts, after: Texts) =>
  compareProjects(side(before), side(after), { from: 'A', to: 'B', dates, fileName: (path) => path });

const base: Texts = {
  'groups.rig':
    'policy Salt { inspect every 3 months }\npolicy Fresh { inspect every 9 months }\ngroup Coastal under Salt\n',
  'rigs/auk.rig':
    'use "../groups.rig"\nrig Auk {\n  roof 20 ft by 8 ft epdm\n  edge curbside\n  group Coastal\n  inspected 2026-10-01 { rest sound }\n  inspect\n}\n',
  'fleet.rig': `use "groups.rig"
fleet Yards {
  rigs "rigs/*.rig"
  yard Harbour {
    crew Ladder 2 for 8 h each on mon to fri
    serves Coastal
  }
}
`,
};
const changed = (path: string, from: string, to: string) => {
  const text = (base[path] ?? '').replace(from, to);
  expect(text).not.toBe(base[path]);
  return compare(base, { ...base, [path]: text });
};

it('a line of a yard is told with the yard', () => {
  const { fleets } = changed('fleet.rig', '2 for 8 h', '3 for 8 h');
  expect(fleets[0]?.records).toEqual([
    {
      kind: 'fact',
      before: 'yard Harbour: crew Ladder 2 for 8 h each on mon to fri',
      after: 'yard Harbour: crew Ladder 3 for 8 h each on mon to fri',
    },
  ]);
});

it('a yard that is new is told with its lines, and moves what it does', () => {
  const { fleets } = changed('fleet.rig', '  yard Harbour', '  yard Inland { crew 1 for 8 h on mon }\n  yard Harbour');
  expect(fleets[0]?.records.map(({ after }) => after)).toEqual(['yard Inland', 'yard Inland: crew 1 for 8 h on mon']);
});

it('the policy of a group moves what falls due for its rigs', () => {
  const { rigs } = changed('groups.rig', 'Coastal under Salt', 'Coastal under Fresh');
  expect(rigs.map(({ name }) => name)).toEqual(['Auk']);
  expect(JSON.stringify(rigs[0])).toContain('2027-07-01');
});
