// `check --cache`: files that are as they were when they were last judged are not judged again.
import { randomUUID } from 'node:crypto';
import picomatch from 'picomatch';
import type { Dates } from '../../language/resolve/types.ts';
import type { Finding } from '../../language/rules/finding.ts';
import { isUnchanged, type Known, programFingerprint, settledStat } from '../cache/fingerprints.ts';
import { type FoundBefore, foundBefore, type Kept, type Key, keepFound, markUsed } from '../cache/found-before.ts';
import { isBelow } from '../files.ts';
import { type Checked, together } from './check.ts';
import { type Judged, judging, toldBy } from './judging.ts';
import { type Asked, diskOf } from './paths.ts';
import type { Range } from './text.ts';

/** All that a check said, with the place of each finding in lines, so that nothing has to be read to print it. */
interface Outcome {
  readonly findings: readonly Finding[];
  readonly ranges: readonly (readonly [file: string, start: number, end: number, range: Range])[];
}

export interface KeptCheck {
  /** The folder of what is kept; it is made if it is not there. */
  readonly folder: string;
  /** The program that checks: another build may find other things. */
  readonly script: string;
  readonly judge: (paths: readonly string[]) => Promise<readonly Judged[]>;
  /** Told why nothing could be kept; the check itself goes on. */
  readonly warn: (message: string) => void;
}

/** The same as `checked`, from what was found before as far as it still holds. */
export async function checkedWithKept(
  asked: Asked,
  dates: Dates,
  { folder, script, judge, warn }: KeptCheck,
): Promise<Checked> {
  const began = Date.now();
  const disk = diskOf(asked);
  const named = asked.files.filter((file) => !isBelowAny(asked.folders, file));
  const key: Key = {
    program: programFingerprint(script),
    dates,
    roots: asked.roots,
    asked: [...asked.folders, ...named],
  };
  const before = foundBefore<Outcome>(folder, key);
  const same = (before?.known ?? []).map((known) => isUnchanged(known, disk.read));
  if (before?.outcome && same.every((is) => is) && sameFiles(before.files, asked.files)) {
    markUsed(folder, key);
    return fromOutcome(before.outcome, asked, disk.read);
  }
  const held = before ? stillHolding(before, same, asked.files) : new Map<string, Judged>();
  const changed = asked.files.filter((path) => !held.has(path));
  for (const one of await judge(changed)) held.set(one.path, one);
  const judged = asked.files.flatMap((path) => held.get(path) ?? []);
  const { project } = judging(disk, dates);
  const result = together(asked, dates, project, judged);
  try {
    const { known, kept, whole } = tableOf(judged, asked, began);
    const outcome = whole ? { outcome: outcomeOf(result) } : {};
    keepFound<Outcome>(folder, key, { files: asked.files, known, ...outcome }, kept, randomUUID());
  } catch (error) {
    warn(
      `What was found could not be kept in ${folder}: ${(error as Error).message}. The check itself is not concerned.`,
    );
  }
  return result;
}

const isBelowAny = (folders: readonly string[], path: string) => folders.some((folder) => isBelow(folder, path));

const sameFiles = (a: readonly string[], b: readonly string[]) =>
  a.length === b.length && a.every((path, i) => path === b[i]);

/** The judged files of before that nothing has happened to. */
function stillHolding(before: FoundBefore<Outcome>, same: readonly boolean[], files: readonly string[]) {
  const asked = new Set(files);
  const known = new Set(before.known.map(({ path }) => path));
  const added = files.filter((path) => !known.has(path));
  const held = new Map<string, Judged>();
  for (const { judged, dependsOn } of before.kept()) {
    if (!asked.has(judged.path) || !dependsOn.every((place) => same[place])) continue;
    if (added.length > 0 && claimsOneOf(judged, added)) continue;
    held.set(judged.path, judged);
  }
  return held;
}

function claimsOneOf(judged: Judged, paths: readonly string[]): boolean {
  const { claims } = toldBy(judged);
  return claims.some((pattern) => {
    const matches = picomatch(pattern, { nobrace: true, noext: true });
    return paths.some((path) => matches(path));
  });
}

/**
 * The table of all that the judged files depend on. What claims or lists files outside of the folders asked about is not kept:
 * a new one there would not be seen. `whole`: all is kept, so that what was said together depends on the table alone.
 */
function tableOf(judged: readonly Judged[], asked: Asked, began: number) {
  const known: Known[] = [];
  const places = new Map<string, number>();
  const place = ({ path, fingerprint }: Pick<Known, 'path' | 'fingerprint'>): number => {
    const name = `${fingerprint} ${path}`;
    let at = places.get(name);
    if (at === undefined) {
      at = known.length;
      places.set(name, at);
      const stat = settledStat(path, began);
      known.push({ path, fingerprint, ...(stat === undefined ? {} : { stat }) });
    }
    return at;
  };
  const asList = new Set(asked.files);
  let whole = asked.whole;
  const kept: Kept[] = [];
  for (const one of judged) {
    const { dependsOn, claims, lists } = toldBy(one);
    if (lists.some((path) => !asList.has(path))) whole = false;
    if (claims.every((pattern) => isBelowAny(asked.folders, picomatch.scan(pattern).base)))
      kept.push({ judged: one, dependsOn: dependsOn.map(place) });
    else whole = false;
  }
  return { known, kept, whole };
}

function outcomeOf({ findings, rangeIn }: Checked): Outcome {
  const ranges = new Map<string, Outcome['ranges'][number]>();
  for (const { file, at, related = [] } of findings) {
    for (const one of [{ file, at }, ...related])
      ranges.set(placeOf(one.file, one.at), [one.file, one.at[0], one.at[1], rangeIn(one.file, one.at)]);
  }
  return { findings, ranges: [...ranges.values()] };
}

function fromOutcome({ findings, ranges }: Outcome, asked: Asked, read: (path: string) => string | undefined): Checked {
  const known = new Map(ranges.map(([file, start, end, range]) => [placeOf(file, [start, end]), range]));
  return {
    files: asked.files.length,
    findings,
    text: (file) => read(file) ?? '',
    rangeIn(file, span) {
      const range = known.get(placeOf(file, span));
      if (!range) throw new Error(`no place is kept for ${file}`);
      return range;
    },
    from: asked.from,
  };
}

const placeOf = (file: string, [start, end]: Finding['at']) => `${start} ${end} ${file}`;
