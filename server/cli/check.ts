// `rigseam check`: the findings of files and folders.
import { relative } from 'node:path';
import { createProject } from '../../language/resolve/project.ts';
import type { Dates } from '../../language/resolve/types.ts';
import { examined, unique } from '../../language/rules/check.ts';
import type { Finding } from '../../language/rules/finding.ts';
import { type FileSummary, summaryOf, workspaceFindings } from '../../language/rules/workspace.ts';
import { type Asked, diskOf } from './paths.ts';
import { findingText, positions, type Range } from './text.ts';

/** A finding as the JSON output has it: `range` counts lines and characters from 0, as the Language Server Protocol does. */
export interface PrintedFinding {
  readonly file: string;
  readonly range: Range;
  readonly rule: string;
  readonly severity: Finding['severity'];
  readonly message: string;
  readonly related?: readonly { readonly file: string; readonly range: Range; readonly message: string }[];
}

export interface CheckResult {
  readonly files: number;
  readonly findings: readonly PrintedFinding[];
}

/** Checks every file asked for. A folder is also checked as a whole: histories that no rig reads, things that nothing uses. */
export function check(asked: Asked, dates: Dates): CheckResult {
  const disk = diskOf(asked);
  const project = createProject(disk);
  const found: Finding[] = [];
  const summaries: FileSummary[] = [];
  for (const path of asked.files) {
    const { findings, silences } = examined(project, path, dates, disk.exists);
    found.push(...findings);
    if (asked.whole) summaries.push(summaryOf(project, path, silences));
    project.release(path);
  }
  if (asked.whole) found.push(...workspaceFindings(summaries));

  const byFile = new Map<string, (span: Finding['at']) => Range>();
  const rangeIn = (file: string, span: Finding['at']): Range => {
    let toRange = byFile.get(file);
    if (!toRange) {
      toRange = positions(project.text(file) ?? '');
      byFile.set(file, toRange);
    }
    return toRange(span);
  };
  const name = (file: string) => (file.startsWith('library/') ? file : relative(asked.from, file) || file);
  const findings = unique(found).map(
    (finding): PrintedFinding => ({
      file: name(finding.file),
      range: rangeIn(finding.file, finding.at),
      rule: finding.rule,
      severity: finding.severity,
      message: finding.message,
      ...(finding.related
        ? {
            related: finding.related.map((r) => ({
              file: name(r.file),
              range: rangeIn(r.file, r.at),
              message: r.message,
            })),
          }
        : {}),
    }),
  );
  return { files: asked.files.length, findings };
}

export function checkText({ files, findings }: CheckResult): string {
  const lines = findings.map((f) => findingText(f, f.file, f.range));
  const count = (severity: Finding['severity']) => findings.filter((f) => f.severity === severity).length;
  const parts = (['error', 'warning', 'information', 'hint'] as const)
    .filter((s) => count(s) > 0)
    .map(
      (s) => `${count(s)} ${s}${s === 'error' || s === 'warning' || s === 'hint' ? (count(s) === 1 ? '' : 's') : ''}`,
    );
  lines.push(
    `${files} ${files === 1 ? 'file' : 'files'} checked: ${parts.length > 0 ? parts.join(', ') : 'nothing found'}.`,
  );
  return `${lines.join('\n')}\n`;
}
