// Leaks: to be repaired, then to be looked at again, until a look finds them sound and dry.
import type { Leak } from '../seams/state.ts';
import { addPeriod } from '../values/calendar.ts';
import { orBeforeDeparture } from './calendar.ts';
import { ageStart, type Due, dateInput, dueOn, type Ground, originOf, periodInput } from './due.ts';

/** One due for each open leak: the repair, or the look after it. */
export function leakDues(ground: Ground): readonly Due[] {
  return ground.state.leaks.flatMap((leak) => {
    const due = leak.closed ? undefined : leak.repairs.length > 0 ? lookAfter(leak, ground) : repairBy(leak, ground);
    return due ? [due] : [];
  });
}

function about({ inside, suspects }: Leak) {
  const where = inside === undefined ? '' : ` (${inside})`;
  return { where, ...(suspects.length === 1 ? { item: suspects[0] as string } : {}), items: suspects };
}

function again({ earlier }: Leak): string {
  if (earlier === 0) return '';
  return ` It is the ${['second', 'third'][earlier - 1] ?? `${earlier + 1}th`} time.`;
}

/** Its cause is found and repaired within the policy's time for `leak`, or before the rig next leaves. */
function repairBy(leak: Leak, ground: Ground): Due | undefined {
  const within = ground.view.rig.policy.followUp.leak;
  if (!within) return undefined;
  const { where, ...names } = about(leak);
  const start = ageStart(leak.event);
  const { date, departure } = orBeforeDeparture(addPeriod(start, within.value), start, ground.calendar);
  const leaves = departure ? `, and before the rig leaves on ${departure.first}` : '';
  const plain = {
    kind: 'follow-up' as const,
    ...names,
    word: 'leak',
    date,
    because: `Water came in on ${start}${where} and no repair is recorded; its cause is found within ${within.value.text}${leaves}.${again(leak)}`,
    explained: {
      rule: 'a leak is followed up',
      formula: departure ? 'min(leaked + within, departure - 1 day)' : 'leaked + within',
      inputs: [
        dateInput('leaked', start, originOf(leak.event)),
        periodInput('within', within),
        ...(departure ? [dateInput('departure', departure.first, departure.origin)] : []),
      ],
    },
    source: leak.event,
    notBefore: start,
  };
  return dueOn(plain, ground);
}

/** A repair closes nothing: within the policy's time for `repaired-leak` somebody looks whether it held. */
function lookAfter(leak: Leak, ground: Ground): Due | undefined {
  const within = ground.view.rig.policy.lookAfter['repaired-leak'];
  const repair = leak.repairs.at(-1)?.event;
  if (!within || !repair) return undefined;
  const { where, ...names } = about(leak);
  const start = ageStart(repair);
  const plain = {
    kind: 'leak-look' as const,
    ...names,
    word: 'leak',
    date: addPeriod(start, within.value),
    because: `The leak of ${ageStart(leak.event)}${where} was repaired on ${start}; it is open until a look after rain, within ${within.value.text}, finds it sound and dry.${again(leak)}`,
    explained: {
      rule: 'a repaired leak is looked at again',
      formula: 'repaired + within',
      inputs: [dateInput('repaired', start, originOf(repair)), periodInput('within', within)],
    },
    source: repair,
    notBefore: start,
  };
  return dueOn(plain, ground);
}
