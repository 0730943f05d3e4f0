// Paths inside a workspace: with forward slashes, compared as text.

/** The folder of a file. */
export function folderOf(path: string): string {
  const cut = path.lastIndexOf('/');
  return cut < 0 ? '' : path.slice(0, cut);
}

/** A path as written in a file of that folder; `..` at the very top stays, so that leaving is seen. */
export function resolvePath(folder: string, written: string): string {
  const absolute = written.startsWith('/');
  const parts: string[] = [];
  for (const part of `${absolute ? '' : `${folder}/`}${written}`.split('/')) {
    if (part === '' || part === '.') continue;
    if (part === '..' && parts.length > 0 && parts[parts.length - 1] !== '..') parts.pop();
    else parts.push(part);
  }
  const rooted = absolute || folder.startsWith('/');
  return (rooted ? '/' : '') + parts.join('/');
}

/** The path from a folder to a file, for messages. */
export function relativeTo(folder: string, path: string): string {
  const from = folder.split('/').filter(Boolean);
  const to = path.split('/').filter(Boolean);
  let same = 0;
  while (same < from.length && same < to.length - 1 && from[same] === to[same]) same++;
  return [...from.slice(same).map(() => '..'), ...to.slice(same)].join('/');
}
