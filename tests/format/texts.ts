// Texts to format: everything in the house that is written in the language, and ways to damage it.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { edited, format } from '../../language/format/index.ts';

const rigFiles = (folder: string): string[] => {
  const root = fileURLToPath(new URL(`../../${folder}`, import.meta.url));
  return readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.rig'))
    .sort()
    .map((path) => `${root}/${path}`);
};

/** The `.rig` files of the house, with their names from its root. */
export const written: readonly { readonly name: string; readonly text: string }[] = [
  'examples',
  'language/library',
  'tests/worked-example',
  'tests/fixtures/cases',
]
  .flatMap(rigFiles)
  .map((path) => ({
    name: path.replace(/^.*?\/(?=examples|language\/library|tests)/, ''),
    text: readFileSync(path, 'utf8'),
  }));

/** A text in form. */
export const inForm = (text: string): string => edited(text, format(text).edits);

const odd = fc.constantFrom(
  ...['{', '}', ',', '"', '#', '##', '\n', '\n\n\n', '\r', '\r\n', '\t', '  ', '      ', '\ufeff', '\u00a0', '\u2028'],
  ...[
    '\ud83d\ude90',
    '\ud800',
    '%',
    '$',
    '\\',
    'per',
    '1/',
    '2 ',
    ' 1/2',
    '-',
    ' with ',
    ' and ',
    'rig X {',
    ' at',
    '\n}\n',
  ],
);
const edit = fc.record({ at: fc.double({ min: 0, max: 1, noNaN: true }), cut: fc.nat(12), put: odd });

/** A text with some damage done to it. */
export const damaged = (text: string): fc.Arbitrary<string> =>
  fc.array(edit, { minLength: 1, maxLength: 6 }).map((edits) =>
    edits.reduce((done, { at, cut, put }) => {
      const start = Math.floor(at * done.length);
      return done.slice(0, start) + put + done.slice(start + cut);
    }, text),
  );

/** The same text with other white space: as wide and as ragged as it comes, its lines where they were. */
export const respaced = (text: string): fc.Arbitrary<string> =>
  fc.array(fc.constantFrom(' ', '  ', '     ', '\t', ' \t '), { minLength: 7, maxLength: 60 }).map((gaps) => {
    let n = 0;
    const gap = () => gaps[n++ % gaps.length] as string;
    return text
      .split('\n')
      .map((line) =>
        line.replace(/"(?:[^"\\]|\\.)*"|#.*|\d+ \d+\/\d+|[ \t]+/g, (found) => (/^[ \t]/.test(found) ? gap() : found)),
      )
      .map((line) => (line === '' ? line : line + (n % 5 === 0 ? gap() : '')))
      .join('\n');
  });
