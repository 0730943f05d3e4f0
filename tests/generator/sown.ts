// A generated workspace with mistakes sown into it at a known rate, and what must be said of it: this, and nothing else.
import { draws } from './draw.ts';
import { fleetMistakes, mistakes } from './mistakes.ts';
import { pageOf } from './page.ts';
import { commonFiles, fleetFiles, type PlacedRig, placedRigs, type WorkspaceOptions } from './workspace.ts';

/** A finding that must be made; lines count from 1. */
export interface Expected {
  readonly file: string;
  readonly line: number;
  readonly rule: string;
}

export interface Sown {
  readonly texts: ReadonlyMap<string, string>;
  readonly expected: readonly Expected[];
}

/** One rig in `every`, and one fleet in two, has one mistake; the kinds take turns, so that all come where there are enough. */
export function sownWorkspace(options: WorkspaceOptions, every: number): Sown {
  const texts = new Map(Object.entries(commonFiles));
  const expected: Expected[] = [];
  const start = draws(options.seed).whole(0, mistakes.length - 1);
  // A kind that a rig gives no occasion for waits for the next rig.
  const waiting = [...mistakes.slice(start), ...mistakes.slice(0, start)];
  let since = 0;
  for (const placed of placedRigs(options)) {
    for (const [path, text] of Object.entries(placed.texts)) texts.set(path, text);
    since++;
    if (since < every) continue;
    for (const [i, mistake] of waiting.entries()) {
      const made = withMistake(placed, mistake);
      if (!made) continue;
      for (const [path, text] of Object.entries(made.texts)) texts.set(path, text);
      expected.push(...made.expected);
      waiting.splice(i, 1);
      waiting.push(mistake);
      since = 0;
      break;
    }
  }
  let number = 0;
  for (const [path, text] of fleetFiles(options)) {
    const page = pageOf(text);
    const mistake = fleetMistakes[(start + (number >> 1)) % fleetMistakes.length] as (typeof fleetMistakes)[number];
    const line = number++ % 2 === 0 ? mistake.make(page) : undefined;
    texts.set(path, page.text());
    if (line !== undefined) expected.push({ file: path, line, rule: mistake.rule });
  }
  return { texts, expected };
}

function withMistake({ rig, file, texts }: PlacedRig, mistake: (typeof mistakes)[number]) {
  const newest = Object.keys(texts).at(-1) as string;
  const own = pageOf(texts[file] as string);
  const records = newest === file ? own : pageOf(texts[newest] as string);
  const found = mistake.make({ rig, own, records });
  if (!found) return undefined;
  const where = found.in === own ? file : newest;
  const expected: Expected[] = [{ rule: mistake.rule, line: found.line }, ...(found.also ? [found.also] : [])].map(
    (one) => ({ file: where, ...one }),
  );
  return { texts: { [file]: own.text(), [newest]: records.text() }, expected };
}
