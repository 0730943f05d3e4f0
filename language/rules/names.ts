// Names of rigs, models and fleets also name files: two that differ in their case only, and those that a machine refuses.
import type { Declaration } from '../records/file.ts';
import type { Located } from '../resolve/located.ts';
import type { Names, Namespace } from '../resolve/names.ts';
import { folderOf, relativeTo } from '../resolve/paths.ts';

/** Names of devices that one family of systems refuses for files, with any ending and in any case. */
const DEVICES = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/i;

/** Whether some systems refuse files of that name. */
export const isRefusedForFiles = (name: string): boolean => DEVICES.test(name);

/** The namespaces whose names also name files. */
export const fileNamespaces: readonly Namespace[] = ['rig', 'model', 'fleet'];

/** What is wrong with the names that a file declares, against every name that is visible in it. */
export function* fileNames(file: string, declarations: readonly Declaration[], names: Names): Iterable<Located> {
  for (const namespace of fileNamespaces) {
    const mine = declarations.filter(({ kind }) => kind === namespace);
    if (mine.length === 0) continue;
    const spellings = new Map<string, { name: string; file: string; at: readonly [number, number] }[]>();
    const add = (name: string, where: string, at: readonly [number, number]) => {
      const key = name.toLowerCase();
      const known = spellings.get(key);
      if (known) known.push({ name, file: where, at });
      else spellings.set(key, [{ name, file: where, at }]);
    };
    for (const [name, entry] of names.all(namespace)) {
      if (entry.file !== file) add(name, entry.file, entry.declaration.nameAt);
    }
    for (const { name, nameAt } of mine) {
      if (isRefusedForFiles(name))
        yield {
          file,
          rule: 'reserved-name',
          at: nameAt,
          message: `\`${name}\` cannot be the name of a file on every machine, and outputs are files: give the ${namespace} another name, such as \`${name}-1\`.`,
        };
      const other = spellings.get(name.toLowerCase())?.find((one) => one.name !== name);
      if (other) {
        const where = other.file === file ? 'in this file' : `in ${relativeTo(folderOf(file), other.file)}`;
        yield {
          file,
          rule: 'names-differ-in-case',
          at: nameAt,
          message: `\`${name}\` and \`${other.name}\` ${where} differ in their case only: some machines do not tell files of these names apart.`,
          related: [{ file: other.file, at: other.at, message: 'The other one.' }],
        };
      }
      add(name, file, nameAt);
    }
  }
}
