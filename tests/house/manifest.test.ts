import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type ESTree, Visitor } from 'vite';
import { describe, expect, it } from 'vitest';
import * as protocol from '../../language/protocol/index.ts';
import manifest from '../../package.json' with { type: 'json' };
import { read, root, sourcesOf, treeOf } from './source.ts';

const commands = manifest.contributes.commands.map(({ command }) => command);
/** Commands behind lenses that no palette shows. */
const internal: readonly string[] = [protocol.goToCommand];
const settings: Readonly<Record<string, { default: unknown }>> = manifest.contributes.configuration.properties;

/** Every call in the client of a method of that name, with its arguments where they are plain values. */
function callsOf(method: string): readonly (readonly unknown[])[] {
  const found: unknown[][] = [];
  for (const path of sourcesOf('client')) {
    new Visitor({
      CallExpression: ({ callee, arguments: values }) => {
        if (callee.type !== 'MemberExpression' || callee.property.type !== 'Identifier') return;
        if (callee.property.name === method) found.push(values.map(plainValue));
      },
    }).visit(treeOf(path, read(path)));
  }
  return found;
}

/** The value of a literal, or of a constant of the protocol. */
function plainValue(node: ESTree.Node): unknown {
  if (node.type === 'Literal') return node.value;
  return node.type === 'Identifier' ? (protocol as Record<string, unknown>)[node.name] : undefined;
}

describe('the manifest', () => {
  it('has a handler for every command, and no handler without a command', () => {
    expect(
      callsOf('registerCommand')
        .map(([command]) => command)
        .sort(),
    ).toEqual([...commands, ...internal].sort());
  });

  it('runs and lists only commands that are there', () => {
    const run = callsOf('executeCommand').map(([command]) => String(command));
    const listed = Object.values(manifest.contributes.menus).flatMap((items) => items.map(({ command }) => command));
    const linked = [
      ...JSON.stringify(manifest.contributes.walkthroughs).matchAll(/(?:command:|onCommand:)(rigseam\.\w+)/g),
    ];
    const ours = [
      ...run.filter((command) => command.startsWith('rigseam.')),
      ...listed,
      ...linked.map(([, command]) => command as string),
    ];
    expect(ours.filter((command) => !commands.includes(command))).toEqual([]);
  });

  it('has every setting read, with the default that the manifest shows', () => {
    const readBy = Object.fromEntries(callsOf('get').map(([name, value]) => [`rigseam.${name}`, value]));
    // The language client reads this one itself, by its own id.
    const own = Object.entries(settings).filter(([name]) => name !== 'rigseam.trace.server');
    expect(readBy).toEqual(Object.fromEntries(own.map(([name, setting]) => [name, setting.default])));
    for (const place of ['client/server-process.ts', 'client/server-worker.ts'])
      expect(read(place)).toMatch(/new LanguageClient\(\s*section,/);
    expect(read('client/settings.ts')).toContain("section = 'rigseam'");
  });

  it('restricts only settings that are there', () => {
    const restricted = manifest.capabilities.untrustedWorkspaces.restrictedConfigurations;
    expect(restricted.filter((name) => !Object.hasOwn(settings, name))).toEqual([]);
    expect(restricted).toContain('rigseam.outputFolder');
  });

  it('names only files that are there, or that the bundler makes', () => {
    const { languages, grammars } = manifest.contributes;
    const paths = [
      manifest.icon,
      ...languages.flatMap(({ configuration, icon }) => [configuration, icon.light, icon.dark]),
      ...grammars.map(({ path }) => path),
      ...manifest.contributes.walkthroughs.flatMap(({ steps }) => steps.map(({ media }) => media.markdown)),
    ];
    expect(paths.filter((path) => !existsSync(join(root, path)))).toEqual([]);
    const bundler = read('esbuild.mjs');
    for (const made of [manifest.main, manifest.browser, manifest.bin.rigseam]) {
      expect(bundler).toContain(`outfile: '${made.replace(/^\.\//, '')}'`);
    }
    expect(read('client/server-process.ts')).toContain("'dist/server.cjs'");
    expect(read('client/server-worker.ts')).toContain("packed('server.cjs')");
    expect(bundler).toContain("outfile: 'dist/server.cjs'");
    for (const panel of ['roof-plan', 'calendar']) {
      const panels = read(`client/${panel}/panels.ts`);
      expect(panels).toContain(`'${panel}.js'`);
      expect(bundler).toContain(`outfile: 'dist/${panel}.js'`);
      expect(manifest.activationEvents).toContain(`onWebviewPanel:${panels.match(/panelKind = '([^']+)'/)?.[1]}`);
    }
  });

  it('runs in a browser as it does on a desktop: the same commands, the same settings', () => {
    expect(manifest.browser).toBe(manifest.main);
    expect(manifest.capabilities.virtualWorkspaces.supported).toBe('limited');
  });

  it('asks for an editor that is as new as the API that we are compiled against', () => {
    expect(manifest.engines.vscode).toBe(`^${manifest.devDependencies['@types/vscode']}`);
  });

  it('pins every dependency', () => {
    const all = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies });
    expect(all.filter(([, version]) => !/^\d+\.\d+\.\d+(-r\.\d+)?$/.test(version))).toEqual([]);
  });

  it('packs exactly what is on the committed list', () => {
    const named = read('.vscodeignore')
      .split('\n')
      .filter((line) => line.startsWith('!'))
      .map((line) => line.slice(1));
    const listed = read('tests/house/vsix-files.txt').trim().split('\n');
    expect([...listed].sort()).toEqual([...named].sort());
  });

  it('is told whole in the README: commands and settings', () => {
    const readme = read('README.md');
    const titles = manifest.contributes.commands.map(({ category, title }) => `${category}: ${title}`);
    expect([...titles, ...Object.keys(settings)].filter((each) => !readme.includes(each))).toEqual([]);
  });
});
