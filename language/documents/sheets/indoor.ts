// The indoor page: leaks are found inside. What to look at, readings at numbered points, leaks that are open.

import type { RigView } from '../../resolve/types.ts';
import { isThere, moistureLevels, type RigState } from '../../seams/index.ts';
import { type Content, type Element, el } from './element.ts';
import { readingPoints } from './last-finding.ts';
import { blank, choice, list, table, typed } from './marks.ts';
import { shown } from './shown.ts';

export function indoor({ rig }: RigView, state: RigState): readonly Element[] {
  const seams = [...state.seams.values()].filter((seam) => isThere(seam, state.asOf));
  const openings = seams
    .filter(({ item }) => item.kind === 'opening' || item.kind === 'gasket')
    .map(({ item }) => item.name);
  const slides = seams.filter(({ item }) => item.kind === 'slide').map(({ item }) => item.name);
  const places = [
    ...openings.map((name) => `ceiling round ${shown(name)}`),
    'ceiling along both side walls',
    'front corners, left and right, top to bottom',
    'rear corners, left and right, top to bottom',
    'cupboards: rear walls, with a torch',
    ...slides.map((name) => `slide ${shown(name)}: upper corners, floor at both ends`),
    'round windows and door',
    'floor along the walls: soft underfoot',
    'under mattresses and seats',
  ];
  const words = ['dry', 'stain', 'wet', 'soft', 'smell', 'hollow tap', 'not seen'];
  const open = state.leaks.filter(({ closed }) => !closed);
  return [
    el('h2', { class: 'new' }, 'Inside'),
    el(
      'div',
      { class: 'wide' },
      table(
        'Look, smell, press, tap the wall',
        ['place', 'found', 'where exactly'],
        places.map((place): readonly Content[] => [
          place,
          words.map((word) => choice(word)),
          blank(`${place}, where exactly`, 'middle'),
        ]),
      ),
    ),
    ...(open.length > 0
      ? [
          el('h3', {}, 'Leaks that are not closed'),
          list(
            open.map(
              ({ event, inside, suspects }) =>
                `${event.last}: ${inside === undefined ? 'no place is recorded' : shown(inside)}${suspects.length > 0 ? `, suspected ${suspects.map(shown).join(', ')}` : ''}. Closed only by a later look, after rain, that finds it sound and dry.`,
            ),
          ),
        ]
      : []),
    readings(state, rig.items.length),
  ];
}

function readings(state: RigState, items: number): Element {
  const points = readingPoints(state.seams.values());
  const known = points.map(({ where, last, trend }, i): readonly Content[] => [
    String(i + 1),
    typed(where),
    `${last}, ${trend}`,
    [blank(`point ${i + 1}, reading`), ' %'],
  ]);
  const more = Array.from({ length: Math.min(6, Math.max(3, items)) }, (_, i): readonly Content[] => {
    const number = points.length + i + 1;
    return [String(number), blank(`point ${number}, place`, 'long'), '', [blank(`point ${number}, reading`), ' %']];
  });
  const { reread, decay, openUp } = moistureLevels;
  return el(
    'div',
    { class: 'wide' },
    table(
      'Readings of the moisture meter at numbered points',
      ['point', 'place', 'last reading', 'now'],
      [...known, ...more],
    ),
    el(
      'p',
      { class: 'small' },
      `Read again from ${reread} %; find the source from ${decay} % or a rise of 4 points; open up from ${openUp} %. Same meter, same mode, same point. A low reading tells of its point alone.`,
    ),
  );
}
