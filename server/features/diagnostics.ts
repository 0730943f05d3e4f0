// A finding as a diagnostic: its rule is the code, its fixes travel with it.
import {
  type Diagnostic,
  type DiagnosticRelatedInformation,
  DiagnosticSeverity,
  DiagnosticTag,
} from 'vscode-languageserver';
import { rulePageUri } from '../../language/protocol/index.ts';
import { isLibrary } from '../../language/resolve/origin.ts';
import { catalogue } from '../../language/rules/catalogue.ts';
import type { Finding } from '../../language/rules/finding.ts';
import type { Abilities } from '../abilities.ts';
import { locationOf, rangeOf, type Texts } from '../places.ts';

export const source = 'rigseam';

const severityOf = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
} as const;

const tagOf = { unnecessary: DiagnosticTag.Unnecessary, deprecated: DiagnosticTag.Deprecated } as const;

/** `can`: what the editor shows of it. */
export function diagnosticOf(finding: Finding, texts: Texts, can: Abilities): Diagnostic {
  const related = (finding.related ?? [])
    .filter(({ file }) => !isLibrary(file))
    .map(({ file, at, message }): DiagnosticRelatedInformation => ({ location: locationOf(texts, file, at), message }));
  const tag = catalogue.get(finding.rule)?.tag;
  return {
    range: rangeOf(texts.of(finding.file), finding.at),
    severity: severityOf[finding.severity],
    code: finding.rule,
    ...(can.linksCodes && can.showsTexts ? { codeDescription: { href: rulePageUri(finding.rule) } } : {}),
    source,
    message: finding.message,
    ...(related.length > 0 ? { relatedInformation: related } : {}),
    ...(tag ? { tags: [tagOf[tag]] } : {}),
  };
}
