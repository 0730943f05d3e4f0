// The advice on a rig as a section of Markdown: what is to be done, what is looked at, and one line for what can be left.
import type { SeamAdvice } from '../advice/index.ts';
import { paragraphs, plain, section } from './markdown.ts';

/**
 * The advice under a heading, in the order in which it comes: what is to be done, what is looked at again, each seam with
 * its reasons beneath it, then a line for what can be left alone. Nothing where there is no advice.
 */
export function adviceMarkdown(advice: readonly SeamAdvice[], mark: '#' | '##' = '##', title = 'The advice'): string {
  const rest = advice.filter(({ action }) => action === 'leave');
  const looks = advice.filter(({ action }) => action === 'look again');
  const work = advice.filter((one) => !rest.includes(one) && !looks.includes(one));
  const part = (heading: string, seams: readonly SeamAdvice[]) =>
    seams.length === 0 ? [] : [heading, seams.map(entry).join('\n')];
  return section(
    title,
    paragraphs(
      ...part('To be done, the most pressing first:', work),
      ...part('To be looked at again:', looks),
      rest.length === 0 ? undefined : `Can be left as they are: ${rest.map(name).join(', ')}.`,
    ).trimEnd(),
    mark,
  );
}

const name = ({ item, where }: SeamAdvice) => `${plain(item ?? 'the roof')}${where === undefined ? '' : ` (${where})`}`;

/** One seam: what and by when, and beneath it why, how, and what would change it. */
function entry(one: SeamAdvice): string {
  const { action, what, interim, afterwards, allowed, wouldChange, unknown } = one;
  const day = byText(one.by);
  const beneath = [
    ...(interim ? [`Until then${byText(interim.by)}: ${plain(interim.what)}`] : []),
    `Why: ${whyOf(one)}`,
    ...told(
      'Allowed from',
      allowed.map(({ text }) => text),
    ),
    ...(afterwards ? [`Then: ${afterwards.action}.`] : []),
    ...howOf(one),
    ...told('What would change it', wouldChange),
    ...told('Not known', unknown),
  ];
  return [`- **${name(one)}: ${action}**${day}. ${plain(what)}`, ...beneath.map((line) => `  - ${line}`)].join('\n');
}

const told = (title: string, texts: readonly string[]) =>
  texts.length === 0 ? [] : [`${title}: ${texts.map(plain).join(' ')}`];

const byText = (by: SeamAdvice['by']) =>
  by === undefined ? '' : ` (by ${by.date}${by.status === 'overdue' ? ', overdue' : ''})`;

/** What the records say, and why that calls for it, with the kind of the habit behind it. */
function whyOf({ reasons }: SeamAdvice): string {
  return reasons
    .map(({ text, kind, source }) => plain(`${text}${kind === 'record' ? '' : ` (${source ?? kind})`}`))
    .join(' ');
}

/** How the surfaces are prepared, and what is not the choice there, where something is worked on. */
function howOf({ action, preparation, excluded }: SeamAdvice): readonly string[] {
  if (action === 'look again' || action === 'leave') return [];
  return [
    ...told('How', [...(preparation?.notes ?? []), ...(preparation?.steps ?? []).map(({ text }) => text)]),
    ...told(
      'Not',
      excluded.map(({ what, why }) => `${what}: ${why}`),
    ),
  ];
}
