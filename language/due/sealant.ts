// Dates of a bead: when it is looked at hard, and from when tape may go over it.
import { coverAllowed } from '../seams/clocks.ts';
import { isThere, type SeamState, type Stretch } from '../seams/state.ts';
import { groundOf } from '../seams/surface.ts';
import { addPeriod } from '../values/calendar.ts';
import { ageStart, type Due, dateInput, dueOn, type Ground, originOf, type Plain, periodInput } from './due.ts';
import { earliest } from './findings.ts';

/** At most one date of each kind for an item: the first on which a stretch is looked at hard, the last on which all may be covered. */
export function sealantDues(ground: Ground): readonly Due[] {
  const out: Due[] = [];
  for (const seam of ground.state.seams.values()) {
    if (seam.role !== 'sealed' || !isThere(seam, ground.dates.asOf)) continue;
    const hard = seam.unread ? undefined : earliest(seam.stretches.map((stretch) => lookHard(seam, stretch, ground)));
    if (hard) out.push(dueOn(hard, ground));
    const covers = seam.stretches.map((stretch) => cover(seam, stretch, ground)).filter((plain) => plain !== undefined);
    const last = covers.sort((a, b) => (a.date < b.date ? -1 : 1)).at(-1);
    if (last) out.push(dueOn(last, ground));
  }
  return out;
}

/**
 * The look-hard date of the sealant on top: its period from when it was laid (the factory's from when the rig was built; of
 * a bead that was found, from that day), moved on by each later finding of sound. A look that found it worse on or after
 * that date was that hard look: the finding has its own follow-up, and the seam is looked at again by the policy's interval.
 */
function lookHard({ item }: SeamState, stretch: Stretch, { view }: Ground): Plain | undefined {
  const { layer } = groundOf(stretch, item, view.rig.roof);
  if (layer?.kind !== 'sealant' || layer.material === undefined || layer.last === undefined) return undefined;
  const material = view.material(layer.material);
  const every = material?.kind === 'sealant' ? material.lookHard : undefined;
  if (!every) return undefined;
  const laid = ageStart({ first: layer.first ?? layer.last, last: layer.last });
  const sound = stretch.sound && ageStart(stretch.sound);
  const moved = sound !== undefined && sound > laid;
  const start = moved ? sound : laid;
  const source = moved ? stretch.sound : layer.event;
  const date = addPeriod(start, every.value);
  const look = stretch.condition;
  const looked = look && look.word !== 'renewed' && look.word !== 'sound' ? ageStart(look.event) : undefined;
  if (look && looked !== undefined && looked >= date) {
    const { inspect } = view.rig.policy;
    return {
      kind: 'look-hard',
      item: item.name,
      date: addPeriod(looked, inspect.value),
      because: `${item.name} was to be looked at hard by ${date} and was found ${look.word} on ${looked}; it is looked at again within ${inspect.value.text}.`,
      explained: {
        rule: 'a bead that was looked at hard and not found sound is looked at again by the interval of the policy',
        formula: 'looked + every',
        inputs: [dateInput('looked', looked, originOf(look.event)), periodInput('every', inspect)],
      },
      source: look.event,
      notBefore: looked,
    };
  }
  const did = layer.by === 'work' ? 'sealed' : layer.by === 'found' ? 'found sealed' : 'first sealed';
  return {
    kind: 'look-hard',
    item: item.name,
    date,
    because: moved
      ? `${item.name} was found sound on ${start}; ${layer.material} is looked at hard every ${every.value.text}.`
      : `${item.name} was ${did} with ${layer.material} on ${start}; it is looked at hard every ${every.value.text}, and was not found sound since.`,
    explained: {
      rule: 'a bead is looked at hard by the period of its sealant; a finding of sound moves the date on',
      formula: 'start + every',
      inputs: [dateInput('start', start, source && originOf(source)), periodInput('every', every)],
    },
    recurs: { start, every: every.value },
    ...(source ? { source } : {}),
    notBefore: start,
  };
}

/** While fresh sealant may not be covered, or had better not: from when tape may go over it. */
function cover({ item }: SeamState, stretch: Stretch, { view, dates }: Ground): Plain | undefined {
  const answer = coverAllowed(stretch, { date: dates.asOf }, view.material);
  const { from, figure, layer } = answer;
  if ((answer.level !== 'no' && answer.level !== 'not yet') || !from || !layer || !figure || figure.value === 'never')
    return undefined;
  const { low, high } = figure.value;
  const range = low.text === high.text ? high.text : `${low.text} to ${high.text}`;
  const laid = layer.last as string;
  const both = from.notYet === from.yes ? '' : ` (never before ${from.notYet})`;
  return {
    kind: 'cover',
    nature: 'from',
    item: item.name,
    date: from.yes,
    because: `${item.name} was sealed with ${layer.material} on ${laid}, which takes ${range} before tape may go over it: from ${from.yes} on${both}.`,
    explained: {
      rule: 'sealant cures before it is covered; the high figure is the safe one',
      formula: 'laid + cover',
      inputs: [
        dateInput('laid', laid, layer.event && originOf(layer.event)),
        { name: 'cover', value: high.text, text: range, origin: figure.origin },
      ],
    },
    ...(layer.event ? { source: layer.event } : {}),
    changesOn: [...new Set([from.notYet, from.yes])],
  };
}
