// `rigseam check`: the findings of files and folders.
import { relative } from 'node:path';
import { createProject } from '../../language/resolve/project.ts';
import type { Dates } from '../../language/resolve/types.ts';
import { examined, fleetsExamined, membersOf, unique } from '../../language/rules/check.ts';
import type { Finding } from '../../language/rules/finding.ts';
import type { Member } from '../../language/rules/member.ts';
import type { Silences } from '../../language/rules/silenced.ts';
import { type FileSummary, summaryOf, workspaceFindings } from '../../language/rules/workspace.ts';
import { affectedBy } from './changed.ts';
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

/** Findings with what is needed to print them. */
export interface Checked {
  /** How many files were checked. */
  readonly files: number;
  readonly findings: readonly Finding[];
  /** The text that a finding stands in. */
  readonly text: (file: string) => string;
  readonly rangeIn: (file: string, span: Finding['at']) => Range;
  readonly from: string;
}

export interface CheckOptions {
  /** Paths that changed: only files that this can have given other findings are checked. */
  readonly changed?: ReadonlySet<string>;
  readonly tell?: (done: number, total: number) => void;
}

const withWorked = (summary: FileSummary, worked: readonly string[]): FileSummary => ({
  ...summary,
  silences: { ...summary.silences, worked: [...summary.silences.worked, ...worked] },
});

const unjudged: Silences = { written: [], worked: [] };

/**
 * Checks every file asked for. A folder is also checked as a whole: histories that no rig reads, things that nothing uses. Of a
 * part of it that changed, findings of the whole are told where they stand in that part; whether the lines of a policy silence
 * something is left to a check of everything.
 */
export function checked(asked: Asked, dates: Dates, { changed, tell }: CheckOptions = {}): Checked {
  const disk = diskOf(asked);
  const project = createProject(disk);
  const found: Finding[] = [];
  const summaries = new Map<string, FileSummary>();
  const files = changed ? affectedBy(changed, asked.files, project, disk) : asked.files;
  const part = changed && new Set(files);
  const walked = asked.whole && files.length > 0 ? asked.files : files;
  const members = new Map<string, readonly Member[]>();
  const ofFleets: string[] = [];
  for (const [done, path] of walked.entries()) {
    tell?.(done, walked.length);
    let silences = unjudged;
    if (!part || part.has(path)) {
      const said = examined(project, path, dates, disk.exists);
      found.push(...said.findings);
      members.set(path, said.members);
      if (project.records(path)?.declarations.some(({ kind }) => kind === 'fleet')) ofFleets.push(path);
      if (!part) silences = said.silences;
    }
    if (asked.whole) summaries.set(path, summaryOf(project, path, silences));
    project.release(path);
  }
  // Fleets come last: of rigs that were checked they need not read anything.
  for (const path of ofFleets) {
    const said = fleetsExamined(project, path, dates, (file) => {
      const known = members.get(file);
      if (known) return known;
      const made = membersOf(project, file, dates);
      project.release(file);
      return made;
    });
    found.push(...said.findings);
    const summary = summaries.get(path);
    if (summary && !part) summaries.set(path, withWorked(summary, said.worked));
  }
  if (asked.whole) found.push(...workspaceFindings(summaries.values()).filter(({ file }) => !part || part.has(file)));

  const byFile = new Map<string, (span: Finding['at']) => Range>();
  const text = (file: string) => project.text(file) ?? '';
  return {
    files: files.length,
    findings: unique(found),
    text,
    rangeIn(file, span) {
      let toRange = byFile.get(file);
      if (!toRange) {
        toRange = positions(text(file));
        byFile.set(file, toRange);
      }
      return toRange(span);
    },
    from: asked.from,
  };
}

/** The findings as they are printed, with paths as seen from the current folder. */
export function printed({ files, findings, rangeIn, from }: Checked): CheckResult {
  const name = (file: string) => (file.startsWith('library/') ? file : relative(from, file) || file);
  return {
    files,
    findings: findings.map(
      ({ file, at, rule, severity, message, related }): PrintedFinding => ({
        file: name(file),
        range: rangeIn(file, at),
        rule,
        severity,
        message,
        ...(related && {
          related: related.map((r) => ({ file: name(r.file), range: rangeIn(r.file, r.at), message: r.message })),
        }),
      }),
    ),
  };
}

export const check = (asked: Asked, dates: Dates): CheckResult => printed(checked(asked, dates));

/** A line a finding, and a sum. */
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

/** `path:line:column: severity rule: message`, one line a finding and nothing else: for whatever annotates lines. */
export function compactText({ findings }: CheckResult): string {
  return findings
    .map(({ file, range: { start }, severity, rule, message }) => {
      const place = `${file}:${start.line + 1}:${start.character + 1}`;
      return `${place}: ${severity} ${rule}: ${message.replace(/\s+/g, ' ').trim()}\n`;
    })
    .join('');
}
