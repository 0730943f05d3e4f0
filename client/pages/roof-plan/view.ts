// What the page looks like for what it was told.
import type { VNode } from 'preact';
import type { RoofPlan, RoofPlanBy } from '../../../language/protocol/roof-plan.ts';
import type { FromPage, Show } from '../../roof-plan/messages.ts';
import { el } from '../element.ts';
import { walk } from '../walk.ts';
import { picture } from './picture.ts';

/** What the page knows beside what it was told. */
export interface Here {
  /** The seam that the Tab key reaches. */
  readonly at: string | undefined;
  /** The seam under the pointer or with the focus. */
  readonly over: string | undefined;
}

export interface Doing {
  say(message: FromPage): void;
  move(here: Partial<Here>): void;
  /** Gives the focus to a seam. */
  focus(item: string): void;
}

type Seam = RoofPlan['seams'][number];

/** The id of the element of a seam. */
export const seamId = (item: string): string => `seam-${item}`;

export function view({ plan, by, note, lit, rig }: Show, here: Here, doing: Doing): VNode {
  return el(
    'main',
    {},
    el('h1', {}, `Roof of ${plan?.name ?? rig.name}`),
    el('p', { class: note ? 'note' : 'hidden', role: 'status' }, note),
    plan ? content(plan, by, lit, here, doing) : null,
  );
}

function content(plan: RoofPlan, by: RoofPlanBy, lit: readonly string[], here: Here, doing: Doing): VNode {
  const order = [...plan.seams.filter(isDrawn), ...plan.seams.filter((seam) => !isDrawn(seam))].map(({ item }) => item);
  const at = [here.at, ...lit, ...order].find((item) => item !== undefined && order.includes(item));
  const button = (item: string) => ({
    id: seamId(item),
    role: 'button',
    tabindex: item === at ? 0 : -1,
    'aria-label': plan.seams.find((seam) => seam.item === item)?.says,
    'aria-current': lit.includes(item) ? 'true' : undefined,
    onFocus: () => doing.move({ at: item, over: item }),
    onBlur: () => doing.move({ over: undefined }),
  });
  const whole = (item: string) => ({
    key: item,
    class: lit.includes(item) ? 'seam lit' : 'seam',
    onClick: () => doing.say({ kind: 'go', item }),
    onPointerEnter: () => doing.move({ over: item }),
    onPointerLeave: () => doing.move({ over: undefined }),
  });
  const onKeyDown = (event: KeyboardEvent) => {
    if (at === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    const to = order[walk(event.key, order.indexOf(at), order.length) ?? -1];
    // A button of the list is pressed by the keys that press buttons.
    const isGo = (event.key === 'Enter' || event.key === ' ') && !(event.target instanceof HTMLButtonElement);
    if (to === undefined && !isGo) return;
    event.preventDefault();
    if (to === undefined) doing.say({ kind: 'go', item: at });
    else doing.focus(to);
  };
  const { svg, legend } = plan.drawings[by];
  const drawn = picture(svg, (item) => ({ button: button(item), whole: whole(item), title: titleOf(plan, item) }));
  const elsewhere = plan.seams.filter((seam) => !isDrawn(seam));
  return el(
    'div',
    {},
    el('p', {}, `As of ${plan.asOf}`),
    tools(by, doing),
    el(
      'div',
      { role: 'group', 'aria-label': `Seams of ${plan.name}: arrow keys walk, Enter goes to the text`, onKeyDown },
      drawn ? el('div', { class: 'picture' }, drawn) : null,
      drawn ? el('ul', { class: 'legend', 'aria-label': 'Legend' }, ...legend.map((one) => legendLine(one, by))) : null,
      el(
        'p',
        { class: 'detail' },
        here.over !== undefined || lit.length > 0
          ? said(plan, here, lit)
          : 'Point at a seam, or put the cursor on its line in the text.',
      ),
      elsewhere.length > 0 ? el('h2', { id: 'elsewhere' }, 'Not on the drawing') : null,
      elsewhere.length > 0
        ? el(
            'ul',
            { class: 'elsewhere', 'aria-labelledby': 'elsewhere' },
            ...elsewhere.map((seam) =>
              el(
                'li',
                whole(seam.item),
                el(
                  'button',
                  { type: 'button', ...button(seam.item), 'aria-label': `${seam.says}, ${seam.missing}` },
                  drawn ? swatch(seam.class[by], by) : null,
                  el('span', {}, `${seam.says} (${seam.missing})`),
                ),
              ),
            ),
          )
        : null,
    ),
    ...plan.notes.map((note) => el('p', { class: 'about' }, note)),
    el(
      'p',
      { class: 'hidden', role: 'status' },
      lit.length > 0 ? said(plan, { at: undefined, over: undefined }, lit) : '',
    ),
  );
}

const isDrawn = ({ missing }: Seam) => missing === undefined;

function tools(by: RoofPlanBy, doing: Doing): VNode {
  const choice = (value: RoofPlanBy, words: string) =>
    el(
      'label',
      {},
      el('input', {
        type: 'radio',
        name: 'by',
        value,
        checked: by === value,
        onChange: () => doing.say({ kind: 'by', by: value }),
      }),
      words,
    );
  const button = (kind: 'save' | 'print', words: string) =>
    el('button', { type: 'button', onClick: () => doing.say({ kind }) }, words);
  return el(
    'div',
    { class: 'tools' },
    el('fieldset', {}, el('legend', {}, 'Show by'), choice('condition', 'condition'), choice('due', 'due date')),
    button('save', 'Save as SVG…'),
    button('print', 'Print…'),
  );
}

function swatch(id: string, by: RoofPlanBy): VNode {
  return el(
    'svg',
    { class: 'swatch', viewBox: '0 0 9 5', 'aria-hidden': 'true' },
    el('rect', {
      class: 'roof-line',
      x: 0.2,
      y: 0.2,
      width: 8.6,
      height: 4.6,
      fill: `url(#plan-${by}-${id})`,
      'stroke-width': 0.3,
    }),
  );
}

const legendLine = ({ id, words }: { readonly id: string; readonly words: string }, by: RoofPlanBy): VNode =>
  el('li', { key: id, 'data-legend': id }, swatch(id, by), words);

function titleOf({ seams }: RoofPlan, item: string): string {
  const seam = seams.find((one) => one.item === item);
  if (!seam) return item;
  return seam.why ? `${seam.says}: ${seam.why}` : seam.says;
}

/** The seam that is pointed at, or what the cursor in the text speaks of. */
function said(plan: RoofPlan, { over }: Here, lit: readonly string[]): string {
  if (over !== undefined) return titleOf(plan, over);
  const [only, ...more] = lit;
  if (only !== undefined && more.length === 0) return titleOf(plan, only);
  return `${lit.length} seams: ${lit.join(', ')}`;
}
