import { describe, expect, it } from 'vitest';
import { mended, rigWith, said, under } from './asked.ts';

const one = 'tape Strip4 { width 4 in  roll 50 ft at 58 USD  roll 25 ft at 31 USD }\n';
const two = `${one}tape Strip6 { width 6 in  roll 50 ft at 80 USD }\n`;
const rig = (...lines: readonly string[]) => rigWith('edge curbside', 'cap front 5 in wide', ...lines);

describe('a plan', () => {
  it('without a material gets the only one that there is', () => {
    const text = one + rig('tape front, curbside from 0 ft to 9 ft after 2035-05-01');
    const [finding] = said('which-material', text);
    const after = mended(text, finding!);
    expect(after).toContain('tape front, curbside from 0 ft to 9 ft with Strip4 after 2035-05-01');
    expect(said('which-material', after)).toEqual([]);
  });

  it('without a material is left to the writer where there are several, or none', () => {
    const [finding] = said('which-material', two + rig('tape front'));
    expect(finding?.message).toContain('`Strip4` and `Strip6`');
    expect(finding?.fixes).toEqual([]);
    expect(said('which-material', rig('seal front'))[0]?.fixes).toEqual([]);
    expect(said('which-material', rig('coat'))).toHaveLength(1);
  });

  it('needs none for what takes none, and says nothing beside an unknown name', () => {
    expect(said('which-material', rig('strip front', 'wash', 'inspect'))).toEqual([]);
    expect(said('which-material', one + rig('tape front with Strip5'))).toEqual([]);
    expect(said('which-material', one + rig('tape front with Strip4'))).toEqual([]);
  });

  it('lays one tape', () => {
    const text = two + rig('tape front with Strip4, Strip6');
    const [finding] = said('two-tapes', text);
    expect(under(text, finding!)).toBe('Strip6');
    expect(said('two-tapes', two + rig('tape front with Strip4'))).toEqual([]);
  });
});

describe('an amount', () => {
  it('of rolls says which, where there are several', () => {
    for (const line of [
      'taped 2026-05-01 front with Strip4 used 1 roll',
      'bought 2026-05-01 Strip4 1 roll at 58 USD',
      'on-hand Strip4 1 roll',
    ]) {
      const text = one + rig(line);
      const [finding, ...more] = said('which-size', text);
      expect(more).toEqual([]);
      expect(finding?.message).toContain('`1 roll of 50 ft` or `1 roll of 25 ft`');
      expect(under(text, finding!)).toBe('Strip4');
      expect(said('which-size', text.replace('1 roll', '1 roll of 50 ft'))).toEqual([]);
    }
  });

  it('is plain where there is one size, or a length', () => {
    expect(said('which-size', two + rig('taped 2026-05-01 front with Strip6 used 1 roll'))).toEqual([]);
    expect(said('which-size', two + rig('on-hand Strip4 18 ft, Strip4 3 pieces of 6 ft'))).toEqual([]);
  });

  it('cannot be told where nothing is on sale', () => {
    const [finding] = said('which-size', rig('on-hand GenericSeamTape 2 rolls'));
    expect(finding?.message).toContain('`2 rolls of 50 ft`');
  });

  it('of a fleet is asked the same', () => {
    expect(said('which-size', `${one}fleet Yard { on-hand Strip4 2 rolls }\n`)).toHaveLength(1);
  });
});
