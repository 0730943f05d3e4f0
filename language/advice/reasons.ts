// Reasons in sentences, each with the record that it follows from and the kind of the figure behind it.
import { ageStart } from '../due/index.ts';
import type { Event, Origin } from '../resolve/types.ts';
import { moistureTrend } from '../seams/state.ts';
import { addPeriod } from '../values/calendar.ts';
import { rounded } from '../values/exact.ts';
import { type Facts, ofSilicone } from './facts.ts';
import type { AdviceRow, Cite, InterimRow } from './row.ts';
import type { Reason } from './schema.ts';

/** `on 2026-04-18`; a rough day as it was written: `about 2019`, `in 2019-06`. */
export function on({ record, first, last }: Event): string {
  if (first === last) return `on ${first}`;
  const text = 'date' in record ? record.date.text : last;
  return /^(about|before) /.test(text) ? text : `in ${text}`;
}

/** The place in a record where an item is spoken of, else its line. */
export function placeIn(event: Event, item: string): NonNullable<Reason['record']> {
  const places = [...event.findings.flatMap((finding) => finding.places), ...event.places];
  return { file: event.file, at: places.find((one) => one.item === item)?.at ?? event.record.at };
}

const recorded = (text: string, event: Event, item: string): Reason => ({
  text,
  record: placeIn(event, item),
  kind: 'record',
});
/** A sentence that rests on a stated figure. */
const figure = (text: string, origin: Origin): Reason => ({
  text,
  record: { file: origin.file, at: origin.at },
  kind: origin.kind,
  ...(origin.source === undefined ? {} : { source: origin.source }),
});
const plain = (text: string, kind: Reason['kind'] = 'record'): Reason => ({ text, kind });

export const ordinal = (n: number): string => ['first', 'second', 'third', 'fourth', 'fifth'][n - 1] ?? `${n}th`;

