// The page that hangs in the yard at 7 in the morning.
import type { DayPlan } from '../../schedule/day-plan.ts';
import type { System } from '../../values/display.ts';
import { listing, paragraph } from '../book/facts.ts';
import { bookPage } from '../book/page.ts';
import { type Content, type Element, el } from '../sheets/element.ts';
import { blank, choice, clock, field, list } from '../sheets/marks.ts';
import { shown } from '../sheets/shown.ts';
import { temperatureUnit } from '../sheets/units.ts';
import { rowsOf, unitOf } from './rows.ts';
import { morningStyle } from './style.ts';

export function morningPage(day: DayPlan, system: System): string {
  const title = `${day.name}, ${day.date}`;
  return bookPage(
    title,
    [
      paragraph(
        `As of ${day.asOf}`,
        day.date === day.asOf ? '' : `: ${day.date} is the first day from then on with work`,
        '. Times are planned ones, from 08:00 on, without breaks.',
      ),
      limits(day, system),
      ...held(day),
      rowsOf(day),
      below(day),
    ],
    morningStyle,
  );
}

/** Wind: from memory. Dew point: common practice of coating work. */
function limits({ limits: lines }: DayPlan, system: System): Element {
  const unit = temperatureUnit(system);
  const margin = system === 'us' ? '5 F' : '3 C';
  const wind = system === 'us' ? '25 mph' : '40 km/h';
  return el(
    'section',
    { class: 'strip', 'aria-label': 'Go or no go' },
    paragraph(
      el('b', {}, 'GO / NO GO '),
      choice('GO'),
      choice('NO GO'),
      field('who says so', blank('who says so', 'middle')),
    ),
    ...(lines.length > 0
      ? lines.map((text) => paragraph(shown(text)))
      : [paragraph('No label limits the work of the day.')]),
    paragraph(
      field('air', blank('air'), ` ${unit}`),
      field('surface', blank('surface'), ` ${unit}`),
      field('dew point', blank('dew point'), ` ${unit}`),
      `gun and lay only with the surface ${margin} above it`,
    ),
    paragraph(
      field('no rain until', clock('no rain until')),
      field('wind', blank('wind')),
      `stop and come down above ${wind}, at thunder, in the dark`,
    ),
  );
}

function held({ doNotDispatch }: DayPlan): readonly Element[] {
  if (doNotDispatch.length === 0)
    return [
      paragraph(
        el('b', {}, 'DO NOT DISPATCH: '),
        'nothing in the records holds a rig back. That is no word on how it is today.',
      ),
    ];
  const rows = doNotDispatch.map((one): readonly Content[] => [
    unitOf(one),
    blank(`${one.rig}, row in the yard`),
    [el('b', {}, shown(one.word)), one.item === undefined ? '' : ` ${shown(one.item)}`, `: ${shown(one.reason)}`],
    one.since,
    one.leaves ?? 'not booked',
    one.planned ?? 'no visit planned',
    blank(`${one.rig}, who may release it`, 'middle'),
  ]);
  const heads = ['unit', 'row', 'reason', 'since', 'leaves next', 'mended', 'released by'];
  return [
    el(
      'section',
      { class: 'held' },
      el('div', {}, el('h2', {}, 'DO NOT DISPATCH'), listing('These stay in the yard', heads, rows, '')),
    ),
  ];
}

function below({ kit, wetDay, waiting, changed, changedMore }: DayPlan): Element {
  const part = (title: string, lines: readonly Content[], none: string): Element =>
    el('section', {}, el('h2', {}, title), lines.length === 0 ? paragraph(none) : list(lines));
  const more = changedMore > 0 ? [`and ${changedMore} more: see the schedule`] : [];
  return el(
    'div',
    { class: 'columns' },
    part(
      'Kit of the day',
      kit.map(({ text }) => [choice(''), shown(text)]),
      'Nothing but hand tools.',
    ),
    part(
      'If it is wet',
      wetDay.map(({ rig, what }) => `${rig === undefined ? '' : `${shown(rig)}: `}${shown(what)}`),
      'Nothing indoors is known of.',
    ),
    el(
      'div',
      {},
      part(
        'Waiting for parts',
        waiting.parts.map((one) => [
          unitOf(one),
          ` ${shown(one.title)}: ${shown(one.material)}, there from ${one.until}`,
        ]),
        'Nothing.',
      ),
      part(
        'Waiting for a gap',
        waiting.gap.map((one) => [
          unitOf(one),
          ` ${shown(one.title)}: ${shown(one.because)}${one.firstDay === undefined ? '' : ` First day that would do: ${one.firstDay}.`}`,
        ]),
        'Nothing.',
      ),
    ),
    el(
      'div',
      {},
      part(
        'Drying out',
        waiting.dryOut.map((one) => [unitOf(one), ` next reading ${one.nextReading}: ${shown(one.title)}`]),
        'Nothing.',
      ),
      part(
        'Changed since the schedule before',
        [...changed.slice(0, 5).map(shown), ...more],
        'Nothing is known to have changed.',
      ),
    ),
  );
}
