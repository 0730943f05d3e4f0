import { describe, expect, it } from 'vitest';
import { gradesOf, kindOf, said, statementsOf } from './text.ts';

// The values of the library against the trade notes of the design, section by section, typed again by hand. Letters as
// there: Y usual, L by its label, T test patch, N never; P published, C common practice, M from memory.

const skins = [
  'epdm',
  'tpo',
  'pvc',
  'fibreglass',
  'aluminium',
  'painted-steel',
  'abs',
  'polycarbonate',
  'acrylic',
  'pp',
  'pe',
];
const columns = [...skins, 'solvent-lap', 'acrylic-coating', 'urethane-coating', 'silicone'];

/** A row of a table whose columns stand for one or two surfaces each. */
function row(cells: string): string[] {
  return cells.split('|').map((cell) => cell.trim());
}

describe('trade notes 2.5: material on surface', () => {
  //  epdm | tpo | pvc | fibreglass | aluminium | painted steel | abs | clear plastic | pp, pe | solvent lap | coating | silicone
  const table: Record<string, string> = {
    GenericSolventLap: 'Y C | L C | L M | Y C | Y C | Y M | L M | N M | T M | Y C | T M | N C',
    GenericHybridLap: 'L M | L M | Y M | Y M | Y M | Y M | Y M | L M | N M | T M | T M | N C',
    GenericSeamTape: 'Y C | L P | L P | Y M | Y M | Y M | L M | L M | T M | Y C | L M | N C',
    GenericBedding: 'Y C | Y C | L M | Y C | Y C | Y C | Y C | Y M | Y C | N C | N M | N C',
    GenericUrethane: 'N M | N M | L M | Y C | L M | Y C | L M | L M | N M | N M | L M | N C',
    GenericHybrid: 'L M | N M | Y M | Y C | Y C | Y C | Y M | L M | N M | T M | T M | N C',
    GenericSilicone: 'N M | N M | N M | T M | Y M | Y M | T M | Y M | N M | N M | N M | Y C',
    GenericAcetoxySilicone: 'N M | N M | N M | N M | N P | N P | N M | T M | N M | N M | N M | T M',
    GenericAsphalt: 'N P | N M | N P | N M | N M | N M | N M | N M | N M | N M | N M | N C',
    GenericAcrylic: 'N M | N M | N M | N M | N M | N M | N M | N M | N M | N M | T M | N C',
  };
  for (const [name, cells] of Object.entries(table)) {
    it(name, () => {
      const [epdm, tpo, pvc, fibreglass, aluminium, steel, abs, clear, poly, lap, coating, silicone] = row(cells);
      const wanted = [
        epdm,
        tpo,
        pvc,
        fibreglass,
        aluminium,
        steel,
        abs,
        clear,
        clear,
        poly,
        poly,
        lap,
        coating,
        coating,
        silicone,
      ];
      const grades = gradesOf(name);
      expect(columns.map((surface) => `${surface} ${grades.get(surface)}`)).toEqual(
        columns.map((surface, i) => `${surface} ${wanted[i]}`),
      );
    });
  }
});

describe('trade notes 2.6: cleaner on surface', () => {
  //  epdm | tpo | pvc | gelcoat | aluminium | painted metal | abs | clear plastic | pp, pe
  const table: Record<string, string> = {
    GenericDetergent: 'Y P | Y C | Y C | Y C | Y C | Y C | Y C | Y C | Y C',
    GenericIsopropyl: 'Y M | Y M | Y M | Y C | Y C | Y M | Y M | Y M | Y M',
    GenericAcetone: 'T M | L M | N P | Y M | Y M | N M | N M | N M | Y M',
    GenericMineralSpirits: 'N M | N M | N M | Y M | Y M | T M | T M | T M | N M',
    GenericAromatic: 'N M | L M | N M | T M | Y M | N M | N M | N M | N M',
    GenericCitrus: 'N M | N M | N M | T M | Y M | T M | N M | N M | N M',
    GenericAbrasivePad: 'Y M | Y M | L M | Y M | Y M | N M | Y M | N M | L M',
  };
  for (const [name, cells] of Object.entries(table)) {
    it(name, () => {
      const [epdm, tpo, pvc, gelcoat, aluminium, painted, abs, clear, poly] = row(cells);
      const wanted = [epdm, tpo, pvc, gelcoat, aluminium, painted, abs, clear, clear, poly, poly];
      const grades = gradesOf(name);
      expect(skins.map((surface) => `${surface} ${grades.get(surface)}`)).toEqual(
        skins.map((surface, i) => `${surface} ${wanted[i]}`),
      );
    });
  }

  it('GenericMembraneCleaner, for membranes only', () => {
    expect([...gradesOf('GenericMembraneCleaner')]).toEqual([
      ['epdm', 'Y P'],
      ['tpo', 'L M'],
      ['pvc', 'L M'],
    ]);
  });
});

