// A way out of a finding that is known and may wait: accept its rule for a while, with a reason.
import { type CodeAction, CodeActionKind } from 'vscode-languageserver';
import { isAcceptable } from '../../language/rules/check.ts';
import { addPeriod } from '../../language/values/calendar.ts';
import { rangeOf, uriOf } from '../places.ts';
import { diagnosticOf } from './diagnostics.ts';
import type { Features, Here } from './here.ts';

/** How long an accept is offered for: a season's work can be planned in it. */
const forLong = { months: 3, days: 0 };

/** "Accept RULE until DATE": a line at the end of the rig that the finding is about. Its reason is left to be written. */
export function acceptActions(
  { session, can }: Features,
  here: Here,
  [from, to]: readonly [number, number],
): CodeAction[] {
  const until = addPeriod(session.dates.today, forLong);
  const offered = new Set<string>();
  return session.workspace.findingsIn(here.path).flatMap((finding): CodeAction[] => {
    const { rule, rig: name, item, at } = finding;
    if (at[0] > to || at[1] < from || name === undefined || !isAcceptable(rule)) return [];
    const rig = rigNamed(session, here.path, name);
    const text = rig && session.project.text(rig.file);
    const title = `Accept \`${rule}\`${item === undefined ? '' : ` on ${item}`} until ${until}, with a reason`;
    if (!rig || text === undefined || offered.has(title)) return [];
    const close = closingBrace(text, rig.at[0], rig.end);
    if (close === undefined) return [];
    offered.add(title);
    const on = item === undefined ? '' : ` on ${item}`;
    const start = text.lastIndexOf('\n', close - 1) + 1;
    const newText = `  accept       ${rule}${on} until ${until} because "why it may wait"\n`;
    return [
      {
        title,
        kind: CodeActionKind.QuickFix,
        diagnostics: [diagnosticOf(finding, here.texts, can)],
        edit: {
          changes: { [uriOf(rig.file)]: [{ range: rangeOf(here.texts.of(rig.file), [start, start]), newText }] },
        },
      },
    ];
  });
}

/** A rig by its name, from the file of a finding or from whoever reads the history in it. */
export function rigNamed(session: Features['session'], path: string, name: string) {
  for (const file of [path, ...session.workspace.readersOf(path, name)]) {
    const declaration = session.project
      .records(file)
      ?.declarations.find((one) => one.kind === 'rig' && one.name === name);
    if (declaration) return { file, at: declaration.at, end: declaration.whole[1] };
  }
  return undefined;
}

/** The brace that closes a block, where it stands on a line of its own. */
function closingBrace(text: string, start: number, end: number): number | undefined {
  const close = end - 1;
  const isAlone = text[close] === '}' && text.slice(text.lastIndexOf('\n', close - 1) + 1, close).trim() === '';
  return isAlone && close > start ? close : undefined;
}
