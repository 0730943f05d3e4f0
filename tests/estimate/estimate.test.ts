import { describe, expect, it } from 'vitest';
import { estimate, materials, rigWith } from './asked.ts';

const rules = (text: string) => estimate(text).questions.map(({ rule }) => rule);

describe('what is left open', () => {
  it.each([
    ['a plan without a tape', rigWith('cap front', 'tape front'), 'no-material'],
    ['a plan without a sealant', rigWith('cap front', 'seal front'), 'no-material'],
    ['two tapes', `tape Other { width 4 in }${rigWith('cap front', 'tape front with Tape4, Other')}`, 'two-materials'],
    ['an item of no size', rigWith('opening vent', 'seal vent with Lap'), 'not-counted'],
    ['a pipe to be taped', rigWith('opening pipe round 6 in', 'tape pipe with Tape4'), 'not-counted'],
    ['a tape without a roll', `tape Bare { width 4 in }${rigWith('cap front', 'tape front with Bare')}`, 'no-roll'],
    [
      'a roll without a price',
      `tape Bare { width 4 in roll 50 ft }${rigWith('cap front', 'tape front with Bare')}`,
      'no-price',
    ],
    [
      'a cartridge without a price',
      `sealant Bare { family solvent-lap cartridge 10 fl-oz }${rigWith('cap front', 'seal front with Bare')}`,
      'no-price',
    ],
    [
      'a sealant that is not sold',
      `sealant Bare { family hybrid }${rigWith('cap front', 'seal front with Bare')}`,
      'no-price',
    ],
    ['no price of work', rigWith('cap front', 'inspect').replace(/\n {2}labour .*/, ''), 'no-labour-rate'],
    [
      'a rate of the wrong kind',
      rigWith('cap front', 'inspect').replace('policy Shop {', 'policy Shop {\n  rate inspect 40 ft per h'),
      'no-rate',
    ],
    ['no cleaner', rigWith('cap front', 'tape front with Tape4').replace(/\n {2}wipe-with .*/, ''), 'no-cleaner'],
    [
      'a cleaner of no coverage',
      rigWith('cap front', 'tape front with Bare, Tape4').replace(
        '\ncleaner Wipe',
        '\ncleaner Bare { solvent abrasive container 1 qt at 3 USD }\ncleaner Wipe',
      ),
      'no-coverage',
    ],
    [
      'a membrane that needs a primer',
      rigWith('cap front', 'tape front with Tape4').replace('8 ft epdm', '8 ft tpo'),
      'primer-needed',
    ],
    ['a part', rigWith('opening vent 9 in by 9 in', 'replace vent'), 'not-priced'],
    [
      'a second currency',
      rigWith('cap front', 'seal front with Lap')
        .replaceAll(' 10.00 USD', ' 10.00 EUR')
        .replaceAll(' 100.00 USD', ' 100.00 EUR'),
      'mixed-currencies',
    ],
  ])('%s', (_, text, rule) => {
    const whole = estimate(text);
    expect(whole.questions.map((each) => each.rule)).toContain(rule);
    expect(whole.totals.complete).toBe(rule === 'two-materials');
  });

  it('nothing, where all is known', () => {
    expect(rules(rigWith('cap front', 'tape front with Tape4'))).toEqual([]);
  });
});

describe('lines', () => {
  it('without a price stand without money, and the least is bought', () => {
    const bare = `tape Bare { width 4 in roll 50 ft roll 25 ft }${rigWith('cap front', 'tape front with Bare')}`;
    const [line] = estimate(bare).purchases;
    expect(line).toMatchObject({
      buy: [{ what: 'roll of 25 ft', count: 1 }],
      proof: '1 roll, the least length; no price is known',
    });
    expect(line!.cost).toBeUndefined();
  });

  it('in another currency are priced but not added', () => {
    const text = rigWith('cap front', 'seal front with Lap').replaceAll(/( 100?\.00) USD/g, '$1 EUR');
    const { purchases, totals } = estimate(text);
    expect(purchases[0]).toMatchObject({ material: 'Lap', cost: { money: { currency: 'EUR', amount: '20.00' } } });
    expect(totals.materials?.money.amount).toBe('23.00');
    expect(totals.missing).toEqual([
      'Lap is in EUR, the estimate in USD: it is not in the sum, for no rate of exchange is known.',
    ]);
  });

  it('are rounded half up each, and the sum is that of the rounded lines', () => {
    const text = rigWith('cap front', 'inspect').replace(
      'labour    50.00',
      'rate inspect-inside 1 min\n  rate set-up 1 min\n  labour 50.10',
    );
    const { labour, totals } = estimate(text);
    // 50.10 / 60 = 0.835, which is 0.84 each.
    expect(labour.map(({ task, cost }) => [task, cost?.money.amount])).toEqual([
      ['set-up', '0.84'],
      ['inspect', '32.06'],
      ['inspect-inside', '0.84'],
    ]);
    expect(totals.labour?.money.amount).toBe('33.74');
  });

  it('labour by the day goes by the hours of a working day', () => {
    const text = rigWith('cap front', 'inspect').replace('50.00 USD per h', '400.00 USD per day');
    expect(estimate(text).labour[0]!.cost?.money.amount).toBe('37.50');
  });

  it('tax falls on materials, or on all', () => {
    const taxed = (on: string) =>
      estimate(
        rigWith('cap front', 'seal front with Lap').replace('policy Shop {', `policy Shop {\n  tax 10 % on ${on}`),
      ).totals;
    const [some, all] = [taxed('materials'), taxed('all')];
    const amount = (of: typeof some, name: 'materials' | 'labour' | 'tax' | 'total') => Number(of[name]!.money.amount);
    expect(amount(some, 'tax')).toBeCloseTo(amount(some, 'materials') / 10, 2);
    expect(amount(all, 'tax')).toBeCloseTo((amount(all, 'materials') + amount(all, 'labour')) / 10, 2);
    expect(amount(all, 'total')).toBeCloseTo(1.1 * (amount(all, 'materials') + amount(all, 'labour')), 2);
  });
});

