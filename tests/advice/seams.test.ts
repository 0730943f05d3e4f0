// What the advice says of the parts of a seam, of its surfaces and of what is not known.
import { describe, expect, it } from 'vitest';
import { advice, FT, on, one, texts } from './ask.ts';

const inspected = (seen: string) => `inspected 2026-05-02 { ${seen} }`;

describe('a part of a seam', () => {
  it('is touched up alone: hairline from 6 ft to 9 ft', () => {
    const all = on('curbside', inspected('curbside hairline from 6 ft to 9 ft\n curbside sound'));
    expect(all.map(({ row, where, from, to }) => [row, where, from, to])).toEqual([
      ['hairline-part', '6 ft to 9 ft', 6 * FT, 9 * FT],
      ['sound', '0 ft to 6 ft', 0, 6 * FT],
      ['sound', '9 ft to 28 ft', 9 * FT, 28 * FT],
    ]);
    // 3 of 28 ft.
    expect(texts(all[0]!.reasons)).toContain('That is 11 % of its length.');
  });

  it('is coated with the rest once more than half is worn', () => {
    const rows = (to: string) =>
      on('curbside', inspected(`curbside hairline from 0 ft to ${to}`)).map(({ row }) => row);
    expect(rows('14 ft')).toContain('hairline-part');
    expect(rows('14 ft 1 in')).toContain('hairline');
  });

  it('counts the coats of its own stretch', () => {
    const touched = `sealed 2022-06-01 curbside from 6 ft to 9 ft with Lap
  sealed 2023-06-01 curbside from 6 ft to 9 ft with Lap
  sealed 2024-06-01 curbside from 6 ft to 9 ft with Lap
  ${inspected('curbside hairline from 6 ft to 12 ft')}`;
    const rows = on('curbside', touched).map(({ row, where }) => [row, where]);
    expect(rows).toContainEqual(['hairline-at-limit', '6 ft to 9 ft']);
    expect(rows).toContainEqual(['hairline-part', '9 ft to 12 ft']);
  });

  it('that was not treated keeps its advice', () => {
    const half = `${inspected('curbside cracked from 0 ft to 10 ft')}
  sealed 2026-05-10 curbside from 0 ft to 6 ft with Lap`;
    const rows = on('curbside', half).map(({ row, where }) => [row, where]);
    expect(rows).toEqual([
      ['cracked-part', '6 ft to 10 ft'],
      ['no-condition', '10 ft to 28 ft'],
      ['renewed', '0 ft to 6 ft'],
    ]);
  });

  it('is told as one with its neighbour where the advice is the same', () => {
    const parts = `sealed 2025-06-01 curbside from 6 ft to 9 ft with Lap
  ${inspected('rest sound')}`;
    expect(one('curbside', parts)).toMatchObject({ row: 'sound' });
    expect(one('curbside', parts)).not.toHaveProperty('where');
  });
});

describe('a part that was replaced', () => {
  const replaced = 'replaced 2026-05-10 vent';
  it('is bare, and covered until it is sealed', () => {
    const { row, interim, reasons } = one('vent', replaced);
    expect([row, interim?.row]).toEqual(['bare', 'cover-bare']);
    expect(texts(reasons)).toContain('nothing was laid on it since');
  });
  it('is looked at once it is sealed', () => {
    expect(one('vent', `${replaced}\n  sealed 2026-05-11 vent with Lap`)).toMatchObject({ row: 'renewed' });
  });
  it('is not advised any more once it is gone', () => {
    expect(on('vent', 'removed 2026-05-10 vent')).toEqual([]);
    expect(on('vent', 'removed 2026-05-10 vent', { asOf: '2026-05-09' })).toHaveLength(1);
  });
});

describe('condition before calendar', () => {
  it('leaves alone what was found sound last month, though its look-hard date is long past', () => {
    // Sealed in 2020, look-hard every 18 months; a look found it sound in 2023, and the last one chalky.
    const looked = `inspected 2023-05-01 { rest sound }
  inspected 2026-04-18 { rest chalky }`;
    expect(one('curbside', looked)).toMatchObject({ action: 'leave', urgency: 'nothing to do' });
    expect(one('curbside', 'inspected 2026-04-18 { rest sound }')).toMatchObject({ action: 'leave' });
  });

  it('says what a sound finding would move', () => {
    // The look of October 2024 plus 18 months is April 2026; found sound today it would be 20 November 2027.
    const due = one('curbside', 'inspected 2024-10-18 { rest sound }');
    expect(due).toMatchObject({ row: 'look-overdue' });
    expect(due.wouldChange).toContain(
      'A sound finding today moves the date to look at it hard from 2026-04-18 to 2027-11-20.',
    );
    expect(due.unknown).toContain('Not looked at since 2024-10-18.');
  });

  it('is what was true then', () => {
    const history = `inspected 2025-05-02 {
    vent cracked
    rest sound
  }
  stripped 2025-05-20 vent
  sealed 2025-05-21 vent with Lap
  inspected 2025-10-04 { rest sound }`;
    const rows = ['2025-05-01', '2025-05-10', '2025-05-20', '2025-05-21', '2025-10-04'].map(
      (asOf) => one('vent', history, { asOf }).row,
    );
    expect(rows).toEqual(['never-looked', 'cracked', 'bare', 'renewed', 'sound']);
  });

  it('puts the worst first', () => {
    const order = advice(
      inspected('vent hairline\n front open\n dome cracked\n lid lifting\n foot not-seen\n rest sound'),
    ).map(({ item, urgency }) => [item, urgency]);
    expect(order.slice(0, 5)).toEqual([
      ['front', 'at once'],
      ['lid', 'within days'],
      ['dome', 'within weeks'],
      ['vent', 'by its date'],
      ['foot', 'by its date'],
    ]);
    expect(new Set(order.slice(5).map(([, urgency]) => urgency))).toEqual(new Set(['nothing to do']));
  });
});

