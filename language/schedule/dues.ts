// What falls due, with the visit that settles it.
import type { Due } from '../due/index.ts';
import type { RigWork } from './board.ts';
import { endOf, type Held } from './place.ts';
import { settles } from './settle.ts';
import type { ScheduledDue } from './types.ts';
import { namesOf, nouns, type PlanWord } from './words.ts';

/** The dues of a rig by date. `idOf` names a visit as the schedule does. */
export function scheduledDues({ ground, held }: RigWork, idOf: (visit: Held) => string): readonly ScheduledDue[] {
  const rig = ground.view.rig.name;
  const ids = dueIds(rig, ground.dues);
  return ground.dues.map((due, i) => {
    const by = settledBy(due, held);
    return {
      id: ids[i] as string,
      rig,
      kind: due.kind,
      ...(due.item === undefined ? {} : { item: due.item }),
      title: titleOf(due),
      date: due.date,
      status: due.status,
      days: due.days,
      because: due.because,
      ...(by ? { settledBy: idOf(by) } : {}),
    };
  });
}

/** The names that the dues of a rig have in a schedule, in their order: of the rig, the kind and what it is about. */
export function dueIds(rig: string, dues: readonly Due[]): readonly string[] {
  const seen = new Map<string, number>();
  return dues.map(({ kind, item, word }) => {
    const stem = [rig, kind, item ?? word].filter((part) => part !== undefined).join('/');
    const times = (seen.get(stem) ?? 0) + 1;
    seen.set(stem, times);
    return times === 1 ? stem : `${stem}/${times}`;
  });
}

/** The first visit that does what a due asks for; of what holds only from a day on, not before that day. */
function settledBy(due: Due, held: readonly Held[]): Held | undefined {
  return [...held]
    .sort((a, b) => (endOf(a) < endOf(b) ? -1 : 1))
    .find((visit) => {
      if (due.nature === 'from' && endOf(visit) < due.date) return false;
      return visit.jobs.some((job) => settles(job, due));
    });
}

function titleOf({ kind, word, item, items = [] }: Due): string {
  const named = namesOf(items.length > 0 ? items : item === undefined ? [] : [item]);
  const where = named === '' ? 'the roof' : named;
  switch (kind) {
    case 'inspect':
      return `inspect ${where}`;
    case 'event-look':
      return `look at ${where} after a blow`;
    case 'storage-look':
      return 'look at the roof before or after storage';
    case 'look-hard':
      return `look hard at ${where}`;
    case 'follow-up':
      return word === 'leak'
        ? `find and mend the leak${named === '' ? '' : ` at ${named}`}`
        : `follow up ${where}: ${word}`;
    case 'not-seen':
      return `look at ${where}, which was not seen`;
    case 're-read':
      return `follow up the reading at ${where}`;
    case 'leak-look':
      return `look whether the leak${named === '' ? '' : ` at ${named}`} is mended`;
    case 'strip':
      return `strip ${where}`;
    case 'cover':
      return `tape may go over ${where}`;
    case 'temporary-cover':
      return `temporary cover on ${where} expires`;
    case 'tape-second-half':
      return `tape on ${where} is in its second half`;
    case 'tape-end':
      return `tape on ${where} is at its end`;
    case 'best-before':
      return `${word} is best before this day`;
    case 'quote':
      return 'a quote ends';
    case 'plan':
      return `planned: ${word === undefined ? 'work' : (nouns[word as PlanWord] ?? word)} of ${where}`;
  }
}
