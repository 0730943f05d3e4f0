// Invented records for the benchmarks, made from a seed and printed twice: as `.rig` text, and as YAML for the peer.

/** A small seeded generator (mulberry32), so that every run times the same records. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

interface FindingOf {
  readonly seam: string;
  readonly condition: string;
  readonly from?: string;
  readonly to?: string;
  readonly moisture?: string;
  readonly note?: string;
}
interface RecordOf {
  readonly verb: string;
  readonly date: string;
  readonly seams?: readonly string[];
  readonly with?: string;
  readonly used?: string;
  readonly by?: string;
  readonly lot?: string;
  readonly air?: string;
  readonly note?: string;
  readonly findings?: readonly FindingOf[];
}
export interface RigOf {
  readonly name: string;
  readonly model: string;
  readonly unit: string;
  readonly built: string;
  readonly acquired: string;
  readonly records: readonly RecordOf[];
}

const models = ['Alder28', 'Birch24', 'Cedar19'] as const;
const seams = [
  'curbside',
  'roadside',
  'front',
  'rear',
  'slide-roof',
  'vent-1',
  'vent-2',
  'skylight',
  'stack-1',
  'stack-2',
  'ladder-feet',
] as const;
const people = ['R. Adeyemi', 'L. Brandt', 'S. Okafor', 'M. Ilves'] as const;

/** One rig with `years` of history: two inspections and a wash a year, and the work that they called for. */
export function rigOf(index: number, years: number, perYear = 1): RigOf {
  const random = seeded(1000 + index);
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T;
  const first = 2026 - years;
  const records: RecordOf[] = [
    { verb: 'found', date: `${first}-01-15`, seams: ['all'], with: 'GreyLap', by: 'R. Adeyemi' },
  ];
  for (let year = first; year < 2026; year++) {
    for (let k = 0; k < perYear; k++) {
      const day = (month: number, d: number) =>
        `${year}-${String(month).padStart(2, '0')}-${String(Math.min(28, d + k)).padStart(2, '0')}`;
      const weak = pick(seams.slice(5, 10));
      records.push(
        { verb: 'washed', date: day(4, 2), with: 'MildWash', by: pick(people) },
        {
          verb: 'inspected',
          date: day(4, 6),
          by: pick(people),
          findings: [
            {
              seam: 'curbside',
              condition: 'hairline',
              from: `${2 + Math.floor(random() * 4)} ft`,
              to: `${7 + Math.floor(random() * 4)} ft`,
            },
            { seam: weak, condition: 'cracked', note: 'forward corner' },
            { seam: 'front', condition: 'sound', moisture: `${10 + Math.floor(random() * 6)} %` },
            { seam: 'rest', condition: 'sound' },
          ],
        },
        { verb: 'stripped', date: day(4, 14), seams: [weak] },
        {
          verb: 'sealed',
          date: day(4, 14),
          seams: [weak],
          with: 'GreyLap',
          used: '1 cartridge',
          lot: `K${1000 + Math.floor(random() * 9000)}`,
          air: '64 F',
          by: pick(people),
        },
        { verb: 'inspected', date: day(10, 3), by: pick(people), findings: [{ seam: 'rest', condition: 'sound' }] },
      );
    }
  }
  return {
    name: `Rig${String(index).padStart(5, '0')}`,
    model: pick(models),
    unit: String(1000 + index),
    built: `${first - 4}-03`,
    acquired: `${first}-01-15`,
    records,
  };
}

/** The files that all rigs share, as `.rig` text. */
export const sharedRig: Readonly<Record<string, string>> = {
  'yard/materials.rig': `tape EdgeTape4 {
  width        4 in
  roll         50 ft at 61.00 USD
  roll         25 ft at 34.50 USD
}

sealant GreyLap {
  family       solvent-lap
  grade        self-levelling
  cartridge    10.3 fl-oz at 9.75 USD
  bead         1 in by 1/4 in
  coats        at most 4
  bonds-to     epdm, abs, solvent-lap
}

cleaner MildWash { container 1 gal at 14 USD  covers 400 sq-ft per gal }
`,
  'yard/policy.rig': `policy Yard {
  inspect        every 6 months
  due-soon       30 days
  currency       USD
  labour         48 USD per h
  tax            6.5 % on materials
}
`,
  'yard/models.rig': `${models
    .map(
      (name, i) => `model ${name} {
  roof         ${28 - 4 * i} ft by 8 ft 2 in epdm
  falls        to edges
  edge         curbside, roadside
  cap          front wide 5 in
  cap          rear wide 2 in
  slide        slide-roof 9 ft by 3 ft on roadside
  opening      vent-1 16 in by 16 in at 5 ft, 2 ft of abs
  opening      vent-2 16 in by 16 in at 9 ft, 2 ft of abs
  opening      skylight 32 in by 24 in at 14 ft, 5 ft of abs
  opening      stack-1 round 6 in at 11 ft, 6 ft
  opening      stack-2 round 6 in at 17 ft, 6 ft
  mount        ladder-feet 3 in by 4 in at 19 ft, 1 ft
}
`,
    )
    .join('\n')}`,
};

