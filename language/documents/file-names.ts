// Names that people gave, as parts of file names.

/** What no file system takes, and blanks, which a shell would split at. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
const forbidden = /[\\/:*?"<>|\s\u0000-\u001f\u007f]+/gu;

/**
 * For each name a part of a file name that every file system takes, in their order. Two names that would fall together, also
 * where upper and lower case are one, are told apart by a number.
 */
export function namePartsOf(names: readonly string[]): readonly string[] {
  const given = new Set<string>();
  return names.map((name) => {
    const stem =
      [...name.normalize('NFC').replace(forbidden, '-')]
        .slice(0, 60)
        .join('')
        .replace(/^\.+|\.+$/g, '') || 'unnamed';
    let part = stem;
    for (let i = 2; given.has(part.toLowerCase()); i++) part = `${stem}-${i}`;
    given.add(part.toLowerCase());
    return part;
  });
}
