// Bundles what runs: the extension client, the pages of its panels, the language server, the command line.
//   node esbuild.mjs           minified, no source maps: what is packed
//   node esbuild.mjs --dev     readable, with source maps; --watch rebuilds on every change
//   node esbuild.mjs --out DIR into another folder than dist/
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { context } from 'esbuild';

const dev = process.argv.includes('--dev');
const watch = process.argv.includes('--watch');
const out = process.argv.includes('--out') ? process.argv[process.argv.indexOf('--out') + 1] : 'dist';

const shared = {
  bundle: true,
  platform: 'node',
  target: 'node22', // what the oldest editor that the manifest admits runs on
  // The UMD copies of these libraries hide their imports from the bundler.
  mainFields: ['module', 'main'],
  loader: { '.rig': 'text', '.wasm': 'binary' },
  minify: !dev,
  sourcemap: dev,
  legalComments: 'none', // collected in third-party-licences.txt
  metafile: true,
  logLevel: 'warning',
};

// Some libraries inside are CommonJS and ask for Node's own modules by `require`.
const requireInModule = {
  js: "import { createRequire as __createRequire } from 'node:module'; const require = __createRequire(import.meta.url);",
};

// In the editor and in a browser the same two files run: what is of one place only is evaluated only there.
const inBothPlaces = {
  format: 'cjs',
  target: ['node22', 'chrome120', 'safari17', 'firefox120'],
  conditions: ['browser'],
  alias: {
    // These two run in both places; what they would be taken for otherwise runs in Node only.
    fflate: './node_modules/fflate/esm/browser.js',
    highs: './node_modules/highs/build/highs.js',
  },
};

// In the page of a panel, which is a browser wherever the editor runs.
const inPage = { format: 'iife', platform: 'browser', target: ['chrome120', 'safari17', 'firefox120'] };

const bundles = [
  { entryPoints: ['client/pages/roof-plan/main.ts'], outfile: 'dist/roof-plan.js', ...inPage },
  { entryPoints: ['client/pages/calendar/main.ts'], outfile: 'dist/calendar.js', ...inPage },
  { entryPoints: ['client/extension.ts'], outfile: 'dist/client.cjs', external: ['vscode'], ...inBothPlaces },
  { entryPoints: ['server/start.ts'], outfile: 'dist/server.cjs', ...inBothPlaces },
  { entryPoints: ['server/cli.ts'], outfile: 'dist/rigseam.js', format: 'esm', banner: requireInModule },
];

const absent = bundles.flatMap((bundle) => bundle.entryPoints).filter((entry) => !existsSync(entry));
if (absent.length > 0) {
  console.error(`Cannot build: ${absent.join(', ')} ${absent.length > 1 ? 'are' : 'is'} not there.`);
  process.exit(1);
}
if (!existsSync('language/grammar/generated/ast.ts')) {
  console.error('Cannot build: the parser is not generated yet. Run `npm run generate` first, or `npm run build`.');
  process.exit(1);
}

if (out === 'dist') rmSync(out, { recursive: true, force: true });
// The solver of linear programs looks for its code beside the bundle that it stands in.
mkdirSync(out, { recursive: true });
copyFileSync('node_modules/highs/build/highs.wasm', `${out}/highs.wasm`);
const contexts = await Promise.all(
  bundles.map((bundle) => context({ ...shared, ...bundle, outfile: bundle.outfile.replace(/^dist/, out) })),
);
if (watch) {
  await Promise.all(contexts.map((each) => each.watch()));
} else {
  const results = await Promise.all(contexts.map((each) => each.rebuild()));
  await Promise.all(contexts.map((each) => each.dispose()));
  writeFileSync(
    `${out}/third-party-licences.txt`,
    licences(results.flatMap((result) => Object.keys(result.metafile.inputs))),
  );
  for (const { metafile } of results) {
    for (const [file, { bytes }] of Object.entries(metafile.outputs)) {
      if (!file.endsWith('.map')) console.log(`${file}  ${Math.round(bytes / 1024)} KB`);
    }
  }
}

/** The licence texts of every package whose code is inside a bundle, as their licences ask for. */
function licences(inputs) {
  const folders = new Set();
  for (const input of inputs) {
    const folder = input.match(/^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//)?.[1];
    if (folder) folders.add(folder);
  }
  const texts = [...folders].sort().map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
    const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
    const text = file ? readFileSync(`${folder}/${file}`, 'utf8').trim() : `Licence: ${license}`;
    return `${name} ${version} (${license})\n\n${text}\n`;
  });
  return `This program contains the following packages.\n\n${texts.join(`\n${'-'.repeat(80)}\n\n`)}`;
}
