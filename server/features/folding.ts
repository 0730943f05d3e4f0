// Folding: blocks, runs of remarks, regions between remarks, and the lines of `use`.
import type { FoldingRangeProvider } from 'langium/lsp';
import { type FoldingRange, FoldingRangeKind } from 'vscode-languageserver';
import { allStatements } from '../cursor/standing.ts';
import { type Features, type Here, hereIn } from './here.ts';

export const foldings = (features: Features): FoldingRangeProvider => ({
  getFoldingRanges(document) {
    const here = hereIn(features, document);
    return [...blocks(here), ...remarks(here), ...regions(here), ...uses(here)];
  },
});

/** A block folds to its heading; the closing brace stays to be seen. */
function* blocks({ lines, document }: Here): Iterable<FoldingRange> {
  for (const { line } of allStatements(lines.lines)) {
    if (!line.block) continue;
    const startLine = document.positionAt(line.at[1]).line;
    const endLine = document.positionAt(line.whole[1]).line - 1;
    if (endLine > startLine) yield { startLine, endLine };
  }
}

function* remarks({ text }: Here): Iterable<FoldingRange> {
  let start: number | undefined;
  const lines = text.split('\n');
  for (let i = 0; i <= lines.length; i++) {
    const isRemark = /^\s*#/.test(lines[i] ?? '');
    if (isRemark) start ??= i;
    else if (start !== undefined) {
      if (i - 1 > start) yield { startLine: start, endLine: i - 1, kind: FoldingRangeKind.Comment };
      start = undefined;
    }
  }
}

/** From `# region NAME` to its `# endregion`, one in another. */
function* regions({ text }: Here): Iterable<FoldingRange> {
  const open: number[] = [];
  for (const [i, line] of text.split('\n').entries()) {
    const [, end] = /^\s*#\s*(end)?region\b/.exec(line) ?? [undefined, null];
    if (end === null) continue;
    if (end === undefined) open.push(i);
    else {
      const startLine = open.pop();
      if (startLine !== undefined) yield { startLine, endLine: i, kind: FoldingRangeKind.Region };
    }
  }
}

function uses({ lines, document }: Here): FoldingRange[] {
  const at = lines.lines.filter(({ head }) => head === 'use').map((line) => document.positionAt(line.at[0]).line);
  const [startLine, endLine] = [at[0], at.at(-1)];
  if (startLine === undefined || endLine === undefined || startLine === endLine) return [];
  return [{ startLine, endLine, kind: FoldingRangeKind.Imports }];
}
