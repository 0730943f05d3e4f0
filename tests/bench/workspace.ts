// Latency over the protocol while a workspace of one rig, or of 2,000, lies behind the open file: to the diagnostics of what
// is typed, completion of a condition and of materials, hover, and an edit of the materials that all rigs share. Clean, and with one error in every file.
// Beside it the YAML peer for what it can do: it knows the open file only.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { keystrokes } from './keystroke.ts';
import { rigOf, rigText, rigYaml, sharedRig, yamlSchema } from './records.ts';
import { sharedEdit } from './shared-edit.ts';
import {
  ourServer,
  type Place,
  pause,
  placeOf,
  quantile,
  startTalk,
  type Talk,
  uriOf,
  yamlServer,
  yamlSettings,
} from './talk.ts';

const materials = 'yard/materials.rig';

interface Figures {
  readonly keystroke: readonly number[];
  readonly completion: readonly number[];
  /** Of the materials of a record in the middle, each judged on what lay there: asked again, and from a keystroke on. */
  readonly materials?: { readonly again: readonly number[]; readonly typed: readonly number[] };
  readonly hover: readonly number[];
  /** Publishes for other files than the one typed in. */
  readonly strayPublishes: number;
  readonly shared?: { readonly own: readonly number[]; readonly last: readonly number[]; readonly files: number };
}

/** Milliseconds of requests at a place, one after another. */
async function asked(talk: Talk, method: string, file: string, position: object, times: number): Promise<number[]> {
  const out: number[] = [];
  for (let i = 0; i < times; i++) {
    const start = performance.now();
    await talk.request(method, file, { position });
    out.push(performance.now() - start);
    await pause(10);
  }
  return out.slice(2);
}

/** Milliseconds from a character more or less to what may stand there. */
async function askedTyping(talk: Talk, file: string, position: Place, times: number): Promise<number[]> {
  const out: number[] = [];
  for (let i = 0; i < times; i++) {
    const put = i % 2 === 0;
    const start = performance.now();
    await talk.change(file, position, put ? 0 : 1, put ? 'G' : '');
    await talk.request('textDocument/completion', file, { position });
    out.push(performance.now() - start);
    await pause(30);
  }
  return out.slice(2);
}

async function ours(folder: string, names: readonly string[], file: string, text: string, strokes: number) {
  const talk = await startTalk(ourServer, folder);
  try {
    await talk.quiet(1500);
    let stray = 0;
    const stop = talk.listen((uri) => {
      if (uri !== uriOf(file)) stray++;
    });
    const keystroke = await keystrokes(talk, { file, languageId: 'rig', text, behind: ' hairline' }, strokes);
    await talk.quiet(400);
    stop();
    const middle = text.indexOf(' inspected', text.length >> 1);
    const seam = placeOf(text, text.indexOf('curbside', middle) + 3);
    const condition = placeOf(text, text.indexOf(' hairline', middle) + 1);
    const completion = await asked(talk, 'textDocument/completion', file, condition, strokes);
    const material = placeOf(text, text.indexOf(' with ', text.indexOf(' sealed', middle)) + ' with '.length);
    const again = await asked(talk, 'textDocument/completion', file, material, strokes);
    const typed = await askedTyping(talk, file, material, strokes);
    const hover = await asked(talk, 'textDocument/hover', file, seam, strokes);
    const rigs = new Set(names.map((name) => uriOf(join(folder, 'rigs', name))));
    const shared = await sharedEdit(
      talk,
      { file: join(folder, materials), text: sharedRig[materials] as string, name: 'GreyLap' },
      rigs,
      3,
    );
    return {
      keystroke,
      completion,
      materials: { again, typed },
      hover,
      strayPublishes: stray,
      shared,
    } satisfies Figures;
  } finally {
    talk.stop();
  }
}

async function peers(folder: string, file: string, yaml: string, strokes: number): Promise<Figures> {
  const talk = await startTalk(yamlServer, folder, yamlSettings(folder));
  try {
    const keystroke = await keystrokes(
      talk,
      { file, languageId: 'yaml', text: yaml, behind: 'condition: hairline' },
      strokes,
    );
    const place = placeOf(yaml, yaml.indexOf('condition: hairline', yaml.length >> 1) + 'condition: '.length);
    return {
      keystroke,
      completion: await asked(talk, 'textDocument/completion', file, place, strokes),
      hover: await asked(talk, 'textDocument/hover', file, { ...place, character: place.character - 6 }, strokes),
      strayPublishes: 0,
    };
  } finally {
    talk.stop();
  }
}

const both = (times: readonly number[]) =>
  `${quantile(times, 0.5).toFixed(1).padStart(7)} ${quantile(times, 0.95).toFixed(1).padStart(7)}`;

export async function workspace(strokes = 44): Promise<void> {
  console.log('\nA 500-line record in a workspace, over the protocol: p50 and p95 in ms');
  console.log(`  ${''.padEnd(34)}${'keystroke'.padStart(16)}${'completion'.padStart(16)}${'hover'.padStart(16)}`);
  const row = (name: string, { keystroke, completion, hover }: Figures) =>
    console.log(`  ${name.padEnd(34)} ${both(keystroke)} ${both(completion)} ${both(hover)}`);
  const rig = rigOf(1, 21, 2);
  const [text, yaml] = [rigText(rig), rigYaml(rig)];
  for (const [count, broken] of [
    [1, false],
    [2000, false],
    [2000, true],
  ] as const) {
    const folder = mkdtempSync(join(tmpdir(), 'rigseam-bench-'));
    try {
      for (const part of ['rigs', 'yard', 'yaml']) mkdirSync(join(folder, part));
      for (const [path, shared] of Object.entries(sharedRig)) writeFileSync(join(folder, path), shared);
      const names: string[] = [];
      for (let i = 1; i <= count; i++) {
        const one = i === 1 ? text : rigText(rigOf(i, 6));
        names.push(`${i === 1 ? rig.name : `Rig${String(i).padStart(5, '0')}`}.rig`);
        // One name that nobody knows: the error that makes other servers link everything anew on each keystroke.
        const with1 = broken ? one.replace(/\}\n$/, '  washed    2026-06-01 with NobodyKnows\n}\n') : one;
        writeFileSync(join(folder, 'rigs', names.at(-1) as string), with1);
      }
      const file = join(folder, 'rigs', names[0] as string);
      const mine = await ours(folder, names, file, text, strokes);
      row(`rigseam, ${count} ${count === 1 ? 'rig' : 'rigs'}${broken ? ', an error in each' : ''}`, mine);
      const { again, typed } = mine.materials;
      console.log(`    completion of materials: asked again ${both(again)}, from a keystroke on ${both(typed)}`);
      const { own, last, files } = mine.shared;
      console.log(
        `    an edit of the shared materials: to its own diagnostics ${both(own)}, to the last of ${files} dependants ${both(last)}`,
      );
      console.log(`    publishes for files that had not changed: ${mine.strayPublishes}`);
      if (count > 1) continue;
      writeFileSync(join(folder, 'schema.json'), JSON.stringify(yamlSchema));
      const yamlFile = join(folder, 'yaml', `${rig.name}.yaml`);
      writeFileSync(yamlFile, yaml);
      const peer = await peers(folder, yamlFile, yaml, Math.min(strokes, 24));
      row('yaml-language-server, open file', peer);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
}
