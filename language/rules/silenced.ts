// What a policy silences: `accept RULE until DATE because "…"` and `severity RULE off`, for every rig under it. Which of
// these lines found something to silence, one file cannot say: the files of a workspace say it together.
import type { Span } from '../grammar/problem.ts';
import type { Declaration } from '../records/file.ts';
import type { Located } from '../resolve/located.ts';
import type { Dates, Policy } from '../resolve/types.ts';
import { renewals, unknownRule } from './accept.ts';
import { family } from './rule.ts';

export const silencing = family({
  'off-without-reason': {
    severity: 'information',
    title: 'A rule is off and nobody says why',
    why: 'Whoever reads the policy next year has to know whether the reason still holds: `severity RULE off because "…"`.',
    fix: 'None: only the writer knows why.',
  },
});

/** A line of a policy that silences a rule. */
export interface Silencer {
  /** Names the line across files. */
  readonly key: string;
  readonly rule: string;
  /** The name of the rule in it. */
  readonly at: Span;
  /** The whole statement. */
  readonly statement: Span;
}

/** What the checking of one file has to do with silencing: the lines written in it, and those that silenced something. */
export interface Silences {
  readonly written: readonly Silencer[];
  readonly worked: readonly string[];
}

export const keyOf = (file: string, at: Span): string => `${file}:${at[0]}`;

/** The problems that the accepts of a policy leave; `worked` takes in which of them silenced something. */
export function silencedBy<P extends { readonly rule: string }>(
  policy: Policy,
  problems: readonly P[],
  { asOf }: Dates,
  worked: Set<string>,
): readonly P[] {
  if (policy.accepts.length === 0) return problems;
  return problems.filter(({ rule }) => {
    const accept = policy.accepts.find((one) => one.rule.name === rule && asOf <= one.until.last);
    if (accept) worked.add(keyOf(accept.file, accept.at));
    return !accept;
  });
}

/** What is to be said of the silencing lines of the policies of a file, and those of them that hold on the as-of date. */
export function silencingLines(
  file: string,
  declarations: readonly Declaration[],
  { asOf }: Dates,
  known: ReadonlySet<string>,
  acceptable: (rule: string) => boolean,
): { readonly problems: readonly Located[]; readonly written: readonly Silencer[] } {
  const problems: Located[] = [];
  const written: Silencer[] = [];
  for (const declaration of declarations) {
    if (declaration.kind !== 'policy') continue;
    for (const statement of declaration.statements) {
      if (statement.word !== 'accept' && statement.word !== 'severity') continue;
      const { name, at } = statement.rule;
      const remove = { label: 'Remove this line', at: statement.at, text: '' };
      const silencer = { key: keyOf(file, statement.at), rule: name, at, statement: statement.at };
      if (!known.has(name)) problems.push(unknownRule(file, name, at, known));
      else if (!acceptable(name))
        problems.push({
          file,
          rule: 'accept-not-possible',
          at,
          message: `\`${name}\` cannot be ${statement.word === 'accept' ? 'accepted' : 'changed'} by a policy: it says that something could not be read or found, or speaks of the whole workspace.`,
          fixes: [remove],
        });
      else if (statement.word === 'accept') {
        if (asOf <= statement.until.last) written.push(silencer);
        else
          problems.push({
            file,
            rule: 'accept-expired',
            at,
            message: `This was accepted until ${statement.until.last}; where \`${name}\` finds something, it speaks again.`,
            fixes: renewals(statement, asOf),
          });
      } else if (statement.severity === 'off') {
        written.push(silencer);
        if (statement.because === undefined)
          problems.push({
            file,
            rule: 'off-without-reason',
            at,
            message: `\`${name}\` is off for every rig under this policy. Say why: \`severity ${name} off because "…"\`.`,
          });
      }
    }
  }
  return { problems, written };
}
