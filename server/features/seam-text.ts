// What is known of a seam or an item, as Markdown: what it is, how long, what to do with it, and its state as of the as-of date.
import { adviceFrom, type SeamAdvice } from '../../language/advice/index.ts';
import { seamLength } from '../../language/measure/length.ts';
import type { Dates, Item } from '../../language/resolve/types.ts';
import type { Layer, Stretch } from '../../language/seams/index.ts';
import { dateText, lengthText, type System } from '../../language/values/display.ts';
import type { RigFigures } from '../figures.ts';
import type { Texts } from '../places.ts';
import { explained, inline, whereFrom } from './explained.ts';

export function seamText(item: Item, figures: RigFigures, texts: Texts, dates: Dates): string {
  const { view, state, dues: falling, schedule } = figures;
  const { rig } = view;
  const system = rig.policy.units.value;
  const heading = `**${inline(item.name)}**, ${item.kind} of ${inline(rig.name)} ${whereFrom(item.origin, texts)}`;
  const measured = seamLength(item, rig.roof, system);
  const seam = state.seams.get(item.name);
  const known = rig.kind === 'rig' && seam ? stateLines(seam.stretches, system) : [];
  const dues = schedule.dues
    .filter((due) => due.item === item.name)
    .map((due) => `- ${inline(due.title)}: ${due.date} (${due.status.replace('-', ' ')})`);
  return [
    heading,
    item.doc === undefined ? '' : inline(item.doc),
    measured.ok ? explained(measured.value.all.figure, texts) : '',
    adviceLines(adviceFrom(view, dates, state, falling, item.name)),
    known.length > 0 ? `As of ${state.asOf}:\n\n${known.join('\n')}` : '',
    dues.length > 0 ? `Due:\n\n${dues.join('\n')}` : '',
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

/** What it is, how long, and its state: what is read beside its name while it is chosen. */
export function seamBrief(item: Item, { view: { rig }, state }: RigFigures, texts: Texts): string {
  const system = rig.policy.units.value;
  const measured = seamLength(item, rig.roof, system);
  const seam = state.seams.get(item.name);
  const known = rig.kind === 'rig' && seam ? stateLines(seam.stretches, system) : [];
  return [
    `**${inline(item.name)}**, ${item.kind} of ${inline(rig.name)} ${whereFrom(item.origin, texts)}`,
    item.doc === undefined ? '' : inline(item.doc),
    measured.ok ? `Length: ${measured.value.all.figure.text}` : '',
    known.length > 0 ? `As of ${state.asOf}:\n\n${known.join('\n')}` : '',
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

/** The advice in two lines for each stretch on which it differs: what to do and by when; why, and from when. */
function adviceLines(advice: readonly SeamAdvice[]): string {
  if (advice.length === 0) return '';
  const lines = advice.map(({ action, what, where, by, interim, reasons, allowed }) => {
    const place = where === undefined ? '' : `${where}: `;
    const late = by?.status === 'overdue' ? ', overdue' : '';
    const until = by === undefined ? '' : ` (by ${by.date}${late})`;
    const cover = interim ? [`Until then: ${inline(interim.what)}`] : [];
    const why = reasons[0] ? [inline(reasons[0].text)] : [];
    return `- ${place}**${action}**${until}. ${inline(what)}\n  ${[...why, ...cover, ...allowed.map(({ text }) => inline(text))].join(' ')}`;
  });
  return `Advice:\n\n${lines.join('\n')}`;
}

function stateLines(stretches: readonly Stretch[], system: System): string[] {
  return stretches.map((stretch) => {
    const whole = stretches.length === 1;
    const to = stretch.to === undefined ? 'its end' : lengthText(stretch.to, system);
    const where = whole ? '' : `${lengthText(stretch.from, system)} to ${to}: `;
    return `- ${where}${[conditionOf(stretch), layersOf(stretch.layers), looksOf(stretch)].filter(Boolean).join('; ')}`;
  });
}

function conditionOf({ condition, wet, bare, defects }: Stretch): string {
  const words = [
    bare ? `bare since ${dateText(bare.last)}` : '',
    condition === undefined
      ? 'no condition recorded'
      : condition.word === 'renewed'
        ? `renewed ${dateText(condition.event.last)}, not looked at since`
        : `${condition.word} on ${dateText(condition.event.last)}`,
    ...defects,
    wet ? 'found wet' : '',
  ];
  return words.filter(Boolean).join(', ');
}

function layersOf(layers: readonly Layer[]): string {
  if (layers.length === 0) return '';
  const names = layers.map(({ kind, by, material, last }) => {
    const what = material === undefined ? `${kind} that nobody named` : inline(material);
    return `${what}${last === undefined || by === 'factory' ? ` (${by})` : ` ${dateText(last)}`}`;
  });
  return `from below: ${names.join(', ')}`;
}

function looksOf({ looked, notSeen }: Stretch): string {
  if (notSeen) return `not seen on ${dateText(notSeen.last.last)}`;
  return looked === undefined ? 'never looked at on record' : `last looked at ${dateText(looked.last)}`;
}