describe('both surfaces of a seam', () => {
  const edge = 'joint ridge 20 ft on roadside between epdm and abs';
  it('are prepared, with what both take', () => {
    const { preparation } = one('ridge', `${edge}\n  ${inspected('ridge lifting')}`);
    expect(preparation?.surfaces).toEqual(['epdm', 'abs']);
    const steps = preparation?.steps ?? [];
    expect(steps.map(({ task, material, atHand }) => [task, material, atHand])).toEqual([
      ['wash', 'GenericDetergent', false],
      ['wipe', 'GenericIsopropyl', false],
      ['lay', 'Lap', true],
    ]);
    expect(steps[0]?.text).toContain('Wash epdm and abs with GenericDetergent, and rinse.');
    expect(steps[1]?.text).toContain(': a wet cloth, then a dry one before it has flashed.');
    expect(steps[2]?.text).toBe('Lay Lap on epdm and abs.');
    expect(steps[2]?.grades.map(({ surface, grade, kind }) => [surface, grade, kind])).toEqual([
      ['epdm', 'yes', 'record'],
      ['abs', 'yes', 'record'],
    ]);
  });
  it('keep away what harms one of them', () => {
    const { excluded, preparation } = one('ridge', `${edge}\n  on-hand Ketone 1 qt\n  ${inspected('ridge lifting')}`);
    expect(excluded).toContainEqual(
      expect.objectContaining({ what: 'Ketone', why: 'Ketone must not be used on abs.', kind: 'from memory' }),
    );
    expect(preparation?.steps.find(({ task }) => task === 'wipe')?.material).toBe('GenericIsopropyl');
  });
  it('say where only a label can tell, and where a test patch comes first', () => {
    const bare = one('front', inspected('front lifting'), { surface: 'tpo', facts: 'factory Lap\n  built 2020-03' });
    const steps = bare.preparation?.steps ?? [];
    expect(steps.map(({ task }) => task)).toEqual(['wash', 'scuff', 'wipe', 'lay']);
    expect(steps.at(-1)?.text).toBe('Lay Lap on tpo. On tpo only if its label says so.');
    expect(bare.preparation?.notes.join(' ')).toContain('a weld by a shop');
  });
});

describe('tape', () => {
  const sealed = 'sealed 2026-05-02 curbside with Lap';
  it('waits for fresh sealant: never before the low figure, safe from the high one', () => {
    // 30 and 60 days after 2 May.
    const { allowed, wouldChange } = one('curbside', sealed);
    expect(allowed).toEqual([
      expect.objectContaining({
        what: 'tape',
        earliest: '2026-06-01',
        safe: '2026-07-01',
        text: 'Tape over Lap of 2026-05-02: not before 2026-06-01 (30 days), safe from 2026-07-01 (60 days).',
        kind: 'record',
      }),
    ]);
    expect(wouldChange).toContain('Once the sealant has cured (2026-07-01), tape is allowed as well.');
    expect(one('curbside', sealed, { asOf: '2026-07-01' }).allowed).toEqual([]);
  });
  const why = (item: string, lines: string, surface = 'epdm') =>
    one(item, lines, { surface })
      .excluded.filter(({ what }) => what === 'tape')
      .map((each) => each.why);
  it('is not laid on a lid that is opened for service', () => {
    expect(why('lid', inspected('lid sound'))).toEqual(['Its lid is opened for service: it is sealed.']);
  });
  it('is no lasting repair on a thermoplastic sheet', () => {
    expect(why('front', inspected('front sound'), 'tpo')).toEqual([
      'On a thermoplastic sheet butyl tape lets go in the end: the lasting repair is a weld.',
    ]);
  });
  it('is not laid on a part that is due for service within two years', () => {
    // Built in March 2020: six years are over in 2026, ten in 2030.
    expect(why('vent', `part-life vent 6 years to 12 years\n  ${inspected('vent sound')}`)).toHaveLength(1);
    expect(why('vent', `part-life vent 10 years to 12 years\n  ${inspected('vent sound')}`)).toEqual([]);
  });
  it.each([
    ['lifting', 'stripped first'],
    ['cracked', 'cut back first'],
    ['sound wet', 'shuts the water in'],
    ['sound soft', 'soft place'],
    ['hairline backed-out', 'renewed first'],
  ])('is not laid over what is %s', (word, text) => {
    expect(why('curbside', inspected(`curbside ${word}`)).join(' ')).toContain(text);
  });
  it('is not laid over a thick bead', () => {
    const coats = [2022, 2023, 2024].map((year) => `sealed ${year}-06-01 curbside with Lap`).join('\n  ');
    expect(why('curbside', `${coats}\n  ${inspected('curbside sound')}`).join(' ')).toContain('a tent of the tape');
  });
  it('is not advised where hairlines come back on an opening, nor where it may not lie', () => {
    const again = (item: string) => `sealed 2024-06-01 ${item} with Lap\n  ${inspected(`${item} hairline`)}`;
    expect(one('curbside', again('curbside'))).toMatchObject({ action: 'tape' });
    expect(one('vent', again('vent'))).toMatchObject({ action: 'recoat' });
    expect(one('curbside', again('curbside'), { surface: 'tpo' })).toMatchObject({ action: 'recoat' });
  });
});