interface Spanned {
  readonly low: Figure;
  readonly high: Figure;
}
interface Figure {
  readonly minutes?: number;
  readonly days?: number;
  readonly text: string;
}
const hours = ({ minutes, days }: Figure) => (minutes === undefined ? (days ?? Number.NaN) * 24 : minutes / 60);
const clock = (name: string, word: string) => {
  const { low, high } = said(name, word).span as Spanned;
  return [hours(low), hours(high)];
};

describe('trade notes 2.7: times and temperatures', () => {
  // skin, rain, drive, wash in hours
  const table: Record<string, number[][]> = {
    GenericSolventLap: [
      [1, 4],
      [2, 6],
      [12, 24],
      [168, 168],
    ],
    GenericHybridLap: [
      [0.5, 1],
      [1, 2],
      [6, 6],
      [72, 72],
    ],
    GenericUrethane: [
      [1, 6],
      [4, 8],
      [24, 24],
      [168, 168],
    ],
    GenericHybrid: [
      [0.25, 1],
      [1, 2],
      [6, 6],
      [72, 72],
    ],
    GenericSilicone: [
      [0.25, 0.75],
      [1, 2],
      [6, 6],
      [72, 72],
    ],
  };
  for (const [name, wanted] of Object.entries(table)) {
    it(name, () => expect(['skin', 'rain', 'drive', 'wash'].map((word) => clock(name, word))).toEqual(wanted));
  }

  it('tape has no skin; rain does no harm at once', () => {
    expect(['rain', 'drive', 'wash'].map((word) => clock('GenericSeamTape', word))).toEqual([
      [0, 0],
      [1, 1],
      [48, 48],
    ]);
    expect(statementsOf('GenericSeamTape').some(({ word }) => word === 'skin')).toBe(false);
  });

  it('tape over it, in days', () => {
    const days = (name: string) => clock(name, 'cover').map((h) => h / 24);
    expect(days('GenericSolventLap')).toEqual([30, 60]);
    expect(kindOf(said('GenericSolventLap', 'cover').source)).toBe('common practice');
    expect(days('GenericHybridLap')).toEqual([14, 14]);
    expect(days('GenericUrethane')).toEqual([14, 14]);
    expect(days('GenericHybrid')).toEqual([10, 10]);
    expect(said('GenericSilicone', 'cover').span).toBe('never');
  });

  it('air and surface', () => {
    const limits = (name: string) => {
      const { low, high } = said(name, 'apply').air as Spanned;
      return [low.text, high.text, (said(name, 'surface-up-to').limit as Figure).text].join(', ');
    };
    expect(limits('GenericSolventLap')).toBe('50 F, 95 F, 120 F');
    expect(limits('GenericHybridLap')).toBe('40 F, 95 F, 120 F');
    expect(limits('GenericUrethane')).toBe('40 F, 95 F, 110 F');
    expect(limits('GenericHybrid')).toBe('40 F, 95 F, 120 F');
    expect(limits('GenericSilicone')).toBe('32 F, 100 F, 120 F');
    expect(limits('GenericSeamTape')).toBe('50 F, 100 F, 130 F');
  });
});

const three = (points: unknown) =>
  Object.values(points as Record<string, { text: string }>)
    .map(({ text }) => text)
    .join(', ');

