// Rules of groups: one whose policy does not reach a rig that belongs to it.
import { family, type RigContext, type RuleEntry } from './rule.ts';

const rules = {
  'group-without-effect': {
    severity: 'information',
    title: 'The policy of a group does not hold for a rig in it',
    why: 'A rig is under the policy that it names itself, else under that of its group. The group counts all the same for the yard that serves it.',
    fix: 'None: either of the two may be meant.',
  },
} as const satisfies Record<string, RuleEntry>;

export const groups = family(rules, function* ({ declaration, names, view: { rig } }: RigContext) {
  if (!declaration?.under || !names) return;
  const line = declaration.statements.find((statement) => statement.word === 'group');
  if (line?.word !== 'group') return;
  const group = names.find('group', line.group.name);
  const under = group?.declaration.under;
  if (!group || !under || under.name === declaration.under.name) return;
  yield {
    rule: 'group-without-effect' as const,
    file: rig.file,
    at: line.at,
    message: `${rig.name} is under \`${declaration.under.name}\`, as it says itself: \`${under.name}\`, the policy of ${group.declaration.name}, has no effect on it. One of the two may go.`,
    related: [{ file: group.file, at: under.at, message: `The policy of ${group.declaration.name}.` }],
  };
});
