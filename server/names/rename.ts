// A rename as new texts for places: everywhere that a thing goes by its name, and nowhere else.
import type { Span } from '../../language/grammar/problem.ts';
import { linesOfText } from '../../language/records/file.ts';
import type { Features } from '../features/here.ts';
import type { Meant } from './meant.ts';
import { type Mention, mentionsIn } from './mentions.ts';
import { clash, malformed, refusalOf } from './new-name.ts';
import { filesKnown, mentionsOfThing } from './search.ts';

export interface Renaming {
  /** The places to write the new name at, by file. */
  readonly places: ReadonlyMap<string, readonly Span[]>;
  /** What the writer has to know, as a sentence. */
  readonly caution?: string;
}

/** The places of a rename, or a sentence that says why it cannot be. */
export function renaming(features: Features, path: string, meant: Meant, name: string): Renaming | string {
  const refusal = refusalOf(meant) ?? malformed(meant, name);
  if (refusal) return refusal;
  if (name === meant.name) return { places: new Map() };
  const files = filesKnown(features, meant.entry ? [path, meant.entry.file] : [path]);
  const found = mentionsOfThing(features, meant, files);
  const taken = clash(features, meant, name, found, files);
  if (taken) return taken;
  const places = new Map<string, Span[]>();
  for (const { file, mention } of found) {
    // What goes by a former name keeps it.
    if (mention.name !== meant.name || mention.role === 'former') continue;
    places.set(file, [...(places.get(file) ?? []), mention.at]);
  }
  for (const [file, spans] of places) {
    const text = features.session.project.text(file) ?? '';
    if (!readsTheSame(text, spans, name))
      return `\`${name}\` would be read as another word in one of the lines that name \`${meant.name}\`; choose another.`;
  }
  const caution = cautionOf(meant);
  return caution === undefined ? { places } : { places, caution };
}

/** Histories that are not at hand cannot be edited: the rig has to remember its name. */
function cautionOf({ kind, name, entry }: Meant): string | undefined {
  const { declaration } = entry ?? {};
  if (kind !== 'rig' || declaration?.kind !== 'rig') return undefined;
  if (!declaration.statements.some((s) => s.word === 'records')) return undefined;
  return `Histories of \`${name}\` in this workspace are renamed too. If some are kept elsewhere, write \`formerly ${name}\` in the rig, and they go on counting.`;
}

/** A text with a new name written at some places. */
export function withName(text: string, spans: readonly Span[], name: string): string {
  let [out, from] = ['', 0];
  for (const [start, end] of spans) {
    out += text.slice(from, start) + name;
    from = end;
  }
  return out + text.slice(from);
}

/** Whether the same names are read afterwards at the same places, but for the new one. */
function readsTheSame(text: string, spans: readonly Span[], name: string): boolean {
  const starts = new Set(spans.map(([start]) => start));
  const before = [...mentionsIn(linesOfText(text).lines)];
  const after = [...mentionsIn(linesOfText(withName(text, spans, name)).lines)];
  const same = (old: Mention, now: Mention | undefined) =>
    now?.role === old.role && now.name === (starts.has(old.at[0]) ? name : old.name);
  return before.length === after.length && before.every((mention, i) => same(mention, after[i]));
}