describe('trade notes 2.1, 3.3 and 3.5: lives, laps, coverage', () => {
  it('tape lives shorter than sales pages say, and shorter still on TPO', () => {
    const lives = statementsOf('GenericSeamTape').filter(({ word }) => word === 'life');
    expect(lives.map(({ life }) => three(life))).toEqual(['8 years, 15 years, 25 years', '2 years, 6 years, 12 years']);
    const on = lives.map((life) => (life.on as readonly { name: string }[]).map(({ name }) => name));
    expect(on[0]).toContain('epdm');
    expect(on[1]).toEqual(['tpo']);
    expect(on.flat()).not.toContain('pvc');
    expect(lives.map(({ source }) => source)).toEqual(['from memory', 'from memory']);
  });

  it('laps', () => {
    expect((said('GenericSeamTape', 'end-lap').length as Figure).text).toBe('2 in');
    expect((said('GenericSeamTape', 'side-lap').length as Figure).text).toBe('1 in');
  });

  it('a lap sealant is looked at hard within 1 to 2 years and takes 3 to 4 coats', () => {
    expect(said('GenericSolventLap', 'look-hard').every).toMatchObject({ months: 18 });
    expect(said('GenericSolventLap', 'coats').most).toMatchObject({ count: 4 });
  });

  it('coverage', () => {
    const covers = (name: string) => (said(name, 'covers').coverage as Figure).text;
    expect(covers('GenericDetergent')).toBe('400 sq-ft per gal');
    expect(covers('GenericIsopropyl')).toBe('200 sq-ft per gal');
    expect(covers('GenericTapePrimer')).toBe('100 sq-ft per gal');
  });
});

describe('trade notes 3.5: rates', () => {
  const ft = (low: number, likely: number, high: number) => `${low} ft per h, ${likely} ft per h, ${high} ft per h`;
  const table: Record<string, string> = {
    'set-up': '30 min, 45 min, 75 min',
    wash: '200 sq-ft per h, 300 sq-ft per h, 500 sq-ft per h',
    dry: '30 min, 90 min, 4 h',
    inspect: '250 sq-ft per h, 350 sq-ft per h, 500 sq-ft per h',
    cover: '4 min, 12 min, 25 min',
    mask: ft(50, 80, 120),
    strip: ft(3, 6, 12),
    'strip-hard': ft(2, 4, 8),
    wipe: ft(50, 80, 150),
    prime: ft(50, 80, 150),
    lay: ft(25, 40, 70),
    frame: ft(10, 16, 25),
    press: ft(60, 90, 150),
    gun: ft(40, 60, 100),
    'gun-around': ft(12, 20, 30),
    rebed: ft(4, 8, 12),
  };
  const rates = statementsOf('Standard').filter(({ word }) => word === 'rate');
  for (const [task, wanted] of Object.entries(table)) {
    it(task, () => {
      const rate = rates.find((one) => one.task === task);
      expect(three(rate?.value)).toBe(wanted);
      expect(rate?.source).toBe('from memory');
    });
  }
});

describe('the standard policy', () => {
  const policy = (word: string) => said('Standard', word);
  const list = (word: string) =>
    (policy(word).list as readonly { word: string; within: Figure }[]).map((one) => `${one.word} ${one.within.text}`);

  it('trade notes 2.1: inspections', () => {
    expect(policy('inspect').every).toMatchObject({ months: 6 });
    expect(policy('inspect-limit').limit).toMatchObject({ months: 12 });
  });

  it('trade notes 4: follow-up, the times of an owner', () => {
    expect(list('follow-up')).toEqual([
      'hairline 6 months',
      'cracked 30 days',
      'lifting 7 days',
      'open 1 day',
      'not-seen 6 months',
      'wet 14 days',
      'leak 7 days',
    ]);
    expect(list('look-after')).toContain('repaired-leak 30 days');
    expect(list('look-after')).toContain('struck 1 day');
  });

  it('trade notes 2.3, 3.3, 3.4: rolls, margins, bands', () => {
    expect(policy('roll-waste').length).toMatchObject({ text: '6 in' });
    expect(policy('roll-waste').source).toBe('from memory');
    expect(policy('margin').length).toMatchObject({ text: '1 in' });
    expect(policy('bead-line').line).toBe('centre');
    expect(policy('splices').rule).toBe('when-needed');
    const bands = statementsOf('Standard').filter(({ word }) => word === 'band');
    expect(bands.slice(0, 5).map((band) => `${band.of} ${(band.width as Figure).text}`)).toEqual([
      'edge 2 in',
      'front-cap 5 in',
      'rear-cap 2 in',
      'slide 1 1/2 in',
      'opening 2 1/4 in',
    ]);
  });
});
