// What a record means, without how and where it is written: what two records are compared by.

/** Where something stands, and remarks on it. */
const places = new Set([
  'at',
  'spans',
  'nameAt',
  'order',
  'file',
  'origin',
  'doc',
  'findings',
  'brokenFindings',
  'lines',
  'brokenLines',
]);
/** Names of seams and items. */
const items = new Set(['targets', 'suspects', 'on']);
/** Paths seen from the file, which differ after it moved: the name of the file alone counts. */
const paths = new Set(['photos', 'paper']);

/**
 * A text that is the same for two values that mean the same: units and spellings do not count (`8 ft` and `96 in`), nor does
 * the place. `nameNow` gives the name now of an item by its former one.
 */
export function meaningOf(value: object, nameNow: (name: string) => string): string {
  const walk = (inner: unknown, key: string, top: boolean): unknown => {
    if (typeof inner === 'string') return paths.has(key) ? inner.slice(inner.lastIndexOf('/') + 1) : inner;
    if (Array.isArray(inner)) return inner.map((one) => walk(one, key, false));
    if (typeof inner !== 'object' || inner === null) return inner;
    const said = Object.entries(inner)
      .filter(([name, one]) => one !== undefined && !places.has(name))
      .sort(([a], [b]) => (a < b ? -1 : 1));
    // A quantity carries the text that it was written as beside its value; a statement may say a text.
    const kept = top || said.length === 1 ? said : said.filter(([name]) => name !== 'text');
    return Object.fromEntries(
      kept.map(([name, one]) => [
        name,
        items.has(key) && name === 'name' && typeof one === 'string' ? nameNow(one) : walk(one, name, false),
      ]),
    );
  };
  return JSON.stringify(walk(value, '', true));
}
