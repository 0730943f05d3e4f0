import { describe, expect, it } from 'vitest';
import { mended, rigWith, said, under } from './asked.ts';

const roof = ['edge curbside, roadside', 'opening vent 16 in by 16 in at 18 ft, 4 ft'];

describe('a stretch', () => {
  it('that lies on its seam is fine', () => {
    const text = rigWith(...roof, 'sealed 2024-05-01 curbside from 0 ft to 28 ft with GenericSolventLap');
    expect(said('stretch-past-end', text)).toEqual([]);
    expect(said('stretch-reversed', text)).toEqual([]);
  });

  it('that runs backwards is turned, in a record', () => {
    const text = rigWith(...roof, 'stripped 2024-05-01 roadside, curbside from 9 ft to 6 ft');
    const [finding] = said('stretch-reversed', text);
    expect(under(text, finding!)).toBe('from 9 ft to 6 ft');
    const after = mended(text, finding!);
    expect(after).toContain('curbside from 6 ft to 9 ft');
    expect(said('stretch-reversed', after)).toEqual([]);
  });

  it('that runs backwards is turned, in a finding', () => {
    const text = rigWith(...roof, 'inspected 2024-05-01 {', '  curbside cracked from 9 ft to 6 ft', '}');
    const [finding] = said('stretch-reversed', text);
    const after = mended(text, finding!);
    expect(after).toContain('cracked from 6 ft to 9 ft');
    expect(said('stretch-reversed', after)).toEqual([]);
  });

  it('that reaches past the end is found in records, findings and plans', () => {
    for (const line of [
      'stripped 2024-05-01 curbside from 6 ft to 40 ft',
      'inspected 2024-05-01 {\n curbside cracked from 6 ft to 40 ft\n}',
      'strip curbside from 6 ft to 40 ft after 2035-05-01',
      'stripped 2024-05-01 edges from 6 ft to 40 ft',
    ]) {
      const findings = said('stretch-past-end', rigWith(...roof, line));
      expect(findings, line).toHaveLength(1);
      expect(findings[0]?.message).toContain('`curbside` is 28 ft long; this stretch ends at 40 ft');
    }
  });

  it('may lie along a flange, whose seam is as long as its sides together', () => {
    expect(said('stretch-past-end', rigWith(...roof, 'stripped 2024-05-01 vent from 0 in to 64 in'))).toEqual([]);
    expect(said('stretch-past-end', rigWith(...roof, 'stripped 2024-05-01 vent from 0 in to 65 in'))).toHaveLength(1);
  });

  it('of everything is cut to each seam without complaint', () => {
    expect(said('stretch-past-end', rigWith(...roof, 'stripped 2024-05-01 all from 0 ft to 28 ft'))).toEqual([]);
  });
});
