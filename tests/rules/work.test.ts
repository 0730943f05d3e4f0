import { describe, expect, it } from 'vitest';
import { check } from '../project/workspace.ts';
import { findings, mended, rigWith } from './snippet.ts';

const rules = (lines: string, options: { more?: string; asOf?: string } = {}) =>
  findings(lines, undefined, options).map((finding) => finding.rule);

describe('tape over sealant that cures', () => {
  it('20 days after solvent-borne sealant is refused with the first allowed date', () => {
    const lines = '  sealed 2026-04-01 vent with Lap\n  taped 2026-04-21 vent with Strip';
    const [finding] = findings(lines, 'tape-too-early');
    expect(finding).toMatchObject({
      severity: 'error',
      item: 'vent',
      message: expect.stringContaining('from 2026-05-01 at the earliest, without doubt from 2026-05-31'),
    });
    expect(finding?.related?.[0]?.message).toContain('Lap was laid here');
  });
  it('between the figures is a warning, after them silent', () => {
    expect(rules('  sealed 2026-04-01 vent with Lap\n  taped 2026-05-10 vent with Strip')).toContain(
      'tape-before-full-cure',
    );
    const after = rules('  sealed 2026-04-01 vent with Lap\n  taped 2026-05-31 vent with Strip');
    expect(after).not.toContain('tape-before-full-cure');
    expect(after).not.toContain('tape-too-early');
  });
  it('is never allowed over silicone', () => {
    const found = rules(
      '  stripped 2026-04-01 vent\n  sealed 2026-04-01 vent with Sil\n  taped 2026-08-01 vent with Strip',
    );
    expect(found).toContain('tape-too-early');
    expect(found).toContain('silicone-underneath');
  });
  it('moves a planned tape by a quick fix', () => {
    const lines = '  sealed 2026-11-20 vent with Lap\n  tape vent with Strip';
    const [finding] = findings(lines, 'tape-too-early');
    expect(finding?.fixes?.[0]?.text).toBe(' after 2027-01-19');
    expect(check(mended(lines, finding as never)).map((one) => one.rule)).not.toContain('tape-too-early');
  });
});

describe('what the tape or the sealant goes over', () => {
  const found = (word: string) => `  inspected 2026-04-01 { vent ${word} }\n`;
  it.each([
    ['open', 'tape-over-lifting', 'error'],
    ['lifting', 'tape-over-lifting', 'error'],
    ['cracked', 'tape-over-cracked', 'error'],
    ['hairline', 'tape-over-hairline', 'information'],
  ])('tape over %s is %s', (word, rule, severity) => {
    expect(findings(`${found(word)}  taped 2026-05-01 vent with Strip`, rule)[0]).toMatchObject({
      severity,
      item: 'vent',
    });
  });
  it.each(['sound', 'chalky'])('tape over %s is let pass', (word) => {
    expect(
      rules(`${found(word)}  taped 2026-05-01 vent with Strip`).filter((rule) => rule.startsWith('tape-over')),
    ).toEqual([]);
  });
  it('stripping mends it', () => {
    expect(
      rules(`${found('lifting')}  stripped 2026-05-01 vent\n  taped 2026-05-01 vent with Strip`).filter((rule) =>
        rule.startsWith('tape-over'),
      ),
    ).toEqual([]);
  });
  it('sealing over lifting is refused, and a planned strip mends it by a quick fix', () => {
    const lines = `${found('lifting')}  seal vent with Lap`;
    const [finding] = findings(lines, 'seal-over-lifting');
    expect(finding).toMatchObject({ severity: 'error' });
    expect(check(mended(lines, finding as never)).map((one) => one.rule)).not.toContain('seal-over-lifting');
  });
  it('sealing over a crack is not sealing over lifting', () => {
    expect(rules(`${found('cracked')}  sealed 2026-05-01 vent with Lap`)).not.toContain('seal-over-lifting');
  });
  it('only the stretch that lifts counts', () => {
    const lines = '  inspected 2026-04-01 { curbside lifting from 6 ft to 9 ft }\n';
    expect(rules(`${lines}  taped 2026-05-01 curbside from 0 ft to 5 ft with Strip`)).not.toContain(
      'tape-over-lifting',
    );
    expect(rules(`${lines}  taped 2026-05-01 curbside from 0 ft to 7 ft with Strip`)).toContain('tape-over-lifting');
  });
  it('nothing goes over a wet place until it was dried with a reading', () => {
    expect(rules('  inspected 2026-04-01 { vent sound wet }\n  sealed 2026-05-01 vent with Lap')).toContain('over-wet');
    expect(rules('  inspected 2026-04-01 { vent sound moisture 24 % }\n  sealed 2026-05-01 vent with Lap')).toContain(
      'over-wet',
    );
    expect(
      rules(
        '  inspected 2026-04-01 { vent sound wet }\n  dried 2026-04-20 vent moisture 14 %\n  sealed 2026-05-01 vent with Lap',
      ),
    ).not.toContain('over-wet');
  });
});

