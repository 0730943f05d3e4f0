// Findings as SARIF 2.1.0 (OASIS Static Analysis Results Interchange Format), for whatever collects the results of checks.
import { relative } from 'node:path';
import { catalogue } from '../../language/rules/catalogue.ts';
import type { Finding } from '../../language/rules/finding.ts';
import { section } from '../../language/rules/reference.ts';
import type { Checked } from './check.ts';
import { fingerprints } from './fingerprints.ts';
import type { Range } from './text.ts';

const schema = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/** The format knows three levels of what is found. The severity as it is called here goes with each result. */
const levels = { error: 'error', warning: 'warning', information: 'note', hint: 'note' } as const;

/**
 * A log of one run: all rules of the catalogue with their help, and a result for each finding. Paths are seen from `root`, the
 * folder of the workspace. The same findings give the same log: it has no time and no path of this machine.
 */
export function sarifLog(checked: Checked, root: string, version: string): unknown {
  const rules = [...catalogue].sort(([a], [b]) => (a < b ? -1 : 1));
  const places = new Map(rules.map(([id], index) => [id, index]));
  const names = fingerprints(checked.findings, checked.text);
  const artifact = (file: string) => artifactIn(root, file);
  const location = (file: string, at: Finding['at']) => ({
    physicalLocation: { artifactLocation: artifact(file), region: region(checked.rangeIn(file, at)) },
  });
  return {
    $schema: schema,
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'rigseam', version, rules: rules.map(([id, entry]) => descriptor(id, entry)) } },
        invocations: [{ executionSuccessful: true }],
        columnKind: 'utf16CodeUnits',
        originalUriBaseIds: {
          ROOT: { description: { text: 'The folder of the workspace, or of the repository around it.' } },
          LIBRARY: { description: { text: 'The built-in library of rigseam.' } },
        },
        results: checked.findings.map((finding, i) => ({
          ruleId: finding.rule,
          ruleIndex: places.get(finding.rule),
          level: levels[finding.severity],
          message: message(finding.message),
          locations: [location(finding.file, finding.at)],
          ...(finding.related?.length && {
            relatedLocations: finding.related.map((related, id) => ({
              id,
              ...location(related.file, related.at),
              message: message(related.message),
            })),
          }),
          partialFingerprints: { 'rigseamFinding/v1': names[i] },
          ...fixesOf(finding, artifact, checked),
          properties: { severity: finding.severity },
        })),
      },
    ],
  };
}

function descriptor(id: string, entry: Parameters<typeof section>[1]) {
  const { title, why, severity } = entry;
  return {
    id,
    shortDescription: message(`${title}.`),
    fullDescription: message(why),
    help: { ...message(`${title}. ${why}\n\nQuick fix: ${entry.fix}`), markdown: section(id, entry) },
    defaultConfiguration: { level: levels[severity] },
  };
}

/** A plain text; braces would be places for arguments, brackets links (sections 3.11.5 and 3.11.6 of the standard). */
const message = (text: string) => ({ text: text.replace(/[{}]/g, '$&$&').replace(/[[\]]/g, '\\$&') });

/** Fixes that need nobody to judge them. */
function fixesOf({ file, fixes = [] }: Finding, artifact: (file: string) => unknown, { rangeIn }: Checked) {
  const sure = fixes.filter(({ unsure }) => !unsure);
  if (sure.length === 0) return {};
  return {
    fixes: sure.map(({ label, at, text }) => ({
      description: { text: label },
      artifactChanges: [
        {
          artifactLocation: artifact(file),
          replacements: [{ deletedRegion: region(rangeIn(file, at)), insertedContent: { text } }],
        },
      ],
    })),
  };
}

function region({ start, end }: Range) {
  return {
    startLine: start.line + 1,
    startColumn: start.character + 1,
    endLine: end.line + 1,
    endColumn: end.character + 1,
  };
}

function artifactIn(root: string, file: string) {
  const built = file.startsWith('library/');
  const path = built ? file.slice('library/'.length) : relative(root, file).replaceAll('\\', '/');
  return { uri: path.split('/').map(encodeURIComponent).join('/'), uriBaseId: built ? 'LIBRARY' : 'ROOT' };
}
