// What `rigseam check` prints for machines: SARIF against its published schema, and the compact lines.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { catalogue } from '../../language/rules/catalogue.ts';
import { checked, compactText, printed } from '../../server/cli/check.ts';
import { asked } from '../../server/cli/paths.ts';
import { sarifLog } from '../../server/cli/sarif.ts';
import { type TestRepository, testRepository } from './repository.ts';

const dates = { asOf: '2026-11-25', today: '2026-11-25' };
const wren = `rig Wren {
  roof     18 ft by 8 ft  epdm
  opening  bath vent  16 in by 16 in
  sealed   2026-04-25 front with GreyLap
  sealed   2026-04-25 front with GreyLap
}
`;

let repository: TestRepository;
beforeAll(() => {
  repository = testRepository({
    'yard/wren #1.rig': wren,
    'spare.rig': 'policy Spare {\n  inspect  every 3 months\n}\n\nrig Tern {\n  roof  18 ft by 8 ft  epdm\n}\n',
    'a.rig': 'rig Gull {\n  roof  18 ft by 8 ft  epdm\n  cap   frnt\n}\n\nrig Gull {\n  roof  18 ft by 8 ft  epdm\n}\n',
  });
});
afterAll(() => repository.end());

const run = (from = repository.folder) => checked(asked([repository.folder], from), dates);
const log = (from?: string) => sarifLog(run(from), repository.folder, '1.2.3') as Log;
interface Log {
  readonly version: string;
  readonly runs: readonly {
    readonly tool: { readonly driver: { readonly rules: readonly { readonly id: string }[] } };
    readonly results: readonly Result[];
  }[];
}
interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: string;
  readonly message: { readonly text: string };
  readonly locations: readonly {
    readonly physicalLocation: {
      readonly artifactLocation: { readonly uri: string };
      readonly region: Readonly<Record<'startLine' | 'startColumn' | 'endLine' | 'endColumn', number>>;
    };
  }[];
  readonly relatedLocations?: readonly { readonly message: { readonly text: string } }[];
  readonly fixes?: readonly unknown[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
}

describe('SARIF', () => {
  // The schema as OASIS published it with SARIF 2.1.0 (release candidate 5 of its text, the last before the standard), JSON
  // Schema draft 4. It says nothing that later drafts read otherwise, so that its own name of the draft is left aside.
  const text = readFileSync(new URL('sarif-2.1.0-rtm.5.schema.json', import.meta.url), 'utf8');
  const { $schema, id, ...schema } = JSON.parse(text);
  const ajv = new Ajv({
    strict: false,
    unicodeRegExp: false,
    formats: {
      uri: (one: string) => URL.canParse(one),
      'uri-reference': (one: string) => URL.canParse(one, 'file:///base/'),
      'date-time': true,
    },
  });
  const valid = ajv.compile(schema);

  it('is valid by the published schema, with findings of all kinds', () => {
    const made = log();
    valid(made);
    expect(valid.errors).toBe(null);
    const [only] = made.runs;
    expect(new Set(only?.results.map(({ level }) => level)).size).toBeGreaterThan(1);
    expect(only?.results.some(({ relatedLocations }) => relatedLocations)).toBe(true);
    expect(only?.results.some(({ fixes }) => fixes)).toBe(true);
  });

  it('is refused by that schema when something is amiss', () => {
    const made = structuredClone<unknown>(log()) as { runs: { results: { level: string }[] }[] };
    (made.runs[0]?.results[0] as { level: string }).level = 'grave';
    expect(valid(made)).toBe(false);
  });

  it('has every rule of the catalogue, and each result names its own', () => {
    const [only] = log().runs;
    const rules = only?.tool.driver.rules ?? [];
    expect(rules.map(({ id: name }) => name).sort()).toEqual([...catalogue.keys()].sort());
    for (const { ruleId, ruleIndex } of only?.results ?? []) expect(rules[ruleIndex]?.id).toBe(ruleId);
  });

  it('counts lines and columns from 1, and writes paths as parts of addresses', () => {
    const text = readFileSync(join(repository.folder, 'a.rig'), 'utf8').split('\n');
    const result = log().runs[0]?.results.find(({ message }) => message.text.includes('frnt'));
    const { artifactLocation, region } = result?.locations[0]?.physicalLocation ?? {};
    expect(artifactLocation?.uri).toBe('a.rig');
    expect(
      text[(region?.startLine ?? 0) - 1]?.slice((region?.startColumn ?? 0) - 1, (region?.endColumn ?? 0) - 1),
    ).toBe('frnt');
    const uris = log().runs[0]?.results.map((each) => each.locations[0]?.physicalLocation.artifactLocation.uri);
    expect(uris).toContain('yard/wren%20%231.rig');
  });

  it('is the same from whichever folder it is called, and holds no path of the machine', () => {
    expect(log(join(repository.folder, 'yard'))).toEqual(log());
    expect(JSON.stringify(log())).not.toContain(repository.folder);
  });

  it('names findings alike after lines moved and blanks came, each differently', () => {
    const names = () => log().runs[0]?.results.map((each) => each.partialFingerprints['rigseamFinding/v1']) ?? [];
    const before = names();
    expect(new Set(before).size).toBe(before.length);
    repository.write({ 'yard/wren #1.rig': `# moved\n\n${wren.replace('sealed   2026', 'sealed 2026')}` });
    expect(names().sort()).toEqual([...before].sort());
    repository.write({ 'yard/wren #1.rig': wren });
  });
});

describe('the compact format', () => {
  it('is one line a finding and nothing else', () => {
    const result = printed(run());
    const lines = compactText(result).split('\n');
    expect(lines.pop()).toBe('');
    expect(lines).toHaveLength(result.findings.length);
    for (const line of lines)
      expect(line).toMatch(/^[^:]+:\d+:\d+: (error|warning|information|hint) [a-z0-9-]+: \S.*$/);
    expect(lines.some((line) => line.startsWith('a.rig:3:9: error '))).toBe(true);
  });

  it('is empty when nothing is found', () => {
    expect(compactText({ files: 1, findings: [] })).toBe('');
  });
});
