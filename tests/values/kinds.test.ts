import { describe, expect, it } from 'vitest';
import { readArea } from '../../language/values/area.ts';
import { articled, exampleOf, kindOf, mismatch, type ValueKind } from '../../language/values/kinds.ts';
import { readLength } from '../../language/values/length.ts';
import { readMoney } from '../../language/values/money.ts';
import { nearest } from '../../language/values/nearest.ts';
import { readCount, readCounted, readPercent } from '../../language/values/numbers.ts';
import { readDuration, readEffort, readPeriod } from '../../language/values/period.ts';
import { type Quantity, quantityFrom, type Read } from '../../language/values/quantity.ts';
import { readAreaRate, readCoverage, readLengthRate, readMoneyRate, readRate } from '../../language/values/rate.ts';
import { readTemperature, readTemperatureDifference } from '../../language/values/temperature.ts';
import { spelled, unitOf, unitWords } from '../../language/values/units.ts';
import { readVolume } from '../../language/values/volume.ts';
import { quantity, refusal } from './reading.ts';

describe('the kind of a quantity', () => {
  it.each([
    ['14 in', 'length'],
    ['8 ft 2', 'length'],
    ['120 sq-ft', 'area'],
    ['1 gal', 'volume'],
    ['61 USD', 'money'],
    ['48 USD per h', 'money-rate'],
    ['100 sq-ft per gal', 'coverage'],
    ['30 ft per hour', 'length-rate'],
    ['30 sq-m per h', 'area-rate'],
    ['48 USD per ft', 'rate'],
    ['6 months', 'period'],
    ['8 h', 'effort'],
    ['50 F', 'temperature'],
    ['14 %', 'percent'],
    ['2 rolls', 'counted'],
    ['4', 'number'],
    ['5 bananas', 'unknown'],
    ['5 in per banana', 'unknown'],
    ['1 day 6 h', 'unknown'],
  ])('%s is %s', (text, kind) => {
    expect(kindOf(quantity(text))).toBe(kind);
  });
});

describe('the words for a kind', () => {
  const readers: Partial<Record<ValueKind, (quantity: Quantity) => Read<unknown>>> = {
    length: readLength,
    area: readArea,
    volume: readVolume,
    money: readMoney,
    rate: readRate,
    'money-rate': readMoneyRate,
    coverage: readCoverage,
    'length-rate': readLengthRate,
    'area-rate': readAreaRate,
    period: readPeriod,
    effort: readEffort,
    duration: readDuration,
    temperature: readTemperature,
    'temperature-difference': readTemperatureDifference,
    percent: readPercent,
    count: readCount,
    counted: readCounted,
  };
  it('give an example that reads as the kind', () => {
    for (const [kind, read] of Object.entries(readers)) {
      expect(read(quantity(exampleOf(kind as ValueKind))).ok, kind).toBe(true);
    }
  });

  it('fit into a sentence', () => {
    expect([articled('length'), articled('area'), articled('money')]).toEqual(['a length', 'an area', 'money']);
    expect(mismatch('length', quantity('61 USD'))).toBe(
      'a length is expected here, such as `14 in`; `61 USD` is money',
    );
    expect(mismatch('name', quantity('4'))).toBe('a name is expected here, such as `bath-vent`; `4` is a bare number');
    expect(mismatch('text', quantity('4 bananas'))).toBe(
      'a text in quotes is expected here, such as `"shop B"`; `4 bananas` is none',
    );
  });
});

describe('a unit that is missing, unknown or spelled otherwise', () => {
  it.each([
    ['4', '`4` has no unit; write `4 in` or `4 ft`', undefined],
    ['8 ft 2', '`2` has no unit; write `8 ft 2 in`', '8 ft 2 in'],
    ['8 ft 2 epdm', '`2` has no unit, and `epdm` is none; write `2 in`', undefined],
    ['5 bananas', '`bananas` is no unit; a length is expected here, such as `14 in`', undefined],
    ['3 lbs', '`lbs` is a weight; a length is expected here, such as `14 in`', undefined],
    ['1/', '`1/` is half a fraction; write it as in `1/2`', undefined],
    ['8 ft 6. in', '`6.` ends with its decimal point; write `6` or `6.5`', '8 ft 6 in'],
    ['5 d', 'a length is expected here, such as `14 in`; `5 d` is a period', undefined],
    ['2 all', '`all` is no unit; a length is expected here, such as `14 in`', undefined],
    ['1 450 in', 'a number has no blanks inside; write `1450 in`', '1450 in'],
    ['3 feet 2 inch', '`feet` is no unit here; write `ft`', '3 ft 2 in'],
    ['3 IN', '`IN` is no unit here; write `in`', '3 in'],
    ['3 f', '`f` is no unit here; write `ft`', '3 ft'],
  ])('%s', (text, message, fix) => {
    expect(refusal(readLength(quantity(text)))).toEqual([message, fix]);
  });

  it('every alias of a length leads to a fix that reads', () => {
    const aliases = `inch inches in. " ″ foot feet ft. ' ′ yard yards metre meters centimetres millimeters mm.`.split(
      ' ',
    );
    for (const unit of aliases) {
      const [, fix] = refusal(readLength({ terms: [{ amount: '3', unit }] }));
      const again = quantityFrom(fix ?? '');
      expect(again !== undefined && readLength(again).ok, unit).toBe(true);
    }
  });

  it('no quantity at all is a mismatch', () => {
    expect(refusal(readLength({ terms: [] }))[0]).toContain('a length is expected here');
  });
});

describe('units', () => {
  it('are known by all their spellings', () => {
    expect(unitOf('days')).toEqual({ family: 'period', word: 'day' });
    expect(unitOf('hours')).toEqual({ family: 'effort', word: 'h' });
    expect(unitOf('USD')).toEqual({ family: 'money', word: 'USD' });
    expect(unitOf('inches')).toBeUndefined();
    for (const word of unitWords('counted')) expect(unitOf(word)?.family).toBe('counted');
    expect([spelled('roll', true), spelled('roll', false), spelled('in', false)]).toEqual(['roll', 'rolls', 'in']);
  });
});

describe('the nearest word', () => {
  const words = ['sealed', 'taped', 'inspected', 'ft', 'in', 'roll'];
  it.each([
    ['seald', 'sealed'],
    ['selaed', 'sealed'],
    ['Sealed', 'sealed'],
    ['inspcted', 'inspected'],
    ['rol', 'roll'],
    ['f', 'ft'],
    ['banana', undefined],
    ['', undefined],
  ])('%s: %s', (word, near) => {
    expect(nearest(word, words)).toBe(near);
  });
});
