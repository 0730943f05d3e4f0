import { describe, expect, it } from 'vitest';
import { cautionsFor, type Dangers } from '../../language/documents/cautions.ts';
import { paper, papers, papersOfText } from './examples.ts';

const none: Dangers = {
  roofWork: false,
  solvents: false,
  urethane: false,
  stripping: false,
  washing: false,
  closing: false,
  wet: false,
  old: false,
};
const every = Object.fromEntries(Object.keys(none).map((key) => [key, true])) as unknown as Dangers;
const wordsOf = (dangers: Dangers) => cautionsFor(dangers).map(({ text }) => text);

describe('cautions', () => {
  it('are at most seven, falls first', () => {
    expect(cautionsFor(every)).toHaveLength(7);
    expect(wordsOf(every)[0]).toMatch(/^Falls/);
  });

  it('are only those that apply', () => {
    expect(cautionsFor(none)).toEqual([]);
    expect(cautionsFor({ ...none, old: true })).toEqual([]);
    expect(wordsOf({ ...none, old: true, stripping: true }).join()).toMatch(/PCB/);
    expect(wordsOf({ ...none, closing: true }).join()).toMatch(/^Carbon monoxide/);
    expect(wordsOf({ ...none, wet: true }).join()).toMatch(/mould/);
    expect(wordsOf({ ...none, roofWork: true }).join()).not.toMatch(/Solvents|isocyanates|PCB/);
  });

  it('each name their kind', () => {
    for (const key of Object.keys(none) as (keyof Dangers)[])
      for (const { source } of cautionsFor({ ...none, [key]: true }))
        expect(source).toMatch(/published: |common practice|from memory/);
  });

  it('speak of solvents only where something is laid, wiped or primed', () => {
    expect(paper('Brook.estimate.md')).not.toContain('Solvents burn');
    expect(paper('Wren.estimate.md')).toContain('Solvents burn');
  });

  it('stand in every paper that sends somebody up', () => {
    for (const [name, text] of papers) if (name.endsWith('.md')) expect(text, name).toContain('Falls kill');
    const bare = papersOfText(
      'rig Bare {\n  roof 20 ft by 8 ft epdm\n  cap rear\n  inspected 2026-10-01 {\n    rest sound\n  }\n}\n',
    );
    expect(paper('Bare.estimate.md', bare)).not.toContain('Falls kill');
    expect(paper('Bare.schedule.md', bare)).toContain('Falls kill');
  });
});

describe('no paper', () => {
  it('says that a roof is safe, that a rig is dry, or that a warranty is met', () => {
    for (const [name, text] of papers) {
      expect(text, name).not.toMatch(
        /\b(?:roof|rig|it|membrane) (?:is|are|will be) (?:now )?(?:safe|dry|watertight)\b/i,
      );
      expect(text, name).not.toMatch(/safe to (?:walk|step|stand)|meets the warranty/i);
    }
  });
  it('leaves out what comes before it: labels, manual, codes, licensed trades', () => {
    for (const [name, text] of papers)
      if (name.endsWith('.md'))
        for (const words of ['Labels', "maker's manual", 'local codes', 'licensed', 'computed from what was recorded'])
          expect(text, name).toContain(words);
  });
});
