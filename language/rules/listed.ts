// Names in a sentence.

/** `a`, `b` and `c`; of many the first few and how many more. Nothing for none. */
export function listed(names: readonly string[], most = 6): string {
  const marked = names.map((name) => `\`${name}\``);
  if (marked.length > most) return `${marked.slice(0, most).join(', ')} and ${marked.length - most} more`;
  if (marked.length < 2) return marked.join('');
  return `${marked.slice(0, -1).join(', ')} and ${marked[marked.length - 1]}`;
}
