// How fast a text is read, stage by stage, and how the parser of open files compares: `node tests/bench/reading.ts`.
import { createRigServices } from '../../language/grammar/services.ts';
import { lex } from '../../language/grammar/tokens.ts';
import { linesOfText, readFile } from '../../language/records/file.ts';
import { wholeExample } from '../worked-example/text.ts';

const { rig } = createRigServices();

const stages: readonly (readonly [string, (text: string) => unknown])[] = [
  ['tokens', lex],
  ['lines', linesOfText],
  ['records', readFile],
  ['Langium tree', (text) => rig.parser.LangiumParser.parse(text)],
];

/** Milliseconds for one reading: the best of several rounds, since the machine may be busy. */
function best(read: (text: string) => unknown): number {
  for (let i = 0; i < 200; i++) read(wholeExample);
  const rounds = Array.from({ length: 7 }, () => {
    const start = performance.now();
    for (let i = 0; i < 150; i++) read(wholeExample);
    return (performance.now() - start) / 150;
  });
  return Math.min(...rounds);
}

console.log(`The worked example, ${(wholeExample.length / 1000).toFixed(1)} KB:`);
const times = new Map(stages.map(([name, read]) => [name, best(read)]));
for (const [name, ms] of times)
  console.log(
    `${name.padEnd(14)}${ms.toFixed(3).padStart(8)} ms${(wholeExample.length / 1000 / ms).toFixed(1).padStart(8)} MB/s`,
  );
const ratio = (times.get('Langium tree') ?? 0) / (times.get('lines') ?? 1);
console.log(`Lines from tokens are ${ratio.toFixed(1)} times cheaper than the tree of an open file.`);
