// The inspection sheet of a rig: seams in walking order, gauges, an indoor page, room to write, the lines of the record.

import type { RigView } from '../../resolve/types.ts';
import type { ScheduledDue } from '../../schedule/index.ts';
import { isThere, type RigState, type SeamState } from '../../seams/index.ts';
import { conditions } from '../../statements/words.ts';
import { planOf } from '../roof/index.ts';
import { cautionsBox } from './cautions-box.ts';
import { type Content, type Element, el } from './element.ts';
import { findingLines } from './finding-lines.ts';
import { gaugeTable } from './gauges.ts';
import { indoor } from './indoor.ts';
import { lastFinding, lastNote } from './last-finding.ts';
import { blank, choice, clock, day, field, list, room, table, typed } from './marks.ts';
import { page } from './page.ts';
import { shown } from './shown.ts';
import { temperatureUnit } from './units.ts';
import { lookingDangers } from './visit-dangers.ts';
import { walkingOrder } from './walking.ts';

export interface InspectionInput {
  readonly view: RigView;
  readonly state: RigState;
  /** What falls due on this rig. */
  readonly dues: readonly ScheduledDue[];
}

export function inspectionSheet({ view, state, dues }: InspectionInput): string {
  const { rig } = view;
  const unit = rig.identity.unit?.value;
  const there = (name: string): SeamState | undefined => {
    const seam = state.seams.get(name);
    return seam && isThere(seam, state.asOf) ? seam : undefined;
  };
  return page(
    `Inspection sheet: ${rig.name}`,
    el(
      'p',
      {},
      ...(unit === undefined ? [] : ['Unit ', typed(unit), '. ']),
      `As of ${state.asOf}, computed from what was recorded. Ticked here, typed in afterwards.`,
    ),
    header(view),
    cautionsBox(lookingDangers(view, state.asOf), 'h2'),
    ...asked(dues),
    el('h2', {}, 'Outside, in walking order'),
    el(
      'p',
      {},
      'Before anything is washed: stains show where water went. One photo of the whole, one close with a ruler.',
    ),
    ...walkingOrder(rig).flatMap(({ title, items }) => {
      const seams = items.flatMap((item) => there(item.name) ?? []);
      return seams.length === 0 ? [] : [leg(title, seams, view)];
    }),
    el('div', { class: 'wide whole' }, gaugeTable()),
    el(
      'p',
      { class: 'small' },
      'Wet overrides every word: water, a stain, something soft or a smell is written down as wet.',
    ),
    el('h3', {}, 'What was not seen, and why'),
    ...unseen([...state.seams.values()].filter(({ item }) => there(item.name))),
    room('what was not seen, and why', 3),
    el('h3', {}, 'The roof as it was found last'),
    el('div', { class: 'plan' }, planOf(view, state, { inPage: true, width: 156, id: 'found' })),
    ...indoor(view, state),
    el('h2', {}, 'Room to write'),
    room('anything else', 6),
    el('h2', {}, 'What to write down afterwards'),
    el(
      'p',
      {},
      `In the history of ${shown(rig.name)}. Strike out lines that do not hold; \`rest sound\` only if all the rest was seen and found sound.`,
    ),
    el('pre', {}, findingLines(rig, there).join('\n')),
  );
}

function header({ rig }: RigView): Element {
  const unit = temperatureUnit(rig.policy.units.value);
  return el(
    'div',
    {},
    el(
      'p',
      {},
      field('date', day('date of the look')),
      field('time', clock('time')),
      field('by', blank('who looks', 'middle')),
      field('who stands by', blank('who stands by', 'middle')),
      field('air', blank('air'), ` ${unit}`),
    ),
    el(
      'p',
      {},
      'Weather of the last two days: ',
      choice('dry'),
      choice('dew or frost'),
      choice('rain'),
      choice('rain with wind'),
      choice('snow'),
      choice('driven in rain'),
      field('last rain', day('last rain')),
    ),
  );
}

/** What this look is to answer: what is overdue or due soon comes first. */
function asked(dues: readonly ScheduledDue[]): readonly Element[] {
  const open = dues.filter(({ status, kind }) => status !== 'not-due' && looks.has(kind));
  if (open.length === 0) return [];
  return [
    el('h2', {}, 'Asked for'),
    list(
      open.map(
        (due) =>
          `${due.date}${due.status === 'overdue' ? ' (overdue)' : ''}: ${shown(due.title)}. ${shown(due.because)}`,
      ),
    ),
  ];
}

const looks: ReadonlySet<string> = new Set([
  'inspect',
  'event-look',
  'storage-look',
  'look-hard',
  'follow-up',
  'not-seen',
  're-read',
  'leak-look',
]);

function leg(title: string, seams: readonly SeamState[], { rig }: RigView): Element {
  const heads = ['seam', 'found', 'from – to', 'photo', 'moisture'];
  const system = rig.policy.units.value;
  const rows = seams.map((seam): readonly Content[] => {
    const { name, count } = seam.item;
    const note = lastNote(seam);
    const label = shown(name);
    return [
      [
        el('b', {}, typed(name)),
        count > 1 ? ` (${count})` : '',
        el('div', { class: 'small' }, `last: ${lastFinding(seam, system)}`, note ? [' – ', typed(note)] : ''),
      ],
      [...conditions.map((word) => choice(word)), choice('not seen'), choice('wet')],
      [blank(`${label}, from`), ' – ', blank(`${label}, to`)],
      blank(`${label}, photo number`),
      [blank(`${label}, moisture`), ' %'],
    ];
  });
  return el('div', { class: 'wide look' }, table(title, heads, rows));
}

function unseen(seams: readonly SeamState[]): readonly Element[] {
  const names = seams
    .filter(({ stretches }) => stretches.some(({ notSeen }) => notSeen))
    .map(({ item }) => shown(item.name));
  return names.length === 0 ? [] : [el('p', {}, `Not seen last time: ${names.join(', ')}.`)];
}
