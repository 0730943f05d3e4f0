// Code actions: the fixes that travel with the findings, one by one and for a whole file.
import type { CodeActionProvider } from 'langium/lsp';
import { type CodeAction, CodeActionKind, type TextEdit } from 'vscode-languageserver';
import type { Fix, Span } from '../../language/grammar/problem.ts';
import type { Finding } from '../../language/rules/finding.ts';
import { rangeOf } from '../places.ts';
import { acceptActions } from './accept-actions.ts';
import { diagnosticOf } from './diagnostics.ts';
import { withoutEmptyLine } from './edits.ts';
import { followUpActions } from './follow-up-actions.ts';
import { type Features, type Here, hereIn } from './here.ts';
import { planActions } from './plan-actions.ts';

export const fixAllKind = `${CodeActionKind.SourceFixAll}.rigseam`;

export const actions = (features: Features): CodeActionProvider => ({
  getCodeActions(document, { range, context }) {
    const here = hereIn(features, document);
    const findings = features.session.workspace.findingsIn(here.path);
    const wants = (kind: string) =>
      !context.only || context.only.some((only) => kind === only || kind.startsWith(`${only}.`));
    const out: CodeAction[] = [];
    if (wants(CodeActionKind.QuickFix)) {
      const [from, to] = [here.document.offsetAt(range.start), here.document.offsetAt(range.end)];
      for (const finding of findings) {
        if (finding.at[0] > to || finding.at[1] < from) continue;
        out.push(...fixesOf(finding, here, features.can), ...followUpActions(features, here, finding));
        const all = fixAllOf(finding.rule, findings, here);
        if (all && !out.some(({ title }) => title === all.title)) out.push(all);
      }
    }
    const span = [here.document.offsetAt(range.start), here.document.offsetAt(range.end)] as const;
    if (wants(CodeActionKind.RefactorRewrite)) out.push(...planActions(features, here, span));
    if (wants(CodeActionKind.QuickFix)) out.push(...acceptActions(features, here, span));
    if (context.only && wants(fixAllKind)) {
      const edits = editsOf(findings, here);
      if (edits.length > 0)
        out.push({ title: 'Mend all that is certain', kind: fixAllKind, edit: changes(here, edits) });
    }
    return out;
  },
});

function fixesOf(finding: Finding, here: Here, can: Features['can']): CodeAction[] {
  const fixes = finding.fixes ?? [];
  const diagnostic = diagnosticOf(finding, here.texts, can);
  return fixes.map((fix) => ({
    title: fix.label,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnostic],
    ...(fixes.length === 1 && !fix.unsure ? { isPreferred: true } : {}),
    edit: changes(here, [editOf(fix, here)]),
  }));
}

/** One action for all findings of a rule in the file, where there are several and each has one way out. */
function fixAllOf(rule: string, findings: readonly Finding[], here: Here): CodeAction | undefined {
  const edits = editsOf(
    findings.filter((finding) => finding.rule === rule),
    here,
  );
  if (edits.length < 2) return undefined;
  return {
    title: `Mend all ${edits.length} of \`${rule}\` in this file`,
    kind: CodeActionKind.QuickFix,
    edit: changes(here, edits),
  };
}

/** The edits of all findings with a single fix, first come first served where two would change the same text. */
function editsOf(findings: readonly Finding[], here: Here): TextEdit[] {
  const taken: Span[] = [];
  return findings.flatMap(({ fixes = [] }) => {
    const [fix] = fixes;
    if (!fix || fixes.length !== 1 || fix.unsure) return [];
    if (taken.some(([from, to]) => fix.at[0] <= to && from <= fix.at[1])) return [];
    taken.push(fix.at);
    return [editOf(fix, here)];
  });
}

function editOf({ at, text }: Fix, here: Here): TextEdit {
  return { range: text === '' ? withoutEmptyLine(at, here) : rangeOf(here.document, at), newText: text };
}

const changes = ({ document }: Here, edits: TextEdit[]) => ({ changes: { [document.uri]: edits } });
