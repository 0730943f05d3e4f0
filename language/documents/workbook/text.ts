// Text in a cell: as it was typed, as far as a workbook can hold it.

/** The most UTF-16 units that a cell holds (ECMA-376 leaves it open; the programs that read workbooks stop here). */
export const cellLimit = 32_767;

const ending = ' … (cut here: a cell holds no more. The whole text stands in the JSON beside this workbook.)';

/** What XML 1.0 has no way to write, section 2.2: control characters, halves of surrogate pairs, U+FFFE and U+FFFF. */
const unwritable =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** `_x0041_` in the text of a workbook means the letter A (ECMA-376 part 1, 22.9.2.19): its own underscore is written so. */
const escapeLike = /_(?=x[0-9a-f]{4}_)/gi;

/**
 * The text for a cell. Line ends become `\n`, what XML cannot hold becomes `U+FFFD`, and what is too long is cut, with a
 * sentence that says so.
 */
export function cellText(text: string): string {
  const safe = text.replace(/\r\n?/g, '\n').replace(unwritable, '\ufffd').replace(escapeLike, '_x005F_');
  if (safe.length <= cellLimit) return safe;
  return `${safe.slice(0, cellLimit - ending.length).replace(/[\ud800-\udbff]$/, '')}${ending}`;
}

/** Whether a spreadsheet takes a text for a formula once a person opens its cell and leaves it again (OWASP: CSV injection). */
export const looksLikeFormula = (text: string): boolean => /^[=+\-@\t\r\n]/.test(text);
