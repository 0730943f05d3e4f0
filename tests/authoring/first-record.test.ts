import { describe, expect, it } from 'vitest';
import { firstPolicy, firstPolicyName } from '../../language/authoring/first-policy.ts';
import { type FirstRecord, firstRecord } from '../../language/authoring/first-record.ts';
import { isRoofing, partNames, rigKinds, usualKinds, usualParts } from '../../language/authoring/usual.ts';
import { isLibrary } from '../../language/resolve/origin.ts';
import { check, projectOf } from '../project/workspace.ts';

const project = projectOf({ 'a.rig': '' });
const membranes = [...project.names('a.rig').all('surface')].flatMap(([name, { file }]) =>
  isRoofing(project.surface('a.rig', name)?.group, isLibrary(file)) ? [name] : [],
);
const everything = partNames.flatMap((name) => Array<typeof name>(usualParts[name].most).fill(name));

const answers = (given: Partial<FirstRecord> = {}): FirstRecord => {
  const { kind = 'travel-trailer', units = 'us' } = given;
  const [length, width] = usualKinds[kind].size[units];
  return { kind, units, name: 'Plover', length, width, membrane: 'epdm', parts: [], slides: [], ...given };
};
const slides: FirstRecord['slides'] = [
  { length: '11 ft', depth: '3 ft 6 in', side: 'roadside' },
  { length: '2 m', depth: '60 cm', side: 'curbside' },
];
const errors = (record: FirstRecord) => {
  const policy = record.policy ? { 'policy.rig': firstPolicy(record.units) } : undefined;
  return check({ 'Plover.rig': firstRecord(record), ...policy }, 'Plover.rig').filter(
    ({ severity }) => severity === 'error',
  );
};

