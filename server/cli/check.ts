// `rigseam check`: the findings of files and folders.
import { relative } from 'node:path';
import type { Project } from '../../language/resolve/project.ts';
import type { Dates } from '../../language/resolve/types.ts';
import { fleetsExamined, membersOf, unique } from '../../language/rules/check.ts';
import type { Finding } from '../../language/rules/finding.ts';
import type { Silences } from '../../language/rules/silenced.ts';
import { summaryOf, workspaceFindings } from '../../language/rules/workspace.ts';
import { affectedBy } from './changed.ts';
import { type Judged, judging, toldBy } from './judging.ts';
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
  readonly tell?: Tell;
}
export type Tell = (done: number, total: number) => void;

/**
 * Checks every file asked for. A folder is also checked as a whole: histories that no rig reads, things that nothing uses. Of a
 * part of it that changed, findings of the whole are told where they stand in that part; whether the lines of a policy silence
 * something is left to a check of everything.
 */
export function checked(asked: Asked, dates: Dates, { changed, tell }: CheckOptions = {}): Checked {
  const disk = diskOf(asked);
  const { project, judge } = judging(disk, dates);
  const files = changed ? affectedBy(changed, asked.files, project, disk) : asked.files;
  const judged = files.map((path, done) => {
    tell?.(done, files.length);
    return judge(path);
  });
  return together(asked, dates, project, judged);
}

/**
 * What files say, each by itself, and what they say together. `judged` may be a part of the files asked for; of the others only
 * what they declare counts.
 */
export function together(asked: Asked, dates: Dates, project: Project, judged: readonly Judged[]): Checked {
  const byPath = new Map(judged.map((one) => [one.path, one]));
  const isPart = judged.length < asked.files.length;
  const found = judged.flatMap(({ findings }) => findings);
  const worked: string[] = [];
  // Fleets come last: of rigs that were judged they need not read anything.
  for (const { path, hasFleet } of judged) {
    if (!hasFleet) continue;
    const said = fleetsExamined(project, path, dates, (file) => {
      const known = byPath.get(file);
      if (known) return toldBy(known).members;
      const made = membersOf(project, file, dates);
      project.release(file);
      return made;
    });
    found.push(...said.findings);
    worked.push(...said.worked);
  }
  if (asked.whole && judged.length > 0) {
    const rest = isPart ? asked.files.filter((path) => !byPath.has(path)) : [];
    const summaries = [
      ...judged.map((one) => {
        const { summary } = toldBy(one);
        return isPart ? { ...summary, silences: unjudged } : summary;
      }),
      ...rest.map((path) => {
        const summary = summaryOf(project, path, unjudged);
        project.release(path);
        return summary;
      }),
    ];
    found.push(...workspaceFindings(summaries, isPart ? [] : worked).filter(({ file }) => !isPart || byPath.has(file)));
  }
  return withTexts(unique(found), judged.length, asked.from, (file) => project.text(file) ?? '');
}

const unjudged: Silences = { written: [], worked: [] };

function withTexts(findings: readonly Finding[], files: number, from: string, text: (file: string) => string): Checked {
  const byFile = new Map<string, (span: Finding['at']) => Range>();
  return {
    files,
    findings,
    text,
    rangeIn(file, span) {
      let toRange = byFile.get(file);
      if (!toRange) {
        toRange = positions(text(file));
        byFile.set(file, toRange);
      }
      return toRange(span);
    },
    from,
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
