// Texts in quotes: what stands between the quotes, and whether the line ended before they were closed.

/** The text of a quoted token, unescaped (`\\"` and `\\\\` only). */
export function unquoted(image: string): { readonly text: string; readonly closed: boolean } {
  const closed = isClosed(image);
  const inner = image.slice(1, closed ? -1 : undefined);
  return { text: inner.includes('\\') ? inner.replace(/\\(["\\])/g, '$1') : inner, closed };
}

/** A closing quote stands at the end, and no odd number of backslashes before it. */
export function isClosed(image: string): boolean {
  if (image.length < 2 || !image.endsWith('"')) return false;
  let backslashes = 0;
  while (image[image.length - 2 - backslashes] === '\\') backslashes++;
  return backslashes % 2 === 0;
}

/** A text as it is written in a file. */
export const quoted = (text: string): string => `"${text.replace(/["\\]/g, '\\$&')}"`;
