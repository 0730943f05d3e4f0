// Changes of many files, made in memory one after the other and judged as they are made: nothing is written before all is known.
import { format } from '../format/format.ts';
import { edited } from '../format/index.ts';
import { createProject, type Files, type Project } from '../resolve/project.ts';
import type { Dates } from '../resolve/types.ts';
import { examined } from '../rules/check.ts';
import type { Finding } from '../rules/finding.ts';
import type { Insertion } from './inspection-place.ts';

/** A file as it was and as it is to be. `before` is undefined where it is new. */
export interface Change {
  readonly path: string;
  readonly before: string | undefined;
  readonly after: string;
}

export interface Draft {
  /** Sees the texts with what was changed so far. */
  readonly project: Project;
  readonly files: Files;
  /**
   * Makes a change, with its lines in form and all others as they were. Where it would bring an error to what `judged` says it is
   * not made, and the errors are given back. `spares`: errors that come to stand on other lines than these do not hinder it; they
   * are kept in `caused`.
   */
  insert(change: Insertion, judged: string, spares?: 'other-lines'): readonly Finding[];
  /** The same for a file that is not there yet. */
  create(path: string, text: string): readonly Finding[];
  readonly caused: readonly Finding[];
  /** All files that differ now, by path. */
  changes(): readonly Change[];
}

/** A draft over files. `exists` tells of photos and papers, where the front door can. */
export function draftOver(under: Files, dates: Dates, exists?: (path: string) => boolean): Draft {
  const texts = new Map<string, string>();
  const files: Files = {
    ...under,
    read: (path) => texts.get(path) ?? under.read(path),
    under(folder) {
      const listed = under.under(folder);
      const fresh = [...texts.keys()].filter((path) => path.startsWith(`${folder}/`) && !listed.includes(path));
      return fresh.length === 0 ? listed : [...listed, ...fresh].sort();
    },
  };
  const project = createProject(files);
  const known = new Map<string, readonly Finding[]>();
  const errorsIn = (path: string) =>
    examined(project, path, dates, exists).findings.filter(({ severity }) => severity === 'error');

  const caused: Finding[] = [];
  const attempt = (
    path: string,
    text: string,
    judged: string,
    hinders: (finding: Finding) => boolean = () => true,
  ): readonly Finding[] => {
    const before = known.get(judged) ?? (files.read(judged) === undefined ? [] : errorsIn(judged));
    const old = texts.get(path);
    texts.set(path, text);
    project.changed([path]);
    const after = errorsIn(judged);
    const fresh = withoutThose(after, before);
    if (!fresh.some(hinders)) {
      known.set(judged, after);
      caused.push(...fresh);
      return [];
    }
    known.set(judged, before);
    if (old === undefined) texts.delete(path);
    else texts.set(path, old);
    project.changed([path]);
    return fresh.filter(hinders);
  };

  return {
    project,
    files,
    caused,
    insert({ file, at, text }, judged, spares) {
      const { after, first, last } = inForm(files.read(file) ?? '', at, text);
      return attempt(file, after, judged, (finding) => {
        if (!spares || finding.file !== file) return !spares;
        const line = linesIn(after, finding.at[0]);
        return line >= first && line <= last;
      });
    },
    create: (path, text) => attempt(path, edited(text, format(text).edits), path),
    changes: () =>
      [...texts]
        .map(([path, after]) => ({ path, before: under.read(path), after }))
        .filter(({ before, after }) => before !== after)
        .sort((a, b) => (a.path < b.path ? -1 : 1)),
  };
}

/** A text with a piece put into it; of its lines only those that came are brought into form. */
function inForm(text: string, [start, end]: Insertion['at'], piece: string) {
  const after = text.slice(0, start) + piece + text.slice(end);
  const first = linesIn(after, start + (/^[\r\n]*/.exec(piece)?.[0].length ?? 0));
  const last = linesIn(after, start + piece.trimEnd().length);
  return { after: edited(after, format(after, { first, last }).edits), first, last };
}

const linesIn = (text: string, end: number): number => text.slice(0, end).split('\n').length - 1;

/** Those findings that are not among others: places move, so they are told by what they say. */
function withoutThose(all: readonly Finding[], others: readonly Finding[]): readonly Finding[] {
  const key = ({ file, rule, message }: Finding) => `${file}\n${rule}\n${message}`;
  const left = new Map<string, number>();
  for (const one of others) left.set(key(one), (left.get(key(one)) ?? 0) + 1);
  return all.filter((one) => {
    const count = left.get(key(one)) ?? 0;
    left.set(key(one), count - 1);
    return count <= 0;
  });
}
