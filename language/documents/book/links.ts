// Photos and papers that a record names, as links beside the page. Only what lies inside its folder becomes one.
import { folderOf, relativeTo, resolvePath } from '../../resolve/paths.ts';
import { type Element, el } from '../sheets/element.ts';
import { typed } from '../sheets/marks.ts';
import { shown } from '../sheets/shown.ts';

/** A path that leaves its folder, names a machine or a scheme, or holds what no path holds. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is refused
const foreign = /^[a-z][a-z0-9+.-]*:|^[\\/]|[\\\u0000-\u001f\u007f]/iu;
const pictures = /\.(?:jpe?g|png|gif|webp|avif)$/iu;

/**
 * The address of a file that a record names by its path beside its own file, as seen from the folder of the page. Undefined
 * where it would leave that folder; what is written then stays text.
 */
export function addressOf(written: string, recordFile: string, folder: string): string | undefined {
  if (foreign.test(written) || /\p{Surrogate}/u.test(written)) return undefined;
  const path = relativeTo(folder, resolvePath(folderOf(recordFile), written));
  if (path === '' || path.startsWith('/') || path.split('/').includes('..')) return undefined;
  return path.split('/').map(encodeURIComponent).join('/');
}

/** A link with the path as it was written; plain text where it must not be one. */
export function linked(written: string, recordFile: string, folder: string): Element {
  const href = addressOf(written, recordFile, folder);
  return href === undefined ? typed(written) : el('a', { href }, typed(written));
}

/** A picture under its file name, with what it shows in words: a missing file leaves both readable. */
export function pictured(written: string, recordFile: string, folder: string, shows: string): Element {
  const src = addressOf(written, recordFile, folder);
  const caption = el('figcaption', {}, linked(written, recordFile, folder), ` – ${shows}`);
  const image =
    src !== undefined && pictures.test(written)
      ? el('img', { src, alt: `${shows} (${shown(written)})`, loading: 'lazy' })
      : null;
  return el('figure', {}, image, caption);
}
