import { describe, expect, it } from 'vitest';
import { tapePieces } from '../../language/measure/pieces.ts';
import { inches, itemOf, tapeOf } from '../measure/items.ts';
import { stateOf as seamsOf } from '../seams/view.ts';
import { dues, errors, estimate, found, materials, papers, rigWith, rules, schedule } from './yard.ts';

// Why a practitioner throws such a tool away (trade notes, section 7), each with a test that it does not happen. The ninth
// and the tenth reason have files of their own: proofs.test.ts, speech.test.ts.

const roof = [
  'built 2020-03',
  'factory Lap',
  'roof 28 ft by 8 ft epdm',
  'edge curbside, roadside',
  'cap front',
  'cap rear',
  'opening vent 16 in by 16 in at 5 ft, 4 ft of abs',
];

describe('1: it told me to seal round the air conditioner, or to tape over weep holes', () => {
  const open = ['gasket air-con 14 in by 14 in at 8 ft, 4 ft', 'drain weep', 'channel awning 18 ft on curbside'];
  const never = ['air-con', 'weep', 'awning', 'trim'];
  const on = (...plans: readonly string[]) => rigWith(...roof, ...open, 'insert trim 28 ft', ...plans);

  it.each([
    ['with `all`', ['seal all with Lap', 'tape all with Strip']],
    ['by name', never.flatMap((item) => [`seal ${item} with Lap`, `tape ${item} with Strip`])],
  ])('whatever is planned %s, none of it is counted, cut, bought or scheduled', (_, plans) => {
    const text = on(...plans);
    const { jobs, cutting, purchases, totals } = estimate(text);
    const treated = [
      ...jobs.flatMap(({ items, beads, pieces }) => [...items, ...[...beads, ...pieces].map(({ item }) => item)]),
      ...cutting.flatMap(({ stock }) => stock.flatMap(({ cuts }) => cuts.map(({ item }) => item))),
      ...schedule(text).visits.flatMap(({ tasks }) => tasks.flatMap(({ items }) => items)),
    ];
    expect(treated.filter((item) => never.includes(item))).toEqual([]);
    // What is left out rightly leaves the sum whole; the seams beside it are counted.
    expect(totals.complete).toBe(true);
    expect(treated.includes('vent')).toBe(plans.length === 2);
    expect(purchases.length > 0).toBe(plans.length === 2);
  });

  it('a plan that names one is refused in the editor; a plan for all is not', () => {
    for (const word of ['seal', 'tape'] as const) {
      const material = word === 'seal' ? 'Lap' : 'Strip';
      for (const item of never) {
        const rule = item === 'air-con' ? 'sealed-a-gasket' : 'blocks-drain';
        expect(rules(on(`${word} ${item} with ${material}`))).toContain(rule);
      }
      expect(rules(on(`${word} all with ${material}`)).filter((rule) => /gasket|drain/.test(rule))).toEqual([]);
    }
  });

  it('a gasket is looked at, and its bolts are tightened', () => {
    expect(errors(on('inspect', 'tighten air-con'))).toEqual([]);
    expect(
      schedule(on('tighten air-con')).visits.flatMap(({ tasks }) => tasks.flatMap(({ items }) => items)),
    ).toContain('air-con');
  });
});

describe('2: it nags "recoat overdue" on seams I inspected last month', () => {
  const nags = (text: string) => rules(text).filter((rule) => /look-hard|recoat|strip-due|overdue/.test(rule));

  it('not on a roof found sound last month, though its bead is of 2020', () => {
    const text = rigWith(...roof, 'inspected 2026-10-25 { rest sound }');
    expect(nags(text)).toEqual([]);
    expect(dues(text).filter(({ status }) => status === 'overdue' || status === 'due')).toEqual([]);
    const shown = [...papers(text)].filter(([name]) => name.includes('.schedule.'));
    expect(shown.map(([, paper]) => paper).join('\n')).not.toMatch(/recoat|overdue/i);
  });

  it('it does where nobody looked', () => {
    expect(nags(rigWith(...roof))).toContain('look-hard-due');
  });

  it('a seam found worse has its own follow-up, and the others are let be', () => {
    const text = rigWith(...roof, 'inspected 2026-10-25 { vent hairline', 'rest sound', '}');
    expect(nags(text)).toEqual([]);
    expect(dues(text).filter(({ kind }) => kind === 'follow-up')).toMatchObject([{ item: 'vent', status: 'not-due' }]);
  });
});