/** A rig as `.rig` text. */
export function rigText(rig: RigOf): string {
  const out = [
    'use "../yard/materials.rig"',
    'use "../yard/policy.rig"',
    'use "../yard/models.rig"',
    '',
    `rig ${rig.name} like ${rig.model} under Yard {`,
    `  unit         "${rig.unit}"`,
    `  built        ${rig.built}`,
    `  acquired     ${rig.acquired}`,
    '',
  ];
  for (const r of rig.records) {
    const clauses = [
      r.seams?.join(', '),
      r.with && `with ${r.with}`,
      r.used && `used ${r.used}`,
      r.lot && `lot "${r.lot}"`,
      r.air && `air ${r.air}`,
      r.by && `by "${r.by}"`,
      r.note && `note "${r.note}"`,
    ].filter(Boolean);
    const head = `  ${r.verb.padEnd(9)} ${[r.date, ...clauses].join(' ')}`;
    if (!r.findings) {
      out.push(head);
      continue;
    }
    out.push(`${head} {`);
    for (const f of r.findings) {
      const more = [
        f.from && `from ${f.from} to ${f.to}`,
        f.moisture && `moisture ${f.moisture}`,
        f.note && `note "${f.note}"`,
      ].filter(Boolean);
      out.push(`    ${f.seam.padEnd(11)} ${[f.condition, ...more].join('  ')}`);
    }
    out.push('  }');
  }
  return `${out.join('\n')}\n}\n`;
}

/** The same rig as YAML, as a careful person would lay it out. */
export function rigYaml(rig: RigOf): string {
  const out = [
    `rig: ${rig.name}`,
    `like: ${rig.model}`,
    'under: Yard',
    `unit: "${rig.unit}"`,
    `built: "${rig.built}"`,
    `acquired: "${rig.acquired}"`,
    'records:',
  ];
  for (const r of rig.records) {
    out.push(`  - verb: ${r.verb}`, `    date: "${r.date}"`);
    if (r.seams) out.push(`    seams: [${r.seams.join(', ')}]`);
    if (r.with) out.push(`    with: ${r.with}`);
    if (r.used) out.push(`    used: ${r.used}`);
    if (r.lot) out.push(`    lot: "${r.lot}"`);
    if (r.air) out.push(`    air: ${r.air}`);
    if (r.by) out.push(`    by: ${r.by}`);
    if (r.note) out.push(`    note: ${r.note}`);
    if (!r.findings) continue;
    out.push('    findings:');
    for (const f of r.findings) {
      out.push(`      - seam: ${f.seam}`, `        condition: ${f.condition}`);
      if (f.from) out.push(`        from: ${f.from}`, `        to: ${f.to}`);
      if (f.moisture) out.push(`        moisture: ${f.moisture}`);
      if (f.note) out.push(`        note: ${f.note}`);
    }
  }
  return `${out.join('\n')}\n`;
}

const text = { type: 'string' } as const;
const length = {
  type: 'string',
  pattern: '^[0-9]+( [0-9]+/[0-9]+)? (in|ft|mm|cm|m)( [0-9]+( [0-9]+/[0-9]+)? in)?$',
} as const;

/** What the peer checks the YAML against. */
export const yamlSchema = {
  $schema: 'http://json-schema.org/draft-07/schema#',
  type: 'object',
  additionalProperties: false,
  required: ['rig', 'records'],
  properties: {
    rig: text,
    like: text,
    under: text,
    unit: text,
    built: { type: 'string', pattern: '^\\d{4}-\\d{2}(-\\d{2})?$' },
    acquired: { type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}$' },
    records: {
      type: 'array',
      items: {
        type: 'object',
        additionalProperties: false,
        required: ['verb', 'date'],
        properties: {
          verb: { enum: ['found', 'inspected', 'leaked', 'washed', 'stripped', 'sealed', 'taped', 'replaced'] },
          date: { type: 'string', pattern: '^\\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])$' },
          seams: { type: 'array', items: text },
          with: text,
          used: { type: 'string', pattern: '^[0-9.]+ (cartridges?|rolls?|qt|gal)$' },
          lot: text,
          air: { type: 'string', pattern: '^-?[0-9.]+ [FC]$' },
          by: text,
          note: text,
          findings: {
            type: 'array',
            items: {
              type: 'object',
              additionalProperties: false,
              required: ['seam', 'condition'],
              properties: {
                seam: text,
                condition: { enum: ['sound', 'chalky', 'hairline', 'cracked', 'lifting', 'open', 'not-seen'] },
                from: length,
                to: length,
                moisture: { type: 'string', pattern: '^[0-9.]+ %$' },
                note: text,
              },
            },
          },
        },
      },
    },
  },
} as const;