describe('silicone', () => {
  const found = `found 2026-04-01 front with Sil\n  ${inspected('front hairline')}`;
  it('takes nothing but silicone, and is tested', () => {
    const { preparation, excluded } = one('front', found);
    expect(preparation?.steps.at(-1)).toMatchObject({ task: 'lay', material: 'Sil', atHand: true });
    expect(preparation?.notes[0]).toContain('Test for silicone');
    expect(excluded.map(({ what }) => what)).toContain('tape');
  });
  it('leaves its film on what was stripped, until something is laid', () => {
    const stripped = 'found 2026-04-01 front with Sil\n  stripped 2026-05-02 front';
    expect(texts(one('front', stripped).reasons)).toContain('its film may still be there');
    const laid = `${stripped}\n  sealed 2026-05-03 front with Lap`;
    expect(one('front', laid).preparation).toBeUndefined();
    expect(one('front', laid).excluded).toEqual([]);
  });
  it('of a coated roof decides for every seam', () => {
    const coated = `coated 2025-08-01 with SilCoat\n  stripped 2026-05-02 front`;
    const { preparation } = one('front', coated);
    expect(preparation?.surfaces).toEqual(['silicone-coating']);
    expect(preparation?.steps.at(-1)).toMatchObject({ material: 'GenericSilicone', atHand: false });
  });
});

describe('what is not known', () => {
  it('is told: an unknown sealant is tested for silicone first, and its coats count as at the limit', () => {
    const found = one('front', `found 2026-04-01 front with unknown\n  ${inspected('front cracked')}`);
    expect(found.preparation?.notes[0]).toContain('Test for silicone');
    expect(found.allowed.map(({ what }) => what)).toEqual(['another coat']);
    expect(found.unknown).toContain('Nobody knows what sealant lies on it.');
    expect(found.wouldChange.join(' ')).toContain('`found … front with NAME`');
  });
  it('is told: what was not named, what it lies on, what a part is made of, when it was fitted', () => {
    const bare = { facts: '', surface: '' };
    const said = (item: string, lines = '') => one(item, lines, bare).unknown;
    expect(said('front')).toContain('What sealant lies on it is not recorded.');
    expect(said('front')).toContain('What it lies on is not recorded.');
    expect(said('hatch', 'opening hatch 9 in by 9 in at 18 ft, 6 ft')).toContain('What it lies on is not recorded.');
    expect(one('hatch', 'opening hatch 9 in by 9 in at 18 ft, 6 ft').unknown).toContain(
      'What the part is made of is not recorded.',
    );
    expect(said('vent', 'part-life vent 8 years to 12 years')).toContain('When the part was fitted is not recorded.');
  });
  it('is told: the temperature of the surface at which it was sealed', () => {
    const sealed = (more: string) => one('vent', `sealed 2026-05-10 vent with Lap air 64 F ${more}`).unknown;
    expect(sealed('')).toContain('The surface temperature was not recorded when it was sealed on 2026-05-10.');
    expect(sealed('surface 70 F').join(' ')).not.toContain('surface temperature');
  });
  it('is told: what nobody named is tested for silicone, though it does not count as at the limit', () => {
    const found = one('front', inspected('front cracked'), { facts: 'built 2020-03' });
    expect(found).toMatchObject({ row: 'cracked', action: 'recoat' });
    expect(found.preparation?.notes[0]).toContain('Test for silicone');
    expect(found.preparation?.steps.at(-1)?.text).toContain('a test patch comes first');
    expect(found.wouldChange.join(' ')).toContain('`found … front with NAME`');
  });
  it('of a line that cannot be read hides nothing that was found', () => {
    const lines = `${inspected('vent open')}\n  sealed 2026-05-10 vent wiht Lap`;
    expect(one('vent', lines, { broken: true })).toMatchObject({ row: 'open' });
  });
});
