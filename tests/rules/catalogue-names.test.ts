import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../language/rules/catalogue.ts';

// A problem whose rule the catalogue does not know would stop the check of its file: none may be reported.
const root = fileURLToPath(new URL('../../language', import.meta.url));
const sources = ['grammar', 'records', 'statements', 'values', 'resolve', 'rules'].flatMap((room) =>
  readdirSync(`${root}/${room}`, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.includes('generated'))
    .map((name) => ({ name: `${room}/${name}`, text: readFileSync(`${root}/${room}/${name}`, 'utf8') })),
);

describe('every rule that the sources report', () => {
  const found = sources.flatMap(({ name, text }) =>
    [...text.matchAll(/(?:\breport\(\s*cursor,\s*|\brefuse\(\s*cursor,\s*|\brule: )'([a-z]+(?:-[a-z]+)*)'/g)].map(
      (match) => ({
        name,
        rule: match[1] as string,
      }),
    ),
  );

  it('is in the catalogue', () => {
    expect(found.length).toBeGreaterThan(100);
    expect(found.filter(({ rule }) => !catalogue.has(rule))).toEqual([]);
  });
});
