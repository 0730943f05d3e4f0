// The default figures that an estimate rests on, gathered from the inputs of its figures.
import type { Explained } from '../explain.ts';
import type { Assumption } from './schema.ts';

/** Every input that no record of the user says, once for each line of the library that it comes from, in order of use. */
export function assumptionsOf(parts: unknown): readonly Assumption[] {
  const found = new Map<string, Assumption>();
  for (const { rule, inputs } of figuresIn(parts)) {
    for (const { name, text, origin } of inputs) {
      if (origin === undefined || origin.kind === 'record') continue;
      const { file, at, kind, source } = origin;
      const key = `${file} ${at[0]} ${name}`;
      if (found.has(key)) continue;
      const said = source === undefined ? {} : { source };
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
