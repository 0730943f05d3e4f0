// What a person is told when the disk does not do what was asked of it.

const reasons: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is used up',
  EFBIG: 'the file would be larger than is allowed here',
  EROFS: 'the disk is read-only',
  EACCES: 'you have no permission',
  EPERM: 'you have no permission',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
  ENOENT: 'there is no such file or folder',
  ENOTDIR: 'a part of its path is no folder',
  EISDIR: 'it is a folder',
  ENAMETOOLONG: 'its name is too long for this disk',
  EIO: 'the disk failed',
};

/** An error that names the path and says why, from one of the disk; `what` could not be done with it. */
export function diskFailure(path: string, what: 'read' | 'written' | 'made', error: unknown): Error {
  const { code, message } = error as NodeJS.ErrnoException;
  return new Error(`\`${path}\` could not be ${what}: ${reasons[code ?? ''] ?? message}.`, { cause: error });
}
