// Between the URIs of the protocol and the paths of the engine, both ways without loss. A file of this machine goes by its
// path; one on a file system of the editor's (a repository on a host, an archive) by `/:scheme:authority/path`; what lies
// nowhere (an untitled document) by its URI.
import { URI } from 'langium';
import { isLibrary } from '../language/resolve/origin.ts';

/** The scheme under which the built-in library can be read in the editor. */
export const libraryScheme = 'rigseam-library';

const virtual = /^\/:([a-z][a-z0-9+.-]*):([^/]*)(\/.*)?$/i;

/** Whether a path lies on a file system that only the editor can read. */
export const isVirtual = (path: string): boolean => path.startsWith('/:') && virtual.test(path);

/** Whether a path lies in a folder, on whatever file system. */
export const isSomewhere = (path: string): boolean => /^([a-z]:)?\//i.test(path);

/** The engine's path of a document or a folder. */
export function pathOf(uri: string | URI): string {
  const parsed = typeof uri === 'string' ? URI.parse(uri) : uri;
  const { scheme, authority, path } = parsed;
  if (scheme === libraryScheme) return path.slice(1);
  if (scheme === 'file' && !isVirtual(path))
    return withoutSlash(authority === '' ? withoutDriveSlash(path) : `//${authority}${path}`);
  // Without a folder to lie in, or shown at some past state, it is no file that others could use.
  if (scheme === 'untitled' || !path.startsWith('/') || parsed.query !== '' || parsed.fragment !== '')
    return parsed.toString();
  return withoutSlash(`/:${scheme}:${encodeURIComponent(authority)}${path}`);
}

/** The URI of a path of the engine, as text. */
export function uriOf(path: string): string {
  if (isLibrary(path)) return URI.from({ scheme: libraryScheme, path: `/${path}` }).toString();
  const [, scheme, authority, inner = '/'] = virtual.exec(path) ?? [];
  if (scheme !== undefined)
    return URI.from({ scheme, authority: decodeURIComponent(authority ?? ''), path: inner }).toString();
  return isSomewhere(path) ? URI.file(path).toString() : path;
}

/** `/C:/rigs` names a drive; drives are compared as small letters, as editors write them. */
const withoutDriveSlash = (path: string) =>
  /^\/[a-z]:/i.test(path) ? `${path.charAt(1).toLowerCase()}${path.slice(2)}` : path;

const withoutSlash = (path: string) => (path.endsWith('/') && !/^([a-z]:)?\/$/i.test(path) ? path.slice(0, -1) : path);