describe('3: it cannot say "unknown" for a rig I bought used, so I lie on line one', () => {
  const used = (...lines: readonly string[]) =>
    rigWith(
      'acquired 2026-11-01',
      'roof 28 ft by 8 ft',
      ...roof.slice(3),
      'found 2026-11-01 all with unknown',
      'inspected 2026-11-01 { vent not-seen',
      'rest sound',
      '}',
      ...lines,
    );

  it('what lies there, the surface and the age may all be unknown: no error', () => {
    expect(errors(used())).toEqual([]);
    expect(errors(used('strip front', 'seal front with Lap', 'tape curbside with Strip', 'inspect'))).toEqual([]);
  });

  it('the checker says what to find out, as no error', () => {
    const said = found(used('seal front with Lap', 'tape curbside with Strip'));
    expect(said.map(({ rule }) => rule)).toEqual(expect.arrayContaining(['coats-unknown', 'cover-unknown']));
    expect(said.map(({ message }) => message).join('\n')).toContain('silicone');
  });

  it('the estimate says what it assumes', () => {
    const { questions, labour, totals } = estimate(used('strip front'));
    expect(questions.map(({ text }) => text)).toEqual([
      'What lies on front is not known: it is counted like a solvent-borne sealant. Silicone or urethane takes longer.',
    ]);
    expect(labour.map(({ task }) => task)).toContain('strip');
    expect(totals.complete).toBe(true);
    expect([...papers(used('strip front')).values()].join('\n')).toContain('What lies on front is not known');
  });
});

describe('4: one cure figure, which blocks my bookings or lets wet sealant out on the road', () => {
  // Days before tape may go over each chemistry (trade notes 2.7): below the low figure, between, from the high one on.
  it.each([
    ['GenericSolventLap', 30, 60],
    ['GenericHybridLap', 14, 14],
    ['GenericUrethane', 14, 14],
    ['GenericHybrid', 10, 10],
  ])('%s: an error before %d days, a warning until %d, then silence', (sealant, low, high) => {
    const says = (days: number) => {
      const taped = new Date(Date.UTC(2026, 2, 1 + days)).toISOString().slice(0, 10);
      return found(
        rigWith(
          ...roof,
          'stripped 2026-03-01 vent',
          `sealed 2026-03-01 vent with ${sealant}`,
          `taped ${taped} vent with Strip`,
        ),
      )
        .filter(({ rule }) => rule === 'tape-too-early' || rule === 'tape-before-full-cure')
        .map(({ severity }) => severity);
    };
    for (const days of [0, low - 1]) expect(says(days)).toEqual(['error']);
    for (let days = low; days < high; days += 5) expect(says(days)).toEqual(['warning']);
    for (const days of [high, high + 1, 200]) expect(says(days)).toEqual([]);
  });

  it('silicone is never covered', () => {
    const text = rigWith(
      ...roof,
      'stripped 2020-06-01 vent',
      'sealed 2020-06-01 vent with GenericSilicone',
      'taped 2026-06-01 vent with Strip',
    );
    expect(rules(text)).toContain('tape-too-early');
  });

  // Gunned at 09:40 on a Monday: solvent-borne drives after 12 to 24 h, a fast hybrid after 6 (trade notes 2.7).
  it.each([
    ['GenericSolventLap', '2026-06-01', true],
    ['GenericSolventLap', '2026-06-02', true],
    ['GenericSolventLap', '2026-06-03', false],
    ['GenericHybridLap', '2026-06-01', true],
    ['GenericHybridLap', '2026-06-02', false],
  ])('with %s, leaving on %s: too early is %s', (sealant, day, early) => {
    const text = rigWith(
      ...roof,
      'stripped 2026-06-01 09:00 vent',
      `sealed 2026-06-01 09:40 vent with ${sealant}`,
      `trip ${day} to 2026-06-09`,
    );
    expect(rules(text).includes('driven-too-early')).toBe(early);
  });
});

