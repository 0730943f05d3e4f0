import { describe, expect, it } from 'vitest';
import { figuresIn } from '../../language/estimate/index.ts';
import { comparisonOf } from '../../language/lifecost/comparison.ts';
import { Comparison } from '../../language/lifecost/schema.ts';
import { recompute } from '../estimate/recompute.ts';
import { projectOf } from '../project/workspace.ts';
import { asOf, compared, planned, result, rigMaterials, rigText, way } from './ways.ts';

const work = (key: string, title: string, comparison = compared()) =>
  way(key, comparison)
    .courses.flatMap(({ works }) => works)
    .find((each) => each.title === title);

describe('the ways over the years', () => {
  const plain = compared();

  it('are touching up, sealing by the calendar, taping, taping the edges', () => {
    expect(plain.ways.map(({ key }) => key)).toEqual(['touch-up', 'recoat', 'tape', 'tape-edges']);
    expect(plain.cheapest).toBe([...plain.ways].sort((a, b) => a.expected.value - b.expected.value)[0]?.key);
  });

  it('cost what an estimate of the same work comes to, tax, labour and days off the road together', () => {
    const sealing = planned('seal all with Lap');
    expect(work('recoat', 'sealing')?.cost.value).toBeCloseTo(sealing.materials + sealing.labour + 60, 2);
    const strip = planned('strip all', 'seal all with Lap');
    // Three coats at most and one lies there: two more go on, then all of it comes off; 3, 4 or 5 days off the road.
    expect(work('recoat', 'stripping and sealing')?.cost.value).toBeCloseTo(strip.materials + strip.labour + 4 * 60, 2);
    const taping = planned('tape edges, caps, vent with Strip4');
    expect(work('tape', 'taping')?.cost.value).toBeCloseTo(taping.materials + taping.labour + (60 * 4) / 3, 2);
    const edges = planned('tape edges with Strip4');
    expect(work('tape-edges', 'taping')?.cost.value).toBeCloseTo(edges.materials + edges.labour + (60 * 4) / 3, 2);
  });

  it('explain every expected figure', () => {
    const figures = [...figuresIn(plain)];
    expect(figures.length).toBeGreaterThan(20);
    for (const figure of figures) expect(recompute(figure), figure.rule).toBeCloseTo(figure.value, 6);
    expect(Comparison.parse(JSON.parse(JSON.stringify(plain)))).toEqual(plain);
  });

  it('are the same on every run', () => {
    expect(compared()).toEqual(plain);
  });

  it('keep the range around the middle and the chance between 0 and 1', () => {
    for (const { key, low, median, high, cheaper, spent, expected } of plain.ways) {
      expect(low.value, key).toBeLessThanOrEqual(median.value);
      expect(median.value, key).toBeLessThanOrEqual(high.value);
      expect(spent.at(-1), key).toBeCloseTo(expected.value, 4);
      expect(spent.length, key).toBe(plain.horizon.value + 1);
      if (key === 'touch-up') expect(cheaper).toBeUndefined();
      else expect(cheaper!.value >= 0 && cheaper!.value <= 1, key).toBe(true);
    }
  });

  it('say which seams get no tape, and why', () => {
    expect(plain.notTaped).toEqual([{ item: 'lid', reason: 'its lid is opened for service: it is sealed' }]);
  });

  it('name every default that they rest on, with its kind', () => {
    const named = Object.fromEntries(plain.assumptions.map(({ name, kind }) => [name, kind]));
    expect(named).toMatchObject({
      horizon: 'common practice',
      'touch up': 'from memory',
      recoat: 'from memory',
      'days off, strip': 'from memory',
    });
    expect(named).not.toHaveProperty('life of tape');
    expect(named).not.toHaveProperty('days off, shop');
    const own = compared({ policy: ['touch-ups 5 %, 10 %, 15 %'] });
    expect(own.assumptions.map(({ name }) => name)).not.toContain('touch up');
  });
});

describe('the horizon', () => {
  it('is the least of the policy, how long the rig is kept, and the membrane', () => {
    // EPDM lasts 20 years at most in the built-in library: from March 2020 to 2040, 13 whole years from now.
    expect(compared().horizon).toMatchObject({ value: 12, rule: 'the horizon of the policy' });
    expect(compared({ policy: ['horizon 30 years'] }).horizon).toMatchObject({
      value: 13,
      rule: 'to the end of the life of the membrane at the latest',
    });
    expect(compared({ rig: ['kept-until 2033-09-30'] }).horizon).toMatchObject({
      value: 6,
      rule: 'as long as the rig is kept',
    });
    expect(compared({ rig: ['kept-until 2033-10-01'] }).horizon.value).toBe(7);
    expect(compared({ rig: ['kept-until 2026-12-31'] }).horizon.value).toBe(1);
  });
});

