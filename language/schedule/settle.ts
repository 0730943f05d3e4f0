// Which planned work settles which due.
import type { Due, DueKind } from '../due/index.ts';
import type { Job } from './job.ts';
import type { PlanWord } from './words.ts';

const look: readonly PlanWord[] = ['inspect'];
const repair: readonly PlanWord[] = ['seal', 'tape', 'patch', 'coat', 'replace', 'rebed', 'tighten'];

/** A due of each kind is settled by any of these; by none where it is no work. */
const words: Readonly<Record<DueKind, readonly PlanWord[]>> = {
  inspect: look,
  'event-look': look,
  'storage-look': look,
  'look-hard': ['inspect', 'seal', 'strip', 'replace', 'tape'],
  'follow-up': repair,
  'not-seen': look,
  're-read': look,
  'leak-look': look,
  strip: ['strip', 'replace', 'rebed'],
  cover: ['tape'],
  'temporary-cover': ['cover', ...repair],
  'tape-second-half': look,
  'tape-end': ['strip', 'tape'],
  'best-before': [],
  quote: [],
  plan: [],
};

/** Findings whose follow-up is another look rather than a repair. */
const looksOnly: ReadonlySet<string> = new Set(['chalky', 'hairline', 'wet']);

/** Whether a planned job is what a due asks for, on everything that the due is about. */
export function settles({ word, items, plan, view }: Pick<Job, 'word' | 'items' | 'plan' | 'view'>, due: Due): boolean {
  if (due.kind === 'plan') {
    return due.sourceEvent?.at === plan.statement.at && due.sourceEvent.file === plan.file;
  }
  const byLook = due.kind === 'follow-up' && looksOnly.has(due.word ?? '') ? look : [];
  if (![...words[due.kind], ...byLook].includes(word)) return false;
  if (items.length === 0) return true;
  const named = due.items ?? (due.item === undefined ? [] : [due.item]);
  // Water may have come in by any of its suspects: work on one of them is the answer to it.
  if (due.kind === 'follow-up' && due.word === 'leak' && named.length > 0)
    return named.some((name) => items.includes(name));
  const about = named.length > 0 ? named : view.rig.items.map(({ name }) => name);
  return about.every((name) => items.includes(name));
}
