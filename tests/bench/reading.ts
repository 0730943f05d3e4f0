// How fast a text is read, stage by stage, and how the parser of open files compares: `node tests/bench/reading.ts`.
import { format } from '../../language/format/index.ts';
import { createRigServices } from '../../language/grammar/services.ts';
import { lex } from '../../language/grammar/tokens.ts';
import { linesOfText, readFile } from '../../language/records/file.ts';
import { wholeExample } from '../worked-example/text.ts';

const { rig } = createRigServices();

const stages: readonly (readonly [string, (text: string) => unknown])[] = [
  ['tokens', lex],
  ['lines', linesOfText],
  ['records', readFile],
  ['formatting', (text) => format(text)],
  ['Langium tree', (text) => rig.parser.LangiumParser.parse(text)],
];

/** A closed file as a fleet has thousands of: seven years of records. */
const history = `history Heron {\n${[2019, 2020, 2021, 2022, 2023, 2024, 2025]
  .map(
    (year) => `  inspected ${year}-04-18 by "R. Adeyemi" {
    curbside    hairline  from 6 ft to 9 ft
    bath-vent   cracked   photo "bath-vent-1.jpg", "bath-vent-2.jpg"
    skylight    lifting   note "forward corner"
    rest        sound     moisture 14 %
  }
  stripped  ${year}-04-20 bath-vent, skylight
  sealed    ${year}-04-20 bath-vent, skylight with GreyLap used 2 cartridges lot "K2231" air 64 F took 3 h
  washed    ${year}-09-30
`,
  )
  .join('')}}\n`;

/** Milliseconds for one reading: the best of several rounds, since the machine may be busy. */
function best(read: (text: string) => unknown, text: string): number {
  for (let i = 0; i < 200; i++) read(text);
  const rounds = Array.from({ length: 7 }, () => {
    const start = performance.now();
    for (let i = 0; i < 150; i++) read(text);
    return (performance.now() - start) / 150;
  });
  return Math.min(...rounds);
}

for (const [name, text] of [
  ['The worked example', wholeExample],
  ['Seven years of records', history],
] as const) {
  const kilobytes = text.length / 1000;
  console.log(`${name}, ${kilobytes.toFixed(1)} KB:`);
  const times = new Map(stages.map(([stage, read]) => [stage, best(read, text)]));
  for (const [stage, ms] of times)
    console.log(`  ${stage.padEnd(14)}${ms.toFixed(3).padStart(8)} ms${(kilobytes / ms).toFixed(1).padStart(8)} MB/s`);
  const formatting = (times.get('formatting') ?? 0) / (times.get('tokens') ?? 1);
  console.log(`  Formatting takes ${formatting.toFixed(1)} times as long as lexing alone.`);
  const ratio = (times.get('Langium tree') ?? 0) / (times.get('lines') ?? 1);
  console.log(`  Lines from tokens are ${ratio.toFixed(1)} times cheaper than the tree of an open file.`);
}
