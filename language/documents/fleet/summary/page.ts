// The state of a fleet on one page, to pin up or to hand in.
import { addDays } from '../../../values/calendar.ts';
import { listing, paragraph } from '../../book/facts.ts';
import { type Content, type Element, el } from '../../sheets/element.ts';
import { typed } from '../../sheets/marks.ts';
import { pageWith } from '../../sheets/page.ts';
import { shortened, shown } from '../../sheets/shown.ts';
import type { Budget } from '../budget.ts';
import { entriesBy } from '../budget.ts';
import { type LateLine, lateSum } from '../late.ts';
import { plannedText, waitsText } from '../late-written.ts';
import { endOf, type FleetScene } from '../scene.ts';
import { baysChart, conditionsChart, duesChart, loadChart, moneyChart } from './charts.ts';
import { purchaseRows } from './purchase.ts';
import { summaryStyle } from './style.ts';

/** So many lines fit a page; the papers beside it have all. */
const [mostLate, mostMaterials] = [8, 8];

export function summaryPage(scene: FleetScene, late: readonly LateLine[], budget: Budget): string {
  const { name, asOf, fleet, papers } = scene;
  const system = fleet.policy.units.value;
  const currency = mainCurrency(budget);
  const others = budget.currencies.filter((one) => one !== currency);
  const bays = baysChart(scene);
  return pageWith({
    title: `Summary: ${name}, ${asOf}`,
    more: summaryStyle,
    body: [
      paragraph(
        `As of ${asOf}. Computed from what was recorded and planned; what nobody looked at is not known. All of it stands in `,
        el('span', { class: 'nowrap' }, `${shown(name)}.late.md`),
        ', .budget.md, .schedule.md and .estimate.md.',
      ),
      counts(scene, late),
      el(
        'div',
        { class: 'pictures' },
        duesChart(scene),
        el('div', {}, conditionsChart(scene, system), bays ?? paragraph('There is no indoor bay.')),
        currency === undefined
          ? paragraph('There is no budget: no plan has a price, and nothing that falls due has one.')
          : moneyChart(scene, budget, currency),
        loadChart(scene),
      ),
      others.length > 0
        ? paragraph(
            `The budget in ${others.join(', ')} stands in `,
            el('span', {}, `${shown(name)}.budget.md`),
            ': two currencies are never added up.',
          )
        : null,
      lateList(late),
      purchase(scene),
      el(
        'section',
        { class: 'cautions' },
        el('h2', {}, 'Before anybody goes up'),
        el('ol', {}, ...papers.schedule.cautions.map(({ text }) => el('li', {}, text))),
        el('p', { class: 'small' }, papers.schedule.note),
      ),
    ],
  });
}

/** The one in which most is planned or expected; of equal ones the first. */
function mainCurrency({ entries, currencies }: Budget): string | undefined {
  const counted = new Map(entriesBy(entries, ({ currency }) => currency));
  return [...currencies].sort((a, b) => (counted.get(b)?.length ?? 0) - (counted.get(a)?.length ?? 0))[0];
}

function counts({ rigs, schedule, asOf, papers }: FleetScene, late: readonly LateLine[]): Element {
  const month = addDays(asOf, 30);
  const soon = schedule.visits.filter((visit) => (visit.days[0] as string) <= month && endOf(visit) >= asOf).length;
  const { lines, grave, withoutPlan, withoutDay } = lateSum('', late);
  const leaks = rigs.reduce((sum, { state }) => sum + state.leaks.filter(({ closed }) => !closed).length, 0);
  const fact = (count: number | string, of: string) => el('li', {}, el('b', {}, String(count)), ` ${of}`);
  return el(
    'ul',
    { class: 'counts' },
    fact(rigs.length, rigs.length === 1 ? 'rig' : 'rigs'),
    fact(lines, 'late'),
    fact(grave, 'of them cracked or worse'),
    fact(withoutPlan, 'without a plan'),
    fact(withoutDay, 'without a day'),
    fact(leaks, leaks === 1 ? 'open leak' : 'open leaks'),
    fact(soon, 'visits in 30 days'),
    ...papers.estimate.sums.map(({ total }) => fact(total.text, 'planned in all')),
  );
}

/** A date stays on one line. */
const whole = (date: string): Element => el('span', { class: 'nowrap' }, date);

function lateList(late: readonly LateLine[]): Element {
  const rows = late.slice(0, mostLate).map((line): readonly Content[] => {
    const waits = waitsText(line);
    return [
      [typed(line.rig), `: ${shortened(line.what, 52)}`],
      whole(line.due ?? ''),
      line.daysLate === undefined ? '' : String(line.daysLate),
      line.planned ? whole(line.planned.first) : plannedText(line),
      `${shortened(line.because[0] ?? '', 110)}${waits === '' ? '' : ` Waits for ${shortened(waits, 40)}.`}`,
    ];
  });
  const more = late.length - rows.length;
  return el(
    'div',
    { class: 'late' },
    listing(
      `Late, the gravest first${more > 0 ? ` (${more} more)` : ''}`,
      ['what', 'due', 'days', 'planned', 'why'],
      rows,
      'nothing.',
    ),
  );
}

function purchase(scene: FleetScene): Element {
  const rows = purchaseRows(scene);
  const more = rows.length - mostMaterials;
  return el(
    'div',
    { class: 'purchase' },
    listing(
      `To buy for all rigs together${more > 0 ? ` (${more} more)` : ''}`,
      ['material', 'needed', 'from the shelf', 'buy', 'cost', 'saved'],
      rows.slice(0, mostMaterials),
      'nothing is planned that needs material.',
    ),
  );
}
