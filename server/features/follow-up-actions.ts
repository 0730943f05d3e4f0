// A way out of a finding that asks for something to be done: a plan of it, in the rig's own block.
import { type CodeAction, CodeActionKind } from 'vscode-languageserver';
import { planInsertion } from '../../language/authoring/inspection-place.ts';
import type { Finding } from '../../language/rules/finding.ts';
import { rangeOf, uriOf } from '../places.ts';
import { rigNamed } from './accept-actions.ts';
import { diagnosticOf } from './diagnostics.ts';
import type { Features, Here } from './here.ts';

/** "Follow up: `inspect vent before DATE`". Never preferred: who does it, and when, is for people to say. */
export function followUpActions({ session, can }: Features, here: Here, finding: Finding): CodeAction[] {
  const { followUp, rig: name } = finding;
  const rig = followUp && name !== undefined ? rigNamed(session, here.path, name) : undefined;
  const text = rig && session.project.text(rig.file);
  if (!followUp || !rig || text === undefined) return [];
  const { word, items, before } = followUp;
  const said = [...(items.length > 0 ? [items.join(', ')] : []), `before ${before}`].join(' ');
  const plan = planInsertion({ file: rig.file, text, start: rig.at[0] }, word, said);
  if (!plan) return [];
  return [
    {
      title: `Follow up: \`${word} ${said}\``,
      kind: CodeActionKind.QuickFix,
      diagnostics: [diagnosticOf(finding, here.texts, can)],
      edit: {
        changes: { [uriOf(plan.file)]: [{ range: rangeOf(here.texts.of(plan.file), plan.at), newText: plan.text }] },
      },
    },
  ];
}
