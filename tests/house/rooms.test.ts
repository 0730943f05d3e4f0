import { builtinModules } from 'node:module';
import { Visitor } from 'vite';
import { describe, expect, it } from 'vitest';
import { importsOf, read, sourcesOf, targetOf, treeOf } from './source.ts';

// The rooms and their one direction: client and server may use language, language uses neither, and they never meet.

/** Run when the parser is generated, never afterwards; so it may write files. */
const buildSteps = new Set([
  'language/grammar/generate-terminals.ts',
  'client/syntaxes/generate.ts',
  'client/reference/generate.ts',
  'client/schemas/generate.ts',
]);

const mayUse = {
  language: ['language'],
  server: ['server', 'language', 'package.json'],
  client: ['client', 'language'],
} as const;

/** Packages that would tie the language to one place to run in, or to a transport. */
const notInLanguage =
  /^(node:|vscode($|-languageclient|-languageserver($|\/)|-jsonrpc)|langium\/(lsp|node|test|grammar)|vscode-languageserver-protocol)/;

/** What is wrong with the imports of one file; empty when all is well. */
function wrongImports(room: keyof typeof mayUse, path: string, text: string): string[] {
  return importsOf(path, text).flatMap((specifier) => {
    const target = targetOf(path, specifier);
    if (specifier === '?') return [`${path} imports what it computes`];
    if (target !== undefined) {
      if (buildSteps.has(target)) return [`${path} imports the build step ${target}`];
      return mayUse[room].some((each) => target === each || target.startsWith(`${each}/`))
        ? []
        : [`${path} imports ${target}`];
    }
    const builtIn = builtinModules.includes(specifier.split('/')[0] ?? '');
    return room === 'language' && (builtIn || notInLanguage.test(specifier)) ? [`${path} imports ${specifier}`] : [];
  });
}

const notPure: Readonly<Record<string, readonly string[] | 'all'>> = {
  Date: 'all',
  Math: ['random'],
  Temporal: ['Now'],
  process: 'all',
  console: 'all',
  performance: 'all',
  crypto: ['randomUUID', 'getRandomValues'],
};
const notCalled = new Set(['fetch', 'setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'Date']);

/** The clock, chance, the console and the network, wherever a text of the language room reaches for them. */
function impurities(path: string, text: string): string[] {
  const found: string[] = [];
  new Visitor({
    MemberExpression: ({ object, property }) => {
      const member = property.type === 'Identifier' ? property.name : '?';
      const owner =
        object.type === 'Identifier'
          ? object.name
          : object.type === 'MemberExpression' && object.property.type === 'Identifier'
            ? object.property.name
            : '';
      const banned = Object.hasOwn(notPure, owner) ? notPure[owner] : undefined;
      if (banned === 'all' || banned?.includes(member)) found.push(`${path} uses ${owner}.${member}`);
    },
    NewExpression: ({ callee }) => {
      if (callee.type === 'Identifier' && callee.name === 'Date') found.push(`${path} uses new Date`);
    },
    CallExpression: ({ callee }) => {
      if (callee.type === 'Identifier' && notCalled.has(callee.name)) found.push(`${path} calls ${callee.name}`);
    },
  }).visit(treeOf(path, text));
  return found;
}

/** `import { z } from 'zod'` drags every language that zod speaks into the bundles; the namespace import does not. */
function zodByName(path: string, text: string): string[] {
  const found: string[] = [];
  new Visitor({
    ImportDeclaration: ({ source, importKind, specifiers }) => {
      const byName = specifiers.some((each) => each.type === 'ImportSpecifier' && each.importKind !== 'type');
      if (source.value === 'zod' && importKind !== 'type' && byName) found.push(`${path}: import * as z from 'zod'`);
    },
  }).visit(treeOf(path, text));
  return found;
}

describe('the rooms', () => {
  it.each(Object.keys(mayUse) as (keyof typeof mayUse)[])('%s imports only what it may', (room) => {
    const files = sourcesOf(room).filter((path) => !buildSteps.has(path));
    expect(files.length).toBeGreaterThan(0);
    expect(files.flatMap((path) => wrongImports(room, path, read(path)))).toEqual([]);
  });

  it('language knows no clock, chance, console, timer or network', () => {
    const files = sourcesOf('language').filter((path) => !buildSteps.has(path));
    expect(files.flatMap((path) => impurities(path, read(path)))).toEqual([]);
  });

  it('zod is imported as a namespace', () => {
    const files = Object.keys(mayUse).flatMap(sourcesOf);
    expect(files.flatMap((path) => zodByName(path, read(path)))).toEqual([]);
  });
});

describe('the check itself', () => {
  it.each([
    "import { x } from '../../server/main.ts';",
    "import type { x } from '../../client/extension.ts';",
    "export * from '../../server/main.ts';",
    "export { x } from '../../server/main.ts';",
    "type X = import('../../server/main.ts').X;",
    "const x = await import('../../server/main.ts');",
    'const x = await import(where);',
    "import '../../tests/house/source.ts';",
    "import { readFileSync } from 'node:fs';",
    "import { readFile } from 'fs/promises';",
    "import { window } from 'vscode';",
    "import { createConnection } from 'vscode-languageserver/node';",
    "import { createServicesForGrammar } from 'langium/lsp';",
    "import x from './generate-terminals.ts';",
    "const fs = require('fs');",
  ])('finds %s', (text) => {
    expect(wrongImports('language', 'language/grammar/a.ts', text)).toHaveLength(1);
  });

  it('lets good imports be, and texts that only look like imports', () => {
    const text = `import * as z from 'zod';\nimport { a } from '../values/a.ts';\nconst b = "import 'fs'"; // import 'vscode'`;
    expect(wrongImports('language', 'language/grammar/a.ts', text)).toEqual([]);
    expect(wrongImports('server', 'server/a.ts', "import 'node:fs'; import '../language/a.ts';")).toEqual([]);
    expect(wrongImports('server', 'server/a.ts', "import '../client/a.ts';")).toHaveLength(1);
  });

  it.each([
    'Date.now()',
    'new Date()',
    'Date()',
    'globalThis.Date.now()',
    'Math.random()',
    'Temporal.Now.plainDateISO()',
    'process.env.A',
    "process['env']",
    'console.log(1)',
    'performance.now()',
    'fetch(x)',
    'setTimeout(f, 1)',
    'globalThis.crypto.randomUUID()',
  ])('finds %s', (text) => {
    expect(impurities('a.ts', text).length).toBeGreaterThan(0);
  });

  it('lets pure code be', () => {
    expect(
      impurities('a.ts', "Math.max(1, 2); const date = { now: 1 }; date.now; 'Date.now()'; Temporal.PlainDate"),
    ).toEqual([]);
  });

  it('finds zod imported by name', () => {
    expect(zodByName('a.ts', "import { z } from 'zod';")).toHaveLength(1);
    expect(zodByName('a.ts', "import * as z from 'zod'; import type { ZodType } from 'zod';")).toEqual([]);
  });
});
