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
/** A seam of the list with what stands beneath it. */
const entryOf = (item: string) => page.split(/^(?=- )|\n\n/m).find((part) => part.startsWith(`- **${item}`)) ?? '';

describe('the advice as Markdown', () => {
  it('lists what is to be done, what is looked at, and a line for the rest', () => {
    const html = renderer.render(page);
    const lists = html.split(/<p>To be/).slice(1);
    const names = lists.map((list) => [...list.matchAll(/^<li><strong>(.*?): /gm)].map(([, cell]) => cell));
    expect(names).toEqual([
      ['vent', 'curbside (6 ft to 9 ft)'],
      ['dome', 'front'],
    ]);
    expect(page.trimEnd().split('\n').at(-1)).toBe(
      'Can be left as they are: curbside (0 ft to 6 ft), curbside (9 ft to 28 ft), roadside, lid, foot, air-con, spout, trim, membrane.',
    );
  });

  it('says what, why, by when, from when, and what would change it', () => {
    expect(entryOf('vent')).toContain('- **vent: strip and recoat** (by 2026-05-09, overdue). Take off what is left');
    expect(entryOf('vent')).toContain('  - Until then (by 2026-05-03, overdue): Cover it today.');
    expect(entryOf('vent')).toContain('  - Why: Found open on 2026-05-02.');
    expect(entryOf('dome')).toContain('Nothing is sealed or taped over it before a reading of 19 % or less');
    expect(entryOf('dome')).toContain('lets it be closed up');
    expect(entryOf('curbside')).toContain('(common practice; the half is from memory)');
  });

  it('says how the surfaces are prepared, and what is not the choice', () => {
    expect(entryOf('vent')).toContain('Lay Lap on epdm and abs.');
    expect(entryOf('vent')).toContain('  - Not: tape: What is open takes the tape with it');
    expect(entryOf('front')).not.toContain('  - How:');
  });

  it('is nothing where there is no advice', () => {
    expect(adviceMarkdown([])).toBe('');
  });
});
