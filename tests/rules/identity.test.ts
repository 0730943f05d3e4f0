import { describe, expect, it } from 'vitest';
import { found, mended, rigWith, said, under } from './asked.ts';

describe('a VIN', () => {
  it('whose check digit agrees is fine', () => {
    expect(found(rigWith('vin "1M8GDM9AXKP042788"'))).toEqual([]);
  });

  it('whose check digit disagrees is told, and no digit is made to fit', () => {
    const text = rigWith('vin "1M8GDM9A1KP042788"');
    const [finding] = said('vin-check-digit', text);
    expect(finding).toMatchObject({ severity: 'warning' });
    expect(finding?.message).toContain('should be `X` and is `1`');
    expect(finding?.fixes).toBeUndefined();
    expect(under(text, finding!)).toBe('"1M8GDM9A1KP042788"');
  });

  it('of the wrong form is mended where the check digit then agrees', () => {
    for (const slip of ['1m8gdm9axkp042788', '1M8GDM9AXKPO42788', '1M8 GDM9AXKP042788']) {
      const text = rigWith(`vin "${slip}"`);
      const [finding] = said('vin-form', text);
      const after = mended(text, finding!);
      expect(after).toContain('vin "1M8GDM9AXKP042788"');
      expect(found(after)).toEqual([]);
    }
  });

  it('that is too short has no fix', () => {
    const [finding] = said('vin-form', rigWith('vin "1M8GDM9AXKP04278"'));
    expect(finding?.message).toContain('has 16');
    expect(finding?.fixes).toEqual([]);
  });

  it('is not asked of what was built before there were such', () => {
    expect(said('vin-form', rigWith('vin "S-4711"', 'built 1976-05'))).toEqual([]);
    expect(said('vin-form', rigWith('vin "S-4711"', 'built 1996-05'))).toHaveLength(1);
  });
});

describe('dates of a rig', () => {
  it('have an order', () => {
    for (const [early, late] of [
      ['built 2020-03', 'in-service 2019-05-20'],
      ['built 2020-03', 'acquired 2020-02-28'],
      ['built 2020-03', 'kept-until 2019-12-31'],
      ['acquired 2020-03-01', 'kept-until 2019-12-31'],
    ] as const) {
      const text = rigWith(early, late);
      const [finding, ...more] = said('dates-out-of-order', text);
      expect(more).toEqual([]);
      expect(under(text, finding!)).toBe(late);
      expect(finding?.related).toHaveLength(1);
    }
  });

  it('that are rough disagree only where no day fits', () => {
    expect(said('dates-out-of-order', rigWith('built 2020-03', 'in-service 2020-03-01'))).toEqual([]);
    expect(said('dates-out-of-order', rigWith('built about 2020', 'acquired 2020-01-02'))).toEqual([]);
  });

  it('a rig may be bought before it is first used', () => {
    expect(said('dates-out-of-order', rigWith('acquired 2020-03-01', 'in-service 2020-05-20'))).toEqual([]);
  });

  it('say when a rig was to be gone', () => {
    const text = rigWith('kept-until 2025-12-31');
    expect(said('kept-until-past', text)).toHaveLength(1);
    expect(said('kept-until-past', text, { asOf: '2025-12-31' })).toEqual([]);
  });
});

describe('a record', () => {
  it('cannot be older than the rig', () => {
    expect(said('before-built', rigWith('built 2020-03', 'washed 2020-02-29'))).toHaveLength(1);
    expect(said('before-built', rigWith('built 2020-03', 'washed 2020-03-01'))).toEqual([]);
    expect(said('before-built', rigWith('built about 2020', 'washed 2020-02-29'))).toEqual([]);
  });

  it('older than the found state of its seams no longer counts', () => {
    const lines = ['edge curbside, roadside', 'found 2021-04-10 curbside with unknown'];
    const text = rigWith(...lines, 'sealed 2019-06-01 curbside with GenericSolventLap');
    expect(said('before-found', text)).toMatchObject([{ severity: 'information' }]);
    expect(said('before-found', text.replace('2019-06-01 curbside', '2019-06-01 roadside'))).toEqual([]);
    expect(said('before-found', text.replace('2019-06-01', '2021-04-10'))).toEqual([]);
  });

  it('after today is an error; between the as-of date and today it is left out silently', () => {
    const text = rigWith('washed 2026-11-26', 'bought 2026-11-26 GenericSeamTape 18 ft', 'built 2027');
    const dated = rigWith('washed 2026-11-25');
    expect(said('in-the-future', text.replace('built 2027', 'built about 2027'))).toHaveLength(3);
    expect(found(dated)).toEqual([]);
    expect(said('in-the-future', dated, { asOf: '2026-01-01' })).toEqual([]);
    expect(said('in-the-future', rigWith('stored 2026-12-01 to 2027-03-31'))).toEqual([]);
  });
});

describe('a used rig without a first state', () => {
  const lines = ['edge curbside', 'in-service 2016-05-20', 'acquired 2026-04-10   # from the owner before'];

  it('is told, and the fix writes that nothing is known', () => {
    const text = rigWith(...lines);
    const [finding] = said('no-found-state', text);
    const after = mended(text, finding!);
    expect(after).toContain(
      '  found     2026-04-10 all with unknown\n  acquired 2026-04-10   # from the owner before\n',
    );
    expect(said('no-found-state', after)).toEqual([]);
  });

  it('is none with a record of that time, or if it was new', () => {
    expect(said('no-found-state', rigWith(...lines, 'inspected 2026-04-10 { rest sound }'))).toEqual([]);
    expect(said('no-found-state', rigWith(lines[0]!, 'in-service 2026-05-20', lines[2]!))).toEqual([]);
    expect(said('no-found-state', rigWith(lines[0]!, 'built 2025-10', lines[2]!))).toEqual([]);
    expect(said('no-found-state', rigWith(lines[0]!, 'built 2020-10', lines[2]!))).toHaveLength(1);
  });

  it('is not concluded from a record that cannot be read', () => {
    expect(said('no-found-state', rigWith(...lines, 'found 2026-13-10 all with unknown'))).toEqual([]);
  });
});

describe('a rig that nobody writes of', () => {
  it('is told after twice the longest time between looks', () => {
    const text = rigWith('washed 2024-11-24');
    const [finding] = said('no-record-for-long', text);
    expect(finding?.message).toContain('2024-11-24, 24 months ago');
    expect(under(text, finding!)).toBe('Heron');
    expect(said('no-record-for-long', rigWith('washed 2024-11-25'))).toEqual([]);
    expect(
      said('no-record-for-long', `policy P { inspect-limit 24 months }\n${text.replace('Heron', 'Heron under P')}`),
    ).toEqual([]);
  });

  it('is told if there never was a record, and the rig is not new', () => {
    expect(said('no-records', rigWith('in-service 2020-05-20'))).toHaveLength(1);
    expect(said('no-records', rigWith('in-service 2026-05-20'))).toEqual([]);
    expect(said('no-records', rigWith('edge curbside'))).toEqual([]);
  });

  it('is left alone once it is gone', () => {
    expect(said('no-record-for-long', rigWith('washed 2020-11-24', 'kept-until 2021-12-31'))).toEqual([]);
  });
});
