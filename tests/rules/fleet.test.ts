import { describe, expect, it } from 'vitest';
import { mended, said, under } from './asked.ts';

const roof = 'roof 28 ft by 8 ft epdm';
const fleet = (...lines: readonly string[]) =>
  `fleet Yard {\n  rigs "rigs/*.rig"\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
const yard = (text: string, heron = '', teal = '') => ({
  'yard.rig': text,
  'rigs/heron.rig': `rig Heron {\n  ${roof}\n  cap front 5 in wide\n  ${heron}\n}\n`,
  'rigs/teal.rig': `rig Teal {\n  ${roof}\n  ${teal}\n}\n`,
});

describe('the rigs of a fleet', () => {
  it('are found by each pattern', () => {
    expect(said('no-rigs', yard(fleet()))).toEqual([]);
    const text = fleet().replace('"rigs/*.rig"', '"rigs/*.rig", "rig/*.rig"');
    const [finding] = said('no-rigs', yard(text));
    expect(finding?.message).toContain('`rig/*.rig`');
    expect(finding?.message).not.toContain('`rigs/*.rig` names');
  });

  it('are not found in files that hold none', () => {
    const texts = { ...yard(fleet().replace('rigs/*', 'models/*')), 'models/alder.rig': `model Alder { ${roof} }\n` };
    expect(said('no-rigs', texts)).toHaveLength(1);
  });

  it('have a name each', () => {
    const texts = { ...yard(fleet()), 'rigs/second.rig': `rig Heron { ${roof} }\n` };
    const [finding] = said('rig-twice', texts);
    expect(finding?.message).toContain('in rigs/heron.rig and in rigs/second.rig');
    expect(finding?.related).toHaveLength(2);
    expect(said('rig-twice', yard(fleet()))).toEqual([]);
  });

  it('differ in more than the case of their names', () => {
    const texts = { ...yard(fleet()), 'rigs/second.rig': `rig heron { ${roof} }\n` };
    expect(said('names-differ-in-case', texts)).toMatchObject([{ file: 'rigs/second.rig' }]);
    expect(said('names-differ-in-case', yard(fleet()))).toEqual([]);
  });

  it('have a unit number and a VIN each', () => {
    const vin = 'vin "1M8GDM9AXKP042788"';
    const texts = yard(fleet(), `unit "7"\n  ${vin}`, `unit "7"\n  ${vin}`);
    const [unit] = said('unit-twice', texts);
    expect(unit).toMatchObject({ file: 'rigs/teal.rig', severity: 'warning' });
    expect(under(texts['rigs/teal.rig'], unit!)).toBe('unit "7"');
    expect(said('vin-twice', texts)).toMatchObject([{ file: 'rigs/teal.rig', severity: 'error' }]);
    expect(said('unit-twice', yard(fleet(), 'unit "7"', 'unit "8"'))).toEqual([]);
    expect(said('vin-twice', yard(fleet(), vin))).toEqual([]);
  });
});

describe('a booking', () => {
  it('of a rig that is not there is mended to the nearest name', () => {
    const text = fleet('booked Herron 2027-06-10 to 2027-06-24');
    const [finding] = said('booked-unknown', yard(text));
    const after = mended(text, finding!);
    expect(after).toContain('booked Heron 2027');
    expect(said('booked-unknown', yard(after))).toEqual([]);
  });

  it('is not blamed while the pattern finds no rig at all', () => {
    const text = fleet('booked Heron 2027-06-10').replace('rigs/*', 'rig/*');
    expect(said('booked-unknown', yard(text))).toEqual([]);
  });

  it('may begin on the day on which another ends, but not before', () => {
    const lines = ['booked Heron 2027-06-10 to 2027-06-24', 'booked Heron 2027-06-23 to 2027-07-01'];
    const text = fleet(...lines);
    const [finding, ...more] = said('bookings-overlap', yard(text));
    expect(more).toEqual([]);
    expect(under(text, finding!)).toBe(lines[1]);
    expect(said('bookings-overlap', yard(text.replace('06-23', '06-24')))).toEqual([]);
    expect(said('bookings-overlap', yard(text.replace('Heron 2027-06-23', 'Teal 2027-06-23')))).toEqual([]);
  });

  it('inside a longer one is found behind others', () => {
    const text = fleet(
      'booked Heron 2027-06-01 to 2027-07-31',
      'booked Heron 2027-06-02 to 2027-06-03',
      'booked Heron 2027-07-01 to 2027-07-02',
    );
    expect(said('bookings-overlap', yard(text))).toHaveLength(2);
  });

  it('does not go with storage', () => {
    const texts = yard(fleet('booked Heron 2027-03-31 to 2027-04-02'), 'stored 2026-12-01 to 2027-03-31');
    expect(said('booked-while-stored', texts)).toMatchObject([{ file: 'yard.rig' }]);
    const later = yard(fleet('booked Heron 2027-04-01 to 2027-04-02'), 'stored 2026-12-01 to 2027-03-31');
    expect(said('booked-while-stored', later)).toEqual([]);
  });
});

describe('the yard', () => {
  it('has a crew with days', () => {
    const text = fleet('crew 2 for 8 h each   # two of them');
    const [finding] = said('crew-without-days', yard(text));
    const after = mended(text, finding!);
    expect(after).toContain('crew 2 for 8 h each on mon to fri   # two of them');
    expect(said('crew-without-days', yard(after))).toEqual([]);
  });

  it('has people and hours, else says the way out', () => {
    const text = fleet('crew 0 for 8 h each on mon to fri');
    const [finding] = said('crew-of-nobody', yard(text));
    expect(finding?.message).toContain('no plan gets a day. For days on which nobody is there write `closed');
    const after = mended(text, finding!);
    expect(after).toContain('crew 1 for 8 h each on mon to fri');
    expect(said('crew-of-nobody', yard(after))).toEqual([]);
    const idle = said('crew-of-nobody', yard(fleet('crew 2 for 0 h each on mon to fri')));
    expect(idle.map(({ message }) => message)).toEqual([expect.stringContaining('has no hours')]);
  });

  it('has bays that are long enough, as far as that is known', () => {
    const [finding] = said('bay-too-short', yard(fleet('bay Shed indoor 27 ft')));
    expect(finding?.message).toContain('`Heron` and `Teal` are longer, up to 28 ft');
    expect(said('bay-too-short', yard(fleet('bay Shed indoor 28 ft')))).toEqual([]);
    expect(said('bay-too-short', yard(fleet('bay Shed indoor')))).toEqual([]);
  });
});

describe('a plan of a rig in a fleet', () => {
  const spring = { asOf: '2027-05-01', path: 'yard.rig' };
  const plan = 'strip front after 2027-06-11 before 2027-06-13';

  it('is hindered by bookings, in the file of the rig', () => {
    const texts = yard(fleet('booked Heron 2027-06-10 to 2027-06-24'), plan);
    const [finding] = said('no-free-day-in-fleet', texts, spring);
    expect(finding).toMatchObject({ file: 'rigs/heron.rig', rig: 'Heron' });
    expect(finding?.message).toContain('In Yard: No day from 2027-06-11 to 2027-06-13 is free');
    expect(finding?.message).toContain('2027-06-25');
    expect(said('no-free-day', texts, { ...spring, path: 'rigs/heron.rig' })).toEqual([]);
  });

  it('is hindered by closed days and by the days of the crew', () => {
    expect(said('no-free-day-in-fleet', yard(fleet('closed 2027-06-11 to 2027-06-13'), plan), spring)).toHaveLength(1);
    // 2027-06-12 is a Saturday.
    const crew = fleet('crew 2 for 8 h each on mon to fri', 'booked Heron 2027-06-11');
    const [finding] = said('no-free-day-in-fleet', yard(crew, plan), spring);
    expect(finding?.message).toContain('booked on 2027-06-11, no day on which the crew works');
    expect(finding?.message).toContain('2027-06-14');
    expect(said('no-free-day-in-fleet', yard(crew.replace('mon to fri', 'mon to sat'), plan), spring)).toEqual([]);
  });

  it('is not said twice where the rig alone has no day', () => {
    const texts = yard(fleet('booked Heron 2027-06-10 to 2027-06-24'), `${plan}\n  trip 2027-06-10 to 2027-06-24`);
    expect(said('no-free-day-in-fleet', texts, spring)).toEqual([]);
    expect(said('no-free-day', texts, { ...spring, path: 'rigs/heron.rig' })).toHaveLength(1);
  });

  it('may be accepted by its rig, which does not call that unused', () => {
    const accept = 'accept no-free-day-in-fleet until 2027-12-31 because "the guest comes back early"';
    const texts = yard(fleet('booked Heron 2027-06-10 to 2027-06-24'), `${plan}\n  ${accept}`);
    expect(said('no-free-day-in-fleet', texts, spring)).toEqual([]);
    expect(said('accept-unused', texts, { ...spring, path: 'rigs/heron.rig' })).toEqual([]);
    expect(said('no-free-day-in-fleet', texts, { ...spring, asOf: '2028-01-01' })).toEqual([]);
  });
});
