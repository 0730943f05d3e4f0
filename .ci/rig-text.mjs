// Lets plain Node import a `.rig` file as its text, as the bundler does: `node --import ./.ci/rig-text.mjs script.ts`.
import { readFileSync } from 'node:fs';
import { registerHooks } from 'node:module';

registerHooks({
  load(url, context, next) {
    if (!url.endsWith('.rig')) return next(url, context);
    const text = readFileSync(new URL(url), 'utf8');
    return { format: 'module', shortCircuit: true, source: `export default ${JSON.stringify(text)};` };
  },
});
