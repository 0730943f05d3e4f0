import type { Explained } from '../../language/explain.ts';

// Works a formula out from its text, so that what a figure says of itself can be held against its value.

const functions: Readonly<Record<string, (...values: number[]) => number>> = {
  ceil: Math.ceil,
  floor: Math.floor,
  round: (value = 0, digits = 0) => Math.round(Number((value * 10 ** digits).toPrecision(14))) / 10 ** digits,
  min: Math.min,
  max: Math.max,
  sum: (...values) => values.reduce((total, value) => total + value, 0),
};

const TOKEN = /\s*(?:([\d.]+)|([A-Za-z_]\w*)|(\S))/y;

/** The value of the formula over its inputs. Throws where it names what is no input, or is no arithmetic. */
export function recompute({ formula, inputs }: Pick<Explained, 'formula' | 'inputs'>): number {
  const names = new Map(inputs.map(({ name, value }) => [name, value]));
  if (names.size !== inputs.length) throw new Error(`an input stands twice: ${formula}`);
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  for (let match = TOKEN.exec(formula); match !== null; match = TOKEN.exec(formula)) tokens.push(match[0].trim());
  let at = 0;
  const take = (wanted: string): boolean => {
    if (tokens[at] !== wanted) return false;
    at++;
    return true;
  };
  const need = (wanted: string): void => {
    if (!take(wanted)) throw new Error(`${wanted} expected, ${tokens[at]} found: ${formula}`);
  };
  const value = sum();
  if (at !== tokens.length) throw new Error(`${tokens[at]} is too much: ${formula}`);
  return value;

  function sum(): number {
    let left = product();
    for (;;) {
      if (take('+')) left += product();
      else if (take('-')) left -= product();
      else return left;
    }
  }
  function product(): number {
    let left = power();
    for (;;) {
      if (take('*')) left *= power();
      else if (take('/')) left /= power();
      else return left;
    }
  }
  function power(): number {
    const base = atom();
    return take('^') ? base ** power() : base;
  }
  function atom(): number {
    if (take('(')) {
      const inner = sum();
      need(')');
      return inner;
    }
    const token = tokens[at++] ?? '';
    if (/^[\d.]/.test(token)) return Number(token);
    const known = names.get(token);
    if (typeof known === 'number') return known;
    if (token === 'pi') return Math.PI;
    const called = functions[token];
    if (called === undefined) throw new Error(`\`${token}\` is no number among the inputs: ${formula}`);
    need('(');
    const values = [sum()];
    while (take(',')) values.push(sum());
    need(')');
    return called(...values);
  }
}