describe('coats', () => {
  const coat = (year: number) => `  sealed ${year}-05-01 vent with Lap\n`;
  it('a fifth coat is refused, the factory bead counts', () => {
    // Four lie there: the factory's and three more.
    const three = coat(2021) + coat(2022) + coat(2023);
    expect(rules(three)).not.toContain('one-coat-too-many');
    expect(findings(three + coat(2024), 'one-coat-too-many')[0]).toMatchObject({
      severity: 'error',
      message: expect.stringContaining('the fifth goes on'),
    });
  });
  it('counts each stretch of a seam for itself', () => {
    const touch = (from: number, to: number, year: number) =>
      `  sealed ${year}-05-01 curbside from ${from} ft to ${to} ft with Lap\n`;
    const lines = touch(0, 3, 2021) + touch(3, 6, 2022) + touch(6, 9, 2023) + touch(9, 12, 2024);
    expect(rules(lines)).not.toContain('one-coat-too-many');
    expect(rules(touch(0, 3, 2021) + touch(0, 3, 2022) + touch(0, 3, 2023) + touch(0, 3, 2024))).toContain(
      'one-coat-too-many',
    );
  });
  it('unknown counts as the limit', () => {
    expect(
      findings('  found 2021-05-01 vent with unknown\n  sealed 2022-05-01 vent with Lap', 'coats-unknown')[0],
    ).toMatchObject({ severity: 'warning', message: expect.stringContaining('Nobody knows') });
  });
  it('stripping begins again', () => {
    expect(rules(`${coat(2021) + coat(2022) + coat(2023)}  stripped 2024-05-01 vent\n${coat(2024)}`)).not.toContain(
      'one-coat-too-many',
    );
  });
});

describe('surfaces', () => {
  it('a material is refused where it must not be used, with the kind of that knowledge', () => {
    expect(findings('  stripped 2026-05-01 dome\n  sealed 2026-05-01 dome with Lap', 'does-not-bond')[0]).toMatchObject(
      { severity: 'error', message: expect.stringMatching(/polycarbonate.*from memory/) },
    );
  });
  it("only the label can say yes, until the material's own line says it", () => {
    const lines = '  stripped 2026-05-01 vent\n  sealed 2026-05-01 vent with Lap';
    const tpo = 'tape OnTpo { width 4 in  bonds-to tpo }\n';
    expect(rules(lines)).not.toContain('only-by-label');
    const taped = (name: string) =>
      `  roof 20 ft by 8 ft tpo\n  stripped 2026-05-01 curbside\n  taped 2026-05-01 curbside with ${name}`;
    const text = (name: string) => rigWith(taped(name), tpo).replace('  roof 20 ft by 8 ft epdm\n', '');
    expect(check(text('Strip')).map((f) => f.rule)).toContain('only-by-label');
    const byLabel = check(text('OnTpo')).map((f) => f.rule);
    expect(byLabel).not.toContain('only-by-label');
    expect(byLabel).toContain('thermoplastic-tape');
  });
  it('ketones on painted or clear plastics are refused', () => {
    const found = findings(
      '  stripped 2026-05-01 dome\n  sealed 2026-05-01 dome with Ketone, Fast',
      'solvent-harms-surface',
    );
    expect(found[0]).toMatchObject({ severity: 'error', message: expect.stringContaining('polycarbonate') });
    expect(rules('  stripped 2026-05-01 vent\n  sealed 2026-05-01 vent with Mild, Fast')).not.toContain(
      'solvent-harms-surface',
    );
  });
  it('asks for a primer that the user declares as needed, and names it by a quick fix', () => {
    const more = 'primer Key { needed-on epdm }\n';
    const lines = '  stripped 2026-05-01 front\n  taped 2026-05-01 front with Strip';
    const [finding] = findings(lines, 'missing-primer', { more });
    expect(finding?.fixes?.[0]?.text).toBe('Key, ');
    expect(check(mended(lines, finding as never, more)).map((one) => one.rule)).not.toContain('missing-primer');
  });
  it('is silent where nothing is known of what lies there', () => {
    expect(
      rules('  sealed 2026-05-01 vent with Lap').filter((rule) =>
        ['does-not-bond', 'only-by-label', 'bond-unknown'].includes(rule),
      ),
    ).toEqual([]);
  });
});