describe('a first record', () => {
  it('offers the sheets that a roof is covered with, and no bead, flange or deck', () => {
    expect(membranes).toEqual(expect.arrayContaining(['epdm', 'tpo', 'pvc', 'fibreglass', 'aluminium']));
    expect(membranes).not.toEqual(expect.arrayContaining(['abs']));
    for (const none of ['wood', 'butyl', 'tape', 'unknown-sealant', 'polycarbonate', 'acrylic-coating'])
      expect(membranes).not.toContain(none);
  });

  it.each(rigKinds)('of a %s checks clean, whatever the membrane, the units, the parts, the age', (kind) => {
    for (const units of ['us', 'metric'] as const)
      for (const membrane of [undefined, ...membranes])
        for (const parts of [[], usualKinds[kind].parts, everything])
          for (const found of [undefined, '2021-04-10'])
            for (const policy of [undefined, { name: firstPolicyName, path: 'policy.rig' }]) {
              const given = answers({ kind, units, membrane, parts, found, policy, slides: found ? slides : [] });
              expect(errors(given), firstRecord(given)).toEqual([]);
            }
  });

  it('holds what was said', () => {
    const text = firstRecord(
      answers({
        parts: ['vent', 'stack', 'vent', 'spout'],
        slides,
        found: '2021-04-10',
        policy: { name: 'Yard', path: '../yard/policy.rig' },
      }),
    );
    expect(text).toMatchInlineSnapshot(`
      "# A first record, from what was asked. Sizes of parts are usual ones: measure yours, and write what is true.
      use "../yard/policy.rig"

      ## Travel trailer.
      rig Plover under Yard {
        # The roof: along by across, and its membrane. Places are measured from the front, and from the curb side.
        roof         28 ft by 8 ft  epdm
        edge         curbside, roadside
        cap          front
        cap          rear
        slide        slide-1      11 ft by 3 ft 6 in  on roadside
        slide        slide-2      2 m by 60 cm        on curbside
        field        membrane

        # Sizes are those of the flange, along by across: that is where the bead runs. \`of\` says what the part is of.
        opening      vent-1  16 1/2 in by 16 1/2 in  of abs
        opening      vent-2  16 1/2 in by 16 1/2 in  of abs
        opening      stack   round 6 1/2 in          of abs
        drain        spout

        # Used: nobody knows what is on the seams, so they count as sealed with something unknown.
        found        2021-04-10 all with unknown

        # What to measure and write next, from the ground, from a ladder that somebody holds, or from photos:
        # - where the middle of each part is: \`at 9 ft, 3 ft\` behind its size
        # - where each slide-out is: \`at 9 ft\` behind its side, to its middle
        # - how wide the old bead is on edges and caps: \`wide\` and a length
        # - which surfaces meet in a seam: \`between epdm and aluminium\`
        # - seams on the walls that can let water in: \`joint\`, a name, a length, \`on wall\` and the side
        # - where water runs to: \`falls to edges\`, or to \`front\` or \`rear\`
        # - \`built\`, \`in-service\` and \`acquired\` with their dates: the age of the membrane follows
        # Then run "Rigseam: Record Inspection" and go round it once.
      }
      "
    `);
    const { rig } = projectOf({ 'Plover.rig': text.replace('under Yard', '').replace(/^use.*$/m, '') }).rigs(
      'Plover.rig',
    )[0]!;
    expect(rig.roof).toMatchObject({
      along: { nm: 28 * 304_800_000 },
      across: { nm: 8 * 304_800_000 },
      surface: 'epdm',
    });
    expect(rig.items.filter(({ kind }) => kind === 'opening').map(({ name }) => name)).toEqual([
      'vent-1',
      'vent-2',
      'stack',
    ]);
    expect(rig.items.filter(({ kind }) => kind === 'slide').map(({ side }) => side)).toEqual(['roadside', 'curbside']);
    expect(rig.events.map(({ record: { word }, last }) => [word, last])).toEqual([['found', '2021-04-10']]);
  });

  it('prints its figures in the units of the answers', () => {
    const units = (given: FirstRecord) => {
      const files = {
        'Plover.rig': firstRecord(given),
        ...(given.policy ? { 'policy.rig': firstPolicy(given.units) } : {}),
      };
      return projectOf(files).rigs('Plover.rig')[0]?.rig.policy.units.value;
    };
    const policy = { name: firstPolicyName, path: 'policy.rig' };
    expect(units(answers())).toBe('us');
    expect(units(answers({ units: 'metric' }))).toBe('metric');
    expect(units(answers({ units: 'metric', policy }))).toBe('metric');
    expect(units(answers({ policy }))).toBe('us');
  });

  it('gives each part the size of the trade, the same in both units to a quarter of an inch', () => {
    const text = firstRecord(answers({ units: 'metric', parts: everything }));
    const us = firstRecord(answers({ parts: everything }));
    const sizes = (of: string) =>
      projectOf({ 'a.rig': of })
        .rigs('a.rig')[0]!
        .rig.items.flatMap(({ size }) =>
          size === undefined
            ? []
            : 'diameter' in size
              ? [size.diameter.nm]
              : Object.values(size).flatMap((one) => (typeof one === 'object' && 'nm' in one ? [one.nm] : [])),
        );
    const [a, b] = [sizes(text), sizes(us)];
    expect(a.length).toBe(b.length);
    expect(a.length).toBeGreaterThan(20);
    for (const [i, nm] of a.entries()) expect(Math.abs(nm - b[i]!)).toBeLessThanOrEqual(25_400_000 / 4);
  });

  it('asks for what nobody has said yet', () => {
    expect(firstRecord(answers({ membrane: undefined }))).toContain('# - what the roof is covered with');
    expect(firstRecord(answers())).not.toContain('what the roof is covered with');
    expect(firstRecord(answers({ kind: 'van' }))).not.toMatch(/^ {2}(edge|cap) /m);
  });
});

it('the first policy holds no price and no figure', () => {
  expect(firstPolicy('us').replace(/#.*/g, '')).not.toMatch(/\d|[A-Z]{3}/);
  expect(
    check({ 'policy.rig': firstPolicy('metric') }, 'policy.rig').filter(({ severity }) => severity !== 'hint'),
  ).toEqual([]);
});