describe('quotes of shops', () => {
  it('are ways of their own as long as they hold', () => {
    const quoted = compared({
      rig: [
        'quote "shop A" 1450 USD for reseal until 2027-03-31',
        'quote "shop B" 900 USD for reseal until 2026-09-30',
        'quote "shop C" 8200 USD for reroof',
        'quote "shop D" 120 USD for inspection',
        'quote "shop E" 990 EUR for tape',
      ],
    });
    expect(quoted.ways.map(({ key, name }) => [key, name]).slice(4)).toEqual([
      ['shop-1', 'everything stripped and sealed by shop A'],
      ['reroof-2', 'a new roof by shop C'],
    ]);
    expect(quoted.left.map(({ way: left }) => left)).toEqual([
      'the quote of shop B',
      'the quote of shop D',
      'the quote of shop E',
    ]);
    // The price, and ten days in the queue and in the shop on average.
    expect(work('shop-1', 'the work of shop A', quoted)?.cost.value).toBeCloseTo(1450 + 10 * 60, 6);
  });

  it('for tape are renewed by our own hands when the tape is worn out', () => {
    const quoted = compared({ policy: ['horizon 13 years'], rig: ['quote "shop A" 700 USD for tape'] });
    const titles = way('shop-1', quoted).courses.flatMap(({ works }) => works.map(({ title }) => title));
    expect(titles).toContain('the work of shop A');
    expect(titles).toContain('new tape for old');
  });
});

describe('what the records say of today', () => {
  const bad = ['inspected 2026-09-20 {', '  vent lifting', '  front hairline', '}'];

  it('is paid for in every way, once', () => {
    const comparison = compared({ rig: bad });
    expect(comparison.notes.join(' ')).toContain('What the findings ask for now on front, vent is in every way');
    // Of both: the front sealed, the vent stripped and sealed.
    const now = planned('strip vent', 'seal front, vent with Lap');
    expect(work('touch-up', 'what the findings ask for now', comparison)?.cost.value).toBeCloseTo(
      now.materials + now.labour + 60,
      2,
    );
    // The vent is stripped before it is taped; the front is taped over its hairline.
    const taping = planned('strip vent', 'tape edges, caps, vent with Strip4');
    expect(work('tape', 'taping', comparison)?.cost.value).toBeCloseTo(taping.materials + taping.labour + 80, 2);
    // Sealing everything strips the vent on the way: 4 days off for its share of the seams, 1 for the rest.
    const [sealing, strip] = [planned('seal all with Lap'), planned('strip all', 'seal all with Lap')];
    const share = (16 * 4) / (2 * 240 + 2 * 96 + 2 * 64);
    const mixed = (a: number, b: number) => a * (1 - share) + b * share;
    expect(work('recoat', 'sealing, stripping the last coats', comparison)?.cost.value).toBeCloseTo(
      mixed(sealing.materials + sealing.labour + 60, strip.materials + strip.labour + 240),
      2,
    );
  });

  it('leaves out of the tape what silicone was found on', () => {
    const silicone = `sealant Clear { family silicone  cartridge 10.3 fl-oz at 8 USD }\n`;
    const base = compared();
    const found = compared({
      materials: silicone + rigMaterials,
      rig: ['found 2026-09-01 rear with Clear'],
    });
    expect(base.notTaped.map(({ item }) => item)).not.toContain('rear');
    expect(found.notTaped.find(({ item }) => item === 'rear')?.reason).toContain('silicone');
    // The lap sealant holds there no better: its bead comes off before anything is sealed.
    expect(work('recoat', 'sealing, stripping the last coats', found)).toBeDefined();
    expect(found.notes.join(' ')).toContain('What lies on rear takes no Lap: stripping it is counted');
  });

  it('counts unknown coats as at the limit: they come off first', () => {
    const unknown = compared({ rig: ['found 2026-09-01 all with unknown'] });
    const titles = way('recoat', unknown).courses.flatMap(({ works }) => works.map(({ title }) => title));
    expect(titles[0]).toBe('stripping and sealing');
  });
});

describe('the what-if of a missed leak', () => {
  it('is nothing by default, and its chance times its cost where the policy writes it', () => {
    const plain = compared();
    const feared = compared({ policy: ['missed-leak recoat 2 % at 4000 USD', 'real-interest 0 %'] });
    const free = compared({ policy: ['real-interest 0 %'] });
    expect(way('recoat', plain).courses.map(({ title }) => title)).not.toContain('a leak that was missed');
    expect(way('recoat', feared).expected.value - way('recoat', free).expected.value).toBeCloseTo(12 * 0.02 * 4000, 6);
    expect(way('tape', feared).expected.value).toBeCloseTo(way('tape', free).expected.value, 6);
  });
});

