// The advice on a rig as a section of Markdown: what is to be done, what is looked at, and one line for what can be left.
import type { SeamAdvice } from '../advice/index.ts';
import { bullets, left, paragraphs, plain, section, table } from './markdown.ts';

/**
 * The advice under a heading, in the order in which it comes: a table of what is to be done, one of what is looked at
 * again, a line for what can be left alone. Nothing where there is no advice.
 */
export function adviceMarkdown(advice: readonly SeamAdvice[], mark: '#' | '##' = '##', title = 'The advice'): string {
  const rest = advice.filter(({ action }) => action === 'leave');
  const looks = advice.filter(({ action }) => action === 'look again');
  const work = advice.filter((one) => !rest.includes(one) && !looks.includes(one));
  const calm = rest.length === 0 ? undefined : `Can be left as they are: ${rest.map(name).join(', ')}.`;
  return section(
    title,
    paragraphs(tableOf(work, 'what to do'), stepsOf(work), tableOf(looks, 'what to look at'), calm).trimEnd(),
    mark,
  );
}

const name = ({ item, where }: SeamAdvice) => `${plain(item ?? 'the roof')}${where === undefined ? '' : ` (${where})`}`;

function tableOf(advice: readonly SeamAdvice[], what: string): string {
  const head = [left('seam'), left(what), left('why'), left('by'), left('allowed from'), left('what would change it')];
  return table(
    head,
    advice.map((one) => [name(one), whatOf(one), whyOf(one), byOf(one), allowedOf(one), changesOf(one)]),
  );
}

function whatOf({ action, what, interim, afterwards }: SeamAdvice): string {
  const now = interim ? [`Until then: ${plain(interim.what)}`] : [];
  const then = afterwards ? [`Then: ${afterwards.action}.`] : [];
  return [`**${action}**.`, plain(what), ...now, ...then].join(' ');
}

/** What the records say, and why that calls for it, with the kind of the habit behind it. */
function whyOf({ reasons }: SeamAdvice): string {
  return reasons
    .map(({ text, kind, source }) => plain(`${text}${kind === 'record' ? '' : ` (${source ?? kind})`}`))
    .join(' ');
}

function byOf({ by, interim }: SeamAdvice): string {
  const day = ({ date, status }: NonNullable<SeamAdvice['by']>) => `${date}${status === 'overdue' ? ' (overdue)' : ''}`;
  const cover = interim?.by ? [`cover: ${day(interim.by)}`] : [];
  return [...(by ? [day(by)] : []), ...cover].join('; ');
}

const allowedOf = ({ allowed }: SeamAdvice) => allowed.map(({ text }) => plain(text)).join(' ');

/** What would change it, and what is not known. */
const changesOf = ({ wouldChange, unknown }: SeamAdvice) => [...wouldChange, ...unknown].map(plain).join(' ');

/** How the surfaces are prepared, and what is not the choice there: one line for each seam that is worked on. */
function stepsOf(work: readonly SeamAdvice[]): string {
  const lines = work.flatMap((one) => {
    const { preparation, excluded } = one;
    const steps = [...(preparation?.notes ?? []), ...(preparation?.steps ?? []).map(({ text }) => text)];
    const not = excluded.map(({ what, why }) => `Not ${what}: ${why}`);
    return steps.length + not.length === 0 ? [] : [`${name(one)}: ${[...steps, ...not].map(plain).join(' ')}`];
  });
  return lines.length === 0
    ? ''
    : paragraphs('How it is prepared, and what is not the choice there:', bullets(lines)).trimEnd();
}
