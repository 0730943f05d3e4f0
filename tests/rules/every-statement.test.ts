import { expect, it } from 'vitest';
import { policyTable } from '../../language/statements/policy.ts';
import { check } from '../project/workspace.ts';

// Rules read the records of many rows: none may stumble over a row that it did not think of.
it.each([...policyTable.rows.values()].map(({ word, example }) => [word, example]))(
  'the checker reads a policy that says `%s`',
  (_, example) => {
    const rules = check({ 'p.rig': `policy P {\n  ${example}\n}\n` }, 'p.rig').map(({ rule }) => rule);
    expect(rules.filter((rule) => rule !== 'unknown-material')).toEqual([]);
  },
);
