// A policy with every default filled in from the built-in one.
import type { PolicyDeclaration } from '../records/file.ts';
import type { PolicyStatement } from '../statements/policy.ts';
import { chainOf, type Line, linesThatHold } from './like.ts';
import type { Entry } from './names.ts';
import { originOf, stated } from './origin.ts';
import type { BandKind, Policy, Stated } from './types.ts';

type Said<W extends PolicyStatement['word']> = Extract<PolicyStatement, { word: W }>;

/** The lines that hold for a policy: its own along its `like`, then those of the built-in policy. */
export function resolvePolicy(
  entry: Entry<PolicyDeclaration>,
  baseOf: (e: Entry<PolicyDeclaration>) => Entry<PolicyDeclaration> | undefined,
  builtIn: Entry<PolicyDeclaration>,
): Policy {
  const { chain } = chainOf(entry, baseOf);
  const whole = chain.some((e) => e.declaration === builtIn.declaration) ? chain : [...chain, builtIn];
  const { lines } = linesThatHold<PolicyDeclaration, PolicyStatement>(whole, () => true);

  const find = <W extends PolicyStatement['word']>(word: W): Line<Said<W>> | undefined =>
    lines.find((line) => line.statement.word === word) as Line<Said<W>> | undefined;
  const may = <W extends PolicyStatement['word'], T>(word: W, value: (s: Said<W>) => T): Stated<T> | undefined => {
    const line = find(word);
    return line && stated(value(line.statement), line.file, line.statement as { at: Said<W>['at']; source?: string });
  };
  const must = <W extends PolicyStatement['word'], T>(word: W, value: (s: Said<W>) => T): Stated<T> => {
    const got = may(word, value);
    if (!got) throw new Error(`the built-in policy says nothing of ${word}`);
    return got;
  };
  const table = <W extends PolicyStatement['word'], T>(
    word: W,
    entries: (s: Said<W>) => readonly (readonly [string, T])[],
  ): Record<string, Stated<T>> => {
    const out: Record<string, Stated<T>> = {};
    for (const line of lines) {
      if (line.statement.word !== word) continue;
      const statement = line.statement as Said<W>;
      for (const [key, value] of entries(statement))
        out[key] = stated(value, line.file, statement as { at: Said<W>['at']; source?: string });
    }
    return out;
  };
  // A list of follow-up times is replaced whole, but what it does not speak of is still known from the built-in policy.
  const listed = (word: 'follow-up' | 'look-after') => {
    const out: Record<string, Stated<Said<'follow-up'>['list'][number]['within']>> = {};
    const library = builtIn.declaration.statements.find((s) => s.word === word) as Said<'follow-up'> | undefined;
    const own = find(word) as Line<Said<'follow-up'>> | undefined;
    for (const item of library?.list ?? [])
      out[item.word] = stated(item.within, builtIn.file, library as Said<'follow-up'>);
    for (const item of own?.statement.list ?? [])
      out[item.word] = stated(
        item.within,
        (own as Line<Said<'follow-up'>>).file,
        (own as Line<Said<'follow-up'>>).statement,
      );
    return out;
  };

  const turnRound = may('turn-round', (s) => s.time);
  const currency = may('currency', (s) => s.code.name);
  const labour = may('labour', (s) => s.rate);
  const tax = may('tax', (s) => ({ percent: s.percent, on: s.on }));
  const washWith = may('wash-with', (s) => s.material.name);
  const wipeWith = may('wipe-with', (s) => s.material.name);
  return {
    name: entry.declaration.name,
    origin: originOf(entry.file, entry.declaration.nameAt),
    inspect: must('inspect', (s) => s.every),
    inspectLimit: must('inspect-limit', (s) => s.limit),
    dueSoon: must('due-soon', (s) => s.before),
    followUp: listed('follow-up'),
    lookAfter: listed('look-after'),
    season: must('season', (s) => s.season),
    slack: table('slack', (s) => [[s.month, s.share]]),
    normals: table('normals', (s) => [[s.month, s.air]]),
    beforeNoon: must('before-noon', (s) => s.when),
    ...(turnRound ? { turnRound } : {}),
    ...(currency ? { currency } : {}),
    ...(labour ? { labour } : {}),
    ...(tax ? { tax } : {}),
    realInterest: must('real-interest', (s) => s.percent),
    horizon: must('horizon', (s) => s.period),
    touchUp: must('touch-ups', (s) => s.share),
    recoat: must('recoats', (s) => s.every),
    daysOff: table('days-off', (s) => [[s.work, s.off]]) as Policy['daysOff'],
    missedLeak: table('missed-leak', (s) => [[s.way, { chance: s.chance, cost: s.cost }]]),
    spare: must('spare', (s) => s.percent),
    rollWaste: must('roll-waste', (s) => s.length),
    margin: must('margin', (s) => s.length),
    bite: must('bite', (s) => s.length),
    frame: must('frame', (s) => s.corners),
    beadLine: must('bead-line', (s) => s.line),
    smother: must('smother', (s) => s.upTo),
    splices: must('splices', (s) => s.rule),
    bands: table('band', (s) => [[s.of, s.width]]) as Record<BandKind, Stated<Said<'band'>['width']>>,
    rates: table('rate', (s) => [[s.task, s.value]]) as Policy['rates'],
    ...(washWith ? { washWith } : {}),
    ...(wipeWith ? { wipeWith } : {}),
    curb: must('curb', (s) => s.side),
    units: must('units', (s) => s.system),
    workday: must('workday', (s) => s.hours),
    severities: table('severity', (s) => [[s.rule.name, s.severity]]),
    accepts: lines.flatMap(({ statement, file }) => (statement.word === 'accept' ? [{ ...statement, file }] : [])),
    leads: table('lead', (s) => [[s.material.name, s.period]]),
  };
}
