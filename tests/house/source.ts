import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type ESTree, parseSync, Visitor } from 'vite';

// Reads the project's own source as syntax trees, for the tests that hold the house in order.

export const root = fileURLToPath(new URL('../../', import.meta.url));

/** Every file of the project, committed or about to be; paths from the top, forward slashes. */
export const projectFiles: readonly string[] = execFileSync('git', ['ls-files', '-co', '--exclude-standard', '-z'], {
  cwd: root,
  encoding: 'utf8',
})
  .split('\0')
  .filter((path) => path !== '' && existsSync(join(root, path)));

export const read = (path: string): string => readFileSync(join(root, path), 'utf8');

/** The TypeScript files of a room. */
export function sourcesOf(room: string): readonly string[] {
  return projectFiles.filter((path) => path.startsWith(`${room}/`) && path.endsWith('.ts'));
}

/** The syntax tree of a TypeScript text. Throws where it does not parse. */
export function treeOf(path: string, text: string): ESTree.Program {
  const { program, errors } = parseSync(path, text);
  const [error] = errors;
  if (error) throw new Error(`${path}: ${error.message}`);
  return program;
}

/**
 * All that a file imports, types included: `import`, `export … from`, `import()`, `import('…').T`, `require`.
 * An `import()` of anything but a plain text is given as `?`, since nobody can tell where it leads.
 */
export function importsOf(path: string, text: string): readonly string[] {
  const found: string[] = [];
  const add = (source: ESTree.Node | null | undefined) => {
    if (source) found.push(source.type === 'Literal' && typeof source.value === 'string' ? source.value : '?');
  };
  new Visitor({
    ImportDeclaration: (node) => add(node.source),
    ExportNamedDeclaration: (node) => add(node.source),
    ExportAllDeclaration: (node) => add(node.source),
    ImportExpression: (node) => add(node.source),
    TSImportType: (node) => add(node.source),
    TSExternalModuleReference: (node) => add(node.expression),
    CallExpression: (node) => {
      if (node.callee.type === 'Identifier' && node.callee.name === 'require') add(node.arguments[0]);
    },
  }).visit(treeOf(path, text));
  return found;
}

/** Where a relative import leads, from the top; undefined for a package. */
export function targetOf(path: string, specifier: string): string | undefined {
  return specifier.startsWith('.') ? normalize(join(dirname(path), specifier)) : undefined;
}
