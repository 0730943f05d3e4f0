// Hover over an item: the advice, its first reason, by when.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Hover, MarkupContent } from 'vscode-languageserver';
import { rigText } from '../advice/ask.ts';
import { type Editor, startEditor } from './editor.ts';

// The editor's day is 25 November 2026.
const file = 'teal.rig';
const text = rigText(`inspected 2026-11-20 {
    curbside hairline from 6 ft to 9 ft
    curbside sound
    vent open
    front cracked
    rest sound
  }
  sealed 2026-11-22 dome with Lap`);
let editor: Editor;
beforeAll(async () => {
  editor = await startEditor({ files: { [file]: text } });
  await editor.open(file);
  await editor.quiet();
});
afterAll(() => editor.stop());

async function hover(at: string, offset: number): Promise<string> {
  const position = editor.positionOf(file, at, offset);
  const got = await editor.request<Hover | null>('textDocument/hover', file, { position });
  return (got?.contents as MarkupContent | undefined)?.value ?? '';
}

describe('hover over an item', () => {
  test('says what to do, by when, and why', async () => {
    const said = await hover('front cracked', 1);
    // 30 days after 20 November.
    expect(said).toContain('**recoat** (by 2026-12-20). Cut the cracks back');
    expect(said).toContain('Found cracked on 2026-11-20.');
  });
  test('says what is done until then', async () => {
    const said = await hover('vent open', 1);
    expect(said).toContain('**strip and recoat** (by 2026-11-27)');
    expect(said).toContain('Until then: Cover it today.');
  });
  test('tells the stretches apart', async () => {
    const said = await hover('curbside sound', 1);
    expect(said).toContain('6 ft to 9 ft: **touch up** (by 2027-05-20)');
    expect(said).toContain('9 ft to 28 ft: **leave**.');
  });
  test('says from when tape may go over fresh sealant', async () => {
    // 30 and 60 days after 22 November.
    expect(await hover('dome with Lap', 1)).toContain(
      'not before 2026-12-22 (30 days), safe from 2027-01-21 (60 days)',
    );
  });
});
