import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { duesOf } from '../../language/due/index.ts';
import { estimateOf } from '../../language/estimate/index.ts';
import { createProject } from '../../language/resolve/project.ts';
import type { RigView } from '../../language/resolve/types.ts';
import { catalogue } from '../../language/rules/catalogue.ts';
import { checkFile } from '../../language/rules/check.ts';
import { dates, fleet, papers, single } from '../documents/examples.ts';
import { filesOf } from '../project/workspace.ts';
import { rigWith } from '../rules/snippet.ts';
import { fileWith, rows } from '../statements/rows.ts';
import { wholeExample } from '../worked-example/text.ts';

// The tenth reason why such a tool is thrown away (trade notes, section 7): it speaks like a programmer, "unsatisfied
// partial order" in place of "lay the rear before the sides".

const words =
  'unsatisf\\w+ constraints? infeasib\\w+ undefined null nan infinity tokens? lexers? parsers? parse[sd]? parsing nodes? ' +
  'exceptions? booleans? strings? integers? enums? tuples? arrays? identifiers? syntax grammar schemas? regexp? assert\\w* ' +
  'callbacks? instances? parameters? arguments? malformed illegal deprecated invalid ast eof stdin stderr uri';
const jargon = [
  new RegExp(`\\b(?:${words.split(' ').join('|')})\\b`, 'i'),
  /partial order|\[object|=>|\$\{/,
  // Names of the code: snake_case and camelCase.
  /\b[a-z]+_[a-z]+|\b[a-z]+[A-Z]\w*/,
];
/** What does not belong to units and currencies, which are written so. */
const allowed = /\bmL\b/g;

/** What of a message is not quoted from the user's own text, nor an example of what to write. */
const own = (message: string) => message.replace(/`[^`]*`|"[^"]*"/g, '…').replace(allowed, '…');

const spoken = (all: Iterable<string>): string[] =>
  [...new Set(all)].flatMap((message) => {
    const hit = jargon.map((pattern) => own(message).match(pattern)?.[0]).find((each) => each !== undefined);
    return hit === undefined ? [] : [`${hit}: ${message}`];
  });

type Texts = Readonly<Record<string, string>>;

/** Everything that the engine says of a folder to a person: findings with what they point to and offer. */
function* saidOf(texts: Texts, rulesMet: Set<string>): Generator<string> {
  const project = createProject(filesOf(texts));
  for (const path of Object.keys(texts)) {
    for (const { rule, message, related = [], fixes = [] } of checkFile(project, path, dates)) {
      rulesMet.add(rule);
      yield message;
      for (const each of related) yield each.message;
      for (const { label } of fixes) yield label;
    }
    for (const view of project.rigs(path)) if (view.rig.kind === 'rig') yield* figuresOf(view);
  }
}

function* figuresOf(view: RigView): Generator<string> {
  for (const { because, explained } of duesOf(view, dates)) yield* [because, explained.rule];
  const { questions, purchases, jobs, totals } = estimateOf(view, dates);
  yield* questions.map(({ text }) => text);
  yield* purchases.map(({ proof }) => proof);
  yield* jobs.flatMap(({ skipped }) => skipped.map(({ reason }) => reason));
  yield* totals.missing;
}

/** The worked example with one line damaged: cut in half, without its last word, with its first two words swapped. */
function* damaged(text: string): Generator<string> {
  const lines = text.split('\n');
  for (const [i, line] of lines.entries()) {
    const [indent = ''] = line.match(/^\s*/) ?? [];
    const said = line.trim().split(/\s+/);
    if (said.length < 2 || said[0]!.startsWith('#')) continue;
    const [first, second, ...rest] = said;
    for (const typed of [
      line.slice(0, Math.ceil(line.length / 2)),
      said.slice(0, -1).join(' '),
      [second, first, ...rest].join(' '),
    ]) {
      yield [...lines.slice(0, i), indent + typed.trim(), ...lines.slice(i + 1)].join('\n');
    }
  }
}

/** The snippets of the tests of rules: what stands in quotes there and reads like lines of a rig, or like a file. */
function snippets(): readonly Texts[] {
  const folder = new URL('../rules/', import.meta.url);
  const sources = readdirSync(folder).filter((name) => name.endsWith('.test.ts'));
  const quoted = sources.flatMap((name) =>
    [...readFileSync(new URL(name, folder), 'utf8').matchAll(/'((?:[^'\\\n]|\\.)+)'|`([^`]+)`/g)].map(
      ([, a = '', b = '']) => (a || b).replaceAll('\\n', '\n').replace(/\\(.)/g, '$1'),
    ),
  );
  const opens = new Set(rows.map(({ row }) => row.word));
  const lines = [...new Set(quoted)].filter(
    (text) => text.includes(' ') && !text.includes('${') && opens.has(text.trim().split(/\s/)[0] ?? ''),
  );
  return lines.map((text) => ({
    'a.rig': /^(rig|model|fleet|policy|tape|use|history|sealant) /.test(text) ? text : rigWith(text),
  }));
}

describe('10: it speaks like a programmer', () => {
  it('not in the catalogue of rules', () => {
    expect(spoken([...catalogue.values()].flatMap(({ title, why, fix }) => [title, why, fix]))).toEqual([]);
    expect(catalogue.size).toBeGreaterThan(80);
  });

  it('not in a word of the papers of both examples', () => {
    const shown = [...papers].filter(([name]) => name.endsWith('.md')).flatMap(([, text]) => text.split('\n'));
    expect(shown.length).toBeGreaterThan(1000);
    expect(spoken(shown)).toEqual([]);
  });

  it('not in what it says of examples, of every statement, of half-typed and damaged lines', () => {
    const met = new Set<string>();
    const texts: Texts[] = [
      single,
      fleet,
      { 'a.rig': wholeExample },
      ...rows.flatMap(({ table, row }) => [
        { 'a.rig': fileWith(table, row.example) },
        { 'a.rig': fileWith(table, row.word) },
        { 'a.rig': rigWith(`  ${row.example}`) },
      ]),
      ...snippets(),
      ...[...damaged(wholeExample)].map((text) => ({ 'a.rig': text })),
    ];
    const said = new Set(texts.flatMap((each) => [...saidOf(each, met)]));
    console.info(
      `${said.size} different messages, by ${met.size} of ${catalogue.size} rules, from ${texts.length} texts`,
    );
    expect(spoken(said)).toEqual([]);
    expect(said.size).toBeGreaterThan(500);
    expect(met.size).toBeGreaterThan(60);
  });

  it('would be found if it did', () => {
    const bad = [
      'unsatisfied partial order',
      'Cannot read properties of undefined',
      'NaN USD',
      'expected token',
      'front_cap_band',
      'endLap is 0',
    ];
    expect(spoken(bad)).toHaveLength(bad.length);
    expect(spoken(['Lay the rear before the sides.', '10 mL of `null`'])).toEqual([]);
  });
});
