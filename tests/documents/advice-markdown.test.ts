import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import { adviceMarkdown } from '../../language/documents/advice-markdown.ts';
import { advice } from '../advice/ask.ts';

const renderer = new MarkdownIt();
const told = advice(`inspected 2026-05-02 {
    vent open
    front not-seen
    curbside hairline from 6 ft to 9 ft
    curbside sound
    dome sound moisture 22 %
    rest sound
  }`);
const page = adviceMarkdown(told);
const rows = page.split('\n').filter((line) => line.startsWith('| '));
const rowOf = (item: string) => rows.find((line) => line.startsWith(`| ${item}`)) ?? '';

describe('the advice as Markdown', () => {
  it('is a table of what is to be done, one of what is looked at, and a line for the rest', () => {
    const html = renderer.render(page);
    const tables = [...html.matchAll(/<table>.*?<\/table>/gs)].map(([table]) => table);
    const names = tables.map((table) => [...table.matchAll(/<tr>\s*<td>(.*?)<\/td>/gs)].map(([, cell]) => cell));
    expect(names).toEqual([
      ['vent', 'curbside (6 ft to 9 ft)'],
      ['dome', 'front'],
    ]);
    expect(page.trimEnd().split('\n').at(-1)).toBe(
      'Can be left as they are: curbside (0 ft to 6 ft), curbside (9 ft to 28 ft), roadside, lid, foot, air-con, spout, trim, membrane.',
    );
  });

  it('says what, why, by when, from when, and what would change it', () => {
    expect(rowOf('vent')).toContain('**strip and recoat**. Take off what is left');
    expect(rowOf('vent')).toContain('Until then: Cover it today.');
    expect(rowOf('vent')).toContain('Found open on 2026-05-02.');
    expect(rowOf('vent')).toContain('| 2026-05-09 (overdue); cover: 2026-05-03 (overdue) |');
    expect(rowOf('dome')).toContain('Nothing is sealed or taped over it before a reading of 19 % or less');
    expect(rowOf('dome')).toContain('lets it be closed up');
    expect(rowOf('curbside')).toContain('(common practice; the half is from memory)');
  });

  it('says how the surfaces are prepared, and what is not the choice', () => {
    const line = page.split('\n').find((one) => one.startsWith('- vent:')) ?? '';
    expect(line).toContain('Lay Lap on epdm and abs.');
    expect(line).toContain('Not tape: What is open takes the tape with it');
  });

  it('is nothing where there is no advice', () => {
    expect(adviceMarkdown([])).toBe('');
  });
});
