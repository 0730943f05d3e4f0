// What people typed, as it may stand in a page or a picture: readable, and without the marks that break either.

/** Control characters, the two that XML forbids, and halves of a pair. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
const unprintable = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\ufffe\uffff]|\p{Surrogate}/gu;
/** Embeddings, overrides and isolates turn whatever follows them round; the plain marks of direction do not. */
const turning = /[\u202a-\u202e\u2066-\u2069]/gu;

/**
 * A typed text on one line: blanks and line ends become single blanks, control characters their pictures (U+2400 and on),
 * what turns the direction of other text a white square. Escaping for markup is left to the renderer.
 */
export function shown(text: string): string {
  return text
    .replace(/\s+/gu, ' ')
    .trim()
    .replace(unprintable, (mark) => {
      const code = mark.charCodeAt(0);
      return code < 0x20 ? String.fromCharCode(0x2400 + code) : code === 0x7f ? '\u2421' : '\u25a1';
    })
    .replace(turning, '\u25a1');
}

/** The beginning of a text of at most so many characters, with an ellipsis where it goes on. */
export function shortened(text: string, most: number): string {
  const characters = [...shown(text)];
  return characters.length <= most ? characters.join('') : `${characters.slice(0, most - 1).join('')}…`;
}
