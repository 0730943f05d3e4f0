// `accept RULE until DATE because "…"`: silences one rule for a rig or some of its items, and is itself checked.
import type { Fix, Span } from '../grammar/problem.ts';
import type { Located } from '../resolve/located.ts';
import type { Dates, Rig } from '../resolve/types.ts';
import { addPeriod } from '../values/calendar.ts';
import { nearest } from '../values/nearest.ts';
import { family } from './rule.ts';

export const accepting = family({
  'unknown-rule': {
    severity: 'error',
    title: 'A rule is not known',
    why: 'The catalogue has no rule of that name.',
    fix: 'Writes the nearest name.',
  },
  'accept-unused': {
    severity: 'hint',
    tag: 'unnecessary',
    title: 'An accept silences nothing',
    why: 'The rule finds nothing here: the line can go.',
    fix: 'Removes the line.',
  },
  'accept-expired': {
    severity: 'information',
    title: 'An accept has expired',
    why: 'Its date is past: the rule speaks again. Renew it or do the work.',
    fix: 'Renews it for three months, which is for a person to decide; or removes the line.',
  },
  'accept-not-possible': {
    severity: 'error',
    title: 'A rule cannot be accepted',
    why: 'What the reader cannot read, nobody can accept.',
    fix: 'Removes the line.',
  },
});

/** The problems that are left, and what is to be said of the accepts themselves. */
export function accepted(
  rig: Rig,
  problems: readonly Located[],
  dates: Dates,
  known: ReadonlySet<string>,
  acceptable: (rule: string) => boolean,
): Located[] {
  if (rig.accepts.length === 0) return [...problems];
  const left: Located[] = [];
  const worked = new Set<Rig['accepts'][number]>();
  const covers = (accept: Rig['accepts'][number], problem: Located) =>
    accept.rule.name === problem.rule &&
    acceptable(problem.rule) &&
    (!accept.on || accept.on.some((ref) => ref.name === problem.item));
  for (const problem of problems) {
    const accept = rig.accepts.find((one) => covers(one, problem));
    if (accept) worked.add(accept);
    if (!accept || dates.asOf > accept.until.last) left.push(problem);
  }
  // Of a line that cannot be read nothing is concluded: it may be what an accept is for.
  const unread = rig.unread.all || rig.unread.items.size > 0;
  for (const accept of rig.accepts) {
    const { name, at } = accept.rule;
    const here = { file: accept.file, rig: rig.name };
    const remove = { label: 'Remove this line', at: accept.at, text: '' };
    if (!known.has(name)) left.push({ ...unknownRule(accept.file, name, at, known), rig: rig.name });
    else if (!acceptable(name))
      left.push({
        ...here,
        rule: 'accept-not-possible',
        at,
        message: `\`${name}\` cannot be accepted: it says that something could not be read or found.`,
        fixes: [remove],
      });
    else if (dates.asOf > accept.until.last) {
      if (worked.has(accept))
        left.push({
          ...here,
          rule: 'accept-expired',
          at,
          message: `This was accepted until ${accept.until.last}; \`${name}\` speaks again.`,
          fixes: renewals(accept, dates.asOf),
        });
      else if (!unread)
        left.push({
          ...here,
          rule: 'accept-unused',
          at,
          message: `This was accepted until ${accept.until.last} and \`${name}\` finds nothing: the line can go.`,
          fixes: [remove],
        });
    } else if (!worked.has(accept) && !unread)
      left.push({
        ...here,
        rule: 'accept-unused',
        at,
        message: `\`${name}\` finds nothing here: the line can go.`,
        fixes: [remove],
      });
  }
  return left;
}

/** What is said of a rule that the catalogue does not have. */
export function unknownRule(file: string, name: string, at: Span, known: ReadonlySet<string>): Located {
  const close = nearest(name, known);
  const located = { file, rule: 'unknown-rule', at };
  if (close === undefined) return { ...located, message: `There is no rule \`${name}\`.` };
  return {
    ...located,
    message: `There is no rule \`${name}\`; did you mean \`${close}\`?`,
    fixes: [{ label: `Write \`${close}\``, at, text: close }],
  };
}

/** What can be done with an accept whose time is over. The place of the date is that of its clause. */
export function renewals({ at, spans }: Pick<Rig['accepts'][number], 'at' | 'spans'>, asOf: string): readonly Fix[] {
  const until = `until ${addPeriod(asOf, { months: 3, days: 0 })}`;
  return [
    ...(spans.until ? [{ label: `Renew: \`${until}\``, at: spans.until, text: until, unsure: true as const }] : []),
    { label: 'Remove this line', at, text: '', unsure: true },
  ];
}
