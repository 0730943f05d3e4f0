// From a keystroke to its diagnostics, over the Language Server Protocol, on a 250-line and a 2,000-line record; beside the
// peer: the same records as YAML with a JSON Schema in yaml-language-server. Both servers are real processes over stdio.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { rigOf, rigText, rigYaml, sharedRig, yamlSchema } from './records.ts';
import { heard, ourServer, pause, placeOf, quantile, startTalk, type Talk, yamlServer, yamlSettings } from './talk.ts';

export interface Typed {
  readonly file: string;
  readonly languageId: string;
  readonly text: string;
  /** Where a character is put in and taken out again: behind this text. */
  readonly behind: string;
}

/** Milliseconds from sending each change of an open file to the diagnostics that speak of its outcome. */
export async function keystrokes(talk: Talk, { file, languageId, text, behind }: Typed, strokes: number) {
  const at = placeOf(text, text.indexOf(behind, text.length >> 1) + behind.length);
  let clean = 0;
  const first = heard(talk, file, ({ length }) => {
    clean = length;
    return true;
  });
  await talk.open(file, languageId, text);
  await first;
  const times: number[] = [];
  for (let i = 0; i < strokes; i++) {
    const put = i % 2 === 0;
    // Putting the character in makes a finding more, taking it out makes it go: so each answer is told from a stale one.
    const answer = heard(talk, file, ({ length }) => (put ? length > clean : length <= clean));
    const start = performance.now();
    await talk.change(file, at, put ? 0 : 1, put ? 'x' : '');
    times.push((await answer) - start);
    await pause(30);
  }
  return times.slice(4);
}

export async function keystroke(strokes = 44): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'rigseam-bench-'));
  try {
    for (const part of ['rigs', 'yard', 'yaml']) mkdirSync(join(folder, part), { recursive: true });
    for (const [path, text] of Object.entries(sharedRig)) writeFileSync(join(folder, path), text);
    writeFileSync(join(folder, 'schema.json'), JSON.stringify(yamlSchema));
    console.log('\nKeystroke to diagnostics over the protocol');
    for (const [lines, years, perYear] of [
      [250, 20, 1],
      [2000, 20, 8],
    ] as const) {
      const rig = rigOf(lines, years, perYear);
      const [text, yaml] = [rigText(rig), rigYaml(rig)];
      const [rigFile, yamlFile] = [join(folder, 'rigs', `${rig.name}.rig`), join(folder, 'yaml', `${rig.name}.yaml`)];
      writeFileSync(rigFile, text);
      writeFileSync(yamlFile, yaml);
      const time = async (talk: Talk, typed: Typed, count: number) => {
        try {
          return await keystrokes(talk, typed, count);
        } finally {
          talk.stop();
        }
      };
      const mine = await time(
        await startTalk(ourServer, folder),
        { file: rigFile, languageId: 'rig', text, behind: ' hairline' },
        strokes,
      );
      const peer = await time(
        await startTalk(yamlServer, folder, yamlSettings(folder)),
        { file: yamlFile, languageId: 'yaml', text: yaml, behind: 'condition: hairline' },
        Math.min(strokes, 24),
      );
      const row = (name: string, times: readonly number[], count: number) =>
        console.log(
          `  ${name.padEnd(22)} ${String(count).padStart(5)} lines   p50 ${quantile(times, 0.5).toFixed(1).padStart(6)} ms   p95 ${quantile(times, 0.95).toFixed(1).padStart(6)} ms`,
        );
      row('rigseam', mine, text.split('\n').length);
      row('yaml-language-server', peer, yaml.split('\n').length);
      console.log(
        `  p50: ${(quantile(peer, 0.5) / quantile(mine, 0.5)).toFixed(1)} times as fast as the peer on the same records`,
      );
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
