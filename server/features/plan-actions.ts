// What can be done with a planned line: record that it is done.
import { type CodeAction, CodeActionKind, type TextEdit } from 'vscode-languageserver';
import { closesPlan, doneLines, isRecordable } from '../../language/authoring/done-record.ts';
import { recordInsertion } from '../../language/authoring/inspection-place.ts';
import { openPlans } from '../../language/resolve/done.ts';
import { rangeOf, uriOf } from '../places.ts';
import { blocksOf } from '../record-blocks.ts';
import { withoutEmptyLine } from './edits.ts';
import type { Features, Here } from './here.ts';

/**
 * "Record as done today" on each plan in a span. The record comes where the newest ones stand, which may be another file; a
 * plan that its dates do not tie to the record goes, for it has become the record.
 */
export function planActions({ session }: Features, here: Here, [from, to]: readonly [number, number]): CodeAction[] {
  const { today, asOf } = session.dates;
  return session.figures(here.path).rigs.flatMap((figures) => {
    const { rig } = figures.view;
    if (rig.kind !== 'rig') return [];
    return openPlans(rig, asOf).flatMap((plan): CodeAction[] => {
      const { at } = plan.statement;
      if (plan.file !== here.path || at[0] > to || at[1] < from || !isRecordable(plan)) return [];
      const system = rig.policy.units.value;
      const record = recordInsertion(blocksOf(session, figures), today, (form) => doneLines(plan, today, system, form));
      if (!record) return [];
      const edits: Record<string, TextEdit[]> = {
        [uriOf(record.file)]: [{ range: rangeOf(here.texts.of(record.file), record.at), newText: record.text }],
      };
      if (!closesPlan(plan, today)) {
        const gone: TextEdit = { range: withoutEmptyLine(at, here), newText: '' };
        edits[here.document.uri] = [...(edits[here.document.uri] ?? []), gone];
      }
      return [{ title: 'Record as done today', kind: CodeActionKind.RefactorRewrite, edit: { changes: edits } }];
    });
  });
}