const cited: Readonly<Record<Cite, (facts: Facts) => Reason | undefined>> = {
  condition({ stretch, item }) {
    const { condition, defects } = stretch;
    if (!condition || condition.word === 'renewed') return undefined;
    const also = defects.length > 0 ? ` (${defects.join(', ')})` : '';
    return recorded(`Found ${condition.word}${also} ${on(condition.event)}.`, condition.event, item.name);
  },
  looked({ stretch, item }) {
    if (!stretch.looked) return plain('No look at it is on record.');
    if (stretch.looked === stretch.condition?.event) return undefined;
    return recorded(`Last looked at ${on(stretch.looked)}.`, stretch.looked, item.name);
  },
  coats({ coats, stretch }) {
    if (coats.count === 0 || stretch.layers.at(-1)?.kind === 'tape') return undefined;
    const many = `${coats.count} ${coats.count === 1 ? 'coat lies' : 'coats lie'} on it, the first bead counted`;
    if (coats.unknown)
      return plain('Nobody knows how many coats lie on it: that counts as the limit.', 'common practice');
    if (!coats.limit) return plain(`${many}; its limit is not known.`);
    return figure(`${many}; ${coats.limit.value} may lie one on another.`, coats.limit.origin);
  },
  underneath({ ground, item }) {
    const { layer } = ground;
    if (!layer) return undefined;
    const what =
      layer.material ??
      (layer.known === 'unknown' ? 'a sealant that nobody knows' : 'a sealant that the record does not name');
    const since =
      layer.by === 'factory' || !layer.event ? '' : ` (${layer.by === 'found' ? 'found' : 'laid'} ${on(layer.event)})`;
    const text = `On it lies ${what}${since}.`;
    return layer.event ? recorded(text, layer.event, item.name) : plain(text);
  },
  silicone({ silicone, stretch, item }) {
    if (!silicone) return undefined;
    const layer = [...stretch.layers, stretch.coating].findLast((one) => ofSilicone(one)) ?? stretch.film;
    if (!layer?.event) return plain('Its surface is silicone.');
    const gone = layer === stretch.film;
    const did = gone
      ? 'lay here and was taken off; its film may still be there'
      : layer.by === 'found'
        ? `was found here ${on(layer.event)}`
        : `was laid here ${on(layer.event)}`;
    return recorded(`Silicone (${layer.material}) ${did}.`, layer.event, item.name);
  },
  leak({ leak, item }) {
    if (!leak) return undefined;
    const where = leak.inside === undefined ? '' : `, seen inside: ${leak.inside}`;
    const times = leak.earlier > 0 ? `, for the ${ordinal(leak.earlier + 1)} time` : '';
    const repair = leak.repairs.at(-1)?.event;
    const since = repair
      ? `it was ${repair.record.word} ${on(repair)}, and no look since has found it sound and dry`
      : 'no repair is recorded since';
    return recorded(`Water came in ${on(leak.event)}${where}${times}; ${since}.`, leak.event, item.name);
  },
  reading({ stretch, item }) {
    const last = stretch.readings.at(-1);
    if (!last) return undefined;
    const change = moistureTrend(stretch) ?? 0;
    const before = stretch.readings.at(-2);
    const points = rounded(Math.abs(change), 1).replace(/\.0$/, '');
    const trend =
      before && change !== 0
        ? `, ${change > 0 ? 'up' : 'down'} ${points} points from ${before.text} ${on(before.event)}`
        : '';
    return recorded(`${last.text} was read ${on(last.event)}${trend}.`, last.event, item.name);
  },
  wet({ stretch, item }) {
    const { wet } = stretch;
    if (!wet) return undefined;
    const again = wet.last === wet.since ? '' : `, and again ${on(wet.last)}`;
    return recorded(`Found wet ${on(wet.since)}${again}; no drying is recorded since.`, wet.last, item.name);
  },
  bare({ stretch, item }) {
    const { bare } = stretch;
    return (
      bare && recorded(`It was ${bare.record.word} ${on(bare)}, and nothing was laid on it since.`, bare, item.name)
    );
  },
  work({ stretch, ground, item }) {
    const event =
      stretch.condition?.word === 'renewed'
        ? stretch.condition.event
        : ground.layer?.by === 'work'
          ? ground.layer.event
          : undefined;
    if (!event) return undefined;
    const since = stretch.condition?.word === 'renewed' ? ', and not looked at since' : '';
    const names = 'materials' in event.record ? (event.record.materials ?? []).map(({ name }) => name) : [];
    const using = names.length > 0 ? ` with ${names.join(', ')}` : '';
    return recorded(`It was ${event.record.word}${using} ${on(event)}${since}.`, event, item.name);
  },
  struck({ scene, item }) {
    const strike = scene.state.strikes.findLast(({ waiting }) => waiting.includes(item.name));
    if (!strike) return undefined;
    const by =
      'by' in strike.event.record && strike.event.record.by !== undefined ? ` by ${strike.event.record.by}` : '';
    return recorded(
      `The roof was struck${by} ${on(strike.event)}, and nobody has looked here since.`,
      strike.event,
      item.name,
    );
  },
  'not-seen'({ stretch, item }) {
    const { notSeen } = stretch;
    return notSeen && recorded(`It could not be seen ${on(notSeen.last)}.`, notSeen.last, item.name);
  },
  temporary({ stretch, item, scene }) {
    const { temporary } = stretch;
    if (!temporary) return undefined;
    const { event, until } = temporary;
    const over = until && until.last < scene.dates.asOf ? 'did' : 'does';
    const end = until ? `; the cover ${over} until ${until.text}` : '';
    return recorded(`It was covered ${on(event)}${end}.`, event, item.name);
  },
  part({ part }) {
    if (!part) return undefined;
    const { low, high } = part.life.value;
    return figure(`The part was fitted on ${part.fitted} and lasts ${low.text} to ${high.text}.`, part.life.origin);
  },
  surface({ sides, scene }) {
    if (sides.length === 0) return undefined;
    const { roof } = scene.view.rig;
    return roof && roof.surface === sides[0]
      ? figure(`It lies on ${sides.join(' and ')}.`, roof.origin)
      : plain(`It lies on ${sides.join(' and ')}.`);
  },
  tightened({ stretch, item }) {
    const { tightened } = stretch.lastOf;
    return tightened && recorded(`Its bolts were tightened ${on(tightened)}.`, tightened, item.name);
  },
  unread: () => plain('Lines about it could not be read.'),
  limit({ stretch, scene }) {
    const { inspectLimit } = scene.view.rig.policy;
    const end = stretch.looked && addPeriod(stretch.looked.last, inspectLimit.value);
    return end === undefined
      ? undefined
      : figure(`The policy allows ${inspectLimit.value.text} between two looks: until ${end}.`, inspectLimit.origin);
  },
  worn({ worn, item }) {
    if (item.count > 1 || worn === 0) return undefined;
    return plain(
      worn >= 0.995 ? 'That is all of its length.' : `That is ${Math.max(1, Math.round(worn * 100))} % of its length.`,
    );
  },
};

/** What is said in any case, where there is something to say. */
const always: readonly Cite[] = ['leak', 'wet', 'not-seen', 'temporary'];

/** The reasons of a row: what the records say, then why that calls for it. Never empty. */
export function reasonsOf(row: AdviceRow | InterimRow, facts: Facts, all = true): readonly Reason[] {
  const cites = [...new Set([...row.cites, ...(all ? always : [])])];
  const reading: readonly Cite[] = all && facts.call !== undefined && !cites.includes('reading') ? ['reading'] : [];
  const said = [...cites, ...reading].map((cite) => cited[cite](facts)).filter((reason) => reason !== undefined);
  return [...said, whyOf(row)];
}

/** The row's own reason. Where a source is published in part, its text says which. */
export function whyOf({ why, source }: Pick<AdviceRow, 'why' | 'source'>): Reason {
  return { text: why, kind: kindOf(source), source };
}

export const kindOf = (source: string): Reason['kind'] =>
  (['published', 'common practice', 'from memory'] as const).find((kind) => source.startsWith(kind)) ??
  'common practice';

/** The reason for a leak of which nobody knows where it comes in. */
export const leakReason = (leak: NonNullable<Facts['leak']>): Reason => {
  const where = leak.inside === undefined ? '' : `, seen inside: ${leak.inside}`;
  const times = leak.earlier > 0 ? `, for the ${ordinal(leak.earlier + 1)} time` : '';
  const since =
    leak.repairs.length > 0 ? 'no look since the repair has found it sound and dry' : 'no repair is recorded since';
  const text = `Water came in on ${ageStart(leak.event)}${where}${times}; ${since}.`;
  return { text, record: { file: leak.event.file, at: leak.event.record.at }, kind: 'record' };
};