describe('5: the perimeter was from the cut-out, and I ran out of sealant on the roof at 4 pm', () => {
  const spelled = ['opening hatch 16 in by 16 in', 'opening hatch cutout 14 in by 14 in flange 1 in'];
  const job = (opening: string, policy = '') =>
    estimate(
      `policy P {${policy}}\n${rigWith('roof 28 ft by 8 ft epdm', opening, 'seal hatch with Lap')}`.replace(
        'under Own',
        'under P',
      ),
    ).jobs[0]!;

  it.each(spelled)('`%s` is 64 in along its flange, 68 in along the middle of a bead of 1 in outside it', (opening) => {
    expect(job(opening, ' bead-line flange ').beadLength?.value).toBeCloseTo(64, 9);
    expect(job(opening).beadLength?.value).toBeCloseTo(68, 9);
    expect(job(opening).sealantVolume?.value).toBeCloseTo((68 * 0.25) / 1.8046875, 9);
  });

  it.each(spelled)('`%s` takes a frame of 88 in, not the 80 in of its cut-out', (opening) => {
    const { item, rig } = itemOf(opening);
    const got = tapePieces(item, rig, rig.policy, tapeOf(), undefined, 'us');
    expect(got.ok && got.value.pieces.reduce((sum, piece) => sum + inches(piece), 0)).toBe(88);
  });
});

describe('6: it splices my side edge to save 26 dollars', () => {
  const edges = rigWith(...roof, 'tape edges with Strip');

  it('two edges of 28 ft take two rolls of 50 ft at 122.00, not 50 and 25 ft at 95.50', () => {
    const { cutting, purchases } = estimate(edges);
    expect(cutting.map(({ splices }) => splices)).toEqual([0]);
    expect(purchases.find(({ kind }) => kind === 'tape')?.proof).toBe('2 rolls, 122.00 USD, proven cheapest');
  });

  it('with `splices allowed` in the policy it may', () => {
    const allowed = edges.replace('policy Own {', 'policy Own {\n  splices allowed');
    expect(estimate(allowed).purchases[0]?.proof).toBe('2 rolls, 1 splice, 95.50 USD, proven cheapest');
  });
});

describe('7: every small change in bookings reshuffles the whole month', () => {
  it('the same inputs give the same schedule, to the byte', () => {
    const text = rigWith(
      ...roof,
      'inspect before 2027-06-01',
      'tape rear with Strip after 2027-04-15',
      'seal vent with Lap',
    );
    const [one, other] = [papers(text), papers(text)];
    expect([...one.keys()].filter((name) => name.includes('.schedule.')).length).toBeGreaterThanOrEqual(3);
    expect([...other]).toEqual([...one]);
  });
});

describe('8: typing: more than a minute to record a routine inspection of 25 seams', () => {
  const vents = Array.from({ length: 21 }, (_, i) => `  opening vent-${i + 1} 9 in by 9 in\n`).join('');
  const record = `  inspected 2026-10-01 {
    vent-3 hairline
    roadside not-seen
    rest sound
  }
`;
  const state = seamsOf(`${vents}${record}`, '2026-10-02').seams;
  const words = (item: string) => state.get(item)?.stretches.map(({ condition }) => condition?.word);

  it('takes five lines, and less than a minute at 200 keys', () => {
    expect(state.size).toBeGreaterThanOrEqual(25);
    expect(record.trim().split('\n')).toHaveLength(5);
    // Leading blanks are the editor's.
    expect(record.replace(/^ +/gm, '').length).toBeLessThan(200);
    expect(
      errors(
        `${materials}rig Teal under Own {\n  roof 28 ft by 8 ft epdm\n  edge curbside, roadside\n${vents}${record}}\n`,
      ),
    ).toEqual([]);
  });

  it('gives every other seam its condition, and does not lie of those it names', () => {
    const sound = [...state.keys()].filter((item) => words(item)?.every((word) => word === 'sound'));
    expect(sound).toHaveLength(state.size - 2);
    expect(words('vent-3')).toEqual(['hairline']);
    expect(words('roadside')).toEqual([undefined]);
    expect(state.get('roadside')?.stretches[0]).toMatchObject({ notSeen: {} });
    expect(state.get('roadside')?.stretches[0]?.looked).toBeUndefined();
  });

  it('without `rest` nothing is said of what is not named', () => {
    const some = seamsOf(`${vents}${record.replace('    rest sound\n', '')}`, '2026-10-02').seams;
    expect(some.get('vent-4')?.stretches[0]?.condition).toBeUndefined();
  });

  it('a part of a seam that is named is not called sound at its other end', () => {
    const part = seamsOf(
      `${vents}${record.replace('vent-3 hairline', 'curbside hairline from 6 ft to 9 ft')}`,
      '2026-10-02',
    ).seams;
    expect(part.get('curbside')?.stretches.map(({ condition }) => condition?.word)).toEqual([
      undefined,
      'hairline',
      undefined,
    ]);
  });
});
