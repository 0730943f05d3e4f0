// Rigs that must not leave: something is open, wet or leaks, or what was laid may not be driven yet.
import type { Event, RigView } from '../resolve/types.ts';
import { clocksOf, firstDay, isThere, type Layer, rigState, type Stretch } from '../seams/index.ts';
import { addDays } from '../values/calendar.ts';
import type { HeldBack } from './day-plan.ts';
import { departureAfter, type RigDays } from './obstacle.ts';
import type { Schedule } from './types.ts';

/**
 * Everything that keeps a rig in the yard on a day, from its records. A temporary cover does not release it: who may, says the
 * yard. Nothing here says of any other rig that it is tight.
 */
export function heldBack(view: RigView, days: RigDays, schedule: Schedule, date: string): readonly HeldBack[] {
  const { rig } = view;
  const state = rigState(view, date);
  const unit = rig.identity.unit?.value;
  const leaves = departureAfter(addDays(date, -1), days)?.first;
  const found = (word: string, reason: string, event: Event, item?: string): HeldBack => {
    const planned = item === undefined ? undefined : visitOn(item, rig.name, schedule, date);
    return {
      rig: rig.name,
      ...(unit === undefined ? {} : { unit }),
      ...(item === undefined ? {} : { item }),
      word,
      reason,
      since: event.first,
      file: event.file,
      at: event.record.at,
      ...(planned === undefined ? {} : { planned }),
      ...(leaves === undefined ? {} : { leaves }),
    };
  };
  const seams = [...state.seams.values()].flatMap((seam) => {
    if (!isThere(seam, date)) return [];
    const { name } = seam.item;
    const open = seam.stretches.find(isOpen);
    const wet = seam.stretches.find((stretch) => stretch.wet !== undefined);
    return [
      ...(open ? [found('open', `${name} is open`, open.onset.open ?? (open.condition?.event as Event), name)] : []),
      ...(wet?.wet ? [found('wet', `${name} was found wet`, wet.wet.since, name)] : []),
    ];
  });
  const running = [...state.seams.values()].flatMap(({ item, stretches }) =>
    stretches.flatMap(({ layers }) => {
      const top = layers.at(-1);
      const safe = top && driveSafe(top, view);
      if (!top?.event || safe === undefined || safe <= date) return [];
      return [{ item: item.name, material: top.material as string, safe, event: top.event }];
    }),
  );
  const [latest] = running.sort((a, b) => (a.safe > b.safe ? -1 : 1));
  const drives = latest
    ? [found('drive clock', `${latest.material} may not be driven before ${latest.safe}`, latest.event, latest.item)]
    : [];
  const leaks = state.leaks
    .filter(({ closed }) => closed === undefined)
    .map(({ event, suspects, repairs }) =>
      found(
        'leak',
        repairs.length > 0 ? 'a leak was mended, and no later look has found it tight' : 'a leak is open',
        event,
        suspects[0],
      ),
    );
  return [...seams, ...leaks, ...drives];
}

/** The day from which what was laid may be driven without doubt. */
function driveSafe({ material: name, last, event }: Layer, view: RigView): string | undefined {
  const material = name === undefined ? undefined : view.material(name);
  if (!material || last === undefined) return undefined;
  const moment = { last, ...(event?.time === undefined ? {} : { time: event.time }) };
  const drive = clocksOf(moment, material).find((clock) => clock.name === 'drive');
  return drive && firstDay(drive.ends.safe);
}

function isOpen({ condition }: Stretch): boolean {
  return condition?.word === 'open';
}

/** The first day from a day on with work on an item. */
function visitOn(item: string, rig: string, { visits }: Schedule, date: string): string | undefined {
  const mending = visits.filter(
    (visit) =>
      visit.rig === rig &&
      (visit.days.at(-1) as string) >= date &&
      visit.tasks.some(({ task, items }) => task !== 'inspect' && task !== 'cover' && items.includes(item)),
  );
  return mending.map(({ days }) => days[0] as string).sort()[0];
}