describe('the take-off', () => {
  it('counts a seam once in a visit, and leaves alone what is not treated', () => {
    const whole = estimate(
      rigWith('cap front', 'drain spout', 'field membrane', 'tape front, spout with Tape4', 'tape caps with Tape4'),
    );
    expect(whole.jobs.map(({ items, skipped }) => [items, skipped.map(({ reason }) => reason)])).toEqual([
      [['front'], ['a drain is kept open']],
      [[], ['it is counted already']],
    ]);
    expect(whole.totals.complete).toBe(true);
  });

  it('passes over what was taken away', () => {
    const whole = estimate(rigWith('mount dish 9 in by 9 in', 'removed 2026-07-05 dish', 'seal dish with Lap'));
    expect(whole.jobs[0]).toMatchObject({
      items: [],
      skipped: [{ item: 'dish', reason: 'it is not there on 2026-10-01' }],
    });
    expect(whole.purchases).toEqual([]);
  });

  it('leaves out what the records say is done since', () => {
    const jobs = (record: string) =>
      estimate(rigWith('cap front', record, 'seal front with Lap after 2026-05-01')).jobs.map(({ text }) => text);
    expect(jobs('sealed 2026-06-01 front with Lap')).toEqual([]);
    expect(jobs('sealed 2026-04-01 front with Lap')).toEqual(['seal front']);
  });

  it('strips silicone and urethane at their own rate, by what the records say lies there', () => {
    const tasks = (family: string, record: string) =>
      estimate(`sealant Old { family ${family} }${rigWith('cap front', record, 'strip front')}`).labour.map(
        ({ task }) => task,
      );
    const record = 'sealed 2024-05-01 front with Old';
    expect(tasks('silicone', record)).toEqual(['set-up', 'strip-hard']);
    expect(tasks('urethane', record)).toEqual(['set-up', 'strip-hard']);
    expect(tasks('solvent-lap', record)).toEqual(['set-up', 'strip']);
    expect(rules(rigWith('cap front', 'found 2024-05-01 front with unknown', 'strip front'))).toEqual([
      'unknown-underneath',
    ]);
  });

  it('takes covers off once for each copy, whatever is done below them', () => {
    const { labour } = estimate(
      rigWith('opening vent 9 in by 9 in count 3', 'comes-off vent', 'strip vent', 'seal vent with Lap'),
    );
    expect(labour.filter(({ task }) => task === 'cover').map(({ quantity }) => quantity.value)).toEqual([3]);
  });

  it('primes and wipes by what the plan names', () => {
    const text = rigWith('cap rear', 'tape rear with Soap, Prime, Tape4').replace(
      '\ncleaner Wipe',
      '\nprimer Prime { container 1 qt at 24 USD covers 100 sq-ft per gal }\ncleaner Wipe',
    );
    const [job] = estimate(text).jobs;
    expect(job!.liquids.map(({ task, material }) => `${task} ${material}`)).toEqual(['wipe Soap', 'prime Prime']);
    // 100 in of 4 in tape.
    expect(job!.liquids.map(({ area }) => area.value)).toEqual([
      expect.closeTo(400 / 144, 9),
      expect.closeTo(400 / 144, 9),
    ]);
  });

  it('splices what no roll holds, with an end lap, and says so', () => {
    const text = rigWith('edge curbside', 'tape curbside with Tape4').replace('28 ft by', '60 ft by');
    const { cutting, purchases } = estimate(text);
    expect(cutting[0]!.splices).toBe(1);
    const parts = cutting[0]!.stock.flatMap(({ cuts }) => cuts);
    expect(parts.map(({ part }) => part).sort()).toEqual([
      [1, 2],
      [2, 2],
    ]);
    // 60 ft, an end lap of 2 in at both ends, and one more for the splice.
    expect(parts.reduce((sum, { length }) => sum + length.value, 0)).toBe(720 + 4 + 2);
    expect(purchases[0]!.proof).toBe('2 rolls, 1 splice, 95.00 USD, proven cheapest');
  });

  it('never splices a side edge that a roll holds to save money', () => {
    const { cutting, purchases } = estimate(rigWith('edge curbside, roadside', 'tape edges with Tape4'));
    expect(cutting[0]!.splices).toBe(0);
    expect(purchases[0]!.cost?.money.amount).toBe('120.00');
  });

  it('coats the whole roof', () => {
    const coat =
      'coating Roof { container 1 gal at 40 USD container 5 gal at 150 USD covers 50 sq-ft per gal passes 2 }';
    const { purchases, questions } = estimate(`${coat}${rigWith('cap front', 'coat with Roof')}`);
    // 224 sq ft twice, by 50: 8.96 gal, 9.408 with the spare: two of 5 gal.
    expect(purchases[0]).toMatchObject({ material: 'Roof', proof: '2 x 5 gal, 300.00 USD, proven cheapest' });
    expect(questions).toEqual([]);
  });

  it('of a rig without plans is empty', () => {
    const whole = estimate(`${materials}\nrig Bare under Shop {\n  roof 20 ft by 8 ft\n}\n`);
    expect(whole).toMatchObject({ jobs: [], purchases: [], labour: [], questions: [], totals: { complete: true } });
    expect(whole.totals.total?.money.amount).toBe('0.00');
  });
});
