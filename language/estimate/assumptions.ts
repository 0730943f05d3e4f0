// The default figures that an estimate rests on, gathered from the inputs of its figures.
import type { Explained } from '../explain.ts';
import type { Assumption, Estimate, LabourLine } from './schema.ts';

type Parts = Omit<Estimate, 'rig' | 'asOf' | 'system' | 'assumptions' | 'questions'>;

const likely = (line: LabourLine) => ({ ...line, hours: line.hours.likely });

/**
 * Every input that no record of the user says, once for each line of the library that it comes from, in order of use.
 * Of a rate with three points the likely one is named.
 */
export function assumptionsOf(parts: Parts): readonly Assumption[] {
  const found = new Map<string, Assumption>();
  for (const { rule, inputs } of figuresIn({ ...parts, labour: parts.labour.map(likely), hours: undefined })) {
    for (const { name: numbered, text, origin } of inputs) {
      if (origin === undefined || origin.kind === 'record') continue;
      // Where a formula has several of a name they are numbered.
      const name = numbered.replace(/_\d+$/, '');
      const { file, at, kind, source } = origin;
      const key = `${file} ${at[0]} ${name}`;
      if (found.has(key)) continue;
      const said = source === undefined || source === kind ? {} : { source };
      found.set(key, { name: name.replaceAll('_', ' '), text, kind, ...said, file, at, usedFor: rule });
    }
  }
  return [...found.values()];
}

/** All figures anywhere in plain data, in its order. */
export function* figuresIn(data: unknown): Generator<Explained> {
  if (typeof data !== 'object' || data === null) return;
  if ('formula' in data && 'inputs' in data) yield data as Explained;
  for (const value of Object.values(data)) yield* figuresIn(value);
}
