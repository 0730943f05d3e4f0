import { done, type Read, refused } from './quantity.ts';

/** An exact fraction of two integers, `n / d` with d > 0, and how it was written. */
export interface Amount {
  readonly n: number;
  readonly d: number;
  readonly form: 'whole' | 'decimal' | 'fraction';
}

const WHOLE = /^(-?)(\d+)$/;
const DECIMAL = /^(-?)(\d*)\.(\d+)$/;
const OPEN_DECIMAL = /^-?\d+\.$/;
const FRACTION = /^(-?)(?:(\d+)[ \t]+)?(\d+)\/(\d+)$/;
const OPEN_FRACTION = /^-?(?:\d+[ \t]+)?\d+\/$/;

/** More digits than this are not exact in a double. */
const DIGITS = 15;

/**
 * Reads `14`, `-5`, `6.5`, `.5`, `1/4` and `2 1/2` exactly. Half-typed and impossible amounts are refused; a fix, where
 * there is one, stands for the amount alone.
 */
export function readAmount(text: string): Read<Amount> {
  const whole = WHOLE.exec(text);
  if (whole !== null) {
    if (text.length > DIGITS) return tooLong(text);
    return done({ n: Number(text) || 0, d: 1, form: 'whole' });
  }
  const decimal = DECIMAL.exec(text);
  if (decimal !== null) {
    const [, sign = '', before = '', after = ''] = decimal;
    if (before.length + after.length > DIGITS) return tooLong(text);
    const n = Number(before + after);
    return done({ n: sign === '-' && n !== 0 ? -n : n, d: 10 ** after.length, form: 'decimal' });
  }
  const fraction = FRACTION.exec(text);
  if (fraction !== null) return readFraction(text, fraction);
  if (OPEN_FRACTION.test(text)) return refused(`\`${text}\` is half a fraction; write it as in \`${text}2\``);
  if (OPEN_DECIMAL.test(text)) {
    const cut = text.slice(0, -1);
    return refused(`\`${text}\` ends with its decimal point; write \`${cut}\` or \`${cut}.5\``, cut);
  }
  return refused(`\`${text}\` is no number; write it as in \`14\`, \`6.5\` or \`2 1/2\``);
}

function readFraction(text: string, match: RegExpExecArray): Read<Amount> {
  const [, sign = '', whole, above = '', below = ''] = match;
  if (text.length > DIGITS) return tooLong(text);
  const d = Number(below);
  if (d === 0) return refused(`\`${text}\` divides by 0; write the fraction as in \`1/4\``);
  let n = Number(above);
  if (whole !== undefined) {
    if (n >= d) {
      const better = mixed(Number(whole) * d + n, d);
      return refused(`the fraction of \`${text}\` is one or more; write \`${sign}${better}\``, sign + better);
    }
    n += Number(whole) * d;
  }
  return done({ n: sign === '-' && n !== 0 ? -n : n, d, form: 'fraction' });
}

function tooLong(text: string): Read<never> {
  return refused(`\`${text}\` has too many digits; ${DIGITS} are kept exactly`);
}

/** The greatest common divisor of two integers, at least one of them not 0. */
export function commonDivisor(a: number, b: number): number {
  let [x, y] = [Math.abs(a), Math.abs(b)];
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}

/** A fraction that is not negative as a mixed number in lowest terms: 5/2 is `2 1/2`, 4/2 is `2`, 1/4 is `1/4`. */
export function mixed(n: number, d: number): string {
  const whole = Math.floor(n / d);
  const rest = n - whole * d;
  if (rest === 0) return String(whole);
  const g = commonDivisor(rest, d);
  const part = `${rest / g}/${d / g}`;
  return whole === 0 ? part : `${whole} ${part}`;
}
