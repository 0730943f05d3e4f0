let codes: ReadonlySet<string> | undefined;
const digits = new Map<string, number>();

/** The ISO 4217 codes that `Intl` of this machine knows, in capitals. */
export function currencies(): ReadonlySet<string> {
  codes ??= new Set(Intl.supportedValuesOf('currency'));
  return codes;
}

/** True for an ISO 4217 code in capitals, such as `USD`. */
export function isCurrency(word: string): boolean {
  return word.length === 3 && currencies().has(word);
}

/** How many decimals the minor unit of a currency has, by `Intl`: 2 for USD, 0 for JPY, 3 for KWD. */
export function minorDigits(currency: string): number {
  let known = digits.get(currency);
  if (known === undefined) {
    known = new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
    digits.set(currency, known);
  }
  return known;
}
