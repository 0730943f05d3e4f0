import { readFileSync } from 'node:fs';
import { defineConfig, type Plugin } from 'vitest/config';

/** Loads an imported `.rig` file as its text, as the bundler does. */
const rigText: Plugin = {
  name: 'rig-text',
  enforce: 'pre',
  load(id) {
    if (!id.endsWith('.rig')) return undefined;
    return `export default ${JSON.stringify(readFileSync(id, 'utf8'))};`;
  },
};

export default defineConfig({
  plugins: [rigText],
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/editor/**', 'tests/bench/**', 'node_modules/**'],
    setupFiles: ['tests/seed.ts'],
    testTimeout: 30_000,
  },
});
