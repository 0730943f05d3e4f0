// What an insurer asks for, and whether the records have it. Nothing here says what a policy of insurance demands.
import { damp, moistureLevels } from '../../seams/index.ts';
import { shown } from '../sheets/shown.ts';
import { evidenceOf } from './account.ts';
import { daysLater, elapsed, within } from './elapsed.ts';
import type { Incident } from './incident-facts.ts';
import { dateOf, materialsOf } from './telling.ts';

export interface Asked {
  readonly what: string;
  readonly has: 'recorded' | 'MISSING' | 'in part';
  readonly detail: string;
}

export function checklist(incident: Incident): readonly Asked[] {
  const { leak, photos, protections, lastRepair, looks, after } = incident;
  const record = evidenceOf(leak.event);
  const asked = (what: string, detail: string | undefined, missing = ''): Asked => ({
    what,
    has: detail === undefined ? 'MISSING' : 'recorded',
    detail: detail ?? missing,
  });
  const count = (when: string) => {
    const some = photos.filter((photo) => photo.when === when);
    return some.length === 0 ? undefined : `${some.length}, ${dateOf((some[0] as (typeof some)[number]).event)}`;
  };
  const events = after.map(({ event }) => event);
  const paid = events.filter((event) => evidenceOf(event)?.paid);
  const papers = events.filter((event) => evidenceOf(event)?.papers?.length);
  const repairs = leak.repairs.map(({ event }) => event);
  const used = repairs.flatMap((event) => materialsOf(event));
  const lots = repairs.filter((event) => evidenceOf(event)?.lot !== undefined);
  const rough = record?.date.rough ? `${record.date.text}: not the exact day` : undefined;
  const later = looks.find(({ event }) => lastRepair && event.first > lastRepair.last);
  return [
    rough === undefined
      ? asked('the day it was found', dateOf(leak.event))
      : { what: 'the day it was found', has: 'in part', detail: rough },
    asked('the time of day', leak.event.time),
    asked('who found it', record?.by === undefined ? undefined : shown(record.by)),
    asked('the place inside', leak.inside === undefined ? undefined : shown(leak.inside)),
    asked(
      'where the water came in',
      leak.suspects.length > 0 ? `suspected: ${leak.suspects.map(shown).join(', ')}` : undefined,
    ),
    asked(
      'weather and wind, in a note',
      record?.note === undefined ? undefined : shown(record.note),
      'no note with the record',
    ),
    asked('photo before the damage', count('before')),
    asked('photo of the damage, before the end of the repair', count('during')),
    asked('photo after the repair', count('after')),
    protectedSoon(incident, protections.length > 0),
    dried(incident),
    asked('repair', lastRepair ? `${dateOf(lastRepair)}, ${daysLater(leak.event, lastRepair)}` : undefined),
    asked('who repaired', namesOf(repairs)),
    asked(
      'materials of the repair',
      used.length > 0 ? [...new Set(used.map(({ name }) => shown(name)))].join(', ') : undefined,
    ),
    asked(
      'lots of the materials',
      lots.length > 0 ? lots.map((event) => shown(evidenceOf(event)?.lot ?? '')).join(', ') : undefined,
    ),
    asked('a look after the repair, on a later day', later ? dateOf(later.event) : undefined),
    asked(
      'what was paid',
      paid.length > 0 ? `${paid.length} ${paid.length === 1 ? 'payment' : 'payments'}` : undefined,
    ),
    asked('invoices and other papers', papers.length > 0 ? String(papers.length) : undefined),
  ];
}

function namesOf(events: Incident['protections']): string | undefined {
  const names = [...new Set(events.flatMap((event) => evidenceOf(event)?.by ?? []))];
  return names.length === 0 ? undefined : names.map(shown).join(', ');
}

function protectedSoon({ leak, protections }: Incident, any: boolean): Asked {
  const what = 'protection within a day';
  const first = protections[0];
  if (!any || !first) return { what, has: 'MISSING', detail: 'no temporary cover is recorded' };
  const answer = within(elapsed(leak.event, first), 24);
  const when = `${dateOf(first)}, ${daysLater(leak.event, first)}`;
  if (answer === 'yes' || first.last === leak.event.last) return { what, has: 'recorded', detail: when };
  const told = answer === 'no' ? 'more than 24 hours' : 'whether within 24 hours the dates do not tell';
  return { what, has: 'in part', detail: `${when}: ${told}` };
}

/** The first reading after the wet one that is not above the level at which nothing is closed up. */
export function firstLow({ leak, readings }: Incident) {
  return readings.find(
    ({ event, moisture }) => event !== leak.event && event.first >= leak.event.first && !damp(moisture),
  );
}

function dried(incident: Incident): Asked {
  const { leak, dryings } = incident;
  const what = 'drying, with readings';
  const low = firstLow(incident);
  if (!low && dryings.length === 0)
    return { what, has: 'MISSING', detail: 'neither drying nor a later reading is recorded' };
  if (!low)
    return { what, has: 'in part', detail: `no reading of ${moistureLevels.tooWet} % or less is recorded since` };
  const detail = `${low.moisture.text} on ${dateOf(low.event)}, ${daysLater(leak.event, low.event)}`;
  return { what, has: dryings.length > 0 ? 'recorded' : 'in part', detail };
}
