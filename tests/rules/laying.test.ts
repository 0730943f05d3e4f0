import { describe, expect, it } from 'vitest';
import { said, under } from './asked.ts';

const tapes =
  'tape Strip4 { width 4 in  roll 50 ft at 58 USD  roll 25 ft at 31 USD  end-lap 2 in  side-lap 1 in }\n' +
  'tape Strip6 { width 6 in  roll 25 ft at 45 USD  end-lap 2 in }\n';
const rig = (along: string, ...lines: readonly string[]) =>
  `${tapes}rig Heron {\n  roof ${along} by 8 ft epdm\n  edge curbside, roadside\n  cap front 5 in wide\n${lines.map((l) => `  ${l}\n`).join('')}}\n`;

describe('a strip longer than every roll', () => {
  it('is told with where to splice it, clear of corners', () => {
    // 28 ft and two laps are 28 ft 4 in; of a 25 ft roll 24 ft 6 in can be used.
    const text = rig('28 ft', 'tape curbside with Strip6');
    const [finding, ...more] = said('longer-than-rolls', text);
    expect(more).toEqual([]);
    expect(finding?.message).toContain('28 ft 4 in');
    expect(finding?.message).toContain('24 ft 6 in');
    expect(finding?.message).toContain('Splice it once, 3 ft 10 in to 24 ft 6 in from the front');
    expect(finding?.message).toContain('forward part over the rear part by 2 in');
    expect(under(text, finding!)).toBe('curbside');
  });

  it('keeps the splice a foot from the openings beside the edge', () => {
    const vent = 'opening vent 16 in by 16 in at 14 ft, 1 ft';
    const [finding] = said('longer-than-rolls', rig('28 ft', vent, 'tape curbside with Strip6'));
    expect(finding?.message).toContain('3 ft 10 in to 12 ft 4 in or 15 ft 8 in to 24 ft 6 in from the front');
    expect(finding?.message).toContain('clear of `vent`');
    const [other] = said('longer-than-rolls', rig('28 ft', vent, 'tape roadside with Strip6'));
    expect(other?.message).not.toContain('`vent`');
  });

  it('counts the splices of a long one', () => {
    const [finding] = said('longer-than-rolls', rig('70 ft', 'tape curbside with Strip6'));
    expect(finding?.message).toContain('Splice it 2 times');
  });

  it('is nothing to speak of where a roll holds it, or only a part is taped', () => {
    expect(said('longer-than-rolls', rig('28 ft', 'tape curbside with Strip4'))).toEqual([]);
    expect(said('longer-than-rolls', rig('28 ft', 'tape curbside from 0 ft to 14 ft with Strip6'))).toEqual([]);
  });
});

describe('a band without slack', () => {
  it('is told on a side edge', () => {
    // A band of 2 in and two margins of 1 in are just 4 in.
    const [finding] = said('no-slack', rig('28 ft', 'tape curbside with Strip4'));
    expect(finding?.message).toContain('leaves nothing to spare');
  });

  it('is none with a wider tape, nor on a cap', () => {
    expect(said('no-slack', rig('28 ft', 'tape curbside with Strip6'))).toEqual([]);
    expect(said('no-slack', rig('28 ft', 'tape front with Strip4'))).toEqual([]);
  });
});
