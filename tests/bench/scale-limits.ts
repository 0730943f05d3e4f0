// The limits of a check of a folder, in a process of its own: reading its files and nothing else, and lexing them.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { lex } from '../../language/grammar/tokens.ts';

const folder = process.argv[2] as string;
const start = performance.now();
const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.rig'));
let characters = 0;
for (const path of paths) characters += readFileSync(join(folder, path), 'utf8').length;
const reading = (performance.now() - start) / 1000;
let lexing = 0;
for (const path of paths) {
  const text = readFileSync(join(folder, path), 'utf8');
  const from = performance.now();
  lex(text);
  lexing += performance.now() - from;
}
console.log(JSON.stringify({ reading, lexing: lexing / 1000, characters }));
