// The closed word lists of the language, apart from statement words (those are the rows of the table).

/** Reserved everywhere: never a name. Some open a clause today, the others are kept for clauses to come. */
export const clauseWords: ReadonlySet<string> = new Set(
  `about after air all and at bead because before best-before between by count cutout each every flange for from humidity inside
   length like lot moisture most not note of on or paid paper per photo rest round since source suspect surface to took
   under unknown until used via wide with within`.split(/\s+/),
);

/** Conditions from best to worst. */
export const conditions = ['sound', 'chalky', 'hairline', 'cracked', 'lifting', 'open'] as const;
export type Condition = (typeof conditions)[number];

/** What a finding may name beside or instead of a condition, with the level it stands for when none is written (`../../language/library` gives the gauges). Common practice, no source. */
export const defects = {
  blistered: 'cracked',
  wrinkled: 'hairline',
  torn: 'open',
  'backed-out': 'cracked',
  rusted: 'hairline',
  flattened: 'hairline',
  crazed: 'hairline',
  missing: 'open',
  soft: 'open',
  stained: 'chalky',
  delaminated: 'open',
  blocked: 'cracked',
} as const satisfies Record<string, Condition>;
export type Defect = keyof typeof defects;

/** Words of a finding that are no condition: nobody looked, or it is wet whatever else it is. */
export const findingFlags = ['not-seen', 'wet'] as const;

export const sides = ['curbside', 'roadside', 'front', 'rear'] as const;
export type Side = (typeof sides)[number];

/** The long sides, by the words that are used for them; left and right are those of travel, nearside and offside those of the kerb. */
export const longSides = ['curbside', 'roadside', 'left', 'right', 'nearside', 'offside'] as const;

export const days = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
export type Day = (typeof days)[number];

export const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'] as const;
export type Month = (typeof months)[number];

/** Sets of items: everything, what was not named yet, and the kinds in the plural. */
export const sets = {
  all: undefined,
  rest: undefined,
  edges: 'edge',
  caps: 'cap',
  slides: 'slide',
  openings: 'opening',
  mounts: 'mount',
  joints: 'joint',
  gaskets: 'gasket',
  drains: 'drain',
  channels: 'channel',
  inserts: 'insert',
} as const;
export type SetWord = keyof typeof sets;

/** Families of sealant and coating, by what cures them. */
export const families = [
  'solvent-lap',
  'hybrid-lap',
  'hybrid',
  'urethane',
  'silicone',
  'acetoxy-silicone',
  'butyl',
  'acrylic',
  'asphalt',
] as const;
export type Family = (typeof families)[number];

export const grades = ['self-levelling', 'non-sag'] as const;

/** Families of cleaner, by what is in them. */
export const solvents = [
  'detergent',
  'isopropyl',
  'acetone',
  'mineral-spirits',
  'aromatic',
  'citrus',
  'abrasive',
  'membrane-cleaner',
] as const;
export type Solvent = (typeof solvents)[number];

/** Cross-sections of a bead. */
export const sections = ['rectangle', 'fillet', 'half-round', 'dome'] as const;

/** Tasks with a rate or a duration of their own. */
export const tasks = [
  'set-up',
  'wash',
  'dry',
  'inspect',
  'inspect-inside',
  'cover',
  'mask',
  'strip',
  'strip-hard',
  'wipe',
  'prime',
  'lay',
  'frame',
  'press',
  'gun',
  'gun-around',
  'rebed',
  'replace',
  'patch',
  'tighten',
  'coat',
  'dry-out',
  'temporary-cover',
] as const;
export type Task = (typeof tasks)[number];

/** Ways to keep the seams tight over the years, which the life cost compares. */
export const ways = ['touch-up', 'recoat', 'tape', 'tape-edges', 'shop', 'reroof'] as const;
export type Way = (typeof ways)[number];

/** Work that takes a rig off the road for whole days. */
export const offRoad = ['touch-up', 'recoat', 'strip', 'tape', 'shop', 'reroof'] as const;
export type OffRoad = (typeof offRoad)[number];

/** Kinds of seam that have a default band to be covered. */
export const bandKinds = ['edge', 'front-cap', 'rear-cap', 'slide', 'opening', 'mount', 'joint'] as const;

export const severities = ['error', 'warning', 'information', 'hint', 'off'] as const;
export type Severity = (typeof severities)[number];

/** Spellings of one word: both are read, neither is rewritten. */
const variants: Readonly<Record<string, string>> = {
  fiberglass: 'fibreglass',
  aluminum: 'aluminium',
  labor: 'labour',
  center: 'centre',
  molded: 'moulded',
  'self-leveling': 'self-levelling',
};

/** The spelling under which a word is looked up. */
export function canonical(word: string): string {
  return Object.hasOwn(variants, word) ? (variants[word] as string) : word;
}

/** A word in all its spellings. */
export function spellings(word: string): string[] {
  return [word, ...Object.keys(variants).filter((variant) => variants[variant] === word)];
}