describe('parts that stay open', () => {
  it.each([
    ['  sealed 2026-05-01 air-con with Lap', 'sealed-a-gasket'],
    ['  taped 2026-05-01 air-con with Strip', 'sealed-a-gasket'],
    ['  seal air-con with Lap', 'sealed-a-gasket'],
    ['  sealed 2026-05-01 spout with Lap', 'blocks-drain'],
    ['  tape dome with Strip', 'tape-over-serviced-part'],
  ])('%s is %s', (lines, rule) => {
    expect(findings(lines, rule)).toHaveLength(1);
  });
  it('all seams are sealed without the gasket and the drain', () => {
    expect(
      rules('  sealed 2026-05-01 all with Fast').filter(
        (rule) => rule === 'sealed-a-gasket' || rule === 'blocks-drain',
      ),
    ).toEqual([]);
  });
  it('tape on a part that is due within two years', () => {
    const lines = (since: number) =>
      `  part-life vent 8 years to 12 years\n  opening vent-2 10 in by 10 in since ${since}-01-01\n  part-life vent-2 8 years to 12 years\n  stripped 2026-05-01 vent-2\n  taped 2026-05-01 vent-2 with Strip`;
    expect(rules(lines(2019))).toContain('tape-over-part-due');
    expect(rules(lines(2025))).not.toContain('tape-over-part-due');
  });
});

describe('order of work', () => {
  it('what was stripped and not sealed is open to the rain from the next day', () => {
    expect(findings('  stripped 2026-05-01 vent', 'left-bare', { asOf: '2026-05-02' })[0]?.message).toContain(
      'open to the rain',
    );
    expect(rules('  stripped 2026-05-01 vent', { asOf: '2026-05-01' })).not.toContain('left-bare');
    expect(
      rules('  stripped 2026-05-01 vent\n  sealed 2026-05-01 vent with Lap', { asOf: '2026-05-02' }),
    ).not.toContain('left-bare');
    expect(rules('  replaced 2026-05-01 vent', { asOf: '2026-05-02' })).toContain('left-bare');
  });
  it('rear, then sides, then front', () => {
    const taped = (...items: string[]) =>
      items.map((item, i) => `  taped 2026-05-0${i + 1} ${item} with Strip`).join('\n');
    expect(rules(taped('rear', 'roadside', 'curbside', 'front'))).not.toContain('lay-order-broken');
    expect(findings(taped('curbside', 'rear'), 'lay-order-broken')[0]?.message).toContain('bridge the corners');
    expect(rules(taped('front', 'curbside'))).toContain('lay-order-broken');
  });
  it('tape that came off again is no longer in the way', () => {
    expect(
      rules(
        '  taped 2026-05-01 curbside with Strip\n  stripped 2026-05-02 curbside\n  taped 2026-05-03 rear with Strip',
      ),
    ).not.toContain('lay-order-broken');
  });
  it('washing waits for the wash clock', () => {
    expect(
      findings('  sealed 2026-05-01 vent with Lap\n  washed 2026-05-04', 'washed-too-early')[0]?.message,
    ).toContain('from 2026-05-08');
    expect(rules('  sealed 2026-05-01 vent with Lap\n  washed 2026-05-08')).not.toContain('washed-too-early');
  });
  it('the rig leaves after the drive clock', () => {
    expect(rules('  sealed 2026-05-01 vent with Lap\n  trip 2026-05-02 to 2026-05-05')).toContain('driven-too-early');
    expect(rules('  sealed 2026-05-01 vent with Lap\n  trip 2026-05-04 to 2026-05-05')).not.toContain(
      'driven-too-early',
    );
  });
});

describe('weather', () => {
  const sealed = (clauses: string) => `  stripped 2026-05-01 vent\n  sealed 2026-05-01 vent with Lap ${clauses}`;
  it.each([
    ['air 40 F', 'air-too-cold'],
    ['air 104 F', 'air-too-hot'],
    ['surface 125 F', 'surface-too-hot'],
    ['air 70 F humidity 65 % surface 60 F', 'too-near-dew-point'],
  ])('%s is %s', (clauses, rule) => {
    expect(findings(sealed(clauses), rule)).toHaveLength(1);
  });
  it('70 F, 65 %: the surface at 62 F and more is let pass', () => {
    expect(rules(sealed('air 70 F humidity 65 % surface 63 F'))).not.toContain('too-near-dew-point');
  });
});

describe('half-typed lines', () => {
  it('raise no alarm about the seams that they name', () => {
    const found = rules('  stripped 2026-05-01 vent\n  sealed 2026-05-02 vent with', { asOf: '2026-05-10' });
    expect(found).not.toContain('left-bare');
  });
});