describe('where something is missing', () => {
  it('says why nothing is compared', () => {
    const bare =
      'tape Strip4 { width 4 in  roll 50 ft at 58 USD }\nsealant Lap { bead 1 in by 1/4 in }\ncleaner Wipe { container 1 qt at 9.00 USD }\n';
    expect(result({ materials: bare })).toEqual({
      reason: 'no sealant with a price is declared where the rig is written',
    });
  });

  it('leaves tape out where none has a price, and says so', () => {
    const only = rigMaterials.replace(/tape Strip4 \{[^}]*\}/, 'tape Strip4 { width 4 in  life 10 years }');
    const comparison = compared({ materials: only });
    expect(comparison.ways.map(({ key }) => key)).toEqual(['touch-up', 'recoat']);
    expect(comparison.contest).toBeUndefined();
    expect(comparison.left).toEqual([
      { way: 'tape', reason: 'no tape with a price is declared where the rig is written' },
    ]);
  });

  it('does not add a day rate in another currency', () => {
    const comparison = compared({ dayRate: '60 EUR' });
    expect(comparison.missing.join(' ')).toContain('A day off the road is in EUR');
    expect(work('recoat', 'sealing', comparison)?.cost.value).toBeLessThan(
      work('recoat', 'sealing')?.cost.value as number,
    );
  });

  it('does not count a missed leak in another currency, and says so', () => {
    const feared = compared({ policy: ['missed-leak tape 5 % at 4000 EUR', 'missed-leak recoat 2 % at 4000 USD'] });
    expect(feared.missing.join(' ')).toContain('`missed-leak tape`) is in EUR');
    expect(feared.notes.join(' ')).toContain('counted for recoat, as the policy says; for any other way it is not');
  });

  it('does not compare money of two currencies', () => {
    // The policy names none, so each purchase is in the currency of its own prices.
    const text = rigText({ materials: rigMaterials.replaceAll(/(roll .*) USD/g, '$1 EUR') })
      .replace(/currency +USD/, '')
      .replace(/labour +20 USD per h/, '');
    const [view] = projectOf({ 'teal.rig': text }).rigs('teal.rig');
    const comparison = comparisonOf(view!, asOf);
    if ('reason' in comparison) throw new Error(comparison.reason);
    expect(comparison.ways.map(({ key, expected }) => [key, expected.unit])).toEqual([
      ['touch-up', 'USD'],
      ['recoat', 'USD'],
    ]);
    expect(comparison.missing).toContain('Some prices are in EUR: what is paid in it is not compared.');
  });

  it('leaves out the tape of a shop where nothing says what tape lasts', () => {
    const only = rigMaterials.replace(/tape Strip4 \{[^}]*\}/, 'tape Strip4 { width 4 in  life 10 years }');
    const comparison = compared({ materials: only, rig: ['quote "shop A" 700 USD for tape'] });
    expect(comparison.ways.map(({ key }) => key)).toEqual(['touch-up', 'recoat']);
    expect(comparison.left).toContainEqual({
      way: 'the quote of shop A',
      reason: 'what its tape lasts is not known: no tape of our own is counted',
    });
  });
});

describe('records that no one can reckon with', () => {
  it('lead to a reason or to the nearest figure that can be, never to a failure', () => {
    expect(result({ policy: ['real-interest -100 %'] })).toEqual({
      reason: 'real interest of -100 % leaves nothing of any money',
    });
    const all = compared({ policy: ['touch-ups 100 %'] });
    const more = compared({ policy: ['touch-ups 100 %, 150 %, 200 %'] });
    expect(way('touch-up', more).expected.value).toBe(way('touch-up', all).expected.value);
  });

  it('leave a seam of no length out', () => {
    const comparison = compared({ rig: ['opening dot 0 in by 0 in of abs'] });
    expect(way('touch-up', comparison).expected.value).toBeCloseTo(way('touch-up', compared()).expected.value, 9);
  });
});

describe('the notes', () => {
  const notes = (told: Parameters<typeof compared>[0]) => compared(told).notes.join(' ');

  it('say which ends are past and end nothing', () => {
    expect(notes({ rig: ['kept-until 2025-06-30'] })).toContain('kept until 2025-06-30; that is past');
    expect(notes({ materials: `${rigMaterials}surface epdm { life 2 years, 4 years, 5 years }\n` })).toContain(
      'The life of the membrane was over by 2025-03',
    );
    expect(notes({})).not.toMatch(/that is past|membrane was over/);
  });

  it('say that nothing is done twice in a year', () => {
    expect(notes({ policy: ['recoats every 1 month'] })).toContain('nothing is done twice in one');
    expect(notes({})).not.toContain('nothing is done twice in one');
  });

  it('say what a new roof is not credited with, and whose life the tape of a shop has', () => {
    expect(notes({ rig: ['quote "A" 9000 USD for reroof'] })).toContain('laid now, it outlasts these years');
    expect(notes({ rig: ['quote "A" 700 USD for tape'] })).toContain('counted to last like Strip4');
  });
});

describe('a chance', () => {
  it('is not rounded to a certainty', () => {
    for (const policy of [['touch-ups 1 %, 2 %, 40 %'], ['touch-ups 5 %, 60 %, 99 %'], ['touch-ups 0 %, 1 %, 60 %']]) {
      for (const { cheaper } of compared({ policy }).ways) {
        if (cheaper === undefined) continue;
        if (cheaper.text === '0 %') expect(cheaper.value).toBe(0);
        if (cheaper.text === '100 %') expect(cheaper.value).toBe(1);
      }
    }
  });
});
