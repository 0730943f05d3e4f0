import { describe, expect, it } from 'vitest';
import { projectFiles, read } from './source.ts';

// What no committed text may hold.

const self = 'tests/house/texts.test.ts';
const binary = /\.(png|jpe?g|xlsx|pdf|wasm|bin|woff2?)$/;
const texts = projectFiles.filter((path) => !binary.test(path) && path !== self);
const code = texts.filter((path) => /\.(ts|mjs)$/.test(path));

/** `path:line: text` of every line of the files that fits. */
function linesWith(pattern: RegExp, files: readonly string[]): string[] {
  return files.flatMap((path) =>
    read(path)
      .split('\n')
      .flatMap((line, index) => (pattern.test(line) ? [`${path}:${index + 1}: ${line.trim().slice(0, 120)}`] : [])),
  );
}

describe('committed texts', () => {
  it('name no host of a package registry', () => {
    expect(linesWith(/https?:\/\/[^\s"']*registry|npmjs\.(com|org)|"resolved":\s*"https?:/, texts)).toEqual([]);
  });

  it('hold no path of one machine', () => {
    expect(linesWith(/(^|[^\w.])\/(work|root|home|Users)\/\w|[A-Z]:\\Users\\/, texts)).toEqual([]);
  });

  it('leave nothing half done', () => {
    expect(
      linesWith(
        /\b(TODO|FIXME|XXX)\b/,
        texts.filter((path) => path !== 'package-lock.json'),
      ),
    ).toEqual([]);
  });

  it('switch no test off and single none out', () => {
    expect(linesWith(/\b(it|test|describe)\.(only|skip|todo|fails|skipIf|runIf)\b/, code)).toEqual([]);
  });

  it('keep source files short enough to read in one sitting', () => {
    const rooms = code.filter((path) => /^(client|server|language)\//.test(path));
    expect(rooms.filter((path) => read(path).split('\n').length > 301)).toEqual([]);
  });
});
